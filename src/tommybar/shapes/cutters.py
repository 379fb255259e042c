"""What is drilled, milled or sawn in a turned part, as the outline each leaves in a slice across the axis.

A slice at z shows a cross hole as a strip, a hole along the axis as a circle,
a flat as what lies beyond it. All are lines and arcs, but for the drill tip of
a blind cross hole: a cone cut beside its axis is a hyperbola, which stands
here as arcs through points on it when the tip does not lie wholly in metal.
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Callable
from dataclasses import dataclass

from tommybar.refusals import Refusal
from tommybar.shapes.curves import ArcPiece, Line, Piece, Point, Ring, closed
from tommybar.shapes.features import (
    BoreKeyway,
    CircleHoles,
    CrossHole,
    CrossSlot,
    Eccentric,
    Flats,
    HeadSlot,
    Keyway,
    Slit,
    TurnedShape,
)
from tommybar.shapes.holes import drawn_hole
from tommybar.shapes.inside import POINT_ANGLE, drawn_bore
from tommybar.shapes.radii import bore_span, outside_radius

SLOPE = math.tan(math.radians(POINT_ANGLE / 2))  # radius of a drill tip per height
TIP_ARCS = 16  # arcs that a hyperbola is drawn with


@dataclass(frozen=True)
class Cutter:
    """One thing that is taken away: where along the axis, where in plan, and its outline there.

    ``splits`` are the places at which its outline changes its law; ``plan``
    is a box (x, y from, x, y to) in the part's frame that holds all of it;
    ``rings`` gives its outlines at z, counter-clockwise; ``of`` is the feature.
    """

    name: str
    start: float
    end: float
    splits: tuple[float, ...]
    plan: tuple[float, float, float, float]
    rings: Callable[[float], list[Ring]]
    of: object


def cutters(shape: TurnedShape, far: float) -> list[Cutter]:
    """Everything taken across or beside the axis; ``far`` is a radius beyond all metal [mm]."""
    found: list[Cutter] = []
    for land in shape.outside:
        if isinstance(land, Eccentric):
            found.append(_beside(land, far))
    for holes in shape.circle_holes:
        found += _circle(holes)
    for hole in shape.cross_holes:
        found += _cross_hole(hole, shape, far)
    for flats in shape.flats:
        found += _flats(flats, far)
    found += [_head_slot(slot, shape, far) for slot in shape.head_slots]
    found += [_cross_slot(slot, far) for slot in shape.cross_slots]
    found += [_keyway(key, shape, far) for key in shape.keyways]
    found += [_bore_keyway(key, shape) for key in shape.bore_keyways]
    found += [_slit(slit, shape, far) for slit in shape.slits]
    return found


def circle_ring(x: float, y: float, radius: float) -> Ring:
    """A whole circle, counter-clockwise."""
    a, b = (x + radius, y), (x - radius, y)
    return (ArcPiece(a, b, (x, y), True), ArcPiece(b, a, (x, y), True))


def _turned(ring: Ring, angle: float) -> Ring:
    c, s = math.cos(math.radians(angle)), math.sin(math.radians(angle))

    def moved(p: Point) -> Point:
        return c * p[0] - s * p[1], s * p[0] + c * p[1]

    return tuple(
        ArcPiece(moved(one.start), moved(one.end), moved(one.centre), one.ccw)
        if isinstance(one, ArcPiece)
        else Line(moved(one.start), moved(one.end))
        for one in ring
    )


def _box(x1: float, y1: float, x2: float, y2: float, angle: float) -> Ring:
    return _turned(closed([(x1, y1), (x2, y1), (x2, y2), (x1, y2)]), angle)


def _plan(x1: float, y1: float, x2: float, y2: float, angle: float) -> tuple[float, float, float, float]:
    points = [piece.start for piece in _box(x1, y1, x2, y2, angle)]
    xs, ys = [p[0] for p in points], [p[1] for p in points]
    return min(xs), min(ys), max(xs), max(ys)


def _beside(land: Eccentric, far: float) -> Cutter:
    """What lies round a cylinder whose axis is beside that of the part: a plate with the land as its hole."""
    t = math.radians(land.angle)
    own = circle_ring(land.throw * math.cos(t), land.throw * math.sin(t), land.dia.target / 2)
    hole = tuple(piece.reversed() for piece in reversed(own))
    sheet = (*closed([(-far, -far), (far, -far), (far, far), (-far, far)]), *hole)
    return Cutter(land.name, land.start, land.end, (), (-far, -far, far, far), lambda _: [sheet], land)


def _circle(holes: CircleHoles) -> list[Cutter]:
    dia, out = drawn_hole(holes.dia, holes.thread), holes.circle / 2
    if out < dia / 2:
        raise Refusal(
            f"{holes.name}: the circle is {holes.circle:g} mm and the holes {dia:g} mm; "
            f"the circle must be at least {dia:g} mm, or the holes reach over the axis.",
            "Give a larger circle, or a bore on the axis.",
        )
    return [
        _one_of_circle(holes, dia / 2, out, math.radians(holes.start_angle + 360 * n / holes.count))
        for n in range(holes.count)
    ]


def _one_of_circle(holes: CircleHoles, radius: float, out: float, t: float) -> Cutter:
    x, y = out * math.cos(t), out * math.sin(t)
    start, end, tip = holes.start, holes.end, radius / SLOPE if holes.blind else 0.0
    low, high = (start, end + tip) if holes.face == "A" else (start - tip, end)
    sunk = holes.sink_dia / 2 if holes.sink_depth > 0 and holes.sink_dia > 2 * radius else 0.0
    floor = start + holes.sink_depth if holes.face == "A" else end - holes.sink_depth

    def rings(z: float) -> list[Ring]:
        if sunk and (z < floor if holes.face == "A" else z > floor):
            return [circle_ring(x, y, sunk)]
        short = max(z - end, start - z, 0.0)
        left = radius - short * SLOPE
        return [circle_ring(x, y, left)] if left > 0 else []

    wide = max(radius, sunk)
    plan = (x - wide, y - wide, x + wide, y + wide)
    splits = (start, end, floor) if sunk else (start, end)
    return Cutter(holes.name, low, high, splits, plan, rings, holes)


def _cross_hole(hole: CrossHole, shape: TurnedShape, far: float) -> list[Cutter]:
    radius = drawn_hole(hole.dia, hole.thread) / 2
    length = shape.length.value
    if not 0 < hole.z - radius < hole.z + radius < length:
        raise Refusal(
            f"{hole.name} is {2 * radius:g} mm in diameter at {hole.z:g} mm from face A; it must lie "
            f"between the faces, 0 and {length:g} mm.",
            "Move it along the part.",
        )
    outside = outside_radius(shape, hole.z)
    begin = -far if hole.walls == 2 else 0.0
    if hole.depth is not None:
        begin = outside - hole.depth
    found = [_strip(hole, shape, begin, radius, far)]
    if hole.depth is not None:
        found.append(_tip(hole, begin, radius))
    if hole.sink_depth > 0 and hole.sink_dia > 2 * radius:
        found.append(_strip(hole, shape, outside - hole.sink_depth, hole.sink_dia / 2, far))
    return found


def _strip(hole: CrossHole, shape: TurnedShape, begin: float, radius: float, far: float) -> Cutter:
    """A round hole from ``begin`` outwards."""

    def rings(z: float) -> list[Ring]:
        off = abs(z - hole.z)
        half = math.sqrt((radius - off) * (radius + off))
        return [_box(begin, hole.offset - half, far, hole.offset + half, hole.angle)]

    plan = _plan(begin, hole.offset - radius, far, hole.offset + radius, hole.angle)
    splits = (*_graze(shape, hole.z, radius, hole.offset), hole.z)
    return Cutter(hole.name, hole.z - radius, hole.z + radius, splits, plan, rings, hole)


@dataclass(frozen=True)
class DrillTip:
    """The cone below a blind cross hole: where its base lies along the hole from the part's axis."""

    hole: CrossHole
    begin: float
    radius: float


