"""Setting slide, tailstock and sine bar."""

from __future__ import annotations

import math

import pytest

from tommybar.facts.tapers import (
    diameter_error_off_centre,
    indicator_reading,
    sine_bar_stack,
    slant_travel,
    slide_setting,
    tail_set_over,
    taper,
)
from tommybar.facts.tapers.topic import answer
from tommybar.refusals import Refusal


def test_a_point_of_60_degrees_reads_30_from_the_axis_and_60_from_the_cross_axis() -> None:
    """The commonest slip: half or included, and from which end the scale starts."""
    half = taper("60 deg").half_angle
    assert slide_setting(half) == pytest.approx(30)
    assert slide_setting(half, "cross axis") == pytest.approx(60)


def test_slant_and_rise_make_a_right_angle_with_the_length() -> None:
    """Slant travel, its indicator rise and the axial length obey Pythagoras."""
    for half in (0.0, 1.43, 8.3, 30.0, 59.0):
        slant = slant_travel(20.0, half)
        assert math.hypot(20.0, indicator_reading(slant, half)) == pytest.approx(slant)


def test_set_over_is_half_the_taper_over_the_whole_work() -> None:
    """0.6 in/ft on 10 in of work: a quarter inch."""
    assert tail_set_over(taper("0.6 in/ft").taper_on_diameter, 254.0) == pytest.approx(6.35)


def test_a_sine_bar_at_30_degrees_stands_half_its_length_high() -> None:
    """sin 30 = 1/2."""
    assert sine_bar_stack(30.0, 125.0) == pytest.approx(62.5)


def test_off_centre_height_always_makes_the_work_larger_and_small_work_worse() -> None:
    """Above or below is the same, and the error grows as the diameter falls."""
    assert diameter_error_off_centre(10.0, -0.5) == diameter_error_off_centre(10.0, 0.5) > 0
    assert diameter_error_off_centre(5.0, 0.5) > diameter_error_off_centre(10.0, 0.5)


@pytest.mark.parametrize(
    ("call", "words"),
    [
        (lambda: slide_setting(95.0), "The half angle is 95 deg"),
        (lambda: slide_setting(10.0, "bed"), 'The reference is "bed"'),
        (lambda: slant_travel(-1.0, 10.0), "The length of the cone is -1 mm"),
        (lambda: tail_set_over(0.3, 100.0), "setting over serves above 0 and up to 0.2"),
        (lambda: sine_bar_stack(75.0), "serves from 0 to 60 deg"),
        (lambda: sine_bar_stack(10.0, 0.0), "The sine bar is 0 mm"),
        (lambda: diameter_error_off_centre(0.0, 0.1), "the diameter must be above 0"),
    ],
)
def test_outside_the_range_is_refused(call, words: str) -> None:  # type: ignore[no-untyped-def]
    """Each setting says its bound."""
    with pytest.raises(Refusal, match=words):
        call()


def test_the_look_up_gives_angles_ends_and_settings() -> None:
    """Keys that scripts rely on, for a machine taper and for a pin."""
    found = answer(("Morse 3",), {"work": "150"}).data
    assert found["taper_on_diameter"] == pytest.approx(0.0502, abs=0.00005)
    assert found["half_angle_deg"] == pytest.approx(1.4377, abs=0.00005)
    assert found["large_end_mm"] == pytest.approx(23.825, abs=0.0005)
    assert found["set_over_mm"] == pytest.approx(0.0501958 * 75, abs=1e-5)
    assert answer(("pin", "3", "x", "30"), {}).data["large_end_mm"] == 3.6
    assert answer(("pin no 4 x 1 in",), {}).data["large_end_mm"] == 6.35
    with pytest.raises(Refusal, match="has no name"):
        answer((), {})
