"""Balance grades by name and by machine."""

from __future__ import annotations

from itertools import pairwise

import pytest

from tommybar.facts.balance.grades import balance_grades, grade_for_machine, grade_magnitude
from tommybar.refusals import Refusal


def test_neighbouring_grades_differ_by_about_two_and_a_half() -> None:
    """The grades are a series with the ratio 2.5, rounded."""
    grades = balance_grades()
    assert all(2.4 <= rough / fine <= 2.6 for rough, fine in pairwise(grades))


@pytest.mark.parametrize(
    ("machine", "grade"),
    [("flywheel", 6.3), ("car wheel", 40), ("grinding spindle", 1), ("electric motor above 950 rpm", 2.5)],
)
def test_a_machine_is_found_by_its_words(machine: str, grade: float) -> None:
    """The entry that shares most words wins."""
    assert grade_for_machine(machine) == grade


def test_what_is_not_in_the_standard_is_refused() -> None:
    """Unknown grades and machines."""
    with pytest.raises(Refusal, match="ISO 21940-11 has G 4000"):
        grade_magnitude("G 5")
    with pytest.raises(Refusal, match="shares no word"):
        grade_for_machine("teapot")
