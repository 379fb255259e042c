"""The grip in section, drawn from the dry run: jaws, metal, what this card takes away, what sticks out."""

from __future__ import annotations

from shapely import LineString, Polygon, box
from shapely.geometry.base import BaseGeometry
from shapely.ops import linemerge, unary_union

from tommybar.dryrun.runs import CardRun, Ring
from tommybar.making.cards import Card
from tommybar.pack.sheet import Area, Dimension, Fill, Kind, Line, Mark, Point, Text
from tommybar.pack.units import Reader

TOLERANCE = 0.01  # how near two surfaces must lie to be the same one [mm]
SIZE = 4.25


def _shape(rings: tuple[Ring, ...]) -> BaseGeometry:
    return unary_union([Polygon(ring).buffer(0) for ring in rings if len(ring) > 2])


def _pieces(shape: BaseGeometry) -> list[BaseGeometry]:
    return [one for one in getattr(shape, "geoms", [shape]) if not one.is_empty]


def _points(line: BaseGeometry) -> tuple[Point, ...]:
    return tuple((float(x), float(y)) for x, y in line.coords)


def grip_marks(
    card: Card, run: CardRun, length: float, width: float, height: float, reader: Reader
) -> list[Mark]:
    """The sketch within (0, 0) to (width, height); the free end is at the right."""
    before, after = before_and_after(run)
    fixed = [(name, Polygon(ring)) for name, ring in run.keep_out if len(ring) > 2]
    top = before.bounds[2]
    front = top - card.hold.sticks_out
    back = front - max(card.hold.length, 8.0) - 8.0
    if card.hold.drive is not None:
        back = card.hold.drive.end - 20.0
    left = max(min([before.bounds[0], *(p.bounds[0] for _, p in fixed)]), back)
    right = max([top, *(p.bounds[2] for _, p in fixed)]) + 1.0
    if card.hold.tail is not None:  # of centre and tailstock only as much as shows where they stand
        right = min(right, max(top, card.hold.tail.at) + max(12.0, 0.25 * (top - left)))
    tall = max([before.bounds[3], *(min(p.bounds[3], before.bounds[3] * 1.3 + 9) for _, p in fixed)])
    scale = min((width - 8.0) / (right - left), (height - 21.0) / (2 * tall), 4.0)
    window = box(left, 0.0, right, tall)
    x0 = (width - (right - left) * scale) / 2 - left * scale
    axis = 2.0 + tall * scale
    marks = _metal(before, after, window, x0, axis, scale)
    for _, shape in fixed:
        marks += _fill(shape.intersection(window), "dark", "thick", x0, axis, scale)
    if card.hold.drive is not None and card.hold.drive.mandrel > 0:  # in the bore it keeps no tool out
        marks += _fill(box(front, 0.0, top, card.hold.drive.mandrel / 2), "dark", "thick", x0, axis, scale)
    marks += _cut_lines(before, after, window, x0, axis, scale)
    marks.append(Line(((x0 + left * scale - 2.0, axis), (x0 + right * scale + 2.0, axis)), "chain"))
    marks += _datum(card, length, left, x0, axis, scale, after)
    marks += _sticks_out(card, front, top, x0, axis, scale, tall, width, reader)
    return marks


def after_marks(run: CardRun, width: float, height: float) -> list[Mark]:
    """The work as it stands after the card, what was cut drawn thick; within (0, 0) to (width, height)."""
    before, after = before_and_after(run)
    if after.is_empty:
        return []
    left, _, right, tall = after.bounds
    scale = min((width - 10.0) / (right - left), (height - 2.0) / (2 * tall), 4.0)
    x0, axis = (width - (right - left) * scale) / 2 - left * scale, height / 2
    window = box(left, 0.0, right, tall)
    marks = _metal(after, after, window, x0, axis, scale)
    marks += _cut_lines(before, after, window, x0, axis, scale)
    marks.append(Line(((x0 + left * scale - 3.0, axis), (x0 + right * scale + 3.0, axis)), "chain"))
    return marks


def before_and_after(run: CardRun) -> tuple[BaseGeometry, BaseGeometry]:
    """The work before the card and after its last step."""
    before = _shape(run.before)
    return before, _shape(run.steps[-1].after) if run.steps else before


