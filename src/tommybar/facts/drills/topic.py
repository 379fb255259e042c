"""Look-up "drill": a drill by its name, and what lies beside it; centre drills too."""

from __future__ import annotations

import re
from collections.abc import Mapping

from tommybar.facts.answer import Answer, Row
from tommybar.facts.drills.centre_drills import centre_drill
from tommybar.facts.drills.points import point_length
from tommybar.facts.drills.sizes import INCH, SERIES, drill_size, drill_source, drills_of_series
from tommybar.refusals import Refusal

_CENTRE = re.compile(r"^(?:centre|center)(?: drill)?\s+(.+)$", re.IGNORECASE)
_POINT_ANGLE = 118.0  # [deg]


def answer(keys: tuple[str, ...], options: Mapping[str, str]) -> Answer:
    """A drill: ``drill "#7"``, ``drill F``, ``drill 13/64``, ``drill 5.1``, ``drill "centre A 2.5"``.

    Parameters
    ----------
    keys : tuple[str, ...]
        Name of the drill; a plain number is a metric size [mm]
    options : Mapping[str, str]
        "point": included angle of the point, 118 if not given [deg]

    Returns
    -------
    Answer
        Diameter [mm], [in], length of the point [mm] and its neighbours

    Raises
    ------
    Refusal
        If no such drill is made; the nearest are offered.

    Examples
    --------
    >>> found = answer(("#7",), {}).data
    >>> round(found["diameter_mm"], 4), found["diameter_in"]
    (5.1054, 0.201)

    References
    ----------
    source: facts/drills/inch_drills.toml and metric_drills.toml.
    """
    key = " ".join(keys).strip()
    if not key:
        raise Refusal("The look-up drill has no name; it needs one.", 'For example: drill "#7".')
    if centre := _CENTRE.match(key):
        return _centre(key, centre[1])
    one = drill_size(key)
    angle = _angle(options.get("point", ""))
    tip = point_length(one.diameter, angle)
    below, above = _beside(one.diameter)
    rows = [
        Row("diameter", one.diameter, "mm", 4),
        Row("diameter", one.diameter / INCH, "in", 4),
        Row(f"point at {angle:g} deg", tip, "mm", 2),
    ]
    data: dict[str, object] = {
        "name": one.name,
        "series": one.series,
        "diameter_mm": one.diameter,
        "diameter_in": round(one.diameter / INCH, 9),
        "point_mm": tip,
        "point_angle_deg": angle,
    }
    for word, near in (("below", below), ("above", above)):
        if near is not None:
            rows.append(Row(f"next {word}: {near[0]}", near[1], "mm", 4))
            data[f"next_{word}"] = near[0]
            data[f"next_{word}_mm"] = near[1]
    source = "1/64 in steps, by definition" if one.series == "fraction" else str(drill_source(one.series))
    data["source"] = source
    return Answer("drill", key, f"Drill {one.name} ({one.series} series)", tuple(rows), source, data)


def _angle(text: str) -> float:
    if not text:
        return _POINT_ANGLE
    try:
        return float(text)
    except ValueError:
        raise Refusal(
            f'The point angle is "{text}"; it must be a number of degrees.', "A standard drill has 118."
        ) from None


def _beside(diameter: float) -> tuple[tuple[str, float] | None, tuple[str, float] | None]:
    """The next smaller and the next larger drill of all series."""
    every = sorted((drill.diameter, drill.name) for series in SERIES for drill in drills_of_series(series))
    smaller = [(name, size) for size, name in every if size < diameter - 1e-6]
    larger = [(name, size) for size, name in every if size > diameter + 1e-6]
    return (smaller[-1] if smaller else None), (larger[0] if larger else None)


def _centre(key: str, name: str) -> Answer:
    one = centre_drill(name)
    rows = [Row("pilot", one.pilot, "mm"), Row("shank", one.shank, "mm")]
    data: dict[str, object] = {"name": one.name, "pilot_mm": one.pilot, "shank_mm": one.shank}
    if one.mouth is not None:
        rows.append(Row("mouth of the centre hole", one.mouth, "mm"))
        data["mouth_mm"] = one.mouth
    data["source"] = str(one.source)
    return Answer("drill", key, f"Centre drill {one.name}", tuple(rows), str(one.source), data)
