"""Look-up "thread": what a program gets and what a person reads."""

from __future__ import annotations

import json

import pytest

from tommybar.facts.threads.topic import answer
from tommybar.refusals import Refusal


def test_figures_of_m6() -> None:
    """Every key that scripts rely on, with its unit in its name."""
    data = answer(("M6",), {}).data

    assert data["pitch_mm"] == 1.0
    assert data["major_mm"] == 6.0
    assert data["pitch_diameter_mm"] == 5.35
    assert data["minor_diameter_mm"] == 4.917
    assert data["tapping_drill_mm"] == 5.0
    assert data["stress_area_mm2"] == pytest.approx(20.12, abs=0.01)
    assert data["external"]["major_mm"] == [5.794, 5.974]
    assert data["external"]["pitch_diameter_mm"] == [5.212, 5.324]
    assert data["internal"]["minor_mm"] == [4.917, 5.153]
    assert data["internal"]["pitch_diameter_mm"] == [5.35, 5.5]
    assert "ISO 965-1" in data["source"]


@pytest.mark.parametrize("key", ["M6-4g6g", "M6 4g6g", "M6-6H/4g6g"])
def test_class_in_the_key(key: str) -> None:
    """A class behind the designation, after a space or a dash."""
    assert answer((key,), {}).data["external"]["class"] == "4g6g"


def test_words_may_come_apart() -> None:
    """The shell hands "2 BA" over as two words."""
    assert answer(("2", "BA"), {}).data["designation"] == "2 BA"
    assert answer(("1/4-20", "UNC", "2B"), {}).data["internal"]["class"] == "2B"


def test_options_about_the_hole() -> None:
    """A drill, a percentage and a depth each add their figures."""
    data = answer(("M4",), {"drill": "3.4", "percent": "70", "deep": "8"}).data

    assert data["drill_percent"] == pytest.approx(66.0, abs=0.1)
    assert data["hole_for_percent_mm"] == pytest.approx(3.363, abs=0.001)
    assert data["full_diameter_depth_mm"] == pytest.approx(10.1)


def test_series_without_tolerances_is_a_caution() -> None:
    """The look-up still answers, and says what it has not."""
    found = answer(("1/4-40 ME",), {})

    assert "external" not in found.data
    assert found.cautions == ("The ME series has no tolerances of its own.",)


def test_data_is_plain() -> None:
    """Everything goes through JSON."""
    for key in ("M6", "1/4-20 UNC", "2 BA", "G 1/4", "3/8 BSW"):
        assert json.loads(json.dumps(answer((key,), {}).data))["pitch_mm"] > 0


def test_unknown_thread_is_refused() -> None:
    """No key, or a key that is no thread."""
    with pytest.raises(Refusal, match="needs one"):
        answer((), {})
    with pytest.raises(Refusal, match="nearest are M6"):
        answer(("M6.2",), {})
