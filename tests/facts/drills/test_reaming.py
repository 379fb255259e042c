"""Drills before reamers, and reamers themselves."""

from __future__ import annotations

import pytest

from tommybar.facts.drills import reamer_limits, reaming_allowance, reaming_drill
from tommybar.refusals import Refusal

DRAWER = [5.0, 5.1, 5.2, 5.5, 5.6, 5.7, 5.75, 5.8, 5.9, 6.0]


def test_worked_example() -> None:
    """A 6 mm reamer with 0.1 to 0.3 on the diameter takes the 5.8 drill and leaves 0.15."""
    chosen = reaming_drill(6.0, DRAWER, least=0.1, most=0.3)

    assert chosen.drill == 5.8
    assert chosen.allowance == pytest.approx(0.15)


def test_the_largest_drill_that_fits_is_taken() -> None:
    """Of 5.7 and 5.75, both inside the table's 0.2 to 0.3, the larger."""
    assert reaming_drill(6.0, DRAWER).drill == 5.75
    assert reaming_drill(6.0, [5.7, 5.0]).drill == 5.7


def test_a_drawer_without_a_fitting_drill_is_refused_with_its_neighbours() -> None:
    """5.5 leaves too much and 5.9 too little; the range to buy is named."""
    with pytest.raises(
        Refusal, match=r"5\.5 mm leaves 0\.45, 5\.9 mm leaves 0\.05.*drill of 5\.65 to 5\.75 mm"
    ):
        reaming_drill(6.0, [5.0, 5.5, 5.9])


def test_an_empty_drawer() -> None:
    """No drills at all is said so."""
    with pytest.raises(Refusal, match="the drawer is empty"):
        reaming_drill(6.0, [])


@pytest.mark.parametrize(
    ("reamer", "least", "most"),
    [(3, 0.1, 0.2), (5, 0.1, 0.2), (5.01, 0.2, 0.3), (20, 0.2, 0.3), (30, 0.3, 0.5), (80, 0.5, 1.0)],
)
def test_ranges_of_the_table(reamer: float, least: float, most: float) -> None:
    """A bound of a range belongs to the range below it."""
    allowance = reaming_allowance(reamer)

    assert (allowance.least, allowance.most) == (least, most)


def test_hand_takes_half_and_light_metal_half_as_much_again() -> None:
    """Factors of the table, alone and together."""
    assert reaming_allowance(8, by_hand=True).most == pytest.approx(0.15)
    assert reaming_allowance(8, light_metal=True).most == pytest.approx(0.45)
    assert reaming_allowance(8, by_hand=True, light_metal=True).most == pytest.approx(0.225)


@pytest.mark.parametrize("reamer", [0, -1, 100.5])
def test_reamer_outside_the_table_is_refused(reamer: float) -> None:
    """Nothing is clamped at the table's ends."""
    with pytest.raises(Refusal, match=r"runs above 0 and up to 100 mm"):
        reaming_allowance(reamer)


def test_a_reamer_cuts_inside_its_hole() -> None:
    """20 H7 (0 to +21): the reamer is 9 to 17 um over."""
    assert reamer_limits(20.0, 0, 21) == (20.009, 20.017)


def test_a_hole_without_tolerance_is_refused() -> None:
    """Deviations the wrong way round."""
    with pytest.raises(Refusal, match="upper must be above the lower"):
        reamer_limits(20.0, 21, 0)
