"""The route of a turned part: in which grips, in which order.

Best-first search over set-ups. A set-up makes all it reaches, or leaves out
whole groups that must run true to something it does not reach. The cost is
about 100 for a set-up plus what its device, its marks and its run-out cost.
"""

from __future__ import annotations

import heapq
from dataclasses import dataclass, field
from itertools import count

from tommybar.design.model import Part
from tommybar.making.between_centres import between_options, end_options, wants_centres
from tommybar.making.blank_holding import blank_options
from tommybar.making.cards import Rejected
from tommybar.making.forecast import Axis, expected_runout, worst_runout
from tommybar.making.grips import Option
from tommybar.making.jobs import Job, jobs_of
from tommybar.making.reach import blades_of, plunging_cost, reached
from tommybar.making.surface_holding import surface_options
from tommybar.shapes.features import TurnedShape
from tommybar.shop.model import Shop

CARD_COST = 100.0
MOST_CARDS = 4
STATES = 4000  # budget of the search, counted, never timed


@dataclass(frozen=True)
class SetUp:
    """One grip of the route with the jobs done in it."""

    option: Option
    jobs: tuple[str, ...]


@dataclass(frozen=True)
class Route:
    """Set-ups in order, with their axes, or none and the reasons."""

    set_ups: tuple[SetUp, ...]
    axes: tuple[Axis, ...]  # axis of each card, hung on the card that made the gripped surface
    made_in: tuple[tuple[str, int], ...]  # job -> card number, 0 for the bar's own surface
    cost: float
    rejected: tuple[Rejected, ...]
    missing: tuple[str, ...] = ()  # jobs that no holding reaches
    runout_broken: tuple[tuple[str, str, float, float], ...] = ()  # of, to, expected, within
    exhausted: bool = True


@dataclass(order=True)
class _Node:
    cost: float
    order: int
    set_ups: tuple[SetUp, ...] = field(compare=False)
    axes: tuple[Axis, ...] = field(compare=False)
    made: frozenset[str] = field(compare=False)
    made_in: dict[str, int] = field(compare=False)
    broken: tuple[tuple[str, str, float, float], ...] = field(compare=False)


_Way = tuple[
    Option, str, frozenset[str], frozenset[str]
]  # with its name, what it reaches, and that with the blade


def holding_name(device: str, surface: str) -> str:
    """The name by which a way of holding is excluded or forbidden."""
    return f"{device} on {surface}"


def _relations(
    part: Part, node_made: dict[str, int], axes: tuple[Axis, ...]
) -> list[tuple[str, str, float, float, float]]:
    """(of, to, within, expected, worst) for needs whose both ends are made."""
    found = []
    for need in part.needs:
        if need.of in node_made and need.to in node_made:
            expected = expected_runout(axes, node_made[need.of], node_made[need.to])
            worst = worst_runout(axes, node_made[need.of], node_made[need.to])
            found.append((need.of, need.to, need.within, expected, worst))
    return found


def _tied(part: Part, node: _Node) -> tuple[object, ...]:
    """What the rest of a route hangs on besides what is made: states alike in this are alike.

    With run-out needs that is where their features were made, and all axes:
    a dearer holding that runs truer may be the cheaper one in the end.
    """
    names = [name for need in part.needs for name in (need.of, need.to)]
    axes = node.axes if part.needs else ()
    return (len(node.set_ups), *(node.made_in.get(name, -1) for name in names), *axes)


def _groups(part: Part, new: frozenset[str], made: frozenset[str]) -> list[frozenset[str]]:
    """Groups that had better wait: they must run true to something not reached now."""
    groups = []
    for need in part.needs:
        for one, other in ((need.of, need.to), (need.to, need.of)):
            if one in new and other not in new and other not in made:
                groups.append(frozenset({one}))
    return groups


def _followers(names: frozenset[str], jobs: tuple[Job, ...]) -> frozenset[str]:
    features = {job.feature for job in jobs if job.name in names}
    return frozenset(j.name for j in jobs if j.feature in features) | names


