"""The thread series, size by size."""

from __future__ import annotations

import pytest

from tommybar.facts.threads import threads_of_series
from tommybar.facts.threads.series import inches

# nominal diameters of ISO 261, first to third choice, up to 36 mm
DIAMETERS = (
    *(1, 1.1, 1.2, 1.4, 1.6, 1.8, 2, 2.2, 2.5, 3, 3.5, 4, 4.5, 5, 5.5, 6, 7, 8, 9, 10, 11, 12),
    *(14, 15, 16, 17, 18, 20, 22, 24, 25, 26, 27, 28, 30, 32, 33, 35, 36),
)
COUNTS = {
    "ISO metric coarse": 31,
    "ISO metric fine": 73,
    "UNC": 19,
    "UNF": 20,
    "UNEF": 12,
    "BSW": 16,
    "BSF": 13,
    "BA": 17,
    "ME": 19,
    "Brass": 6,
    "BSP": 12,
}


@pytest.mark.parametrize(("series", "count"), COUNTS.items(), ids=COUNTS)
def test_no_size_is_lost_or_doubled(series: str, count: int) -> None:
    """Each series has its sizes once."""
    names = [one.designation for one in threads_of_series(series)]

    assert len(names) == len(set(names)) == count


def test_metric_threads_stand_on_standard_diameters() -> None:
    """Every metric thread has a nominal diameter of ISO 261, and fine is finer than coarse."""
    coarse = {one.major: one.pitch for one in threads_of_series("ISO metric coarse")}
    for one in threads_of_series("ISO metric fine"):
        assert one.major in DIAMETERS
        assert one.pitch < coarse.get(one.major, 99)
    assert set(coarse) <= set(DIAMETERS)


@pytest.mark.parametrize(("series", "counts"), [("ME", {32, 40}), ("Brass", {26})])
def test_fine_series_have_their_few_pitches(series: str, counts: set[int]) -> None:
    """Model engineers' threads have 40 or 32 threads per inch, brass has 26, at every size."""
    assert {one.threads_per_inch for one in threads_of_series(series)} == counts


@pytest.mark.parametrize("series", ["UNC", "UNF", "UNEF", "BSW", "BSF", "BSP", "BA"])
def test_pitch_never_falls_with_size(series: str) -> None:
    """Within a series a larger thread is never finer."""
    sizes = sorted(threads_of_series(series), key=lambda one: one.major)
    pitches = [one.pitch for one in sizes]

    assert pitches == sorted(pitches)


def test_number_sizes() -> None:
    """Number sizes step by 0.013 in from 0.060; mixed fractions add up."""
    assert [inches(f"#{n}") for n in (0, 4, 12)] == [0.06, 0.112, 0.216]
    assert inches("1 1/2") == 1.5