def _tip(hole: CrossHole, begin: float, radius: float) -> Cutter:
    def rings(z: float) -> list[Ring]:
        return [_turned(_hyperbola(begin, hole.offset, radius, abs(z - hole.z)), hole.angle)]

    high = radius / SLOPE
    plan = _plan(begin - high, hole.offset - radius, begin, hole.offset + radius, hole.angle)
    own = DrillTip(hole, begin, radius)
    return Cutter(hole.name, hole.z - radius, hole.z + radius, (hole.z,), plan, rings, own)


def _graze(shape: TurnedShape, z: float, radius: float, offset: float) -> list[float]:
    """Where the edges of a round strip touch the cylinders of the part."""
    radii = [drawn_bore(bore) / 2 for bore in shape.bores]
    radii += [land.start_dia / 2 for land in shape.outside] + [one.floor / 2 for one in shape.grooves]
    found = []
    for r in radii:
        for half in (r - offset, r + offset, offset - r):
            if 0 < half < radius:
                off = math.sqrt((radius - half) * (radius + half))
                found += [z - off, z + off]
    return found


def _hyperbola(begin: float, offset: float, radius: float, off: float) -> Ring:
    """A drill tip ``off`` beside the hole's axis: |y| below the root of rho^2 - off^2, rho falling to its point."""
    high = radius / SLOPE
    if off <= 0:
        return closed([(begin - high, offset), (begin, offset - radius), (begin, offset + radius)])
    # rho = off cosh u, so that y = off sinh u: even steps of u draw the curve evenly
    most = math.acosh(radius / off)

    def place(u: float) -> Point:
        return begin - high + off * math.cosh(u) / SLOPE, offset + off * math.sinh(u)

    steps = [most * (1 - n / TIP_ARCS) for n in range(2 * TIP_ARCS + 1)]
    pieces: list[Piece] = []
    for a, b in itertools.pairwise(steps):
        pieces.append(_through(place(a), place((a + b) / 2), place(b)))
    pieces.append(Line(pieces[-1].end, pieces[0].start))
    return tuple(pieces)