def search_route(
    part: Part,
    shape: TurnedShape,
    blank_dia: float,
    faces: float,
    shop: Shop,
    *,
    bar: float = 0.0,
    hollow: float = 0.0,
    excluded: frozenset[str] = frozenset(),
    forbidden: frozenset[tuple[int, str]] = frozenset(),
    keep_runout: bool = True,
) -> Route:
    """Find the cheapest route of set-ups.

    ``blank_dia`` is the blank's diameter, ``faces`` the metal for facing an
    end, ``bar`` the diameter of a bar whose surface may stay, ``hollow`` the
    bore that a tube brings [mm]. Options
    whose device and surface are named in ``excluded`` ("device on surface")
    are not used anywhere, those in ``forbidden`` not as the set-up of that
    number (1 is the first). With ``keep_runout`` false the run-out needs only
    cost.
    """
    jobs = jobs_of(shape, bar, hollow)
    wanted = frozenset(j.name for j in jobs)
    supplied = frozenset(j.name for j in jobs if j.as_supplied)
    wanted -= supplied
    ticket = count()
    start = _Node(0.0, next(ticket), (), (), supplied, dict.fromkeys(supplied, 0), ())
    queue = [start]
    best_seen: dict[tuple[frozenset[str], tuple[object, ...]], float] = {}
    rejected: list[Rejected] = []
    nearest_missing = wanted
    popped = 0
    least_broken: tuple[tuple[str, str, float, float], ...] = ()
    known: dict[tuple[bool, frozenset[str]], tuple[_Way, ...]] = {}
    blades = blades_of(shop)
    centred = wants_centres(shape, shop)
    while queue and popped < STATES:
        node = heapq.heappop(queue)
        popped += 1
        if wanted <= node.made:
            return Route(
                node.set_ups,
                node.axes,
                tuple(sorted(node.made_in.items())),
                node.cost,
                tuple(dict.fromkeys(rejected)),
                runout_broken=node.broken,
            )
        missing = wanted - node.made
        if node.set_ups and len(missing) < len(nearest_missing):
            nearest_missing = missing
        if len(node.set_ups) >= MOST_CARDS:
            continue
        state = (not node.set_ups, node.made)
        if state not in known:
            if node.set_ups:
                options, refused = surface_options(shape, node.made, shop, jobs, hollow)
            else:
                options, refused = blank_options(shape, jobs, blank_dia, faces, shop, hollow)
            if centred:
                for more, why in (
                    end_options(shape, node.made, jobs, blank_dia, faces, shop),
                    between_options(shape, node.made, jobs, blank_dia, shop),
                ):
                    options, refused = [*options, *more], [*refused, *why]
            rejected.extend(refused)
            known[state] = tuple(
                (
                    one,
                    holding_name(one.device, one.surface),
                    reached(one, shape, jobs, node.made, blades),
                    reached(one, shape, jobs, node.made, blades, late=True),
                )
                for one in options
            )
        for option, name, new, late in known[state]:
            if name in excluded or (len(node.set_ups) + 1, name) in forbidden:
                continue
            variants = [new] if late == new else [new, late]
            groups = _groups(part, new, node.made)
            if groups:
                variants.append(new - _followers(frozenset().union(*groups), jobs))
            for variant in variants:
                if not variant:
                    continue
                child = _child(node, option, variant, part, shape, jobs, keep_runout, ticket)
                if child is None:
                    continue
                if not keep_runout or not child.broken:
                    key = (child.made, _tied(part, child))
                    if best_seen.get(key, float("inf")) <= child.cost:
                        continue
                    best_seen[key] = child.cost
                    heapq.heappush(queue, child)
                elif not least_broken or child.broken[0][2] < least_broken[0][2]:
                    least_broken = child.broken
    return Route(
        (),
        (),
        (),
        0.0,
        tuple(dict.fromkeys(rejected)),
        missing=tuple(sorted(nearest_missing)),
        runout_broken=least_broken,
        exhausted=not queue,
    )


def _child(
    node: _Node,
    option: Option,
    new: frozenset[str],
    part: Part,
    shape: TurnedShape,
    jobs: tuple[Job, ...],
    keep_runout: bool,
    ticket: count[int],
) -> _Node | None:
    number = len(node.set_ups) + 1
    parent = node.made_in.get(option.surface, 0 if any(j.as_supplied for j in jobs) else -1)
    if option.surface == "blank":
        parent = 0 if any(j.as_supplied for j in jobs) else -1
    runout = option.runout
    if option.hangs_on:
        parent, runout = _line_of_centres(node, option)
    axes = (*node.axes, Axis(parent, runout))
    made_in = dict(node.made_in)
    made_in.update(dict.fromkeys(new, number))
    broken = []
    ratio = 0.0
    for of, to, within, expected, _ in _relations(part, made_in, axes):
        ratio += expected / within
        if expected > within:
            broken.append((of, to, expected, within))
    cost = (
        node.cost
        + CARD_COST
        + option.cost
        + 3.0 * ratio
        + _sense(option, new, jobs)
        + plunging_cost(shape, option, new)
    )
    if broken and not keep_runout:
        cost += 500.0 * len(broken)
    ordered = tuple(j.name for j in jobs if j.name in new)
    return _Node(
        cost,
        next(ticket),
        (*node.set_ups, SetUp(option, ordered)),
        axes,
        node.made | new,
        made_in,
        tuple(broken),
    )


def _line_of_centres(node: _Node, option: Option) -> tuple[int, float]:
    """The card that the axis of work between centres hangs on, and by how much [mm TIR].

    Turned end for end it is the same line. The first time it goes through two
    holes of two grips, so that it leans to the axis of the later one by as much
    as that grip ran out.
    """
    before = [n for n, one in enumerate(node.set_ups, start=1) if one.option.hangs_on == option.hangs_on]
    if before:
        return before[-1], option.runout
    made = max(node.made_in[name] for name in option.hangs_on)
    return made, max(option.runout, node.axes[made - 1].runout if made > 0 else option.runout)


def _sense(option: Option, new: frozenset[str], jobs: tuple[Job, ...]) -> float:
    """Small preferences: short stick-out, much done first, heavy work on a long grip."""
    done = sum(1 for j in jobs if j.name in new and j.kind in ("outside", "bore", "recess", "groove"))
    return (
        0.5 * abs(option.jaw_front) / max(option.dia, 1.0) - 0.8 * done + (0.0 if option.free == "A" else 0.1)
    )
