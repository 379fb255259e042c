"""Taper pins."""

from __future__ import annotations

import pytest

from tommybar.facts.tapers import inch_taper_pin, metric_taper_pin
from tommybar.refusals import Refusal


@pytest.mark.parametrize(("diameter", "length", "large"), [(3, 30, 3.6), (4, 40, 4.8), (5, 50, 6.0)])
def test_metric_pins_are_one_in_fifty(diameter: float, length: float, large: float) -> None:
    """The nominal diameter is the small end; the large end is d + L/50."""
    pin = metric_taper_pin(diameter, length)
    assert pin.large_end == large
    assert pin.small_end == diameter


def test_a_number_4_pin_is_a_quarter_inch_at_its_large_end() -> None:
    """1:48 from the large end down (ANSI/ASME B18.8.2)."""
    pin = inch_taper_pin("4", 25.4)
    assert pin.large_end == pytest.approx(6.35)
    assert pin.small_end == pytest.approx(6.35 - 25.4 / 48)


def test_sizes_that_are_not_made_are_refused() -> None:
    """Diameter, length and number outside the standards are refused with what there is."""
    with pytest.raises(Refusal, match=r"The taper pin is 7 mm; ISO 2339 has 0\.6"):
        metric_taper_pin(7.0, 30.0)
    with pytest.raises(Refusal, match="The length is 100 mm; ISO 2339 has 12 to 45 mm at 3 mm"):
        metric_taper_pin(3.0, 100.0)
    with pytest.raises(Refusal, match='The taper pin is number "12"'):
        inch_taper_pin("12", 25.4)
    with pytest.raises(Refusal, match="The length is 900 mm"):
        inch_taper_pin("4", 900.0)
