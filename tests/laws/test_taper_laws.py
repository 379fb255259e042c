"""Laws of tapers: angles and tapers undo each other, sizes hang together, settings grow with the angle."""

from __future__ import annotations

import math

from hypothesis import given, settings
from hypothesis import strategies as st

from tommybar.facts.tapers import (
    diameter_error_off_centre,
    half_angle,
    indicator_reading,
    slant_travel,
    slide_setting,
    taper,
    taper_names,
)

steep = st.floats(0.001, 2.0)
halves = st.floats(0.0, 80.0)


@settings(deadline=None, max_examples=60)
@given(steep)
def test_the_tangent_undoes_the_half_angle(taper_on_diameter: float) -> None:
    """Twice the tangent of the half angle is the taper."""
    assert math.isclose(
        2 * math.tan(math.radians(half_angle(taper_on_diameter))), taper_on_diameter, rel_tol=1e-12
    )


@settings(deadline=None, max_examples=60)
@given(halves)
def test_the_two_references_make_a_right_angle(half: float) -> None:
    """What one scale reads and what the other reads are 90 degrees together."""
    assert math.isclose(slide_setting(half) + slide_setting(half, "cross axis"), 90.0)


@settings(deadline=None, max_examples=60)
@given(halves, st.floats(0.0, 200.0))
def test_the_slant_is_never_shorter_than_the_cone(half: float, length: float) -> None:
    """Slant travel is at least the length, and its rise is length times tangent."""
    slant = slant_travel(length, half)
    assert slant >= length * (1 - 1e-12)
    rise = length * math.tan(math.radians(half))
    assert math.isclose(indicator_reading(slant, half), rise, rel_tol=1e-9, abs_tol=1e-9)


@settings(deadline=None, max_examples=60)
@given(st.floats(1.0, 200.0), st.floats(0.0, 2.0))
def test_the_wrong_height_makes_work_too_large_never_too_small(diameter: float, height: float) -> None:
    """The error is never below nought and never above what h^2/r gives."""
    error = diameter_error_off_centre(diameter, height)
    assert -1e-12 <= error <= 2 * height**2 / diameter + 1e-9


def test_ends_length_and_taper_of_every_machine_taper_hang_together() -> None:
    """Large less small over length is the taper."""
    for name in taper_names():
        one = taper(name)
        assert math.isclose((one.large_end - one.small_end) / one.length, one.taper_on_diameter, rel_tol=1e-9)
        assert one.small_end > 0
