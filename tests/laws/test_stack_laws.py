"""Laws of stacks: no quantile beyond the worst case, order without meaning, scale with the parts."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tommybar.refusals import Refusal
from tommybar.sizes.acceptance import acceptance_zone, conformance_probability
from tommybar.sizes.loop import Link, last_made_limits, root_sum_square_gap, worst_case_gap
from tommybar.sizes.position import true_position
from tommybar.sizes.runout import eccentricity_quantile, rayleigh_eccentricity, runout_stack

terms = st.lists(st.floats(min_value=0.0, max_value=80.0), min_size=1, max_size=5)
shares = st.floats(min_value=0.05, max_value=0.995)


@st.composite
def links(draw: st.DrawFn) -> Link:
    """One length of a loop with limits."""
    smallest = draw(st.floats(min_value=0.5, max_value=60.0))
    wide = draw(st.floats(min_value=0.0, max_value=0.1))
    times = draw(st.sampled_from([-2.0, -1.0, 1.0, 2.0]))
    return Link("length", times, smallest, smallest + wide)


@settings(max_examples=40)
@given(terms, shares)
def test_no_quantile_exceeds_the_worst_case(values: list[float], share: float) -> None:
    """Exact and quick figures stay within the sum of all terms."""
    stack = runout_stack(values, share)
    assert 0 <= stack.quantile_um <= stack.worst_um + 1e-9
    assert rayleigh_eccentricity(values, share) <= stack.worst_um + 1e-9


@settings(max_examples=30)
@given(terms, shares, st.floats(min_value=0.1, max_value=10.0))
def test_order_has_no_meaning_and_scale_follows(values: list[float], share: float, scale: float) -> None:
    """Reversed terms give the same, k times the terms k times the quantile."""
    found = eccentricity_quantile(values, share)
    assert eccentricity_quantile(values[::-1], share) == pytest.approx(found)
    scaled = eccentricity_quantile([scale * value for value in values], share)
    assert scaled == pytest.approx(scale * found, rel=1e-6, abs=1e-6)


@settings(max_examples=30)
@given(terms, shares, shares)
def test_a_larger_share_reaches_no_less(values: list[float], one: float, other: float) -> None:
    """Quantiles rise with the share."""
    low, high = sorted((one, other))
    assert eccentricity_quantile(values, low) <= eccentricity_quantile(values, high) + 1e-6


@given(st.lists(links(), min_size=1, max_size=6))
def test_the_expected_gap_lies_within_the_worst_case(loop: list[Link]) -> None:
    """Root sum square is never wider than the sum."""
    worst, expected = worst_case_gap(loop), root_sum_square_gap(loop)
    assert worst[0] - 1e-9 <= expected[0] <= expected[1] <= worst[1] + 1e-9


@given(
    st.lists(links(), min_size=1, max_size=5),
    st.sampled_from([-2.0, -1.0, 1.0]),
    st.floats(min_value=0.0, max_value=1.0),
    st.floats(min_value=0.0, max_value=0.5),
)
def test_the_length_made_last_closes_the_loop_or_is_refused(
    others: list[Link], times: float, least: float, wide: float
) -> None:
    """With the last length at either limit the worst case stays within the float."""
    gap = (least, least + wide)
    try:
        smallest, largest = last_made_limits(others, times, gap)
    except Refusal as refusal:
        said = str(refusal)
        assert "vary by" in said or "overfill" in said
        return
    closed = worst_case_gap([*others, Link("last", times, smallest, largest)])
    assert gap[0] - 1e-9 <= closed[0]
    assert closed[1] <= gap[1] + 1e-9


@given(st.floats(min_value=0.1, max_value=50.0), shares, st.integers(1, 12))
def test_more_holes_ask_for_more(deviation: float, share: float, holes: int) -> None:
    """Another hole never makes a promise easier; half the error halves it."""
    found = true_position(deviation, share, holes)
    assert found <= true_position(deviation, share, holes + 1)
    assert true_position(deviation / 2, share, holes) == pytest.approx(found / 2)


@given(
    st.floats(min_value=0.005, max_value=0.2),
    st.floats(min_value=0.0001, max_value=0.01),
    st.floats(min_value=0.0, max_value=1.0),
)
def test_inside_the_zone_a_part_is_at_least_as_likely_good_as_asked(
    wide: float, uncertainty: float, place: float
) -> None:
    """One-sided 95 % at each guarded limit: at least 90 % with both."""
    zone = acceptance_zone(10.0, 10.0 + wide, uncertainty)
    if zone.possible:
        measured = zone.smallest + place * (zone.largest - zone.smallest)
        assert conformance_probability(measured, 10.0, 10.0 + wide, uncertainty) >= 0.9 - 1e-9
