"""The views of a plate set round its datum corner, dimensioned and lettered, at one scale."""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass

from tommybar.pack.boxes import box_of, moved
from tommybar.pack.imprint import Angle
from tommybar.pack.plates.cuts import datum_is_corner
from tommybar.pack.plates.dimensions import (
    Lane,
    datum_on_edge,
    height_right,
    lanes_below,
    lanes_left,
    section_marks,
)
from tommybar.pack.plates.holes import datum_of, in_plate
from tommybar.pack.plates.letters import Wanted, letter_marks
from tommybar.pack.plates.told import Row, Told
from tommybar.pack.plates.views import Plane, orthographic, section_of, sectioned, side_of
from tommybar.pack.printed import PrintedDimension
from tommybar.pack.projected.directions import Looked, looked_at
from tommybar.pack.sheet import Angular, Arc, Area, Kind, Line, Mark, Text
from tommybar.pack.units import Reader
from tommybar.shapes.features import Dim, PlateHole, PlateShape
from tommybar.shapes.outlines import extent, plate_loop
from tommybar.shapes.solids.frames import point

APART = 14.0  # between two views [mm]
TITLE = 4.6
FACES_OF: dict[str, tuple[str, ...]] = {
    "top": ("top", "bottom"), "front": ("front", "back"), "left": ("left", "right"), "right": ("left", "right"),
}  # fmt: skip


@dataclass(frozen=True)
class Cluster:
    """The views, and the figures that stand in them."""

    marks: tuple[Mark, ...]
    printed: tuple[PrintedDimension, ...]
    apart: tuple[tuple[Mark, ...], ...] = ()  # a section that may stand anywhere


def few_places(shape: PlateShape) -> bool:
    """Whether places are few enough to be drawn as dimensions instead of written in the table."""
    cut = (shape.slots, shape.pockets, shape.vees, shape.dovetails, shape.slits)
    if any(cut) or shape.outline is not None or any(one.face not in ("top", "bottom") for one in shape.holes):
        return False
    spots = [in_plate(shape, one) for one in shape.holes]
    return len({round(x, 3) for x, _, _ in spots}) <= 3 and len({round(y, 3) for _, y, _ in spots}) <= 3


def cluster(
    shape: PlateShape, rows: list[Row], scale: float, reader: Reader, angle: Angle, end_apart: bool = False
) -> Cluster:
    """All views at a scale; the lower left corner of the view from above lies at (0, 0).

    ``end_apart`` takes the view of an end out of the row, to stand by itself under its title.
    """
    long, wide = shape.length.value * scale, shape.width.value * scale
    plane = section_of(shape)
    printed: list[PrintedDimension] = []
    plan = orthographic(shape, "top", scale)
    left, below = lanes_left(_widths(shape, reader, scale, printed), scale)
    lanes = _lengths(shape, reader, scale, printed)
    placed = any(hole.place for hole in shape.holes)
    first = max(15.5 if placed else 11.0, 11.0 + below)  # below the boxes of datum letters
    plan += [*left, *lanes_below(lanes, scale, first), *_corner(shape, scale)]
    wanted = _wanted(rows, "top", scale)
    if plane is not None:
        y = -plane.at * scale
        plan += section_marks(y, 0.0, long)
        wanted = [("X", (-5.0, y + 4.6), 1.0), ("X", (long + 5.0, y + 4.6), 1.0), *wanted]
    if placed:
        inset = min(3.0, wide / 4, long / 4)
        plan += datum_on_edge("B", (long - inset, 0.0), (inset, 0.0), (0.0, 1.0), plan)
        plan += datum_on_edge("C", (0.0, inset - wide), (0.0, -inset), (-1.0, 0.0), plan)
    plan += letter_marks(wanted, plan)
    plan.append(room_of(plan))
    faces = {*(h.face for h in shape.holes), *(s.face for s in shape.slots), *(p.face for p in shape.pockets)}
    seen_in_front = bool(faces & {"front", "back"})
    only_section = plane is not None and not seen_in_front
    front: list[Mark] = []
    apart: tuple[tuple[Mark, ...], ...] = ()
    section: list[Mark] = []
    if plane is not None:
        section = sectioned(shape, plane, scale) + _leaning(shape, plane, scale)
        section += _title("X–X", long / 2, box_of(section)[1])
    if only_section:
        front += section
    else:
        front += orthographic(shape, "front", scale)
    told = Told("plate", reader)
    told.sized("length", "thickness", shape.thickness)
    row = told.row("", (None, None, None))
    printed += row.printed
    ends = extent(plate_loop(shape))[2] * scale
    front += height_right(ends, 0.0, shape.thickness.value, row.words, scale, box_of(front)[2])
    if placed:
        front += datum_on_edge("A", (min(12.0, long / 4), 0.0), (long, 0.0), (0.0, 1.0), front)
    if not only_section:
        front += letter_marks(_wanted(rows, "front", scale), front)
    front.append(room_of(front))
    above, under = box_of(plan), box_of(front)
    base = min(-wide - APART, above[1] - 5.0 - under[3]) if angle == "first" else above[3] + 6.0 - under[1]
    marks = plan + moved(front, 0.0, base)
    side = side_of(shape)
    if side is not None and end_apart:
        end = orthographic(shape, side, scale)
        end += letter_marks(_wanted(rows, side, scale), end)
        end += _title(f"seen from the {side}", wide / 2 * (-1 if side == "left" else 1), box_of(end)[1])
        apart = (tuple(end),)
    elif side is not None:
        marks += _side(shape, side, rows, scale, angle, base, box_of(marks))
    if plane is not None and not only_section:
        apart = (*apart, tuple(section))
    return Cluster(tuple(marks), tuple(printed), apart)


