"""The cut metal of a turned part in a section through its axis: each half with what is cut out of it."""

from __future__ import annotations

import math
from dataclasses import replace
from functools import lru_cache

from tommybar.facts.threads import thread
from tommybar.pack.profile import nominal
from tommybar.pack.turned.planes import sides
from tommybar.shapes.curves import Ring, closed
from tommybar.shapes.cutters import SLOPE
from tommybar.shapes.cutting import difference
from tommybar.shapes.features import CrossHole, Cylinder, Eccentric, TurnedShape
from tommybar.shapes.profile import profile
from tommybar.shapes.ring_cuts import surface_radius

HAIR = 0.011  # half of what stands below the axis for an eccentric that lies wholly above it [mm]
Rings = tuple[Ring, ...]
Points = tuple[tuple[float, float], ...]


@lru_cache(maxsize=64)
def solid(shape: TurnedShape, below: bool = False) -> Ring:
    """The outside form alone, at nominal sizes; ``below`` is the half under the axis of an eccentric."""
    plain = replace(
        nominal(shape), bores=(), recesses=(), face_grooves=(), bore_tapers=(), cups=(), centres=(),
        bore_grooves=(),
    )  # fmt: skip
    return profile(_swung(plain) if below else plain)


def radius_of(shape: TurnedShape) -> float:
    """The largest radius of the outside [mm]."""
    return max(p[1] for p in chords((solid(nominal(shape)),))[0])


def chords(rings: Rings) -> tuple[tuple[tuple[float, float], ...], ...]:
    """Rings as points, arcs as chords."""
    return tuple(tuple(p for piece in ring for p in piece.chords()) for ring in rings)


@lru_cache(maxsize=64)
def cut(shape: TurnedShape, below: bool = False) -> Rings:
    """The cut metal of one half with all that is cut out of it, at nominal sizes."""
    plain, rings = nominal(shape), turned_metal(shape, below)
    for outline in _across_in(plain, below):
        rings = difference(rings, closed(outline))
    return _slotted(plain, rings, below)


@lru_cache(maxsize=64)
def turned_metal(shape: TurnedShape, below: bool = False) -> Rings:
    """The metal of one half with the holes along the axis in it, and nothing that is cut across."""
    plain = nominal(shape)
    rings: Rings = (profile(_swung(plain) if below else plain),)
    for holes in plain.circle_holes:
        if below:
            continue
        radius, out = (
            (thread(holes.thread).tapping_drill if holes.thread else holes.dia.value) / 2,
            holes.circle / 2,
        )
        low, high = holes.start - (0 if holes.blind and holes.face == "B" else 1e-3), holes.end
        high += 0 if holes.blind and holes.face == "A" else 1e-3
        points = [(low, out - radius), (high, out - radius), (high, out + radius), (low, out + radius)]
        tip = radius / math.tan(math.radians(59.0)) if holes.blind else 0.0
        if tip and holes.face == "A":
            points.insert(2, (high + tip, out))
        elif tip:
            points.append((low - tip, out))
        rings = difference(rings, closed(points))
        if holes.sink_dia:
            wide = holes.sink_dia / 2
            a, b = (
                (holes.start - 1e-3, holes.start + holes.sink_depth)
                if holes.face == "A"
                else (holes.end - holes.sink_depth, holes.end + 1e-3)
            )
            rings = difference(
                rings, closed([(a, out - wide), (b, out - wide), (b, out + wide), (a, out + wide)])
            )
    return rings


