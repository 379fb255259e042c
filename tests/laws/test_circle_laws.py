"""Laws of holes on a circle: they close, balance, and turn without changing shape."""

from __future__ import annotations

import math

from hypothesis import given, settings
from hypothesis import strategies as st

from tommybar.facts.circles import chord, hole_circle

counts = st.integers(2, 200)
diameters = st.floats(1.0, 500.0)
angles = st.floats(-360.0, 360.0)


@settings(deadline=None, max_examples=60)
@given(counts, diameters, angles)
def test_the_holes_balance_about_the_centre(count: int, diameter: float, start: float) -> None:
    """Coordinates of all holes add up to nought: the circle is closed."""
    holes = hole_circle(count, diameter, start)
    assert abs(sum(hole.x for hole in holes)) < 1e-7
    assert abs(sum(hole.y for hole in holes)) < 1e-7


@settings(deadline=None, max_examples=60)
@given(counts, diameters, angles)
def test_every_neighbour_lies_one_chord_away(count: int, diameter: float, start: float) -> None:
    """All gaps are equal, the last to the first too, and equal the chord."""
    holes = hole_circle(count, diameter, start)
    wanted = chord(count, diameter)
    for one, other in zip(holes, (*holes[1:], holes[0]), strict=True):
        assert math.isclose(math.hypot(one.x - other.x, one.y - other.y), wanted, rel_tol=1e-9, abs_tol=1e-9)


@settings(deadline=None, max_examples=60)
@given(counts, diameters, angles, st.floats(0.1, 10.0))
def test_coordinates_scale_with_the_circle(count: int, diameter: float, start: float, times: float) -> None:
    """Twice the circle, twice the coordinates."""
    for one, other in zip(
        hole_circle(count, diameter, start), hole_circle(count, diameter * times, start), strict=True
    ):
        assert math.isclose(other.x, one.x * times, rel_tol=1e-9, abs_tol=1e-8)
        assert math.isclose(other.y, one.y * times, rel_tol=1e-9, abs_tol=1e-8)


@settings(deadline=None, max_examples=60)
@given(st.integers(3, 200), diameters)
def test_chords_mirror_and_never_pass_the_diameter(count: int, diameter: float) -> None:
    """k holes on is as far as n - k holes on; the widest is at half way."""
    widest = chord(count, diameter, count // 2)
    assert widest <= diameter * (1 + 1e-12)
    for apart in range(1, count):
        assert math.isclose(
            chord(count, diameter, apart), chord(count, diameter, count - apart), rel_tol=1e-9
        )
        assert chord(count, diameter, apart) <= widest * (1 + 1e-12)
