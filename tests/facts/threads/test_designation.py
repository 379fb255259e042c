"""What people write for a thread, and what is said to a thread that is not there."""

from __future__ import annotations

import pytest

from tommybar.facts.threads import SERIES, thread, threads_of_series
from tommybar.refusals import Refusal


@pytest.mark.parametrize(
    ("written", "meant"),
    [
        ("m6", "M6"),
        ("M6x1", "M6"),
        ("M 6 x 0.75", "M6x0.75"),
        ("M6×0.75", "M6x0.75"),
        ("M10X1.0", "M10x1"),
        ("1/4-20", "1/4-20 UNC"),
        ("1/4 UNC", "1/4-20 UNC"),
        ("1/4 x 20 unc", "1/4-20 UNC"),
        ('1/4"-28', "1/4-28 UNF"),
        ("#6-32", "#6-32 UNC"),
        ("6-32 UNC", "#6-32 UNC"),
        ("No 10-32", "#10-32 UNF"),
        ("1-8 UNC", "1-8 UNC"),
        ("2BA", "2 BA"),
        ("BA 2", "2 BA"),
        ("1/4-40 ME", "1/4-40 ME"),
        ("1/4x40 ME", "1/4-40 ME"),
        ("3/8bsf", "3/8 BSF"),
        ("1/4 x 26 brass", "1/4-26 Brass"),
        ("1/4-20 BSW", "1/4 BSW"),
        ("G1/8", "1/8 BSP"),
        ("G 1 1/4", "1 1/4 BSP"),
        ("1/8 BSPP", "1/8 BSP"),
        ("M8x0.5", "M8x0.5"),
    ],
)
def test_spellings(written: str, meant: str) -> None:
    """Capitals, spaces, inch marks and x for - are free."""
    assert thread(written).designation == meant


@pytest.mark.parametrize("series", SERIES)
def test_every_thread_is_found_by_its_own_designation(series: str) -> None:
    """What a thread is called finds that thread and no other."""
    for one in threads_of_series(series):
        assert thread(one.designation) is one


@pytest.mark.parametrize("series", SERIES)
def test_every_thread_has_sound_diameters(series: str) -> None:
    """Core, minor, pitch and major diameter follow in order, and the drill lies between minor and major."""
    for one in threads_of_series(series):
        assert 0 < one.core <= one.minor < one.pitch_diameter < one.major, one.designation
        assert one.core * 0.99 < one.tapping_drill < one.major, one.designation


def test_a_thread_that_is_not_made_names_its_neighbours() -> None:
    """M6.5 is refused with the metric threads beside it."""
    with pytest.raises(Refusal, match=r'no thread "M6\.5".*The nearest are M6, .*M7'):
        thread("M6.5")


def test_a_pitch_that_is_not_made_names_the_pitches_of_that_size() -> None:
    """M6x0.8 is refused with what M6 has."""
    with pytest.raises(Refusal, match=r'no thread "M6x0\.8".*The nearest are M6x0\.75, M6'):
        thread("M6x0.8")


def test_an_inch_size_without_that_pitch_names_those_it_has() -> None:
    """1/4-30 is refused with every quarter-inch thread."""
    with pytest.raises(Refusal, match=r"Of that size there are .*1/4-20 UNC.*1/4-28 UNF"):
        thread("1/4-30")


@pytest.mark.parametrize("written", ["", "bolt", "M", "Mx1", "1/0-20", "#", "999"])
def test_nonsense_is_refused(written: str) -> None:
    """Words that name no thread are refused in our words, not as a fault."""
    with pytest.raises(Refusal, match="There is no thread"):
        thread(written)


def test_series_refuses_a_name_it_does_not_know() -> None:
    """A misspelt series gets the nearest one offered."""
    with pytest.raises(Refusal, match=r'no thread series "UNK".*Did you mean "UN'):
        threads_of_series("UNK")


def test_tapping_drills_of_every_table_leave_a_usable_thread() -> None:
    """No table's drill leaves less than 55 or more than 90 % of the full thread."""
    for series in SERIES:
        for one in threads_of_series(series):
            share = 100 * (one.major - one.tapping_drill) / (one.profile.engagement * one.pitch)
            assert 55 <= share <= 90, f"{one.designation}: {share:.0f} %"