def hole_outlines(shape: TurnedShape, hole: CrossHole) -> list[Points]:
    """A cross hole in its own plane, along the axis and along itself: the hole with its tip, and its sink."""
    radius = (thread(hole.thread).tapping_drill if hole.thread else hole.dia.value) / 2
    outside, top = surface_radius(shape, hole.z), radius_of(shape) + 1.0
    z, floor = hole.z, 0.0 if hole.walls == 1 else -top
    bottom = [(z - radius, floor), (z + radius, floor)]
    if hole.depth is not None:
        floor = outside - hole.depth
        bottom = [(z - radius, floor), (z, floor - radius / SLOPE), (z + radius, floor)]
    made: list[Points] = [(*bottom, (z + radius, top), (z - radius, top))]
    if hole.sink_dia:
        wide, level = hole.sink_dia / 2, outside - hole.sink_depth
        made.append(((z - wide, level), (z + wide, level), (z + wide, top), (z - wide, top)))
    return made


def _across_in(shape: TurnedShape, below: bool) -> list[list[tuple[float, float]]]:
    """Outlines of the cross holes that are cut in one half, r upwards; what lies beyond the axis is let go."""
    made = []
    for hole in shape.cross_holes:
        side = sides(shape).get(hole.name, "off")
        if side == "off":
            continue
        turned = below != (side == "below")  # the hole points away from this half
        for outline in hole_outlines(shape, hole):
            points = [(z, -y if turned else y) for z, y in outline]
            if turned:
                points.reverse()
            kept = _above_axis(points)
            if kept:
                made.append(kept)
    return made


def _above_axis(points: list[tuple[float, float]]) -> list[tuple[float, float]]:
    """What of an outline lies above the axis."""
    made: list[tuple[float, float]] = []
    for (z1, y1), (z2, y2) in zip(points, [*points[1:], points[0]], strict=True):
        if y1 >= 0:
            made.append((z1, y1))
        if (y1 > 0) != (y2 > 0) and abs(y1) > 1e-12 and abs(y2) > 1e-12:
            made.append((z1 + (z2 - z1) * y1 / (y1 - y2), 0.0))
    return made if max((y for _, y in made), default=0.0) > 1e-9 else []


def _slotted(shape: TurnedShape, rings: Rings, below: bool) -> Rings:
    """Slots, slits and keyways cut out of the upper half, each turned into the plane of the section."""
    top, length = radius_of(shape) + 1.0, shape.length.value
    boxes: list[tuple[float, float, float, float]] = []
    half = "below" if below else "above"
    for slot in shape.cross_slots:
        if sides(shape)[slot.name] in (half, "both"):
            boxes.append((slot.start, 0.0, slot.end, top))
    for key in shape.keyways:
        if sides(shape)[key.name] == half:
            floor = surface_radius(shape, (key.start + key.end) / 2) - key.depth
            if key.form == "sunk":
                boxes.append((key.start, floor, key.end, top))
            else:
                middle, radius = (key.start + key.end) / 2, key.cutter / 2
                disc = [
                    (
                        middle + radius * math.sin(math.tau * n / 96),
                        floor + radius - radius * math.cos(math.tau * n / 96),
                    )
                    for n in range(96)
                ]
                if key.form == "woodruff":
                    rings = difference(rings, closed(disc))
                else:
                    boxes.append((key.start, floor, key.end, top))
    faces = [(one.face, one.depth, one.width.value) for one in shape.head_slots]
    faces += [(one.face, length if one.depth is None else one.depth, one.width) for one in shape.slits]
    for face, deep, wide in faces:
        a, b = (-1.0, deep) if face == "A" else (length - deep, length + 1.0)
        boxes.append((a, -1e-3, b, wide / 2))
    for a, low, b, high in boxes:
        rings = difference(rings, closed([(a, low), (b, low), (b, high), (a, high)]))
    return rings


def _swung(shape: TurnedShape) -> TurnedShape:
    """Eccentric lands as they stand below the axis, when their throw is upwards."""
    return replace(
        shape,
        outside=tuple(
            Cylinder(
                one.name, replace(one.dia, value=max(one.dia.value - 2 * one.throw, HAIR)), one.start, one.end
            )
            if isinstance(one, Eccentric)
            else one
            for one in shape.outside
        ),
    )