def room_of(marks: list[Mark]) -> Area:
    """The room of a view, so that nothing else is set into it; it is drawn with no line and no fill."""
    left, top, right, bottom = box_of(marks)
    return Area((((left, top), (right, top), (right, bottom), (left, bottom)),), "none", None)


def without_rooms(marks: Iterable[Mark]) -> list[Mark]:
    """Marks without those that only keep room."""
    return [one for one in marks if not (isinstance(one, Area) and one.fill == "none" and one.kind is None)]


def _title(words: str, x: float, top: float) -> list[Mark]:
    return [Text((x, top - 2.0), words, TITLE, True, "middle")]


def _corner(shape: PlateShape, scale: float) -> list[Mark]:
    """The sign of the datum: a small circle, a quarter of it black."""
    quarter = ((0.0, 0.0), *((2.2 * math.cos(a), -2.2 * math.sin(a)) for a in _steps()))
    kind: Kind = "thick" if datum_is_corner(shape) else "rule"
    x, y = datum_of(shape)
    return moved([Arc((0.0, 0.0), 2.2, kind), Area((quarter,), "black", None)], x * scale, -y * scale)


def _steps() -> list[float]:
    return [math.pi / 2 * n / 8 for n in range(9)]


def _wanted(rows: list[Row], looked: Looked, scale: float) -> list[Wanted]:
    """Letters of the features that are seen, or hidden behind, in a view."""
    at = looked_at(looked)
    found: list[Wanted] = []
    for row in rows:
        if row.face in FACES_OF[looked] and row.tag:
            for spot in row.spots:
                u, v, _ = point(at, spot)
                found.append((row.tag, (u * scale, -v * scale), row.radius * scale))
    return found


def _side(
    shape: PlateShape, side: Looked, rows: list[Row], scale: float, angle: Angle, base: float,
    taken: tuple[float, float, float, float],
) -> list[Mark]:  # fmt: skip
    """A view of an end: across from it in first angle, beside it in third angle."""
    marks = orthographic(shape, side, scale)
    marks += letter_marks(_wanted(rows, side, scale), marks)
    marks.append(room_of(marks))
    box = box_of(marks)
    right = (side == "left") == (angle == "first")
    shift = taken[2] + 8.0 - box[0] if right else taken[0] - 8.0 - box[2]
    return moved(marks, shift, base)


def _overall(shape: PlateShape) -> bool:
    """Whether length and width are sizes of their own, and do not follow from the outline."""
    return shape.outline is None


