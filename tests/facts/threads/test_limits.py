"""Limits of every series through the one door."""

from __future__ import annotations

import pytest

from tommybar.facts.threads import (
    ExternalLimits,
    InternalLimits,
    Thread,
    ThreadLimits,
    ba_tolerance,
    thread,
    thread_limits,
    threads_of_series,
    usual_class,
)
from tommybar.refusals import Refusal

MEDIUM = [
    one
    for series in ("ISO metric coarse", "ISO metric fine", "UNC", "UNF", "UNEF", "BSW", "BSF", "BA", "BSP")
    for one in threads_of_series(series)
]
SOME = ("M6", "M1.2", "1/4-20 UNC", "1/4 BSW", "2 BA", "14 BA", "G 1/4")


def both(limits: ThreadLimits) -> tuple[ExternalLimits, InternalLimits]:
    """Both sides of limits that have both."""
    assert limits.external is not None
    assert limits.internal is not None
    return limits.external, limits.internal


@pytest.mark.parametrize("one", MEDIUM, ids=lambda one: one.designation)
def test_screw_goes_into_nut(one: Thread) -> None:
    """With the usual classes the largest screw is never larger than the smallest nut."""
    outside, inside = both(thread_limits(one))

    assert outside.pitch_diameter[1] <= inside.pitch_diameter[0] + 1e-9
    assert outside.major[1] <= inside.major_least + 1e-9
    assert outside.pitch_diameter[0] < outside.pitch_diameter[1]
    assert inside.minor[0] < inside.minor[1]


@pytest.mark.parametrize("one", MEDIUM, ids=lambda one: one.designation)
def test_screw_and_nut_still_hold_at_their_loosest(one: Thread) -> None:
    """The smallest major diameter still overlaps the largest minor diameter."""
    outside, inside = both(thread_limits(one))

    assert outside.major[0] > inside.minor[1]


@pytest.mark.parametrize("size", SOME)
def test_naming_the_usual_class_changes_nothing(size: str) -> None:
    """Saying nothing and saying the medium class give the same limits."""
    unsaid = thread_limits(size)
    assert thread_limits(size, unsaid.tolerance_class) == unsaid


def test_one_side_asked_for_leaves_the_other_open() -> None:
    """6g alone gives a screw and no nut."""
    assert thread_limits("M6", "6g").internal is None
    assert thread_limits("M6", "6H").external is None
    assert thread_limits("1/4-20", "2A").internal is None


def test_allowance_lowers_the_screw() -> None:
    """1/4-20 2A lies 0.0011 in below basic; 3A does not."""
    free, close = thread_limits("1/4-20", "2A").external, thread_limits("1/4-20", "3A").external
    assert free is not None
    assert close is not None

    assert free.allowance / 25.4 == pytest.approx(0.0011)
    assert close.allowance == 0
    assert close.major[1] - free.major[1] == pytest.approx(free.allowance)


def test_ba_normal_bolt_has_its_allowance_up_to_10() -> None:
    """0.025 mm for 0 to 10 BA normal bolts, none for close ones nor from 11 BA."""
    for size, named, allowance in (
        ("2 BA", "normal", 0.025),
        ("2 BA", "close", 0.0),
        ("12 BA", "normal", 0.0),
    ):
        assert both(thread_limits(size, named))[0].allowance == allowance


def test_ba_close_class_ends_at_10() -> None:
    """11 BA has no close class."""
    with pytest.raises(Refusal, match=r"11 BA bolts have no close class; BS 93 gives it for 0 to 10 BA"):
        thread_limits("11 BA", "close")


def test_ba_tolerance_of_an_element_without_one_is_refused() -> None:
    """A nut's major diameter has no tolerance."""
    with pytest.raises(Refusal, match=r'no tolerance for the "major" of 2 BA'):
        ba_tolerance(thread("2 BA"), "major")


@pytest.mark.parametrize("size", ["1/4-40 ME", "M8x0.5"])
def test_series_without_tolerances_says_so(size: str) -> None:
    """Model engineers' and instrument threads have none; nothing is invented."""
    with pytest.raises(Refusal, match="has no tolerances of its own"):
        thread_limits(size)


