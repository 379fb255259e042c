"""Tapers: machine tapers, taper pins, centres, and how to set a lathe for a cone."""

from tommybar.facts.tapers.catalogue import included_angle, taper, taper_names
from tommybar.facts.tapers.cone import Taper, cone, half_angle
from tommybar.facts.tapers.pins import TaperPin, inch_taper_pin, metric_taper_pin
from tommybar.facts.tapers.setting import (
    diameter_error_off_centre,
    indicator_reading,
    sine_bar_stack,
    slant_travel,
    slide_setting,
    tail_set_over,
)

__all__ = [
    "Taper",
    "TaperPin",
    "cone",
    "diameter_error_off_centre",
    "half_angle",
    "inch_taper_pin",
    "included_angle",
    "indicator_reading",
    "metric_taper_pin",
    "sine_bar_stack",
    "slant_travel",
    "slide_setting",
    "tail_set_over",
    "taper",
    "taper_names",
]
