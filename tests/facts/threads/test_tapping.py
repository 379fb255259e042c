"""Tapping holes: percentage, drill from a drawer."""

from __future__ import annotations

import pytest

from tommybar.facts.drills import DrillSize, drill_size
from tommybar.facts.threads import (
    drill_for_percent,
    engagement_percent,
    pitch_rule_drill,
    tapping_drill_from,
    thread,
)
from tommybar.refusals import Refusal


@pytest.mark.parametrize(
    ("size", "drill", "percent"),
    [
        ("#4-40", "#43", 71),
        ("#6-32", "#36", 78),
        ("#10-24", "#25", 75),
        ("1/4-20", "#7", 75),
        ("5/16-18", "F", 77),
        ("3/8-16", "5/16", 77),
        ("1/2-13", "27/64", 78),
        ("4 BA", "3", 76),
        ("6 BA", "2.3", 79),
        ("8 BA", "1.8", 78),
        ("1/4 BSW", "5.1", 77),
        ("7/16 BSW", "9.3", 78),
        ("1/2 BSF", "11.1", 79),
        ("5/32-40 ME", "3.4", 70),
        ("7/16-32 ME", "10.3", 80),
    ],
)
def test_percentages_that_tables_print(size: str, drill: str, percent: int) -> None:
    """Handbook and trade tables print these percentages beside their drills."""
    assert engagement_percent(thread(size), drill_size(drill).diameter) == pytest.approx(percent, abs=0.5)


def test_base_must_be_stated_to_compare_percentages() -> None:
    """The same 5 mm hole for M6 is 77 % of 1.299 P and 92 % of 1.0825 P."""
    m6 = thread("M6")

    assert engagement_percent(m6, 5.0) == pytest.approx(76.98, abs=0.01)
    assert engagement_percent(m6, 5.0, "basic") == pytest.approx(92.38, abs=0.01)
    with pytest.raises(Refusal, match=r'no base "depth"'):
        engagement_percent(m6, 5.0, "depth")


def test_a_hole_as_large_as_the_thread_is_refused() -> None:
    """6 mm for M6 leaves nothing; the bound and the usual drill are named."""
    with pytest.raises(Refusal, match=r"hole is 6 mm; for M6 it must be above 0 and below 6 mm\. .*5 mm"):
        engagement_percent(thread("M6"), 6.0)


@pytest.mark.parametrize("percent", [0, -5, 101, float("nan")])
def test_percentage_outside_its_range_is_refused(percent: float) -> None:
    """More than a full thread, or none, is refused."""
    with pytest.raises(Refusal, match="must be above 0 and up to 100"):
        drill_for_percent(thread("M6"), percent)


def test_drawer_gives_the_drill_nearest_to_the_wanted_percentage() -> None:
    """M4 from a drawer in 0.1 steps takes 3.3; without 3.3, 3.4 rather than 3.1."""
    drawer = [drill_size(f"{n / 10:g}") for n in range(29, 41)]
    assert tapping_drill_from(thread("M4"), drawer).name == "3.3"

    gap = [drill for drill in drawer if drill.name not in ("3.2", "3.3")]
    assert tapping_drill_from(thread("M4"), gap).name == "3.4"


def test_inch_drawer_serves_a_metric_thread() -> None:
    """M5 from number drills alone takes #19 (4.22 mm)."""
    drawer = [drill_size(f"#{n}") for n in range(1, 61)]
    assert tapping_drill_from(thread("M5"), drawer).name == "#19"


def test_a_drawer_without_a_fitting_drill_is_refused_with_the_range() -> None:
    """Half-millimetre drills have nothing for 2 BA at 70 to 75 %."""
    drawer = [drill_size("3.5"), drill_size("4.5")]
    with pytest.raises(Refusal, match=r"2 BA between 70 and 75 %.*between 3\.97 and 4\.02 mm"):
        tapping_drill_from(thread("2 BA"), drawer, least=70, most=75)


def test_pitch_rule_is_the_difference() -> None:
    """M8x0.75: d - P is 7.25, though a table gives the stocked 7.2."""
    assert pitch_rule_drill(thread("M8x0.75")) == pytest.approx(7.25)
    assert thread("M8x0.75").tapping_drill == 7.2


def test_of_two_equally_near_the_larger_drill_is_taken() -> None:
    """A tap that turns more easily breaks less often."""
    middle = drill_for_percent(thread("M4"), 75)
    pair = [DrillSize("less", "metric", middle - 0.05), DrillSize("more", "metric", middle + 0.05)]

    assert tapping_drill_from(thread("M4"), pair).name == "more"
    assert tapping_drill_from(thread("M4"), pair[::-1]).name == "more"
