"""Laws of threads and drills: inverses, order, scaling, nesting."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tommybar.facts.drills import (
    SERIES as DRILL_SERIES,
)
from tommybar.facts.drills import (
    DrillSize,
    drill_size,
    drills_of_series,
    nearest_drills,
    point_length,
    reamer_limits,
    reaming_drill,
)
from tommybar.facts.threads import (
    SERIES,
    Thread,
    drill_for_percent,
    engagement_percent,
    metric_tolerance,
    tap_depths,
    thread_limits,
    threads_of_series,
)
from tommybar.refusals import Refusal

every_thread = st.sampled_from([one for series in SERIES for one in threads_of_series(series)])
every_drill = st.sampled_from([one for series in DRILL_SERIES for one in drills_of_series(series)])
bases = st.sampled_from(["full", "basic"])
percents = st.floats(1, 100)
coarse = threads_of_series("ISO metric coarse")
metric = st.sampled_from([one for one in coarse if one.major >= 1.6])


@given(every_thread, percents, bases)
def test_percentage_and_drill_are_inverse(one: Thread, percent: float, base: str) -> None:
    """The hole for a percentage has that percentage."""
    assert engagement_percent(one, drill_for_percent(one, percent, base), base) == pytest.approx(percent)


@given(every_thread, percents, percents)
def test_more_thread_is_a_smaller_hole(one: Thread, first: float, second: float) -> None:
    """Percentage and hole run against each other."""
    low, high = sorted((first, second))
    assert drill_for_percent(one, high) <= drill_for_percent(one, low)


@given(every_thread, st.floats(0.5, 50), st.floats(0, 20))
def test_deeper_thread_moves_every_depth_alike(one: Thread, full: float, more: float) -> None:
    """Lead and point do not depend on how deep the thread goes."""
    first, second = tap_depths(one, full), tap_depths(one, full + more)

    assert second.full_diameter_depth - first.full_diameter_depth == pytest.approx(more)
    assert second.tip_depth - first.tip_depth == pytest.approx(more)
    assert full < first.full_diameter_depth < first.tip_depth


def test_coarse_threads_grow_with_their_size() -> None:
    """From M1 to M36 pitch never falls; diameters, core and stress area rise."""
    for small, large in pairwise(coarse):
        assert small.pitch <= large.pitch
        for figure in ("major", "pitch_diameter", "minor", "core", "stress_area", "tapping_drill"):
            assert getattr(small, figure) < getattr(large, figure), (small.designation, figure)


@given(every_thread, every_thread)
def test_of_equal_size_the_finer_thread_is_the_stronger(one: Thread, other: Thread) -> None:
    """Same form, same diameter: less pitch, more stress area."""
    if one.profile is other.profile and one.major == other.major and one.pitch < other.pitch:
        assert one.stress_area > other.stress_area


@given(metric, st.sampled_from(["external_pitch", "internal_pitch", "internal_minor", "external_major"]))
def test_tolerance_grows_with_grade(one: Thread, table: str) -> None:
    """A higher grade is a wider tolerance, wherever both are given."""
    found = []
    for grade in range(3, 10):
        try:
            found.append(metric_tolerance(one, table, grade))
        except Refusal:
            continue
    assert found
    assert all(a < b for a, b in pairwise(found))


@given(metric)
def test_zones_of_one_position_nest(one: Thread) -> None:
    """4h lies inside 6h, 6H inside 7H where there is one; g lies below h by its deviation."""
    fine, wide = thread_limits(one, "4h").external, thread_limits(one, "6h").external
    lowered = thread_limits(one, "6g").external
    assert fine is not None
    assert wide is not None
    assert lowered is not None

    assert wide.pitch_diameter[0] <= fine.pitch_diameter[0] < fine.pitch_diameter[1] == wide.pitch_diameter[1]
    assert wide.pitch_diameter[1] - lowered.pitch_diameter[1] == pytest.approx(lowered.allowance, abs=1e-9)
    assert wide.major[1] == pytest.approx(one.major)


@given(metric)
def test_h_starts_at_the_basic_diameter(one: Thread) -> None:
    """Position H has lower deviation 0 on pitch and minor diameter."""
    inside = thread_limits(one, "6H").internal
    assert inside is not None

    assert inside.pitch_diameter[0] == pytest.approx(one.pitch_diameter)
    assert inside.minor[0] == pytest.approx(one.minor)


@given(st.floats(0.1, 60), st.floats(10, 170), st.floats(1.1, 5))
def test_points_scale(diameter: float, angle: float, factor: float) -> None:
    """Twice the diameter, twice the point."""
    assert point_length(factor * diameter, angle) == pytest.approx(factor * point_length(diameter, angle))


@given(st.floats(0.2, 25.4))
def test_nearest_drill_is_nearest(diameter: float) -> None:
    """No drill of any series is nearer than the first one given."""
    best = nearest_drills(diameter, count=1)[0]
    gap = abs(best.diameter - diameter)
    assert all(
        gap <= abs(drill.diameter - diameter) + 1e-9
        for series in DRILL_SERIES
        for drill in drills_of_series(series)
    )


@given(every_drill)
def test_a_drill_is_found_by_its_name(drill: DrillSize) -> None:
    """Names are unique across the series."""
    assert drill_size(drill.name) == drill


@given(st.floats(2, 60), st.lists(st.floats(1, 60), min_size=1, max_size=30))
def test_reaming_drill_keeps_its_bounds(reamer: float, drawer: list[float]) -> None:
    """What is chosen leaves an allowance within the bounds, and no larger drill would; else it is refused."""

    def left(drill: float) -> float:
        return reamer - drill - 0.05

    try:
        chosen = reaming_drill(reamer, drawer)
    except Refusal:
        return
    assert chosen.asked.least - 1e-6 <= left(chosen.drill) <= chosen.asked.most + 1e-6
    assert all(left(drill) < chosen.asked.least for drill in drawer if drill > chosen.drill)


@given(st.floats(1, 100), st.integers(-50, 50), st.integers(6, 200))
def test_reamer_lies_inside_its_hole(diameter: float, lower: int, width: int) -> None:
    """Both limits of the reamer lie inside the hole's limits and in order."""
    least, most = reamer_limits(diameter, lower, lower + width)

    assert diameter + lower / 1000 - 1e-3 <= least < most < diameter + (lower + width) / 1000 + 1e-6
