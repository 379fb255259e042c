"""What parts of sheet and wire weigh, by their stated models.

Bent strip: flats with their holes, and each bend a ring sector of the strip's
section (the drawn shape; bending moves a little metal that this leaves out:
with the neutral fibre at 0.44 of the thickness the sector is 0.06 angle t^2
wider than the flat it came from). Rings: the section carried round (Pappus).
Springs and wire: the length of wire times its section; what is ground off
the ends and the hooks are not counted.

Frames: bent strip lies with its left end flat at the origin, x along it, y
across, z up from the bottom face. Rings and springs: z along the axis. Wire: in
the plane of x and y, its first leg along x.
"""

from __future__ import annotations

import math

from tommybar.refusals import Refusal
from tommybar.shapes.developed import ring_length, spring_length, spring_runs, wire_length
from tommybar.shapes.features import PlateHole, PlateShape, RolledRing, SheetShape, SpringShape, WireShape
from tommybar.shapes.moments import Moments
from tommybar.shapes.oblique_holes import Oblique, cone
from tommybar.shapes.outlines import Arc, AreaMoments, Line, Loop, area_moments, circle, plate_loop, rectangle
from tommybar.shapes.plan_regions import boundary, chords, encloses
from tommybar.shapes.plate_features import profile_of_hole


def sheet_moments(shape: SheetShape) -> Moments:
    """Moments of a bent strip; see the head of this module for its model."""
    t, k = shape.thickness.value, shape.neutral
    blank = PlateShape(shape.length, shape.width, shape.thickness, 0.0, shape.holes, shape.outline)
    outline = plate_loop(blank)
    x, z, lean, start = 0.0, 0.0, 0.0, 0.0
    body = Moments()
    for bend in sorted(shape.bends, key=lambda one: one.at):
        body += _flat(blank, outline, start, bend.at, (x, z, lean))
        x, z = x + (bend.at - start) * math.cos(lean), z + (bend.at - start) * math.sin(lean)
        low, high = _across(outline, bend.at, bend.name)
        turn, side = math.radians(bend.angle), math.copysign(1.0, bend.angle)
        up = t + bend.radius if bend.angle > 0 else -bend.radius  # of the bend's centre above the bottom face
        cx, cz = x - up * math.sin(lean), z + up * math.cos(lean)
        first = lean - side * math.pi / 2
        body += _swept_across(_sector(cx, cz, bend.radius, bend.radius + t, first, turn), low, high)
        lean += turn
        x, z = cx + up * math.sin(lean), cz - up * math.cos(lean)
        start = bend.at + abs(turn) * (bend.radius + k * t)
    return body + _flat(blank, outline, start, shape.length.value, (x, z, lean))


def _sector(x: float, y: float, inner: float, outer: float, first: float, turn: float) -> Loop:
    if turn < 0:
        first, turn = first + turn, -turn
    out, into = Arc(x, y, outer, first, turn), Arc(x, y, inner, first + turn, -turn)
    if inner <= 0:
        return (out, Line(*out.at(1.0), x, y), Line(x, y, *out.at(0.0)))
    return (out, Line(*out.at(1.0), *into.at(0.0)), into, Line(*into.at(1.0), *out.at(0.0)))


def _swept_across(loop: Loop, low: float, high: float) -> Moments:
    """A loop in (x, z) carried across from y = low to y = high."""
    area, wide = area_moments(loop), high - low
    return Moments(
        area.area * wide,
        area.x * wide,
        area.area * (high**2 - low**2) / 2,
        area.y * wide,
        area.xx * wide,
        area.area * (high**3 - low**3) / 3,
        area.yy * wide,
    )


def _flat(
    blank: PlateShape, outline: Loop, start: float, end: float, at: tuple[float, float, float]
) -> Moments:
    """A flat stretch of the blank with its holes, where the bends before it have carried it."""
    if end - start < 1e-9:
        return Moments()
    t, wide = blank.thickness.value, blank.width.value
    window = rectangle(start, -1.0, end, wide + 1.0)
    through = [hole for hole in blank.holes if start < hole.x < end]
    holes = [circle(hole.x, hole.y, hole.dia.target / 2) for hole in through]

    def metal(x: float, y: float) -> bool:
        return start < x < end and encloses(outline, x, y) and not any(encloses(one, x, y) for one in holes)

    pieces = [*outline, *window, *(piece for one in holes for piece in one)]
    body = _carried(area_moments(boundary(pieces, metal)), t, start, at)
    for hole in through:
        body -= _sink(hole, blank, start, at)
    return body


def _carried(area: AreaMoments, t: float, start: float, at: tuple[float, float, float]) -> Moments:
    """A flat of thickness t, drawn from its bottom face, leaned about y and moved."""
    x0, z0, lean = at
    c, s = math.cos(lean), math.sin(lean)
    v = area.area * t
    sx, sz = (area.x - start * area.area) * t, area.area * t * t / 2
    xx = (area.xx - 2 * start * area.x + start**2 * area.area) * t
    zz, xz = area.area * t**3 / 3, (area.x - start * area.area) * t * t / 2
    gx, gz = c * sx - s * sz, s * sx + c * sz
    gxx, gzz = c * c * xx - 2 * c * s * xz + s * s * zz, s * s * xx + 2 * c * s * xz + c * c * zz
    return Moments(
        v,
        x0 * v + gx,
        area.y * t,
        z0 * v + gz,
        x0 * x0 * v + 2 * x0 * gx + gxx,
        area.yy * t,
        z0 * z0 * v + 2 * z0 * gz + gzz,
    )


