"""A shape made of nothing but printed figures, on the bare kinds of features that the views show."""

from __future__ import annotations

import math
from dataclasses import fields, is_dataclass, replace
from typing import Any

from tommybar.pack.audit.reading import Figure
from tommybar.pack.audit.turned_parts import Built
from tommybar.pack.plates.holes import datum_of
from tommybar.shapes.features import Arc, Dim, PlateHole, PlateShape, TurnedShape
from tommybar.shapes.outside import arc_of
from tommybar.shapes.plate_frames import face_frame

Shape = TurnedShape | PlateShape
LISTS = ("outside", "grooves", "bores", "recesses", "circle_holes", "cross_holes", "face_grooves", "bore_tapers",
         "cups", "centres", "bore_grooves", "flats", "head_slots", "cross_slots", "keyways", "bore_keyways", "slits")  # fmt: skip


def _filled(feature: Any, made: Built) -> Any:
    """The feature with all its figures taken from the sheet; a figure that is not printed becomes nought."""
    given: dict[str, Any] = {}
    for field in fields(feature):
        old = getattr(feature, field.name)
        if (
            field.name == "limits"
            or isinstance(old, bool | str)
            or (is_dataclass(old) and not isinstance(old, Dim))
        ):
            continue
        new = made.get((feature.name, field.name))
        value = new.value if isinstance(new, Figure) else None
        if isinstance(old, Dim):
            given[field.name] = Dim(0.0 if value is None else value)
        elif isinstance(old, int) and value is not None:
            given[field.name] = round(value)
        elif isinstance(old, float) and field.name not in ("edge_angle", "edge_end_angle", "x", "y", "at"):
            given[field.name] = 0.0 if value is None else value
    return replace(feature, **given)


def _round_the_axis(made: Any, shape: TurnedShape) -> Any:
    """A sphere on the axis with the radius that its printed ends give: the one printed stands in brackets."""
    old = next(one for one in shape.outside if one.name == made.name)
    if not isinstance(old, Arc) or abs(arc_of(old).centre[1]) > 1e-6:
        return made
    (a, p), (b, q) = (made.start, made.start_dia / 2), (made.end, made.end_dia / 2)
    middle = (b * b + q * q - a * a - p * p) / (2 * (b - a))
    return replace(made, radius=math.hypot(a - middle, p))


def built_turned(shape: TurnedShape, made: Built) -> TurnedShape:
    """A turned part of the sheet's figures; holes on circles keep the metal that they run through."""
    length = made["part", "length"]
    assert isinstance(length, Figure)
    given: dict[str, Any] = {}
    for name in LISTS:
        given[name] = tuple(_filled(one, made) for one in getattr(shape, name))
    given["circle_holes"] = tuple(
        replace(new, start=old.start, end=old.end)
        for new, old in zip(given["circle_holes"], shape.circle_holes, strict=True)
    )
    angles = []
    for one in given["outside"]:
        for size in ("edge_start_angle", "edge_end_angle"):
            angle = made.get((one.name, size))
            if isinstance(angle, Figure):
                one = replace(one, **{{"edge_start_angle": "edge_angle"}.get(size, size): angle.value})
        angles.append(_round_the_axis(one, shape))
    return replace(shape, length=Dim(length.value), **(given | {"outside": tuple(angles)}))


def built_holes(shape: PlateShape, made: Built) -> tuple[PlateHole, ...]:
    """Holes of a plate, their places turned from the datum into their face."""
    x0, y0 = datum_of(shape)
    holes = []
    for hole in shape.holes:
        frame = face_frame(shape, hole.face)
        seen = [made.get((hole.name, axis)) for axis in "xyz"]
        x, y, z = (one.value if isinstance(one, Figure) else None for one in seen)
        spot = (
            frame.origin[0] if x is None else x + x0,
            frame.origin[1] if y is None else y + y0,
            frame.origin[2] if z is None else shape.thickness.value - z,
        )
        away = [a - b for a, b in zip(spot, frame.origin, strict=True)]
        u, v = (sum(a * b for a, b in zip(away, way, strict=True)) for way in (frame.u, frame.v))
        holes.append(replace(_filled(hole, made), x=u, y=v))
    return tuple(holes)
