"""The best choice of sizes at one scale: best first, with what failed never tried again.

Every failing choice is kept as the few values that made it fail (the sizes
that the broken asking leans on), and every later choice that holds the same
values is passed over unseen. So the first choice that keeps everything is the
best one, and running out of choices is a proof that there is none.
"""

from __future__ import annotations

import heapq
from collections import Counter
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field

from tommybar.resize.asked import Asked, Key
from tommybar.resize.choice import Choice, Domain
from tommybar.resize.look import Looks

LOOKS_A_SCALE = 200  # choices worked out at one scale before giving up on it
NODES = 4_000  # partial choices between two of them

Clash = frozenset[tuple[str, float | str]]


@dataclass
class Tried:
    """What one search found: the picks, or what stood in the way."""

    scale: float
    domains: Mapping[str, Domain]
    picks: dict[str, Choice] = field(default_factory=dict)  # the choice that broke least
    broken: tuple[Asked, ...] = ()  # by that choice
    ever_broken: dict[Key, Asked] = field(default_factory=dict)
    because: dict[tuple[str, float | str], str] = field(default_factory=dict)  # why a value was passed over
    exhausted: bool = True

    @property
    def good(self) -> bool:
        """Whether a choice keeps everything that is asked."""
        return self.whole and not self.broken

    @property
    def whole(self) -> bool:
        """Whether every size has its value; a design without sizes always has."""
        return bool(self.picks) or not self.domains

    @property
    def values(self) -> dict[str, float | str]:
        """The values picked."""
        return {name: choice.value for name, choice in self.picks.items()}


def search(
    looks: Looks,
    scale: float,
    domains: Mapping[str, Domain],
    counts: Callable[[Key], bool] = lambda key: True,
    kept: frozenset[str] = frozenset(),
) -> Tried:
    """Choose a value for every size so that all that is asked holds, at the least cost.

    ``counts`` says of an asking's key whether it is to be taken into account;
    ``kept`` names sizes at which no fault is found for want of a tool (pins).
    """
    tried = Tried(scale, domains)
    if not domains:
        tried.broken = tuple(one for one in looks.at({}) if not one.holds and counts(one.key))
        tried.ever_broken = {one.key: one for one in tried.broken}
        return tried
    clashes: list[Clash] = []
    fewest: tuple[bool, int] | None = None
    for _ in range(LOOKS_A_SCALE):
        picks = _next_best(domains, clashes)
        if picks is None:
            return tried
        if not picks:
            break
        values = {name: choice.value for name, choice in picks.items()}
        asked = (*tools_lacking(picks, kept), *looks.at(values))
        broken = tuple(one for one in asked if not one.holds and counts(one.key))
        for one in broken:
            tried.ever_broken.setdefault(one.key, one)
        if not broken:
            tried.picks, tried.broken = picks, ()
            return tried
        hidden = any(one.kind == "drawable" for one in broken), len(broken)
        if fewest is None or hidden < fewest:
            fewest, tried.picks, tried.broken = hidden, picks, broken
        for one in broken:
            clash = frozenset((name, values[name]) for name in looks.leans_on(one) if name in values)
            clashes.append(clash)
            for name, value in clash:
                if len(domains[name].choices) > 1:
                    tried.because.setdefault((name, value), one.who if one.kind == "drawable" else one.what)
    tried.exhausted = False
    return tried


def tools_lacking(picks: Mapping[str, Choice], kept: frozenset[str]) -> list[Asked]:
    """What the shop lacks for these picks, as broken askings."""
    return [
        Asked("tool", choice.stop, name, 1.0, 0.0, who="the shop")
        for name, choice in picks.items()
        if choice.stop and name not in kept
    ]


def nearest_picks(domains: Mapping[str, Domain]) -> dict[str, Choice]:
    """The best choice of every size by itself."""
    return {name: domain.ordered[0] for name, domain in domains.items()}


def _next_best(domains: Mapping[str, Domain], clashes: Sequence[Clash]) -> dict[str, Choice] | None:
    """The cheapest choice that holds no clash; None when there is none, empty when the count ran out.

    Sizes that no clash ties together are chosen apart: costs add up, so the
    cheapest of each group are together the cheapest of all.
    """
    firsts = nearest_picks(domains)
    live: list[Clash] = []
    for clash in dict.fromkeys(clashes):
        fixed = frozenset(pair for pair in clash if len(domains[pair[0]].choices) == 1)
        if not _holds(fixed, firsts):
            continue  # what cannot be otherwise is not so
        if fixed == clash:
            return None
        live.append(clash - fixed)
    picks = dict(firsts)
    for group in _groups(live):
        chosen = _cheapest(domains, group)
        if not chosen:
            return chosen
        picks.update(chosen)
    return picks


def _groups(clashes: Sequence[Clash]) -> list[list[Clash]]:
    """Clashes that have a size in common, directly or through others, together; in the order of their first."""
    groups: list[tuple[set[str], list[Clash]]] = []
    for clash in clashes:
        names = {name for name, _ in clash}
        tied = [group for group in groups if group[0] & names]
        if not tied:
            groups.append((names, [clash]))
            continue
        first, *others = tied
        first[0].update(names)
        for other in others:
            first[0].update(other[0])
            first[1].extend(other[1])
            groups.remove(other)
        first[1].append(clash)
    return [group for _, group in groups]


def _cheapest(domains: Mapping[str, Domain], clashes: Sequence[Clash]) -> dict[str, Choice] | None:
    """The cheapest values of the sizes that these clashes name, holding none of them; None and empty as above."""
    often = Counter(name for clash in clashes for name, _ in clash)
    order = sorted(often, key=lambda name: (-often[name], name))
    places = {name: place for place, name in enumerate(order)}
    last: dict[str, list[Clash]] = {name: [] for name in order}
    for clash in clashes:
        last[max((name for name, _ in clash), key=lambda name: places[name])].append(clash)
    ranked = [domains[name].ordered for name in order]
    heap: list[tuple[tuple[int, float], tuple[int, ...]]] = [((0, 0.0), ())]
    for _ in range(NODES):
        if not heap:
            return None
        cost, chosen = heapq.heappop(heap)
        depth = len(chosen)
        if depth == len(order):
            return {name: ranked[at][chosen[at]] for at, name in enumerate(order)}
        values = {order[at]: ranked[at][number].value for at, number in enumerate(chosen)}
        domain = domains[order[depth]]
        best_rank, best_cost = domain.rank(ranked[depth][0])
        for number, choice in enumerate(ranked[depth]):
            values[order[depth]] = choice.value
            if any(all(values[name] == value for name, value in clash) for clash in last[order[depth]]):
                continue
            rank, extra = domain.rank(choice)
            # dearer than this size's best: what the best ones cost together is the same for all
            heapq.heappush(
                heap, ((cost[0] + rank - best_rank, cost[1] + extra - best_cost), (*chosen, number))
            )
    return {}


def _holds(clash: Clash, picks: Mapping[str, Choice]) -> bool:
    return all(picks[name].value == value for name, value in clash)
