"""A plate or block: front view above, plan below it, hole places from one corner, a table of holes."""

from __future__ import annotations

from dataclasses import dataclass

from tommybar.facts.threads import thread
from tommybar.pack.boxes import Box
from tommybar.pack.sheet import Arc, Area, Dimension, Line, Mark, Point, Text
from tommybar.pack.tags import tag_marks, taken_by
from tommybar.pack.units import Reader
from tommybar.pack.words import plate_hole_words, size_words
from tommybar.shapes.features import PlateFace, PlateHole, PlateShape
from tommybar.shapes.plates import drilled_depth

SIZE = 4.25
STEP = 7.6
APART = 14.0  # between the two views [mm]


@dataclass(frozen=True)
class Placed:
    """A hole with its number and where its axis meets the plate, from the datum corner [mm]."""

    n: int
    hole: PlateHole
    x: float  # along the length
    y: float  # across, from the front edge
    z: float  # up from the underside


def placed_holes(shape: PlateShape) -> tuple[Placed, ...]:
    """Holes numbered face by face, along the length."""
    long, wide, thick = shape.length.value, shape.width.value, shape.thickness.value
    faces: tuple[PlateFace, ...] = ("top", "bottom", "front", "back", "left", "right")
    ordered = sorted(shape.holes, key=lambda h: (faces.index(h.face), round(h.x, 4), round(h.y, 4)))
    made = []
    for n, hole in enumerate(ordered, 1):
        x, y = hole.x, hole.y
        where = {
            "top": (x, y, thick),
            "bottom": (x, wide - y, 0.0),
            "front": (x, 0.0, y),
            "back": (long - x, wide, y),
            "left": (0.0, wide - x, y),
            "right": (long, x, y),
        }[hole.face]
        made.append(Placed(n, hole, *where))
    return tuple(made)


def drawn_dia(hole: PlateHole) -> float:
    """Diameter at which a hole is drawn [mm]."""
    return thread(hole.thread).tapping_drill if hole.thread else hole.dia.value


def plate_view(shape: PlateShape, scale: float, reader: Reader) -> list[Mark]:
    """Both views; the datum corner of the plan is at (0, 0), the plan above it (y negative)."""
    long, wide, thick = (d.value * scale for d in (shape.length, shape.width, shape.thickness))
    holes = placed_holes(shape)
    marks: list[Mark] = [_box(0.0, -wide, long, 0.0)]
    base = -wide - APART
    marks.append(_box(0.0, base - thick, long, base))
    for one in holes:
        marks += _in_plan(one, shape, scale, wide)
        marks += _in_front(one, shape, scale, base, wide / scale)
    marks += _lengths(shape, holes, scale, reader, long)
    marks += _widths(shape, holes, scale, reader, long, wide)
    words = " ".join(size_words(shape.thickness, reader))
    middle = base - thick / 2 + 1.4
    marks.append(
        Dimension(
            (long, base), (long, base - thick), "y", long + 10.0, shape.thickness.value,
            (Text((long + 12.5, middle), words, SIZE),), outside=thick < 9.0,
        )
    )  # fmt: skip
    datum: Box = (-2.2, -2.2, 2.2, 2.2)
    front: Box = (0.0, base - thick, long, base)
    marks += tag_marks(
        _tagged(holes, shape, scale), [*taken_by(marks), datum, front], (0.0, -wide, long, 0.0)
    )
    marks += [Arc((0.0, 0.0), 2.2, "thick"), Area((((0.0, 0.0), (2.2, 0.0), (0.0, -2.2)),), "black", None)]
    return marks


