"""Look-up "general": general tolerances of ISO 2768 for one size and class."""

from __future__ import annotations

import re
from collections.abc import Mapping

from tommybar.facts.answer import Answer, Row
from tommybar.facts.drawing import general_tolerances as general
from tommybar.refusals import Refusal

_KEY = re.compile(r"(?:(?P<form>[a-z-]+)\s+)?(?P<size>\d+(?:\.\d*)?|\.\d+)\s*(?:mm)?\s+(?P<name>[A-Za-z])")


def answer(keys: tuple[str, ...], options: Mapping[str, str]) -> Answer:
    """General tolerance: ``general "25 m"``, ``general radius 2 m``, ``general flatness 80 K``.

    Parameters
    ----------
    keys : tuple of str
        Size [mm] and class; before them "radius", "angle", "flatness",
        "perpendicularity", "symmetry" or "run-out" if not a plain length
    options : Mapping
        None is used

    Returns
    -------
    Answer
        Tolerance both ways [um, mm] or [deg], or the width of the zone [mm]

    Raises
    ------
    Refusal
        If the text cannot be read or lies outside the table.

    Examples
    --------
    >>> answer(("25 m",), {}).data["tolerance_mm"]
    0.2

    References
    ----------
    source: ISO 2768-1 and -2:1989, as in facts/drawing.
    """
    text = " ".join(keys).strip()
    match = _KEY.fullmatch(text)
    if not match:
        raise Refusal(
            f'"{text}" is not a size and a class of ISO 2768.',
            'For example: general "25 m", general radius 2 m, general angle 25 m, general flatness 80 K.',
        )
    form, size, name = match["form"] or "length", float(match["size"]), match["name"]
    if form == "angle":
        degrees = general.general_angle_tolerance(size, name)
        rows: tuple[Row, ...] = (
            Row("shorter side", size, "mm"),
            Row("tolerance, plus and minus", degrees, "deg", 4),
        )
        data: dict[str, object] = {"shorter_side_mm": size, "tolerance_deg": round(degrees, 6)}
    elif form in ("length", "radius", "chamfer"):
        ask = general.general_tolerance if form == "length" else general.general_radius_tolerance
        both = ask(size, name)
        rows = (
            Row("tolerance, plus and minus", both, "mm"),
            Row("smallest", size - both, "mm"),
            Row("largest", size + both, "mm"),
        )
        data = {
            "nominal_mm": size,
            "tolerance_mm": both,
            "lower_um": round(-both * 1000, 3),
            "upper_um": round(both * 1000, 3),
            "smallest_mm": round(size - both, 6),
            "largest_mm": round(size + both, 6),
        }
    else:
        wide = general.general_form_tolerance(form, size, name)
        rows = (Row("width of the zone", wide, "mm"),)
        data = {"length_mm": size, "tolerance_mm": wide}
    return Answer(
        topic="general",
        key=text,
        title=f"ISO 2768, {form} {size:g} mm, class {name}",
        rows=rows,
        source=str(general.source()),
        data={"of": form, "class": name, **data},
    )
