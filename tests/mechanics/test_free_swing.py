"""The widest free angle, against a count of whole degrees."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tommybar.mechanics.free_swing import free_swing
from tommybar.refusals import Refusal

WALLS = st.lists(
    st.tuples(st.integers(-400, 400), st.integers(1, 300)).map(lambda one: (one[0], one[0] + one[1])),
    max_size=5,
)


def counted(walls):
    """The longest run of free whole degrees, found by going round twice."""
    taken = {angle % 360 for start, end in walls for angle in range(start, end)}
    best = run = 0
    for angle in range(720):
        run = 0 if angle % 360 in taken else run + 1
        best = max(best, min(run, 360))
    return best


@given(WALLS)
def test_it_agrees_with_a_count_of_degrees(walls):
    """Obstacles between whole degrees leave as many as are counted."""
    assert free_swing([(float(a), float(b)) for a, b in walls])[0] == pytest.approx(counted(walls), abs=1e-9)


@given(WALLS, st.integers(0, 359), st.integers(0, 200))
def test_one_obstacle_more_never_frees(walls, start, width):
    """Law: what stands in the way takes away, and never gives."""
    plain = [(float(a), float(b)) for a, b in walls]
    assert free_swing([*plain, (float(start), float(start + width))])[0] <= free_swing(plain)[0] + 1e-9


def test_a_stretch_that_runs_backwards_is_refused():
    """An obstacle from 20 to 10 degrees."""
    with pytest.raises(Refusal, match="obstacle takes"):
        free_swing([(20.0, 10.0)])