def _reaches(shape: PlateShape, axis: int) -> bool:
    """Whether the outline runs from the datum to the overall size."""
    found = extent(plate_loop(shape))
    whole = (shape.length.value, shape.width.value)[axis]
    return abs(found[axis]) < 1e-6 and abs(found[2 + axis] - whole) < 1e-6


def _lane(
    told: Told, dim: Dim, size: str, printed: list[PrintedDimension], own: bool, follows: bool
) -> list[Lane]:
    """An overall size: its own, or in brackets what follows from an outline that reaches so far."""
    if own:
        told.sized("length", size, dim)
        row = told.row("", (None, None, None))
        printed += row.printed
        return [Lane(dim.value, row.words)]
    return [Lane(dim.value, f"({told.reader.plain(dim.value)})")] if follows else []


def _places(
    shape: PlateShape, axis: int, reader: Reader, scale: float, printed: list[PrintedDimension]
) -> list[Lane]:
    found: dict[float, float] = {}
    name = "xy"[axis]
    for hole in shape.holes:
        spot = in_plate(shape, hole)
        value, other = round(spot[axis], 6), spot[1 - axis]
        found[value] = min(found.get(value, 1e9), other)
        told = Told(hole.name, reader)
        told.length("length", name, value)
        printed += told.row("", (None, None, None)).printed
    side = 1.0 if axis else -1.0  # the far line starts below the hole, or left of it
    return [
        Lane(value, reader.plain(value), side * (other * scale - 3.0))
        for value, other in sorted(found.items())
    ]


def _lengths(shape: PlateShape, reader: Reader, scale: float, printed: list[PrintedDimension]) -> list[Lane]:
    if shape.outline is not None and shape.outline.form == "disc":
        return []
    lanes = _places(shape, 0, reader, scale, printed) if few_places(shape) else []
    return lanes + _lane(
        Told("plate", reader), shape.length, "length", printed, _overall(shape), _reaches(shape, 0)
    )


def _widths(shape: PlateShape, reader: Reader, scale: float, printed: list[PrintedDimension]) -> list[Lane]:
    if shape.outline is not None and shape.outline.form == "disc":
        return []
    lanes = _places(shape, 1, reader, scale, printed) if few_places(shape) else []
    return lanes + _lane(
        Told("plate", reader), shape.width, "width", printed, _overall(shape), _reaches(shape, 1)
    )


def _leaning(shape: PlateShape, plane: Plane, scale: float) -> list[Mark]:
    """The angle of holes that lean in the plane of a section, as it is seen true there."""
    marks: list[Mark] = []
    for hole in shape.holes:
        spot = in_plate(shape, hole)
        if hole.tilt and abs(spot[1] - plane.at) < 1e-6 and hole.face in ("top", "bottom"):
            marks += _angle_of(hole, shape, spot, scale)
    return marks


def _angle_of(
    hole: PlateHole, shape: PlateShape, spot: tuple[float, float, float], scale: float
) -> list[Mark]:
    towards = round(hole.towards % 360.0, 6)
    if towards not in (0.0, 180.0):
        return []
    out = -1.0 if (towards == 0.0) == (hole.face == "top") else 1.0  # which way the axis leans above the face
    up = -1.0 if hole.face == "top" else 1.0
    x, y = spot[0] * scale, -spot[2] * scale
    radius = 13.0
    lean = math.radians(hole.tilt)
    square = (x, y + up * radius)
    axis = (x + out * radius * math.sin(lean), y + up * radius * math.cos(lean))
    words = f"({hole.tilt:g}°)"  # the table says it; ISO 129-1: for reference in brackets
    text = Text((x - out * 2.0, y + up * radius), words, 4.25, anchor="end" if out > 0 else "start")
    a, b = (square, axis) if (out < 0) == (up < 0) else (axis, square)
    return [
        Line(((x, y + up * 1.0), (x, y + up * (radius + 2.0))), "thin"),
        Line(((x, y), (axis[0] + (axis[0] - x) * 0.15, axis[1] + (axis[1] - y) * 0.15)), "chain"),
        Angular((x, y), a, b, radius, hole.tilt, (text,)),
    ]
