"""Lengths sawn from bars: one-dimensional cutting with kerf.

A bar of length L takes pieces whose lengths, each with one kerf, come to no
more than L and one kerf: nothing is sawn off behind the last piece when it
ends at the bar's end. All lengths are reckoned in whole tenths of a
millimetre, pieces rounded up and bars down, so that a plan never counts on
metal that is not there.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import combinations
from math import ceil, floor
from random import Random

TENTHS = 10  # steps in one millimetre
TRIES = 300  # seeded restarts at most
ORDERS = 24  # restarts for one set of bars
MOST_BARS_LISTED = 10  # of which every set is looked at
MOST_SETS = 200
TRIED_PIECES = 40_000  # pieces laid over all restarts


@dataclass(frozen=True)
class Filled:
    """Which pieces lie on which bar, by their places in the lists that were given."""

    on_bars: tuple[tuple[int, ...], ...]  # pieces on each bar, in sawing order
    left_over: tuple[int, ...]  # pieces that no bar takes


def piece_steps(length: float, kerf: float) -> int:
    """A piece and one kerf in tenths of a millimetre, rounded up."""
    return ceil(round((length + kerf) * TENTHS, 6))


def bar_steps(length: float, kerf: float) -> int:
    """The room on a bar, one kerf included, in tenths of a millimetre, rounded down."""
    return floor(round((length + kerf) * TENTHS, 6))


def _fullest(order: Sequence[int], steps: Sequence[int], room: int) -> list[int]:
    """Pieces, taken in this order where there is a choice, that fill the room best.

    Dynamic programming over the sums that can be reached, kept as the bits of
    one whole number; sums are traced back from the last piece to the first.
    """
    reached = [1]
    mask = (1 << (room + 1)) - 1
    for piece in order:
        reached.append((reached[-1] | (reached[-1] << steps[piece])) & mask)
    total = reached[-1].bit_length() - 1
    chosen: list[int] = []
    for place in range(len(order) - 1, -1, -1):
        if not (reached[place] >> total) & 1:
            chosen.append(order[place])
            total -= steps[order[place]]
    return chosen


def fill_offcuts(pieces: Sequence[float], bars: Sequence[float], kerf: float, tries: int = TRIES) -> Filled:
    """Saw pieces from bars that are owned, so that as little as may be is left unserved.

    In this order: least length unserved, least length of bars begun, fewest
    bars begun. The number of restarts is a count and the seed is fixed, so the
    answer is always the same.
    """
    steps = [piece_steps(one, kerf) for one in pieces]
    rooms = [bar_steps(one, kerf) for one in bars]
    chance = Random(len(pieces) * 1009 + len(bars))
    by_length = sorted(range(len(bars)), key=lambda bar: (rooms[bar], bar))
    best: tuple[tuple[int, int, int], Filled] | None = None
    for attempt in range(tries):
        order = list(by_length)
        if attempt == 1:
            order.reverse()
        elif attempt > 1:
            chance.shuffle(order)
        found = _filled(order, steps, rooms, chance, 0.0 if attempt < 2 else 0.5)
        if best is None or found[0] < best[0]:
            best = found
        if best[0][0] == 0 and best[0][2] <= 1 and attempt >= 1:
            break
    assert best is not None
    for few in _cheaper_sets(rooms, sum(steps), best[0]):
        for _ in range(ORDERS):
            found = _filled(few, steps, rooms, chance, 0.5)
            if found[0] < best[0]:
                return found[1]
            few = chance.sample(few, len(few))
    return best[1]


def _filled(
    order: Sequence[int], steps: Sequence[int], rooms: Sequence[int], chance: Random, spread: float
) -> tuple[tuple[int, int, int], Filled]:
    """Each bar in turn filled as full as it goes, with its score."""
    taken: dict[int, list[int]] = {}
    waiting = _shuffled(range(len(steps)), steps, chance, spread)
    for bar in order:
        chosen = _fullest(waiting, steps, rooms[bar]) if waiting else []
        if chosen:
            taken[bar] = chosen
            gone = set(chosen)
            waiting = [one for one in waiting if one not in gone]
    score = (sum(steps[one] for one in waiting), sum(rooms[bar] for bar in taken), len(taken))
    laid = tuple(tuple(_longest_first(taken.get(bar, []), steps)) for bar in range(len(rooms)))
    return score, Filled(laid, tuple(sorted(waiting)))


def _cheaper_sets(rooms: Sequence[int], wanted: int, best: tuple[int, int, int]) -> list[list[int]]:
    """Sets of bars that could hold everything and come to less than the bars begun, cheapest first."""
    if best[0] or len(rooms) > MOST_BARS_LISTED:
        return []
    sets = [
        list(few)
        for count in range(1, len(rooms) + 1)
        for few in combinations(range(len(rooms)), count)
        if wanted <= sum(rooms[bar] for bar in few) < best[1]
    ]
    return sorted(sets, key=lambda few: (sum(rooms[bar] for bar in few), few))[:MOST_SETS]


def fewest_bars(
    pieces: Sequence[float], bar: float, kerf: float, tries: int = TRIES
) -> tuple[tuple[int, ...], ...]:
    """Pieces put on as few equal bars as can be found; every piece must be no longer than a bar.

    Stops as soon as the count meets the least that the summed lengths allow.
    """
    steps = [piece_steps(one, kerf) for one in pieces]
    room = bar_steps(bar, kerf)
    least = -(-sum(steps) // room) if steps else 0
    chance = Random(len(pieces) * 2003 + room)
    best: list[list[int]] | None = None
    for attempt in range(min(tries, max(6, TRIED_PIECES // max(1, len(pieces))))):
        order = _shuffled(range(len(pieces)), steps, chance, 0.02 * (attempt % 12))
        bars: list[list[int]] = []
        while order and (best is None or len(bars) + 1 < len(best)):
            longest, *rest = order
            chosen = [longest, *_fullest(rest, steps, room - steps[longest])]
            bars.append(chosen)
            gone = set(chosen)
            order = [one for one in order if one not in gone]
        if not order:
            best = bars
        if best is not None and len(best) <= least:
            break
    return tuple(tuple(_longest_first(one, steps)) for one in best or [])


def _longest_first(pieces: Sequence[int], steps: Sequence[int]) -> list[int]:
    return sorted(pieces, key=lambda one: (-steps[one], one))


def _shuffled(pieces: Sequence[int], steps: Sequence[int], chance: Random, spread: float) -> list[int]:
    """Longest first, each length first blurred by up to ``spread`` of itself."""
    blurred = [steps[one] * (1 + spread * (chance.random() - 0.5)) for one in pieces]
    return sorted(pieces, key=lambda one: (-blurred[one], one))
