"""The swept polygon against the convex hull of the piece at both ends of the move."""

from __future__ import annotations

import math

import numpy as np
import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st

from tommybar.dryrun.sweep import counter_clockwise, sweeps

ANGLES = st.lists(st.floats(0.0, 2 * math.pi), min_size=3, max_size=12, unique=True)


@settings(max_examples=150, deadline=None)
@given(ANGLES, st.floats(-30, 30), st.floats(-30, 30), st.floats(0.5, 10))
def test_the_sweep_is_the_hull_of_both_ends(angles: list[float], dz: float, dr: float, size: float) -> None:
    """For a convex piece the sweep of a straight move is exactly the hull of start and end."""
    corners = [(size * math.cos(t), 2 * size * math.sin(t)) for t in sorted(angles)]
    if shapely.Polygon(corners).area < 1e-3:
        return
    piece = counter_clockwise(corners)
    start, end = np.array([[3.0, 4.0]]), np.array([[3.0 + dz, 4.0 + dr]])

    swept = sweeps(piece, start, end)[0]
    hull = shapely.MultiPoint([*(piece + start), *(piece + end)]).convex_hull

    assert swept.area == pytest.approx(hull.area, rel=1e-9)
    assert swept.symmetric_difference(hull).area < 1e-6


def test_many_moves_at_once_and_one_of_no_length() -> None:
    """All moves come back in order, each with n + 2 corners; standing still gives the piece."""
    piece = counter_clockwise([(0, 0), (0, 2), (1, 2), (1, 0)])
    starts = np.array([[0.0, 0.0], [5.0, 5.0], [5.0, 5.0]])
    ends = np.array([[3.0, 0.0], [5.0, 5.0], [5.0, 1.0]])

    found = sweeps(piece, starts, ends)

    assert [shape.area for shape in found] == pytest.approx([8.0, 2.0, 6.0])
    assert max(len(shape.exterior.coords) for shape in found) == 7
