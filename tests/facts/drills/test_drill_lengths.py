"""Lengths of twist drills: rows of ISO 235 and ISO 494 from memory, and laws that hold for any such table."""

import itertools

import pytest

from tommybar.facts.drills import drill_length
from tommybar.refusals import Refusal

# ISO 235 and ISO 494, from memory; 65 and 106 overall for 3.3 are the figures a workshop quotes.
ROWS = [
    (3.3, 65, 36, 106),
    (5.0, 86, 52, 132),
    (8.0, 117, 75, 165),
    (10.0, 133, 87, 184),
    (13.0, 151, 101, 205),
]


@pytest.mark.parametrize(("dia", "overall", "flute", "long"), ROWS)
def test_rows_of_the_standards(dia, overall, flute, long):
    """Overall and flute of the jobber drill, overall of the long one."""
    jobber = drill_length(dia)

    assert (jobber.overall, jobber.flute, drill_length(dia, "long").overall) == (overall, flute, long)


def test_a_bound_belongs_to_the_smaller_row():
    """6.0 is the last of its row, 6.1 the first of the next."""
    assert drill_length(6.0).overall == 93
    assert drill_length(6.1).overall == 101


def test_thicker_drills_are_never_shorter_and_long_ones_are_longer():
    """From 1 to 20 mm by tenths."""
    sizes = [n / 10 for n in range(10, 201)]
    jobber = [drill_length(d) for d in sizes]

    assert all(a.overall <= b.overall and a.flute <= b.flute for a, b in itertools.pairwise(jobber))
    assert all(drill_length(d, "long").flute > one.flute for d, one in zip(sizes, jobber, strict=True))


@pytest.mark.parametrize(
    ("dia", "series"), [(20.5, "jobber"), (0.5, "long"), (0.0, "jobber"), (float("nan"), "jobber")]
)
def test_outside_the_table_is_refused(dia, series):
    """With the figure and the end of the table."""
    with pytest.raises(Refusal, match="it goes up to 20 mm"):
        drill_length(dia, series)