def test_pipe_class_b_doubles_the_pitch_tolerance() -> None:
    """ISO 228-1 class B is twice class A on the pitch diameter."""
    a, b = both(thread_limits("G 1/4", "A"))[0], both(thread_limits("G 1/4", "B"))[0]
    spread = [pair[1] - pair[0] for pair in (a.pitch_diameter, b.pitch_diameter)]

    assert spread[1] == pytest.approx(2 * spread[0])


def test_whitworth_classes_widen() -> None:
    """Close, medium and free bolts have growing tolerances; the nut's minor diameter is as remembered."""
    widths = []
    for named in ("close", "medium", "free"):
        outside = both(thread_limits("1/4 BSW", named))[0]
        widths.append(outside.pitch_diameter[1] - outside.pitch_diameter[0])
    assert widths == sorted(widths)
    assert widths[2] == pytest.approx(1.5 * widths[1], rel=0.02)


@pytest.mark.parametrize(
    ("size", "named"), [("1/4 BSW", "loose"), ("G 1/4", "C"), ("2 BA", "free"), ("1/4-20", "4A")]
)
def test_class_of_another_series_is_refused(size: str, named: str) -> None:
    """Each series knows its own classes only."""
    with pytest.raises(Refusal, match=r"no (tolerance )?class"):
        thread_limits(size, named)


@pytest.mark.parametrize("one", threads_of_series("BSP"), ids=lambda one: one.designation)
def test_pipe_crest_tolerance_is_twice_that_of_the_flanks(one: Thread) -> None:
    """ISO 228-1: the major diameter's tolerance is twice class A's of the pitch diameter."""
    outside, inside = both(thread_limits(one, "A"))
    flank = outside.pitch_diameter[1] - outside.pitch_diameter[0]

    assert outside.major[1] - outside.major[0] == pytest.approx(2 * flank, abs=0.0011)
    assert inside.pitch_diameter[1] - inside.pitch_diameter[0] == pytest.approx(flank, abs=0.0011)


@pytest.mark.parametrize(
    ("named", "share"), [("close", 2 / 3), ("medium", 1.0), ("free", 1.5)], ids=["close", "medium", "free"]
)
def test_whitworth_classes_as_a_tap_maker_prints_them(named: str, share: float) -> None:
    """Bolts of 66 2/3, 100 and 150 %, with an allowance for medium and free up to 3/4 in only."""
    outside, nut_side = both(thread_limits("1/2 BSW", named))
    larger = both(thread_limits("7/8 BSW", named))[0]
    medium = nut_side.pitch_diameter[1] - nut_side.pitch_diameter[0]

    assert outside.pitch_diameter[1] - outside.pitch_diameter[0] == pytest.approx(share * medium, abs=0.004)
    assert (outside.allowance > 0) == (named != "close")
    assert larger.allowance == 0


def test_whitworth_nut_minor_by_fineness() -> None:
    """0.2 p + 0.004 in for 26 threads and finer, + 0.005 for 24 and 22, + 0.007 for 20 and coarser."""
    for size, tpi, fixed in (
        ("1/4 BSF", 26, 0.004),
        ("5/16 BSF", 22, 0.005),
        ("3/16 BSW", 24, 0.005),
        ("1/4 BSW", 20, 0.007),
    ):
        inside = thread_limits(size, "normal").internal
        assert inside is not None
        assert (inside.minor[1] - inside.minor[0]) / 25.4 == pytest.approx(0.2 / tpi + fixed, abs=0.0001)


@pytest.mark.parametrize(
    ("size", "named"),
    [
        ("M1.2", "5H/6h"),
        ("M1.4", "5H/6h"),
        ("M1.6", "6H/6g"),
        ("M1.2x0.2", "4H/6h"),
        ("M2x0.25", "5H/6g"),
        ("1/4-20", "2B/2A"),
        ("1/4 BSF", "normal/medium"),
        ("G 1/4", "A"),
    ],
)
def test_usual_classes(size: str, named: str) -> None:
    """Medium quality of ISO 965-2, with its finer nuts for small sizes and fine pitches; others by their standard."""
    assert usual_class(thread(size)) == named
