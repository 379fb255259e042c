"""Plates and blocks with the holes in their six faces."""

from __future__ import annotations

import math

from tommybar.design.reading import TINY, Reading
from tommybar.design.written_parts import WrittenPlate, WrittenPlateHole
from tommybar.design.yaml_file import Place
from tommybar.shapes.features import PlateHole, PlateShape


def build_plate(read: Reading, part: str, written: WrittenPlate, place: Place) -> PlateShape:
    """The shape of a plate."""
    length, width, thick = (read.of(one) for one in (written.length, written.width, written.thick))
    corner = read.of(written.corner)
    if corner > min(length, width) / 2 + TINY:
        what = f"The corner radius is {corner:g} mm; the plate is {length:g} x {width:g} mm."
        read.complain((*place, "corner"), what, "Make it smaller.")
    faces = {"top": (length, width, thick), "front": (length, thick, width), "left": (width, thick, length)}
    faces |= {"bottom": faces["top"], "back": faces["front"], "right": faces["left"]}
    read.unique((one.name, (*place, "holes", index)) for index, one in enumerate(written.holes))
    holes: list[PlateHole] = []
    for index, one in enumerate(written.holes):
        holes += _holes(read, part, one, (*place, "holes", index), faces[one.face])
    _refuse_meeting(read, holes, place)
    return PlateShape(
        read.dim(length, f"{part}.length", (*place, "length")),
        read.dim(width, f"{part}.width", (*place, "width")),
        read.dim(thick, f"{part}.thick", (*place, "thick")),
        corner,
        tuple(holes),
    )


def _holes(
    read: Reading, part: str, one: WrittenPlateHole, here: Place, extent: tuple[float, float, float]
) -> list[PlateHole]:
    dia, thread = read.diameter(one.dia, one.thread, here)
    deep = _depth(read, one, here, extent[2], bool(thread))
    sink_dia, sink_deep = read.of(one.sink_dia), read.of(one.sink_deep)
    if (one.sink_dia is None) != (one.sink_deep is None):
        read.complain(here, "A counterbore must have both sink_dia and sink_deep.", "Add the other.")
    elif one.sink_dia and sink_dia <= dia:
        what = f"The counterbore is {sink_dia:g} mm; its hole is {dia:g} mm."
        read.complain((*here, "sink_dia"), what, "Make it larger.")
    elif one.sink_deep and sink_deep >= extent[2] - TINY:
        what = f"The counterbore is {sink_deep:g} mm deep; the plate is {extent[2]:g} mm thick there."
        read.complain((*here, "sink_deep"), what, "Make it shallower.")
    wide = max(dia, sink_dia)
    found = []
    for number, (x_formula, y_formula) in enumerate(one.at, start=1):
        x, y = read.of(x_formula), read.of(y_formula)
        spot = (*here, "at", number - 1)
        for value, limit, way in ((x, extent[0], "x"), (y, extent[1], "y")):
            if value - wide / 2 < -TINY or value + wide / 2 > limit + TINY:
                what = (
                    f"The hole takes {way} {value - wide / 2:g} to {value + wide / 2:g} mm; "
                    f"the face {one.face} is {limit:g} mm that way."
                )
                read.complain(spot, what, "Move it onto the part.")
        name = one.name if len(one.at) == 1 else f"{one.name}_{number}"
        dim = read.dim(dia, f"{part}.{name}", here, one.limits)
        found.append(PlateHole(name, one.face, x, y, dim, deep, thread, sink_dia, sink_deep))
    return found


def _depth(read: Reading, one: WrittenPlateHole, here: Place, thick: float, threaded: bool) -> float | None:
    if one.through == (one.deep is not None):
        read.complain(here, "The hole must have either through: true or deep.", "Keep one of the two.")
    if one.deep is None:
        return None
    deep = read.of(one.deep)
    if deep >= thick - TINY:
        thing = "thread" if threaded else "hole"
        what = f"The {thing} is {deep:g} mm deep; the plate is {thick:g} mm thick there."
        read.complain((*here, "deep"), what, "Make it shallower, or write through: true.")
    return deep


def _refuse_meeting(read: Reading, holes: list[PlateHole], place: Place) -> None:
    """Holes of one face that run into each other."""
    for index, one in enumerate(holes):
        for other in holes[:index]:
            apart = math.hypot(one.x - other.x, one.y - other.y)
            both = (one.dia.value + other.dia.value) / 2
            if one.face == other.face and apart < both:
                what = (
                    f"{other.name} and {one.name} lie {apart:g} mm apart; their radii add up to {both:g} mm."
                )
                read.complain((*place, "holes"), what, "Move them apart.")
