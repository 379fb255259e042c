"""Position of holes: each integral against a simulation of its own."""

from __future__ import annotations

import math

import numpy
import pytest

from tommybar.refusals import Refusal
from tommybar.sizes.position import (
    axis_deviation,
    true_position,
    true_position_polar,
    true_position_to_datum,
)

COUNT = 300_000


def test_the_parts_of_an_axis_deviation_add_as_squares() -> None:
    """20 um steps, 20 um half backlash, screw 10, wander 25: 29.86 um; each alone by its own variance."""
    assert axis_deviation(20, 20, 10, 25) == pytest.approx(29.861, abs=0.001)
    draw = numpy.random.default_rng(1)
    assert axis_deviation(20) == pytest.approx(float(numpy.std(draw.uniform(-10, 10, COUNT))), rel=0.01)
    assert axis_deviation(0, 20) == pytest.approx(float(numpy.std(draw.uniform(-20, 20, COUNT))), rel=0.01)


@pytest.mark.parametrize("holes", [1, 4, 6])
def test_all_holes_of_a_pattern_to_each_other(holes: int) -> None:
    """The worst of N holes, simulated."""
    draw = numpy.random.default_rng(2)
    away = numpy.hypot(draw.normal(0, 16, (COUNT // 4, holes)), draw.normal(0, 16, (COUNT // 4, holes)))
    expected = 2 * float(numpy.quantile(away.max(axis=1), 0.95))
    assert true_position(16.0, 0.95, holes) == pytest.approx(expected, rel=0.01)


@pytest.mark.parametrize(("hole", "centre", "holes"), [(16.0, 10.0, 6), (10.0, 30.0, 4), (20.0, 1.0, 3)])
def test_a_pattern_to_its_datum_shares_one_shift(hole: float, centre: float, holes: int) -> None:
    """The centre's error is drawn once for all holes."""
    draw = numpy.random.default_rng(4)
    count = COUNT // 4
    x = draw.normal(0, hole, (count, holes)) + draw.normal(0, centre, (count, 1))
    y = draw.normal(0, hole, (count, holes)) + draw.normal(0, centre, (count, 1))
    expected = 2 * float(numpy.quantile(numpy.hypot(x, y).max(axis=1), 0.95))
    assert true_position_to_datum(hole, centre, 0.95, holes) == pytest.approx(expected, rel=0.012)


def test_a_shift_added_to_every_hole_apart_would_be_wrong() -> None:
    """The common shift costs less than N shifts would."""
    apart = true_position(math.hypot(16, 10), 0.95, 6)
    assert true_position_to_datum(16.0, 10.0, 0.95, 6) < apart
    assert true_position_to_datum(16.0, 0.0, 0.95, 6) == true_position(16.0, 0.95, 6)


def test_a_hole_set_by_angle_and_radius() -> None:
    """R 26, 2 minutes, 12 um: simulated with both errors apart; equal errors give the plain formula."""
    draw = numpy.random.default_rng(5)
    tangential = 26_000 * math.radians(2 / 60)
    away = numpy.hypot(draw.normal(0, tangential, COUNT), draw.normal(0, 12, COUNT))
    assert true_position_polar(26.0, 2.0, 12.0) == pytest.approx(
        2 * float(numpy.quantile(away, 0.95)), rel=0.01
    )
    assert true_position_polar(26.0, 2.0, tangential) == pytest.approx(true_position(tangential), rel=1e-6)


def test_bad_figures_are_refused() -> None:
    """Deviations below nought, no holes, a share of one."""
    with pytest.raises(Refusal, match="count of holes is 0"):
        true_position(10.0, 0.95, 0)
    with pytest.raises(Refusal, match="half backlash is -1 um"):
        axis_deviation(5.0, -1.0)
    with pytest.raises(Refusal, match="radius is 0 mm"):
        true_position_polar(0.0, 1.0, 1.0)
    with pytest.raises(Refusal, match="deviation of a hole is 0 um"):
        true_position_to_datum(0.0, 5.0)
