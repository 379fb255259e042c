"""What of a turned part is seen in its drawing: cut metal, outlines, edges behind, thread lines.

All in part coordinates (z from face A, r with its sign) [mm]; the views scale them.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, fields, is_dataclass, replace
from typing import Any

from shapely import Polygon, box

from tommybar.facts.threads import thread
from tommybar.shapes.features import Cone, Cylinder, Dim, Land, TurnedShape
from tommybar.shapes.section import half_section

Ring = tuple[tuple[float, float], ...]
Segment = tuple[tuple[float, float], tuple[float, float]]
CORNER = 20.0  # a bend sharper than this is an edge that is seen [deg]
BESIDE = 1e-4  # how far beside a corner we look [mm]


@dataclass(frozen=True)
class Profile:
    """A turned part ready to be drawn."""

    upper: tuple[Ring, ...]  # cut metal above the axis, or the outline's upper half
    lower: tuple[Ring, ...]  # below the axis, r negative
    edges: tuple[Segment, ...]  # edges seen, thick
    threads: tuple[Segment, ...]  # thin lines of threads
    cut: bool  # drawn in section; otherwise seen from outside
    section: Polygon  # (z, r >= 0), holes not cut out


def nominal(shape: TurnedShape) -> TurnedShape:
    """The shape with every size at its figure, so that drawn and written agree."""

    def plain(value: Any) -> Any:
        if isinstance(value, Dim):
            return Dim(value.value, value.name)
        if isinstance(value, tuple):
            return tuple(plain(one) for one in value)
        if is_dataclass(value) and not isinstance(value, type):
            return replace(value, **{f.name: plain(getattr(value, f.name)) for f in fields(value)})
        return value

    made: TurnedShape = plain(shape)
    return made


def drawn_profile(shape: TurnedShape) -> Profile:
    """Cut metal and lines of a turned part; a solid one is not cut (ISO 128: shafts are not sectioned)."""
    shape = nominal(shape)
    section = half_section(shape)
    lower = section
    upper = section
    for holes in shape.circle_holes:
        radius = _drawn(holes.dia.value, holes.thread) / 2
        out = holes.circle / 2
        upper = upper.difference(box(holes.start - 1e-3, out - radius, holes.end + 1e-3, out + radius))
    cut = bool(shape.bores or shape.recesses or shape.circle_holes or any(h.into for h in shape.cross_holes))
    if cut:
        for hole in shape.cross_holes:
            radius = _drawn(hole.dia.value, hole.thread) / 2
            band = box(hole.z - radius, -1.0, hole.z + radius, shape_radius(shape) + 1)
            upper = upper.difference(band)
            if hole.walls == 2:
                lower = lower.difference(band)
    edges: list[Segment] = []
    for polygon, side in ((upper, 1.0), (lower, -1.0)):
        rings = _rings(polygon)
        for z, r, low in edges_behind(rings) if cut else edges_outside(rings):
            edges.append(((z, side * r), (z, side * low)))
    return Profile(
        _rings(upper),
        tuple(tuple((z, -r) for z, r in ring) for ring in _rings(lower)),
        tuple(dict.fromkeys(edges)),
        tuple(_thread_lines(shape, cut)),
        cut,
        section,
    )


def _drawn(dia: float, designation: str) -> float:
    return thread(designation).tapping_drill if designation else dia


def shape_radius(shape: TurnedShape) -> float:
    """The largest radius of the outside [mm]."""
    return max(
        one.dia.value / 2 if isinstance(one, Cylinder) else max(one.start_dia, one.end_dia) / 2
        for one in shape.outside
    )


def _rings(polygon: Any) -> tuple[Ring, ...]:
    """All rings of a polygon or of several, closing point left out."""
    made: list[Ring] = []
    for piece in getattr(polygon, "geoms", [polygon]):
        if piece.area > 1e-6:
            made.append(tuple((float(z), float(r)) for z, r in piece.exterior.coords[:-1]))
            made += [tuple((float(z), float(r)) for z, r in inner.coords[:-1]) for inner in piece.interiors]
    return tuple(made)


def metal_at(rings: tuple[Ring, ...], z: float) -> list[float]:
    """Radii at which a line across the axis enters and leaves metal, rising."""
    places = []
    for ring in rings:
        for (z1, r1), (z2, r2) in zip(ring, ring[1:] + ring[:1], strict=True):
            if (z1 <= z) != (z2 <= z):
                places.append(r1 + (z - z1) * (r2 - r1) / (z2 - z1))
    return sorted(places)


def corners(rings: tuple[Ring, ...]) -> list[tuple[float, float]]:
    """The corners that make an edge, not those between the chords of a rounding."""
    made = []
    for ring in rings:
        for i, (z, r) in enumerate(ring):
            (z0, r0), (z1, r1) = ring[i - 1], ring[(i + 1) % len(ring)]
            bend = math.degrees(math.atan2(r1 - r, z1 - z) - math.atan2(r - r0, z - z0))
            if abs((bend + 180) % 360 - 180) > CORNER:
                made.append((z, r))
    return made


def edges_behind(rings: tuple[Ring, ...]) -> list[tuple[float, float, float]]:
    """Edges seen through openings of a cut part: (z, from radius, down to radius)."""
    made = []
    for z, r in corners(rings):
        if r < 1e-6:
            continue
        for beside in (z - BESIDE, z + BESIDE):
            bounds = metal_at(rings, beside)
            pairs = list(zip(bounds[::2], bounds[1::2], strict=False))
            at = next((i for i, (low, _) in enumerate(pairs) if abs(low - r) < 3 * BESIDE), None)
            if at is not None and pairs[at][0] > 1e-3:
                floor = pairs[at - 1][1] if at else 0.0
                made.append((z, r, floor))
                break
    return made


def edges_outside(rings: tuple[Ring, ...]) -> list[tuple[float, float, float]]:
    """Edges of a solid part seen from outside: across at every corner of the outline."""
    return [(z, r, 0.0) for z, r in corners(rings) if r > 1e-6]


def _thread_lines(shape: TurnedShape, cut: bool) -> list[Segment]:
    """The thin lines: at the root of outside threads, at the major diameter of tapped holes."""
    made: list[Segment] = []
    for one in shape.outside:
        if isinstance(one, Cylinder) and one.thread:
            root = thread(one.thread).core / 2
            start, end = one.start, one.end
            for groove in shape.grooves:
                if abs(groove.end - end) < 0.05 and groove.start > start:
                    end = groove.start
                if abs(groove.start - start) < 0.05 and groove.end < end:
                    start = groove.end
            made += [((start, side * root), (end, side * root)) for side in (1, -1)]
    length = shape.length.value
    for bore in shape.bores:
        if bore.thread:
            ends = (0.0, length) if bore.through else (0.0, bore.depth)
            if bore.face == "B" and not bore.through:
                ends = (length - bore.depth, length)
            major = thread(bore.thread).major / 2
            made += [((ends[0], side * major), (ends[1], side * major)) for side in (1, -1)]
    if cut:
        for holes in shape.circle_holes:
            if holes.thread:
                major = thread(holes.thread).major / 2
                for r in (holes.circle / 2 - major, holes.circle / 2 + major):
                    made.append(((holes.start, r), (holes.end, r)))
        for hole in shape.cross_holes:
            if hole.thread:
                made += _cross_thread(shape, hole.z, thread(hole.thread).major / 2, hole.walls)
    return made


def _cross_thread(shape: TurnedShape, z: float, major: float, walls: int) -> list[Segment]:
    bounds = metal_at(_rings(half_section(shape)), z)
    if not bounds:
        return []
    sides = (1,) if walls == 1 else (1, -1)
    return [((at, s * bounds[-2]), (at, s * bounds[-1])) for s in sides for at in (z - major, z + major)]


def end_circles(profile: Profile) -> tuple[float, ...]:
    """Radii of the circles seen when looking at face A [mm]."""
    turned = tuple(tuple((r, z) for z, r in ring) for ring in _rings(profile.section))

    def first(r: float) -> float:
        hits = metal_at(turned, r)
        return hits[0] if hits else math.inf

    seen = {
        round(r, 4)
        for z, r in corners(_rings(profile.section))
        if r > 1e-6 and min(abs(first(r - BESIDE) - z), abs(first(r + BESIDE) - z)) < 1e-3
    }
    return tuple(sorted(seen))


def cones(shape: TurnedShape) -> tuple[Cone, ...]:
    """The outside cones."""
    return tuple(one for one in shape.outside if isinstance(one, Cone))


def end_radii(one: Land) -> tuple[float, float]:
    """Radii of an outside feature where it begins and ends, chamfers not counted [mm]."""
    return one.start_dia / 2, one.end_dia / 2
