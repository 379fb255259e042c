"""Places broken out of a solid part that is seen from outside: its cross holes and the centre holes of its ends.

A shaft is not cut lengthwise; what is drilled in it is shown by a local
section within a thin freehand line (ISO 128-3, line 01.1.18; from memory).
"""

from __future__ import annotations

import math
from itertools import pairwise
from typing import TYPE_CHECKING, Any

from tommybar.facts.drills import centre_drill
from tommybar.pack.profile import edges_behind
from tommybar.pack.sheet import Arc, Area, Line, Mark, Point
from tommybar.pack.turned.drawn import cross_thread
from tommybar.pack.turned.metal import chords, cut, hole_outlines, radius_of, turned_metal
from tommybar.pack.turned.mouths import mouth_marks
from tommybar.pack.turned.planes import sides
from tommybar.shapes.features import CentreHole, Cylinder, TurnedShape
from tommybar.shapes.ring_cuts import surface_radius

if TYPE_CHECKING:
    from shapely.geometry.base import BaseGeometry

MARGIN = 2.2  # of hatched metal round what is drilled [mm on paper]
WAVE = 4.5  # length of a wave of the freehand line [mm on paper]
SWING = 0.35  # and how far it swings to either side [mm on paper]
STEPS = 8  # chords of a wave
CHORDS = 48  # of an arc of the outline that runs into a place broken out
SEEN = 3.5  # a centre hole with a smaller mouth is not broken out [mm on paper]
CENTRE_DEEP = 1.6  # room for a centre hole along the axis, as a multiple of its mouth


def broken_out(shape: TurnedShape) -> frozenset[str]:
    """Names of the cross holes and centre holes for which a part seen from outside is broken out.

    Not where a flat, a slot, a keyway or a knurl takes the same stretch of
    the axis: there the hole is drawn as it is seen.
    """
    taken = [(one.start, one.end) for many in (shape.flats, shape.keyways, shape.cross_slots) for one in many]
    taken += [(one.start, one.end) for one in shape.outside if isinstance(one, Cylinder) and one.knurl]
    long = shape.length.value
    faces = [(one.face, one.depth) for one in shape.head_slots]
    faces += [(one.face, long if one.depth is None else one.depth) for one in shape.slits]
    taken += [(0.0, deep) if face == "A" else (long - deep, long) for face, deep in faces]
    there = sides(shape)
    spans = [
        (
            hole.name,
            hole.z - max(hole.dia.value, hole.sink_dia) / 2,
            hole.z + max(hole.dia.value, hole.sink_dia) / 2,
        )
        for hole in shape.cross_holes
        if there.get(hole.name, "off") != "off"
    ]
    spans += [(one.name, *_reach(shape, one)) for one in shape.centres if one.keep != "must not"]
    return frozenset(
        name for name, start, end in spans if all(b <= start + 1e-6 or end - 1e-6 <= a for a, b in taken)
    )


def _mouth(centre: CentreHole) -> float:
    """The widest diameter of a centre hole [mm]."""
    drill = centre_drill(f"{centre.form} {centre.pilot:g}")
    return drill.mouth or 2 * drill.pilot


def _reach(shape: TurnedShape, centre: CentreHole) -> tuple[float, float]:
    """The stretch of the axis that a centre hole takes [mm from face A]."""
    deep = CENTRE_DEEP * _mouth(centre)
    return (0.0, deep) if centre.face == "A" else (shape.length.value - deep, shape.length.value)


def opened(shape: TurnedShape, marks: list[Mark], scale: float) -> list[Mark]:
    """The outside of a part with its places broken out; ``shape`` at nominal sizes."""
    import shapely

    names = broken_out(shape)
    if not names:
        return marks
    upper, lower = (
        shapely.union_all([shapely.Polygon(ring) for ring in chords(cut(shape, below))])
        for below in (False, True)
    )
    metal = upper.union(shapely.affinity.scale(lower, 1.0, -1.0, origin=(0.0, 0.0)))
    small = {one.name for one in shape.centres if _mouth(one) * scale < SEEN}
    names -= small  # its words say all of it
    if not names:
        return marks
    windows = [_window(shape, name, scale) for name in sorted(names)]
    window = shapely.union_all(windows)
    made = [piece for one in marks for piece in _outside_of(one, window, scale)]
    inside = metal.intersection(window)
    for part in _parts(inside, "Polygon"):
        rings = (part.exterior, *part.interiors)
        made.append(
            Area(tuple(tuple(_paper(p, scale) for p in ring.coords[:-1]) for ring in rings), "hatch", None)
        )
    made += _lines(metal.boundary.intersection(window), "thick", scale)
    made += _lines(shapely.union_all(_edges(shape)).intersection(window), "thick", scale)
    made += [mark for side in (1, -1) for mark in mouth_marks(shape, scale, side, names)]
    for hole in shape.cross_holes:
        if hole.name in names and hole.thread:
            made += [mark for side in (1, -1) for mark in cross_thread(shape, hole, side, scale)]
    made += _lines(window.boundary.intersection(metal.buffer(-1e-4)), "thin", scale)
    return made