def _sink(hole: PlateHole, blank: PlateShape, start: float, at: tuple[float, float, float]) -> Moments:
    """What a counterbore or countersink takes beyond its hole, on whichever face of the sheet."""
    total, radius, t = Moments(), hole.dia.target / 2, blank.thickness.value
    if hole.depth is not None or hole.face not in ("top", "bottom"):
        raise Refusal(
            f"{hole.name} is no hole right through the sheet from its top or bottom.", "Say through: true."
        )
    x0, z0, lean = at
    c, s = math.cos(lean), math.sin(lean)
    up = t if hole.face == "top" else 0.0
    x = hole.x if hole.face == "top" else blank.length.value - hole.x
    spot = (x0 + c * (x - start) - s * up, hole.y, z0 + s * (x - start) + c * up)
    into = -1.0 if hole.face == "top" else 1.0
    body = Oblique(spot, (-s * into, 0.0, c * into), (0.0, 1.0, 0.0), profile_of_hole(hole, blank))
    for first, r1, end, r2 in body.stretches[1:]:
        total += cone(body, (first, r1, end, r2)) - cone(body, (first, radius, end, radius))
    return total


def _across(outline: Loop, x: float, name: str) -> tuple[float, float]:
    """From where to where the blank reaches across at a bend."""
    upright = tuple(
        Line(one.y1, one.x1, one.y2, one.x2)
        if isinstance(one, Line)
        else Arc(one.y, one.x, one.radius, math.pi / 2 - one.start, -one.turn)
        for one in outline
    )
    found = chords(upright, x)
    if len(found) != 1:
        raise Refusal(
            f"{name} begins {x:g} mm along the blank, where the blank is not one strip.",
            "Move the bend, or the cut-out there.",
        )
    return found[0]


def ring_moments(shape: RolledRing) -> Moments:
    """Moments of a rolled ring: its section carried round the axis, less its gap, which looks along x."""
    inner, t = shape.inside.target / 2, shape.thickness
    middle = inner + t / 2
    turn = ring_length(shape) / middle
    half = math.pi - turn / 2  # of the gap
    if not shape.round:
        area = area_moments(
            _sector(0.0, 0.0, inner, inner + t, half, turn)
            if shape.gap > 0
            else (*circle(0.0, 0.0, inner + t), Arc(0.0, 0.0, inner, 0.0, -2 * math.pi))
        )
        high = shape.width
        v = area.area * high
        return Moments(
            v, area.x * high, area.y * high, v * high / 2, area.xx * high, area.yy * high, v * high**2 / 3
        )
    return _bent_rod(t / 2, middle, turn).turned(180.0).shifted(dz=t / 2)


def _bent_rod(a: float, radius: float, turn: float) -> Moments:
    """Round wire of radius a bent round z through ``turn`` [rad], symmetric about the x axis."""
    section = math.pi * a * a
    v = section * radius * turn
    first = section * (radius**2 + a * a / 4) * 2 * math.sin(turn / 2)
    cube = section * (radius**3 + 3 * radius * a * a / 4)
    return Moments(
        v,
        first,
        0.0,
        0.0,
        cube * (turn + math.sin(turn)) / 2,
        cube * (turn - math.sin(turn)) / 2,
        v * a * a / 4,
    )


def spring_moments(shape: SpringShape) -> Moments:
    """Moments of a spring: wire times section along the helix, its mass spread evenly round the axis.

    The legs of a torsion spring count in the volume, at the coil's own radius and middle.
    """
    a, radius = shape.wire / 2, (shape.outside.target - shape.wire) / 2
    section = math.pi * a * a
    body, z = Moments(), a
    for number, pitch in spring_runs(shape):
        v = section * number * math.hypot(2 * math.pi * radius, pitch)
        across = v * (radius**2 + 3 * a * a / 4) / 2
        end = z + number * pitch
        along = v * ((z * z + z * end + end * end) / 3 + a * a / 4)
        body += Moments(v, 0.0, 0.0, v * (z + end) / 2, across, across, along)
        z = end
    coils = body.volume
    grown = section * spring_length(shape) / coils
    return Moments(*(one * grown for one in (coils, 0.0, 0.0, body.z, body.xx, body.yy, body.zz)))


def wire_moments(shape: WireShape) -> Moments:
    """Moments of bent wire: rods, and bends as sectors of a torus."""
    a = shape.dia.target / 2
    section = math.pi * a * a
    x, y, lean = 0.0, 0.0, 0.0
    body = Moments()
    for n, leg in enumerate(shape.legs):
        if leg > 0:
            v = section * leg
            rod = Moments(v, v * leg / 2, 0.0, 0.0, v * leg**2 / 3, v * a * a / 4, v * a * a / 4)
            body += _leaned(rod, lean).shifted(x, y)
            x, y = x + leg * math.cos(lean), y + leg * math.sin(lean)
        if n < len(shape.bends):
            inside, angle = shape.bends[n]
            turn, side = math.radians(abs(angle)), math.copysign(1.0, angle)
            radius = inside + a
            cx, cy = x - side * radius * math.sin(lean), y + side * radius * math.cos(lean)
            middle = lean - side * math.pi / 2 + side * turn / 2
            body += _leaned(_bent_rod(a, radius, turn), middle).shifted(cx, cy)
            lean += side * turn
            x, y = cx + side * radius * math.sin(lean), cy - side * radius * math.cos(lean)
    assert math.isclose(body.volume, section * wire_length(shape), rel_tol=1e-9)
    return body


def _leaned(body: Moments, angle: float) -> Moments:
    return body.turned(math.degrees(angle))


def bent_moments(shape: SheetShape | RolledRing | SpringShape | WireShape) -> Moments:
    """Moments of any part of sheet or wire."""
    if isinstance(shape, SheetShape):
        return sheet_moments(shape)
    if isinstance(shape, RolledRing):
        return ring_moments(shape)
    return spring_moments(shape) if isinstance(shape, SpringShape) else wire_moments(shape)
