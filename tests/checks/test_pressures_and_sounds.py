"""Pressure and hearing are said every time; the whistle's figures by hand."""

from __future__ import annotations

import pytest

from tommybar.design.joints import Duty

from .asking import disc, figures_of, finds, found_in, part

BELL = part("bell", disc(25.0, 90.0, 23.0), "free-cutting brass")


def pressure(bar: float) -> tuple[Duty, ...]:
    """So much in the bell."""
    return (Duty("pressure", ("bell",), bar),)


def test_hoop_stress_and_the_statement() -> None:
    """0.3 MPa x 12.5 / 1 = 3.75 MPa; who must approve it is said, and steam is refused in words."""
    got = figures_of(BELL, duties=pressure(3.0))
    assert got["hoop stress", "bell"].value == pytest.approx(3.75)

    said = finds(670, BELL, duties=pressure(3.0))
    assert said.severity == "caution"
    assert "none is for steam" in said.words
    assert "competent" in said.bound
    assert not [one for one in found_in(BELL, duties=pressure(3.0)) if one.number == 671]


def test_a_wall_that_is_stressed_too_much_stops_it() -> None:
    """A wall of 0.1 at 30 bar: 3 x 12.5 / 0.1 = 375 MPa."""
    thin = part("bell", disc(25.0, 90.0, 24.8), "free-cutting brass")
    stop = finds(671, thin, duties=pressure(30.0))
    assert (stop.severity, stop.figure) == ("stop", "375.0 MPa")


def test_a_whistle_has_its_length_and_a_word_for_the_ears() -> None:
    """343 / (4 x 880) = 97.4 mm."""
    sound = (Duty("sound", ("bell",), 880.0),)
    assert figures_of(BELL, duties=sound)["quarter wave of a stopped tube", "bell"].value == pytest.approx(
        97.4, abs=0.05
    )
    assert "hearing" in finds(673, BELL, duties=sound).words
    assert not [one for one in found_in(BELL) if one.number in (670, 673)]