def _through(a: Point, b: Point, c: Point) -> Piece:
    """The arc from a over b to c, or the line when they lie straight."""
    u, v = (b[0] - a[0], b[1] - a[1]), (c[0] - a[0], c[1] - a[1])
    cross = u[0] * v[1] - u[1] * v[0]
    long = math.hypot(*v)
    if abs(cross) < 1e-7 * long * long:
        return Line(a, c)
    uu, vv = u[0] ** 2 + u[1] ** 2, v[0] ** 2 + v[1] ** 2
    centre = (
        a[0] + (v[1] * uu - u[1] * vv) / (2 * cross),
        a[1] + (u[0] * vv - v[0] * uu) / (2 * cross),
    )
    return ArcPiece(a, c, centre, ccw=cross > 0)


def _flats(flats: Flats, far: float) -> list[Cutter]:
    return [_flat(flats, flats.angle + 360 * n / flats.count, far) for n in range(flats.count)]


def _flat(flats: Flats, angle: float, far: float) -> Cutter:
    ring = _box(flats.aimed, -far, 2 * far, far, angle)
    plan = _plan(flats.aimed, -far, 2 * far, far, angle)
    return Cutter(flats.name, flats.start, flats.end, (), plan, lambda _: [ring], flats)


def _head_slot(slot: HeadSlot, shape: TurnedShape, far: float) -> Cutter:
    length, half = shape.length.value, slot.width.target / 2
    start, end = (0.0, slot.depth) if slot.face == "A" else (length - slot.depth, length)
    ring = _box(-far, -half, far, half, slot.angle)
    return Cutter(
        slot.name, start, end, (), _plan(-far, -half, far, half, slot.angle), lambda _: [ring], slot
    )


def _stadium_half(z: float, start: float, end: float, half: float) -> float:
    """Half the width at z of a slot with half-round ends."""
    off = max(start + half - z, z - end + half, 0.0)
    return math.sqrt(max(0.0, (half - off) * (half + off)))


def _cross_slot(slot: CrossSlot, far: float) -> Cutter:
    half = slot.width.target / 2
    near = 0.0 if slot.walls == 1 else -far

    def rings(z: float) -> list[Ring]:
        wide = _stadium_half(z, slot.start, slot.end, half)
        return [_box(near, -wide, far, wide, slot.angle)] if wide > 0 else []

    splits = (slot.start + half, slot.end - half)
    plan = _plan(near, -half, far, half, slot.angle)
    return Cutter(slot.name, slot.start, slot.end, splits, plan, rings, slot)


def _keyway(key: Keyway, shape: TurnedShape, far: float) -> Cutter:
    half, middle = key.width.target / 2, (key.start + key.end) / 2
    floor = outside_radius(shape, middle) - key.depth
    plan = _plan(floor, -half, far, half, key.angle)
    if key.form == "sunk":

        def sunk(z: float) -> list[Ring]:
            wide = _stadium_half(z, key.start, key.end, half)
            return [_box(floor, -wide, far, wide, key.angle)] if wide > 0 else []

        splits: tuple[float, ...] = (key.start + half, key.end - half)
        return Cutter(key.name, key.start, key.end, splits, plan, sunk, key)
    radius = key.cutter / 2
    low, high = (middle, middle) if key.form == "woodruff" else (key.start, key.end)

    def milled(z: float) -> list[Ring]:
        off = max(low - z, z - high, 0.0)
        if off >= radius:
            return []
        level = floor + radius - math.sqrt((radius - off) * (radius + off))
        return [_box(level, -half, far, half, key.angle)] if level < far else []

    splits = (low, high)
    return Cutter(key.name, low - radius, high + radius, splits, plan, milled, key)


def _bore_keyway(key: BoreKeyway, shape: TurnedShape) -> Cutter:
    bore = next((one for one in shape.bores if one.name == key.on), None)
    if bore is None:
        raise Refusal(f'{key.name} is cut along "{key.on}"; the part has no bore of that name.')
    start, end = bore_span(bore, shape)
    half, out = key.width.target / 2, drawn_bore(bore) / 2 + key.depth
    ring = _box(0.0, -half, out, half, key.angle)
    return Cutter(key.name, start, end, (), _plan(0.0, -half, out, half, key.angle), lambda _: [ring], key)


def _slit(slit: Slit, shape: TurnedShape, far: float) -> Cutter:
    length = shape.length.value
    deep = length if slit.depth is None else slit.depth
    start, end = (0.0, deep) if slit.face == "A" else (length - deep, length)
    near, half = 0.0 if slit.walls == 1 else -far, slit.width / 2
    ring = _box(near, -half, far, half, slit.angle)
    return Cutter(
        slit.name, start, end, (), _plan(near, -half, far, half, slit.angle), lambda _: [ring], slit
    )