def _metal(
    before: BaseGeometry, after: BaseGeometry, window: BaseGeometry, x0: float, axis: float, scale: float
) -> list[Mark]:
    """What is taken away in grey, what stays hatched."""
    return [
        *_fill(before.intersection(window), "grey", "thin", x0, axis, scale),
        *_fill(after.intersection(window), "white", None, x0, axis, scale),
        *_fill(after.intersection(window), "hatch", "thick", x0, axis, scale),
    ]


def _paper(points: tuple[Point, ...], side: float, x0: float, axis: float, scale: float) -> tuple[Point, ...]:
    return tuple((x0 + z * scale, axis - side * r * scale) for z, r in points)


def _fill(
    shape: BaseGeometry, tone: Fill, kind: Kind | None, x0: float, axis: float, scale: float
) -> list[Mark]:
    marks: list[Mark] = []
    for piece in _pieces(shape):
        if piece.geom_type == "Polygon" and piece.area > 1e-6:
            ring = tuple((float(x), float(y)) for x, y in piece.exterior.coords[:-1])
            marks += [Area((_paper(ring, side, x0, axis, scale),), tone, kind, 2.2) for side in (1.0, -1.0)]
    return marks


def _cut_lines(
    before: BaseGeometry, after: BaseGeometry, window: BaseGeometry, x0: float, axis: float, scale: float
) -> list[Mark]:
    marks: list[Mark] = []
    for line in cut_surfaces(before, after):
        for piece in _pieces(line.intersection(window)):
            if piece.geom_type == "LineString" and piece.length * scale > 0.3:
                ways = [_paper(_points(piece), side, x0, axis, scale) for side in (1.0, -1.0)]
                marks += [Line(way, "cut") for way in ways]
    return marks


def cut_surfaces(before: BaseGeometry, after: BaseGeometry) -> list[BaseGeometry]:
    """Those surfaces of the work after the card that were not there before."""
    new = after.boundary.difference(before.boundary.buffer(TOLERANCE))
    new = new.difference(LineString([(-1e4, 0.0), (1e4, 0.0)]).buffer(TOLERANCE))
    merged = linemerge(new) if new.geom_type == "MultiLineString" else new
    return [one for one in _pieces(merged) if one.length > 0.05]


def _datum(
    card: Card, length: float, left: float, x0: float, axis: float, scale: float, after: BaseGeometry
) -> list[Mark]:
    """A dot on face A, when it is in the picture."""
    z = 0.0 if card.free_end == "A" else -length
    if not left - 1e-6 <= z:
        return []
    bounds = after.intersection(box(z - 0.05, 0.0, z + 0.05, 1e4)).bounds if not after.is_empty else ()
    if not bounds:
        return []
    r = bounds[1] + 0.5 * (bounds[3] - bounds[1])
    x, y = x0 + z * scale, axis - r * scale
    if card.free_end == "A":
        if card.hold.tail is not None:  # a centre stands before the face
            return [_dot(x, y), Text((x, axis - bounds[3] * scale - 2.6), "A", SIZE, True, "middle")]
        return [_dot(x, y), Text((x + 2.4, y + 1.4), "A", SIZE, True)]
    return [_dot(x, y)]


def _dot(x: float, y: float) -> Mark:
    ring = tuple((x + 1.3 * a, y + 1.3 * b) for a, b in _CIRCLE)
    return Area((ring,), "black", None)


_CIRCLE = (
    (1.0, 0.0), (0.924, 0.383), (0.707, 0.707), (0.383, 0.924), (0.0, 1.0), (-0.383, 0.924), (-0.707, 0.707),
    (-0.924, 0.383), (-1.0, 0.0), (-0.924, -0.383), (-0.707, -0.707), (-0.383, -0.924), (0.0, -1.0),
    (0.383, -0.924), (0.707, -0.707), (0.924, -0.383),
)  # fmt: skip


def _sticks_out(
    card: Card,
    front: float,
    top: float,
    x0: float,
    axis: float,
    scale: float,
    tall: float,
    width: float,
    reader: Reader,
) -> list[Mark]:
    words = f"sticks out {reader.length(card.hold.sticks_out, 1)}"
    wide = Text((0, 0), words, SIZE, True).width
    a, b = x0 + front * scale, x0 + top * scale
    level = axis + tall * scale + 6.0
    start = min(max((a + b) / 2 - wide / 2, 0.0), width - wide)
    text = Text((start, level + 5.2), words, SIZE, True)
    low = axis + tall * scale
    return [
        Dimension((a, low), (b, low), "x", level, card.hold.sticks_out, (text,), outside=b - a < 9.0),
    ]
