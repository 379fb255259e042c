"""How near the best possible: the bound against every way of sawing, one by one."""

from __future__ import annotations

from itertools import product
from random import Random

import pytest

from tommybar.nest.bound import best_patterns, least_unserved
from tommybar.nest.lengths import fewest_bars, fill_offcuts
from tommybar.nest.shelves import shelve


def by_trying_all(pieces: list[float], bars: list[float], kerf: float) -> float:
    """Least length unserved over every way of giving each piece to a bar or to none."""
    best = sum(pieces)
    for where in product(range(len(bars) + 1), repeat=len(pieces)):
        loads = [
            sum(p + kerf for p, w in zip(pieces, where, strict=True) if w == bar) for bar in range(len(bars))
        ]
        if all(load <= room + kerf + 1e-9 for load, room in zip(loads, bars, strict=True)):
            best = min(best, sum(p for p, w in zip(pieces, where, strict=True) if w == len(bars)))
    return best


@pytest.mark.parametrize("seed", range(12))
def test_offcuts_against_every_way_of_sawing(seed):
    """Six pieces on two or three offcuts: the restarts find the best, and the bound is not above it."""
    chance = Random(seed)
    pieces = [float(chance.randint(8, 60)) for _ in range(6)]
    bars = [float(chance.randint(20, 110)) for _ in range(chance.randint(2, 3))]
    best = by_trying_all(pieces, bars, 1.5)

    filled = fill_offcuts(pieces, bars, 1.5)
    bound = least_unserved([(one, 1) for one in pieces], bars, [[True] * len(bars)] * len(pieces), 1.5)

    assert sum(pieces[one] for one in filled.left_over) == pytest.approx(best)
    assert bound == pytest.approx(best, abs=1e-6)


def test_first_fit_is_not_good_enough_and_ours_is():
    """First-fit-decreasing takes three bars of 100 for 50 40 30 30 25 25; two hold them."""
    pieces = [50.0, 40.0, 30.0, 30.0, 25.0, 25.0]

    assert len(fewest_bars(pieces, 100, 0)) == 2
    assert best_patterns(pieces, 100, 0)[0] == 2


def test_plates_never_overlap_and_never_stick_out():
    """Thirty rectangles on one plate: a kerf between any two, all inside."""
    chance = Random(7)
    pieces = [(chance.uniform(10, 60), chance.uniform(10, 40)) for _ in range(30)]

    places, left = shelve(pieces, 200, 120, 2.0)

    assert sorted([one.piece for one in places] + list(left)) == list(range(30))
    for one in places:
        assert one.start >= 0 and one.end <= 200 + 1e-9 and one.edge >= 0 and one.far_edge <= 120 + 1e-9
        sides = sorted((one.end - one.start, one.far_edge - one.edge))
        assert sides == pytest.approx(sorted(pieces[one.piece]))
        for other in places:
            apart = (
                one.end + 2 <= other.start + 1e-9
                or other.end + 2 <= one.start + 1e-9
                or one.far_edge + 2 <= other.edge + 1e-9
                or other.far_edge + 2 <= one.edge + 1e-9
            )
            assert one.piece == other.piece or apart


@pytest.mark.parametrize("seed", range(15))
def test_as_little_of_the_rack_is_begun_as_may_be(seed):
    """Five pieces on four bars: least unserved first, then the least length of bars begun, by trying all ways."""
    chance = Random(seed)
    pieces = [chance.randint(8, 60) for _ in range(5)]
    bars = [chance.randint(30, 200) for _ in range(4)]
    ways = []
    for where in product(range(5), repeat=5):
        loads = [sum(p + 1.5 for p, w in zip(pieces, where, strict=True) if w == bar) for bar in range(4)]
        if all(one <= room + 1.5 for one, room in zip(loads, bars, strict=True)):
            left = sum(p for p, w in zip(pieces, where, strict=True) if w == 4)
            ways.append((left, sum(bars[bar] for bar in set(where) if bar < 4)))

    filled = fill_offcuts(pieces, bars, 1.5)
    begun = sum(bar for bar, places in zip(bars, filled.on_bars, strict=True) if places)

    assert (sum(pieces[one] for one in filled.left_over), begun) == min(ways)
