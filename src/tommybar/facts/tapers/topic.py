"""Look-up "taper": a machine taper, a taper pin or any cone, and how to set for it."""

from __future__ import annotations

import re
from collections.abc import Mapping

from tommybar.facts.answer import Answer, Row
from tommybar.facts.keyed import number
from tommybar.facts.tapers.catalogue import taper
from tommybar.facts.tapers.cone import Taper
from tommybar.facts.tapers.pins import TaperPin, inch_taper_pin, metric_taper_pin
from tommybar.facts.tapers.setting import (
    indicator_reading,
    sine_bar_stack,
    slant_travel,
    slide_setting,
    tail_set_over,
)
from tommybar.refusals import Refusal

_METRIC_PIN = re.compile(r"^(?:taper )?pin (\d+(?:\.\d+)?)\s*x\s*(\d+(?:\.\d+)?)$")
_INCH_PIN = re.compile(r"^(?:taper )?pin no\.?\s*(\d+(?:/0)?)\s*x\s*(.+)$")


def answer(keys: tuple[str, ...], options: Mapping[str, str]) -> Answer:
    """A taper: ``taper "Morse 2"``, ``taper 1:20``, ``taper "pin 3 x 30"``.

    Parameters
    ----------
    keys : tuple[str, ...]
        Name or steepness of the taper [-]
    options : Mapping[str, str]
        "length" (along the axis [mm], for slant travel), "work" (whole length
        between centres [mm], for the set-over), "bar" (sine bar [mm])

    Returns
    -------
    Answer
        Taper [mm/mm], angles [deg], ends [mm], and settings [deg], [mm]

    Raises
    ------
    Refusal
        If there is no such taper.

    Examples
    --------
    >>> found = answer(("Morse 2",), {}).data
    >>> round(found["half_angle_deg"], 4), round(found["large_end_mm"], 3)
    (1.4307, 17.78)

    References
    ----------
    source: facts/tapers/machine_tapers.toml and pins.toml.
    """
    key = " ".join(keys).strip()
    if not key:
        raise Refusal("The look-up taper has no name; it needs one.", 'For example: taper "Morse 2".')
    found = _pin(key) or taper(key)
    steepness = found.taper_on_diameter
    shape = found if isinstance(found, Taper) else Taper(found.name, steepness, 0, 0, 0, found.source)
    half = shape.half_angle
    bar = number(options.get("bar", "100"), "sine bar")
    travel = 25.0
    rows = [
        Row("taper on diameter", steepness, "mm/mm", 5),
        Row("one in", shape.one_in, "", 3),
        Row("half angle", half, "deg", 4),
        Row("included angle", 2 * half, "deg", 4),
        Row("slide, scale 0 along the axis", slide_setting(half), "deg", 2),
        Row("slide, scale 0 along the cross axis", slide_setting(half, "cross axis"), "deg", 2),
        Row("indicator over 25 mm of slide travel", indicator_reading(travel, half), "mm", 4),
    ]
    data: dict[str, object] = {
        "name": found.name,
        "taper_on_diameter": steepness,
        "one_in": shape.one_in,
        "half_angle_deg": half,
        "included_angle_deg": 2 * half,
        "slide_from_axis_deg": slide_setting(half),
        "slide_from_cross_axis_deg": slide_setting(half, "cross axis"),
        "indicator_over_25_mm": indicator_reading(travel, half),
    }
    if 2 * half <= 60:
        rows.append(Row(f"sine bar {bar:g} mm, included angle", sine_bar_stack(2 * half, bar), "mm", 4))
        data["sine_bar_mm"] = bar
        data["sine_bar_stack_mm"] = sine_bar_stack(2 * half, bar)
    if found.large_end:
        rows += [
            Row("large end", found.large_end, "mm"),
            Row("small end", found.small_end, "mm"),
            Row("between them", found.length, "mm"),
        ]
        data |= {
            "large_end_mm": found.large_end,
            "small_end_mm": found.small_end,
            "length_mm": found.length,
        }
    length = number(options["length"], "length") if "length" in options else found.length
    if length:
        rows.append(Row("slant travel", slant_travel(length, half), "mm"))
        data["slant_travel_mm"] = slant_travel(length, half)
    if "work" in options:
        over = tail_set_over(steepness, number(options["work"], "length of the work"))
        rows.append(Row("tail set-over", over, "mm"))
        data["set_over_mm"] = over
    data["source"] = found.source
    data = {key: round(figure, 9) if isinstance(figure, float) else figure for key, figure in data.items()}
    note = shape.note
    return Answer(
        "taper", key, f"Taper {found.name}", tuple(rows), found.source, data, (note,) if note else ()
    )


def _pin(key: str) -> TaperPin | None:
    plain = " ".join(key.casefold().split())
    if match := _METRIC_PIN.match(plain):
        return metric_taper_pin(float(match[1]), float(match[2]))
    if match := _INCH_PIN.match(plain):
        return inch_taper_pin(match[1], number(match[2], "length of the pin"))
    return None
