"""From the words of a row of tapers.csv to a call of public functions.

The early edition's table of tapers per foot was reckoned with short
logarithms: its angles are up to 3 seconds off the arctangent, once in twelve
by those 3 (1/2 in/ft included: 2 deg 23' 10", exactly 13.0"). Decided for
geometry; the band of that group is 3 seconds and half a unit of the last place.
"""

from __future__ import annotations

import re

from tommybar.facts.drills import point_length
from tommybar.facts.tapers import (
    Taper,
    diameter_error_off_centre,
    inch_taper_pin,
    included_angle,
    indicator_reading,
    metric_taper_pin,
    sine_bar_stack,
    slide_setting,
    tail_set_over,
    taper,
)

from .frame import Band, Computed, Row, Unmapped

LEFT_OUT: dict[str, str] = {}

_MORSE = re.compile(r"^(Morse \d) (.+)$")
_METRIC_PIN = re.compile(r"^ISO 2339 pin ([\d.]+)(?:x([\d.]+))? (.+)$")
_INCH_PIN = re.compile(r"^inch taper pin No (\S+) large-end diameter$")
_PER_FOOT = re.compile(r"^(\S+ in/ft) (included angle|angle with centre line)$")
_POINT = re.compile(r"^([\d.]+) deg point length / diameter$")
_CENTRES = {
    "lathe centre": "lathe centre",
    "135": "drill point for hard stuff",
    "protect": "centre drill protecting cone",
    "82": "inch countersink",
    "drill point": "drill point",
    "spotting drill": "spotting drill",
    "countersink": "metric countersink",
    "countersunk": "metric countersink",
    "centre drill": "centre drill",
    "centre hole": "centre drill",
}


def band(row: Row) -> Band | None:
    """Three and a half seconds for the table of tapers per foot; 0.001 mm where a stack was reckoned by others.

    The stacks of the sine bar were reckoned from tapers rounded to four
    figures (0.0502 for 1:19.922), which moves the third decimal by one.
    """
    if row.group == "taper per foot":
        return Band(absolute=3.5 / 3600)
    return Band(absolute=0.001) if "sine bar" in row.item else None


def expected_call(row: Row) -> Computed:
    """What the program computes for this row."""
    if match := _MORSE.match(row.item):
        return _machine_taper(row, taper(match[1]), match[2])
    if row.group == "taper pins":
        return _pin(row)
    if match := _PER_FOOT.match(row.item):
        found = taper(match[1])
        return found.included_angle if match[2] == "included angle" else found.half_angle
    if match := _POINT.match(row.item):
        return point_length(1.0, float(match[1]))
    if row.group == "centres":
        for words, name in _CENTRES.items():
            if words in f"{row.item} {row.condition}":
                return included_angle(name)
    if row.group == "compound slide checks":
        return _slide(row)
    raise Unmapped(row.item)


def _machine_taper(row: Row, found: Taper, what: str) -> Computed:
    inches = 25.4 if row.unit == "in" else 1.0
    if what == "taper as 1:x":
        return found.one_in
    if what == "taper per foot":
        return found.per_foot
    if what == "taper on diameter":
        return found.taper_on_diameter
    if what.startswith("gauge-line diameter"):
        return found.large_end / inches
    if what.startswith("plug small-end diameter"):
        depth = re.search(r"plug depth ([\d.]+) in", row.condition)
        if depth is not None and abs(float(depth[1]) * 25.4 - found.length) > 1e-9:
            raise Unmapped(f"our plug depth is {found.length / 25.4:g} in")
        return found.small_end / inches
    if what.startswith("half-angle"):
        return found.half_angle
    if what.startswith("compound-slide setting"):
        return slide_setting(found.half_angle)
    if match := re.match(r"^sine bar ([\d.]+) mm, (included|half) angle stack$", what):
        angle = found.included_angle if match[2] == "included" else found.half_angle
        return sine_bar_stack(angle, float(match[1]))
    raise Unmapped(what)


def _pin(row: Row) -> Computed:
    if match := _METRIC_PIN.match(row.item):
        diameter, length, what = float(match[1]), match[2], match[3]
        if length:
            return metric_taper_pin(diameter, float(length)).large_end
        first = metric_taper_pin(diameter, {10.0: 26.0, 12.0: 32.0}.get(diameter, _any_length(diameter)))
        return first.end if what.startswith("end radius") else first.lengths
    if match := _INCH_PIN.match(row.item):
        return inch_taper_pin(match[1], 1.0).large_end / 25.4
    if "nominal diameter is at" in row.item:
        return metric_taper_pin(3.0, 30.0).nominal_at
    if row.item == "taper of inch taper pin":
        return f"1:{1 / inch_taper_pin('4', 25.4).taper_on_diameter:g}"
    if "taper" in row.item and row.value.startswith("1:"):
        return f"1:{1 / metric_taper_pin(3.0, 30.0).taper_on_diameter:g}"
    raise Unmapped(row.item)


def _any_length(diameter: float) -> float:
    """A length that the standard makes of every diameter in its part of the series."""
    return 8.0 if diameter <= 1.5 and diameter > 0.6 else 6.0 if diameter <= 0.6 else 24.0


def _slide(row: Row) -> Computed:
    if match := re.match(r"^cone (\S+) half-angle$", row.item):
        return taper(match[1]).half_angle
    if match := re.search(r"tool is ([\d.]+) mm off centre height, dial set for ([\d.]+) mm", row.item):
        return diameter_error_off_centre(float(match[2]), float(match[1]))
    if match := re.match(r"^indicator reading over ([\d.]+) mm slide travel, (Morse \d) test bar$", row.item):
        return indicator_reading(float(match[1]), taper(match[2]).half_angle)
    if match := re.match(r"^tailstock set-over, (.+), work ([\d.]+) (in|mm)$", row.item):
        inches = 25.4 if match[3] == "in" else 1.0
        return tail_set_over(taper(match[1]).taper_on_diameter, float(match[2]) * inches) / inches
    raise Unmapped(row.item)
