"""The flat faces of a part on which another may stand, by name, in the part's own frame."""

from __future__ import annotations

import math
from dataclasses import dataclass

from tommybar.shapes.bought import BoughtShape
from tommybar.shapes.features import (
    PlateShape,
    RolledRing,
    Shape,
    SheetShape,
    SpringShape,
    TurnedShape,
    WireShape,
)
from tommybar.shapes.solids.frames import Vector, direction, point
from tommybar.shapes.solids.legs import sheet_stretches, wire_stretches


@dataclass(frozen=True)
class Face:
    """A flat face: its middle [mm] and the direction out of the metal."""

    middle: Vector
    out: Vector


def faces_of(shape: Shape | BoughtShape | None) -> dict[str, Face]:
    """Every face of a shape that has a name.

    A plate has ``top``, ``bottom``, ``front``, ``back``, ``left`` and
    ``right``; a turned part ``face_a`` and ``face_b``, the two of each land
    (``collar.face_a`` is that nearer face A), its flats (``hex_1`` is the first)
    and the floors of blind bores and of recesses (``bore.floor``); bent sheet ``leg_2.top``; wire ``start``
    and ``end``; anything else ``face_a`` where it begins and ``face_b``.

    Examples
    --------
    >>> from tommybar.shapes.features import Dim
    >>> faces_of(PlateShape(Dim(30.0), Dim(20.0), Dim(5.0)))["top"].middle
    (15.0, 10.0, 5.0)
    """
    if isinstance(shape, TurnedShape):
        return _of_turned(shape)
    if isinstance(shape, PlateShape):
        return _of_plate(shape.length.value, shape.width.value, shape.thickness.value)
    if isinstance(shape, SheetShape):
        return _of_sheet(shape)
    if isinstance(shape, WireShape):
        return _of_wire(shape)
    if isinstance(shape, RolledRing):
        return _between(0.0, shape.width)
    if isinstance(shape, SpringShape):
        return _between(0.0, shape.fitted or shape.free)
    if isinstance(shape, BoughtShape):
        return _of_bought(shape)
    return {}


def _between(low: float, high: float) -> dict[str, Face]:
    return {
        "face_a": Face((0.0, 0.0, low), (0.0, 0.0, -1.0)),
        "face_b": Face((0.0, 0.0, high), (0.0, 0.0, 1.0)),
    }


def _of_turned(shape: TurnedShape) -> dict[str, Face]:
    length = shape.length.value
    found = _between(0.0, length)
    for land in shape.outside:
        for name, face in _between(land.start, land.end).items():
            found[f"{land.name}.{name}"] = face
    floors = [(one.name, one.face == "B", one.depth) for one in shape.bores if not one.through]
    floors += [(one.name, one.face == "B", one.depth) for one in shape.recesses]
    for flats in shape.flats:
        z = (flats.start + flats.end) / 2
        for number in range(flats.count):
            angle = math.radians(flats.angle + 360 * number / flats.count)
            out = (
                round(math.cos(angle), 12),
                round(-math.sin(angle), 12),
                0.0,
            )  # angles are seen from face A
            found[f"{flats.name}_{number + 1}"] = Face((flats.level * out[0], flats.level * out[1], z), out)
    for called, far, deep in floors:
        up = 1.0 if far else -1.0
        found[f"{called}.floor"] = Face((0.0, 0.0, length - deep if far else deep), (0.0, 0.0, up))
    return found


def _of_plate(x: float, y: float, z: float) -> dict[str, Face]:
    return {
        "top": Face((x / 2, y / 2, z), (0.0, 0.0, 1.0)),
        "bottom": Face((x / 2, y / 2, 0.0), (0.0, 0.0, -1.0)),
        "front": Face((x / 2, 0.0, z / 2), (0.0, -1.0, 0.0)),
        "back": Face((x / 2, y, z / 2), (0.0, 1.0, 0.0)),
        "left": Face((0.0, y / 2, z / 2), (-1.0, 0.0, 0.0)),
        "right": Face((x, y / 2, z / 2), (1.0, 0.0, 0.0)),
    }


def _of_sheet(shape: SheetShape) -> dict[str, Face]:
    """The faces of flat sheet; of bent sheet the two of each leg, those of the first also without its number."""
    if not shape.bends:
        return _of_plate(shape.length.value, shape.width.value, shape.thickness.value)
    wide, thick = shape.width.value, shape.thickness.value
    found: dict[str, Face] = {}
    for number, stretch in enumerate(sheet_stretches(shape), start=1):
        middle = (stretch.end - stretch.start) / 2
        for name, z, up in (("top", thick, 1.0), ("bottom", 0.0, -1.0)):
            face = Face(point(stretch.at, (middle, wide / 2, z)), direction(stretch.at, (0.0, 0.0, up)))
            found[f"leg_{number}.{name}"] = face
            if number == 1:
                found[name] = face
    return found


def _of_wire(shape: WireShape) -> dict[str, Face]:
    legs = wire_stretches(shape)
    last = legs[-1]
    return {
        "start": Face((0.0, 0.0, 0.0), (-1.0, 0.0, 0.0)),
        "end": Face(point(last.at, (last.end - last.start, 0.0, 0.0)), direction(last.at, (1.0, 0.0, 0.0))),
    }


def _of_bought(shape: BoughtShape) -> dict[str, Face]:
    """Where a bought part begins and ends; of a screw face A is that under its head."""
    sizes = dict(shape.sizes)
    if shape.kind == "ball":
        return _between(-sizes["dia"] / 2, sizes["dia"] / 2)
    names = ("length", "width", "thickness", "height", "wide", "section")
    long = next((sizes[name] for name in names if name in sizes), 0.0)
    found = _between(0.0, long)
    if "head_height" in sizes and "countersunk" not in shape.kind:
        found["head"] = Face((0.0, 0.0, -sizes["head_height"]), (0.0, 0.0, -1.0))
    return found
