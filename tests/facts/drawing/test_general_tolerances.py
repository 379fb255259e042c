"""ISO 2768: order among classes and sizes, bounds and refusals."""

from __future__ import annotations

import pytest

from tommybar.facts.drawing import general_tolerances as general
from tommybar.refusals import Refusal


@pytest.mark.parametrize("size", [0.5, 3.0, 3.1, 25.0, 119.0, 300.0, 900.0])
def test_coarser_classes_allow_more(size: float) -> None:
    """f <= m <= c at every size."""
    fine, medium, coarse = (general.general_tolerance(size, name) for name in "fmc")
    assert fine <= medium <= coarse


@pytest.mark.parametrize("name", ["f", "m", "c", "v"])
def test_long_angles_are_held_closer(name: str) -> None:
    """The tolerance of an angle falls as its shorter side grows."""
    found = [general.general_angle_tolerance(side, name) for side in (5, 30, 100, 300, 800)]
    assert found == sorted(found, reverse=True)


@pytest.mark.parametrize("form", general.FORMS)
@pytest.mark.parametrize("length", [5.0, 50.0, 250.0, 2000.0])
def test_form_classes_stand_in_order(form: str, length: float) -> None:
    """H <= K <= L for every form and length."""
    found = [general.general_form_tolerance(form, length, name) for name in general.FORM_CLASSES]
    assert found == sorted(found)


def test_a_bound_belongs_to_the_step_below_it() -> None:
    """30 mm is in 6 to 30; 0.5 mm is in the first step."""
    assert general.general_tolerance(30.0, "m") == 0.2
    assert general.general_tolerance(30.01, "m") == 0.3
    assert general.general_tolerance(0.5, "m") == 0.1


@pytest.mark.parametrize(
    ("size", "name", "words"),
    [
        (0.4, "m", "from 0.5 to 4000 mm"),
        (5000.0, "m", "from 0.5 to 4000 mm"),
        (2.0, "v", "prints a dash"),
        (25.0, "K", "has f, m, c, v"),
        (float("nan"), "m", "size is nan"),
    ],
)
def test_what_the_table_does_not_hold_is_refused(size: float, name: str, words: str) -> None:
    """The refusal names figure and bound."""
    with pytest.raises(Refusal, match=words):
        general.general_tolerance(size, name)


def test_an_unknown_form_is_refused_with_the_nearest() -> None:
    """A misspelt form is met with the right word."""
    with pytest.raises(Refusal, match='Did you mean "flatness"'):
        general.general_form_tolerance("flattness", 10.0, "K")
