"""Drills by name, by series and by diameter."""

from __future__ import annotations

import pytest

from tommybar.facts.drills import SERIES, drill_size, drills_of_series, nearest_drills
from tommybar.refusals import Refusal


@pytest.mark.parametrize(
    ("written", "name", "diameter"),
    [
        ("#7", "#7", 5.1054),
        ("no. 7", "#7", 5.1054),
        ("f", "F", 6.5278),
        ("letter F", "F", 6.5278),
        ("13/64", "13/64", 5.159375),
        ("26/128 in", "13/64", 5.159375),
        ("5.10 mm", "5.1", 5.1),
        ("0.35", "0.35", 0.35),
        ("6.75", "6.75", 6.75),
        ("14.25", "14.25", 14.25),
        ("1", "1", 1.0),
        ("1 in", "1 in", 25.4),
        ('1"', "1 in", 25.4),
    ],
)
def test_names(written: str, name: str, diameter: float) -> None:
    """Ways in which people name a drill."""
    one = drill_size(written)

    assert one.name == name
    assert one.diameter == pytest.approx(diameter, abs=1e-6)


def test_series_are_complete() -> None:
    """80 numbers, 26 letters, 64 fractions, and the 227 metric sizes that the four rules generate."""
    assert {series: len(drills_of_series(series)) for series in SERIES} == {
        "metric": 227,
        "metric quarter": 22,
        "number": 80,
        "letter": 26,
        "fraction": 64,
    }


def test_numbers_fall_and_letters_rise() -> None:
    """A higher number is a thinner drill, a later letter a thicker one; A follows #1."""
    numbers = [drill_size(f"#{n}").diameter for n in range(1, 81)]
    letters = [drill_size(chr(code)).diameter for code in range(ord("A"), ord("Z") + 1)]

    assert numbers == sorted(numbers, reverse=True)
    assert letters == sorted(letters)
    assert numbers[0] < letters[0]


def test_e_is_a_quarter_inch() -> None:
    """Letter E and the fraction 1/4 are the same size."""
    assert drill_size("E").diameter == drill_size("1/4").diameter == 6.35


def test_metric_size_that_is_not_made_names_its_neighbours() -> None:
    """5.13 mm is refused with 5.1 and 5.2."""
    with pytest.raises(Refusal, match=r"No 5\.13 mm drill.*0\.2 to 25 mm.*nearest are 5\.1 mm and 5\.2 mm"):
        drill_size("5.13")


@pytest.mark.parametrize("written", ["#81", "#0", "AA", "65/64", "1/0", "drill", ""])
def test_a_name_that_is_none_is_refused(written: str) -> None:
    """Outside the series there is no drill, and nothing is clamped."""
    with pytest.raises(Refusal, match="There is no drill"):
        drill_size(written)


def test_nearest_looks_only_where_it_is_told() -> None:
    """Nearest to 5.1 among fractions alone is 13/64."""
    assert [drill.name for drill in nearest_drills(5.1, "fraction", count=1)] == ["13/64"]
    assert nearest_drills(5.1, count=1)[0].name == "5.1"


@pytest.mark.parametrize("diameter", [0.0, -1.0, float("nan"), float("inf")])
def test_nearest_refuses_what_is_no_diameter(diameter: float) -> None:
    """A hole has a diameter above 0."""
    with pytest.raises(Refusal, match="it must be above 0"):
        nearest_drills(diameter)


def test_unknown_series_is_refused() -> None:
    """A misspelt series gets the nearest one offered."""
    with pytest.raises(Refusal, match=r'no drill series "metrics".*Did you mean "metric"'):
        drills_of_series("metrics")
