"""Holes of a turned part that meet inside it: set screws on pins, cross holes on holes of a circle."""

from __future__ import annotations

import math
from dataclasses import dataclass
from itertools import combinations

from tommybar.checks.checked import Checked, at_least
from tommybar.checks.walls import LEAST_WALL
from tommybar.design.model import Part, SizedDesign
from tommybar.findings import Finding
from tommybar.shapes.features import CrossHole, TurnedShape
from tommybar.shapes.holes import drawn_hole
from tommybar.shapes.radii import bore_radius, outside_radius
from tommybar.shop.model import Shop

REMEDY = "Clock one of them a quarter turn on, or move it along the axis."
Point = tuple[float, float, float]


@dataclass(frozen=True)
class _Hole:
    """The stretch of a hole's axis that lies in metal, and its radius [mm]."""

    name: str
    start: Point
    end: Point
    radius: float
    across: bool


def look(design: SizedDesign, shop: Shop) -> Checked:
    """Every pair of holes of every turned part, of which one at least goes across the axis."""
    found: list[Finding | None] = []
    for part in design.parts:
        if isinstance(part.shape, TurnedShape):
            holes = [*_across(part.shape), *_along(part.shape)]
            meant = {frozenset((hole.name, hole.into)) for hole in part.shape.cross_holes if hole.into}
            for one, other in combinations(holes, 2):
                if (one.across or other.across) and not {frozenset((one.name, other.name))} & meant:
                    found.append(_pair(part, one, other) if one.name != other.name else None)
            found += [_meets(part, part.shape, hole) for hole in part.shape.cross_holes]
    return Checked(tuple(dict.fromkeys(one for one in found if one is not None)))


def _pair(part: Part, one: _Hole, other: _Hole) -> Finding | None:
    """Metal between two holes: at least 1.5 mm beside what is drilled."""
    left = _left(one, other)
    words = f"{one.name} and {other.name}"
    if left < 0:
        return Finding(
            682,
            "stop",
            f"{words} run {-left:.2f} mm into each other.",
            part.name,
            one.name,
            figure=f"{left:.2f} mm",
            bound=f"{LEAST_WALL:.2f} mm",
            remedy=REMEDY,
            source="geometry of the part",
        )
    place = {"part": part.name, "feature": one.name, "remedy": REMEDY}
    return at_least(683, f"Little metal between {words}", left, LEAST_WALL, **place)


def _meets(part: Part, shape: TurnedShape, hole: CrossHole) -> Finding | None:
    """A stop where a hole is to run into another cross hole and does not."""
    holes = _across(shape)
    mine = [one for one in holes if one.name == hole.name]
    others = [one for one in holes if one.name == hole.into and one.name != hole.name]
    left = min((_left(one, other) for one in mine for other in others), default=-1.0)
    if left < 0:
        return None
    return Finding(
        622,
        "stop",
        f"{hole.name} is to go into {hole.into} and stays {left:.2f} mm away from it.",
        part.name,
        hole.name,
        figure=f"{left:.2f} mm",
        bound="0.00 mm",
        remedy="Move the hole, make it deeper, or name the hole that it meets.",
        source="geometry of the part",
    )


def _left(one: _Hole, other: _Hole) -> float:
    """Metal between two holes; below 0 where they meet [mm]."""
    return distance(one.start, one.end, other.start, other.end) - one.radius - other.radius


def _across(shape: TurnedShape) -> list[_Hole]:
    found = []
    for hole in shape.cross_holes:
        out, inner = outside_radius(shape, hole.z), bore_radius(shape, hole.z)
        inner = max(inner, out - hole.depth) if hole.depth is not None else inner
        radius = drawn_hole(hole.dia, hole.thread) / 2
        walls = (1.0, -1.0) if hole.walls == 2 else (1.0,)
        for side in walls:
            ends = [_at(hole.angle, side * reach, hole.offset, hole.z) for reach in (inner, out)]
            found.append(_Hole(hole.name, ends[0], ends[1], radius, True))
    return found


def _along(shape: TurnedShape) -> list[_Hole]:
    found = []
    for holes in shape.circle_holes:
        radius = drawn_hole(holes.dia, holes.thread) / 2
        for n in range(holes.count):
            angle = holes.start_angle + 360 * n / holes.count
            ends = [_at(angle, holes.circle / 2, 0.0, z) for z in (holes.start, holes.end)]
            found.append(_Hole(holes.name, ends[0], ends[1], radius, False))
    return found


def _at(angle: float, out: float, aside: float, z: float) -> Point:
    a = math.radians(angle)
    return out * math.cos(a) - aside * math.sin(a), out * math.sin(a) + aside * math.cos(a), z


def distance(a: Point, b: Point, c: Point, d: Point) -> float:
    """Least distance of two stretches a-b and c-d [mm]."""
    u, v, w = _less(b, a), _less(d, c), _less(a, c)
    uu, uv, vv, uw, vw = _dot(u, u), _dot(u, v), _dot(v, v), _dot(u, w), _dot(v, w)
    places = [(0.0, _along_of(vw, vv)), (1.0, _along_of(vw + uv, vv))]
    places += [(_along_of(-uw, uu), 0.0), (_along_of(uv - uw, uu), 1.0)]
    det = uu * vv - uv * uv
    if det > 1e-12:
        s, t = (uv * vw - vv * uw) / det, (uu * vw - uv * uw) / det
        if 0 <= s <= 1 and 0 <= t <= 1:
            places.append((s, t))
    return min(math.dist(_on(a, u, s), _on(c, v, t)) for s, t in places)


def _along_of(top: float, below: float) -> float:
    return min(1.0, max(0.0, top / below)) if below > 1e-12 else 0.0


def _on(a: Point, u: Point, s: float) -> Point:
    return a[0] + s * u[0], a[1] + s * u[1], a[2] + s * u[2]


def _less(a: Point, b: Point) -> Point:
    return a[0] - b[0], a[1] - b[1], a[2] - b[2]


def _dot(a: Point, b: Point) -> float:
    return a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