def _tagged(holes: tuple[Placed, ...], shape: PlateShape, scale: float) -> list[tuple[int, Point, float]]:
    """Number, place in plan and radius of every hole; one in an edge is numbered at its middle."""
    made = []
    for one in holes:
        x, y = one.x * scale, -one.y * scale
        radius = max(drawn_dia(one.hole), one.hole.sink_dia) / 2 * scale
        half = drilled_depth(one.hole, shape) / 2 * scale
        dx = {"left": half, "right": -half}.get(one.hole.face, 0.0)
        dy = {"front": -half, "back": half}.get(one.hole.face, 0.0)
        made.append((one.n, (x + dx, y + dy), radius))
    return made


def _box(x0: float, y0: float, x1: float, y1: float) -> Mark:
    return Area((((x0, y0), (x1, y0), (x1, y1), (x0, y1)),), "none", "thick")


def _circle(centre: Point, hole: PlateHole, scale: float, kind: str = "thick") -> list[Mark]:
    radius = drawn_dia(hole) / 2 * scale
    reach = max(radius, hole.sink_dia / 2 * scale) + 2.0
    x, y = centre
    marks: list[Mark] = [
        Arc(centre, radius, "thick" if kind == "thick" else "dashed"),
        Line(((x - reach, y), (x + reach, y)), "chain"),
        Line(((x, y - reach), (x, y + reach)), "chain"),
    ]
    if hole.thread and kind == "thick":
        marks.append(Arc(centre, thread(hole.thread).major / 2 * scale, "thin", 80.0, 350.0))
    if hole.sink_dia:
        marks.append(Arc(centre, hole.sink_dia / 2 * scale, "thick" if kind == "thick" else "dashed"))
    return marks


def _hidden(a: Point, b: Point, radius: float) -> list[Mark]:
    """A hole seen from the side, behind metal: two dashed lines, a bottom and its axis."""
    (x1, y1), (x2, y2) = a, b
    level = abs(y1 - y2) < 1e-9
    dx, dy = (0.0, radius) if level else (radius, 0.0)
    way = ((x1 - dx, y1 - dy), (x2 - dx, y2 - dy), (x2 + dx, y2 + dy), (x1 + dx, y1 + dy))
    past = 2.0 if (x2 + y2) > (x1 + y1) else -2.0
    px, py = (past, 0.0) if level else (0.0, past)
    return [Line(way, "dashed"), Line(((x1 - px, y1 - py), (x2 + px, y2 + py)), "chain")]


def _in_plan(one: Placed, shape: PlateShape, scale: float, wide: float) -> list[Mark]:
    x, y = one.x * scale, -one.y * scale
    deep, radius = drilled_depth(one.hole, shape) * scale, drawn_dia(one.hole) / 2 * scale
    face = one.hole.face
    if face in ("top", "bottom"):
        seen = "thick" if face == "top" or one.hole.depth is None else "dashed"
        return _circle((x, y), one.hole, scale, seen)
    if face == "front":
        return _hidden((x, 0.0), (x, -deep), radius)
    if face == "back":
        return _hidden((x, -wide), (x, -wide + deep), radius)
    end = deep if face == "left" else x - deep
    return _hidden((0.0 if face == "left" else x, y), (end, y), radius)


def _in_front(one: Placed, shape: PlateShape, scale: float, base: float, wide: float) -> list[Mark]:
    x, z = one.x * scale, base - one.z * scale
    deep, radius = drilled_depth(one.hole, shape) * scale, drawn_dia(one.hole) / 2 * scale
    face = one.hole.face
    if face == "front":
        return _circle((x, z), one.hole, scale)
    if face == "back":
        return [] if any_front(one, shape) else _circle((x, z), one.hole, scale, "dashed")
    if face == "top":
        return _hidden((x, z), (x, z + deep), radius)
    if face == "bottom":
        return _hidden((x, z), (x, z - deep), radius)
    return _hidden((x, z), (x + deep if face == "left" else x - deep, z), radius)


def any_front(one: Placed, shape: PlateShape) -> bool:
    """Whether a hole in the front face stands before this one of the back face."""
    return any(
        other.hole.face == "front" and abs(other.x - one.x) < 0.01 and abs(other.z - one.z) < 0.01
        for other in placed_holes(shape)
    )