def _edges(shape: TurnedShape) -> list[Any]:
    """Round edges that are seen behind the section, as lines across."""
    import shapely

    return [
        shapely.LineString([(z, way * top), (z, way * low)])
        for below, way in ((False, 1.0), (True, -1.0))
        for z, top, low in edges_behind(chords(turned_metal(shape, below)))
    ]


def _window(shape: TurnedShape, name: str, scale: float) -> BaseGeometry:
    """The stretch that is broken out round one hole, in (z, y up) of the part [mm]."""
    import shapely

    margin, beyond = MARGIN / scale, radius_of(shape) + 2.0
    for centre in shape.centres:
        if centre.name == name:
            return _end_window(shape, centre, margin, scale)
    hole = next(one for one in shape.cross_holes if one.name == name)
    half = max(hole.dia.value, hole.sink_dia) / 2 + margin
    side = sides(shape)[name]
    low = min(y for outline in hole_outlines(shape, hole) for _, y in outline) - margin
    surface = surface_radius(shape, hole.z)
    if side == "both" or low < -surface + margin / 2:
        way = [
            (hole.z - half, -beyond),
            (hole.z - half, beyond),
            (hole.z + half, beyond),
            (hole.z + half, -beyond),
        ]
        left = _freehand(way[0], way[1], scale)
        return shapely.Polygon([*left, *_freehand(way[2], way[3], scale)])
    up = -1.0 if side == "below" else 1.0
    round_in = min(half * 0.6, (surface - low) / 3)
    way = [
        (hole.z - half, up * beyond), (hole.z - half, up * (low + round_in)), (hole.z - half + round_in, up * low),
        (hole.z + half - round_in, up * low), (hole.z + half, up * (low + round_in)), (hole.z + half, up * beyond),
    ]  # fmt: skip
    points = [p for a, b in pairwise(way) for p in _freehand(a, b, scale)]
    return shapely.Polygon(points).buffer(0)


def _end_window(shape: TurnedShape, centre: CentreHole, margin: float, scale: float) -> BaseGeometry:
    import shapely

    start, end = _reach(shape, centre)
    half = _mouth(centre) / 2 + margin
    face, far, out = (start, end, -2.0) if centre.face == "A" else (end, start, shape.length.value + 2.0)
    rim = surface_radius(shape, face + (0.01 if centre.face == "A" else -0.01))
    if half > rim - margin / 2:
        half = rim + 2.0
    way = [(out, half), (far, half), (far, -half), (out, -half)]
    if half < rim:
        cut_off = (far - face) * 0.25
        way[1:3] = [
            (far - cut_off, half),
            (far, half - abs(cut_off)),
            (far, abs(cut_off) - half),
            (far - cut_off, -half),
        ]
    points = [p for a, b in pairwise(way) for p in _freehand(a, b, scale)]
    return shapely.Polygon(points).buffer(0)


def _freehand(a: Point, b: Point, scale: float) -> list[Point]:
    """A wavy line from a to b, always the same."""
    long = math.dist(a, b)
    ux, uy = (b[0] - a[0]) / long, (b[1] - a[1]) / long
    waves = max(1, round(long * scale / WAVE))
    made = []
    for k in range(waves * STEPS + 1):
        share = k / (waves * STEPS)
        swing = (
            SWING / scale * math.sin(math.tau * waves * share) * (1.0 + 0.5 * math.sin(2.3 * waves * share))
        )
        made.append((a[0] + long * share * ux - swing * uy, a[1] + long * share * uy + swing * ux))
    return made


def _paper(point: tuple[float, ...], scale: float) -> Point:
    return (point[0] * scale, -point[1] * scale)


def _parts(found: Any, kind: str) -> list[Any]:
    return [part for part in getattr(found, "geoms", [found]) if part.geom_type == kind and not part.is_empty]


def _lines(found: Any, kind: Any, scale: float) -> list[Mark]:
    import shapely

    merged = shapely.line_merge(found) if found.geom_type == "MultiLineString" else found
    return [Line(tuple(_paper(p, scale) for p in part.coords), kind) for part in _parts(merged, "LineString")]


def _outside_of(one: Mark, window: Any, scale: float) -> list[Mark]:
    """What of a mark of the outside lies outside of the places broken out."""
    import shapely

    if isinstance(one, Line) and one.kind != "chain":
        points = (*one.points, one.points[0]) if one.closed else one.points
    elif isinstance(one, Arc) and one.kind != "chain":
        at = [math.radians(one.start + (one.end - one.start) * k / CHORDS) for k in range(CHORDS + 1)]
        (x, y), r = one.centre, one.radius
        points = tuple((x + r * math.cos(a), y - r * math.sin(a)) for a in at)
    else:
        return [one]
    line = shapely.LineString([(x / scale, -y / scale) for x, y in points])
    if not line.intersects(window):
        return [one]
    return _lines(line.difference(window), one.kind, scale)
