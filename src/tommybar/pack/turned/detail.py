"""Details at a larger standard scale (ISO 5455): a small stretch of the outline in a circle with a letter."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

from shapely import LineString, Polygon
from shapely import Point as Spot

from tommybar.pack.profile import nominal
from tommybar.pack.sheet import Arc, Area, Dimension, Line, Mark, Point, Text
from tommybar.pack.turned.drawn import View
from tommybar.pack.turned.metal import chords, cut, solid
from tommybar.pack.turned.place import above_marks
from tommybar.pack.turned.saying import Callout, Detailed, Measured, Row
from tommybar.shapes.features import TurnedShape

ENLARGED = (2.0, 5.0, 10.0, 20.0, 50.0)  # ISO 5455
SMALL = 2.0  # a groove narrower than this on paper is shown in a detail, where there is room [mm]
LEAST = 0.7  # and narrower than this in any case [mm]
WANTED = 5.0  # how wide it shall be there, at least [mm]
LANE = 8.0  # from the circle to a width below it, and between widths [mm]
FIGURE = 4.25  # size of the figure of a width [mm]
ROOM = 26.0  # largest radius of a detail's circle [mm]


@dataclass(frozen=True)
class Detail:
    """One detail: its place on the part, its scale and what is said in it."""

    letter: str
    z: float
    r: float
    radius: float  # of the circle [part mm]
    scale: float
    callouts: tuple[Callout, ...]


def details_of(
    callouts: list[Callout], scale: float, letters: list[str], least: float = SMALL
) -> tuple[list[Callout], list[Detail]]:
    """Callouts that stay in the view, and details for those too small there; near ones share a detail."""
    small = [one for one in callouts if one.wide and one.wide * scale < least and one.side == "above"]
    details: list[Detail] = []
    taken: list[Callout] = []
    for one in small:
        if one in taken:
            continue
        radius = max(one.wide * 1.3, 0.4)
        group = [
            other for other in callouts
            if other.side == "above" and other not in taken and math.dist((one.z, one.r), (other.z, other.r)) < radius * 0.8
            and (other.wide or (other.measured is None))
        ]  # fmt: skip
        enlarged = next((s for s in ENLARGED if one.wide * s >= WANTED and s > scale), ENLARGED[-1])
        while radius * enlarged > ROOM and enlarged > ENLARGED[0]:
            enlarged = ENLARGED[ENLARGED.index(enlarged) - 1]
        if enlarged <= scale or not letters:
            continue
        taken += group
        details.append(Detail(letters.pop(0), one.z, one.r, radius, enlarged, tuple(map(_in_detail, group))))
    stay = [one for one in callouts if one not in taken]
    for detail in details:
        stay.append(
            Callout(
                detail.z, detail.r + detail.radius, (Row(detail.letter, bold=True),), feature=detail.letter
            )
        )
    return stay, details


def _in_detail(one: Callout) -> Callout:
    """A callout as it stands in a detail, its width left to a dimension."""
    if one.detailed is None:
        return one
    return replace(one, rows=one.detailed.rows, printed=one.detailed.printed)


def circle_marks(details: list[Detail], scale: float) -> list[Mark]:
    """The circles round the places in the main view."""
    return [Arc((one.z * scale, -one.r * scale), one.radius * scale, "thin") for one in details]


def detail_marks(shape: TurnedShape, detail: Detail, view: View, ratio: str) -> list[Mark]:
    """The detail with its centre at (0, 0): outline, cut metal, words over it, its letter and scale below."""
    outline = solid(nominal(shape)) if view == "outside" else None
    rings = chords((outline,)) if outline else chords(cut(nominal(shape)))
    s = detail.scale
    window = Spot(detail.z, detail.r).buffer(detail.radius, 64)
    marks: list[Mark] = []

    def to(point: tuple[float, ...]) -> tuple[float, float]:
        return ((point[0] - detail.z) * s, -(point[1] - detail.r) * s)

    for ring in rings:
        if outline is None:
            piece = Polygon(ring).intersection(window)
            for part in getattr(piece, "geoms", [piece]):
                if part.area > 1e-9:
                    marks.append(Area((tuple(map(to, part.exterior.coords[:-1])),), "hatch", None))
        edge = LineString([*ring, ring[0]]).intersection(window)
        for part in getattr(edge, "geoms", [edge]):
            points = list(part.coords) if part.geom_type == "LineString" else []
            if len(points) > 1 and max(p[1] for p in points) > 1e-6:
                marks.append(Line(tuple(map(to, points)), "thick"))
    top = detail.radius * s
    marks.append(Arc((0.0, 0.0), top, "thin"))
    moved = [
        replace(one, z=one.z - detail.z, r=one.r - detail.r, measured=_moved(one.measured, detail))
        for one in detail.callouts
        if one.rows
    ]
    placed = above_marks(moved, s, -top, -max(top, 30.0), max(top, 30.0), s)
    marks += placed[0] if placed else []
    level = top
    for one in detail.callouts:
        if one.detailed is not None:
            level += LANE
            marks.append(_width(one.detailed, to(one.detailed.start), to(one.detailed.end), level, s))
    marks.append(Text((0.0, level + 7.0), f"{detail.letter}  ({ratio})", 5.0, True, "middle"))
    return marks


def _moved(measured: Measured | None, detail: Detail) -> Measured | None:
    """What a callout measures, about the middle of the detail; an angle is only told there."""
    if measured is None or measured.kind == "angle":
        return None
    z, r = measured.centre
    return replace(measured, centre=(z - detail.z, r - detail.r))


def _width(one: Detailed, a: Point, b: Point, level: float, scale: float) -> Dimension:
    """The width of a groove below the detail, its figure between the arrows or left of them."""
    text = Text((0.0, 0.0), one.width, FIGURE)
    outside = b[0] - a[0] < text.width + 7.0
    value = one.end[0] - one.start[0]
    if not outside:
        text = replace(text, at=((a[0] + b[0]) / 2, level - 1.0), anchor="middle")
        return Dimension(a, b, "x", level, value, (text,), view=scale)
    left = a[0] - 7.0
    text = replace(text, at=(left, level - 1.0), anchor="end")
    tail = ((a[0], level), (left - text.width, level))
    return Dimension(a, b, "x", level, value, (text,), outside=True, tail=tail, view=scale)