def _lengths(
    shape: PlateShape, holes: tuple[Placed, ...], scale: float, reader: Reader, long: float
) -> list[Mark]:
    """Places along the length, each from the datum corner in a lane of its own."""
    marks: list[Mark] = []
    level = 11.0 + below_corner(shape, holes, scale, reader)
    found: dict[float, float] = {}
    for one in holes:
        if one.hole.face not in ("left", "right"):
            key = round(one.x, 3)
            found[key] = min(found.get(key, 1e9), one.y)
    places = sorted(found) if len(found) <= 5 else []
    for x in [*places, shape.length.value]:
        whole = x == shape.length.value
        words = " ".join(size_words(shape.length, reader)) if whole else reader.length(x, 3)
        span, measured = x * scale, Text((0, 0), words, SIZE).width
        outside = span < measured + 7.0
        at = (-7.0, level - 1.0) if outside else (span / 2, level - 1.0)
        text = Text(at, words, SIZE, anchor="end" if outside else "middle")
        start = 0.0 if whole else -found[x] * scale + 3.0
        tail = ((0.0, level), (-7.0 - measured, level)) if outside else ()
        marks.append(
            Dimension((0.0, 0.0), (span, start), "x", level, x, (text,), outside=outside, tail=tail)
        )  # fmt: skip
        level += STEP
    return marks


def across_places(holes: tuple[Placed, ...]) -> dict[float, float]:
    """Places across the width that are dimensioned, with the nearest hole's place along the length."""
    found: dict[float, float] = {}
    for one in holes:
        if one.hole.face not in ("front", "back"):
            key = round(one.y, 3)
            found[key] = min(found.get(key, 1e9), one.x)
    return found if len(found) <= 4 else {}


def below_corner(shape: PlateShape, holes: tuple[Placed, ...], scale: float, reader: Reader) -> float:
    """Room taken below the datum corner by figures across the width that do not fit their arrows [mm]."""
    out = [0.0]
    written = [(y, reader.length(y, 3)) for y in across_places(holes)]
    for y, words in [*written, (shape.width.value, " ".join(size_words(shape.width, reader)))]:
        measured = Text((0, 0), words, SIZE).width
        if y * scale <= measured + 7.0:
            out.append(measured + 2.5)
    return max(out)


def _widths(
    shape: PlateShape, holes: tuple[Placed, ...], scale: float, reader: Reader, long: float, wide: float
) -> list[Mark]:
    """Places across the width, from the front edge, left of the plan."""
    marks: list[Mark] = []
    found = across_places(holes)
    at = -10.0
    for y in [*sorted(found), shape.width.value]:
        whole = y == shape.width.value
        words = " ".join(size_words(shape.width, reader)) if whole else reader.length(y, 3)
        span, measured = y * scale, Text((0, 0), words, SIZE).width
        fits = span > measured + 7.0
        low = -span / 2 + measured / 2 if fits else 7.0 + measured
        text = Text((at - 1.0, low), words, SIZE, turned=True)
        start = 0.0 if whole else found[y] * scale - 3.0
        tail = () if fits else ((at, 0.0), (at, 7.0 + measured))
        marks.append(Dimension((0.0, 0.0), (start, -span), "y", at, y, (text,), outside=not fits, tail=tail))
        at -= STEP + 0.6
    return marks


def hole_rows(shape: PlateShape, reader: Reader) -> list[tuple[str, ...]]:
    """The table of holes: number, face, x and y on that face from its lower left corner, what."""
    rows: list[tuple[str, ...]] = [("No", "face", "x", "y", "hole")]
    rows += [
        (
            str(one.n), one.hole.face, reader.length(one.hole.x, 3), reader.length(one.hole.y, 3),
            plate_hole_words(one.hole, reader),
        )
        for one in placed_holes(shape)
    ]  # fmt: skip
    return rows
