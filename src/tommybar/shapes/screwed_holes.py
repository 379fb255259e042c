"""Holes as screws meet them, in plates, sheet and turned parts: metal under the head, thread, and where it ends."""

from __future__ import annotations

import math
from dataclasses import dataclass

from tommybar.shapes.features import (
    Bore,
    CircleHoles,
    CrossHole,
    PlateFace,
    PlateHole,
    PlateShape,
    Shape,
    SheetShape,
    TurnedShape,
)
from tommybar.shapes.holes import drawn_hole
from tommybar.shapes.plates import face_size
from tommybar.shapes.radii import bore_radius, outside_radius

BEHIND: dict[PlateFace, PlateFace] = {
    "top": "bottom",
    "bottom": "top",
    "front": "back",
    "back": "front",
    "left": "right",
    "right": "left",
}


@dataclass(frozen=True)
class HoleForScrew:
    """One hole as a screw meets it [mm].

    ``metal`` is what lies under the screw's head, from its seat to the far
    side; ``thread`` the length that is cut all round, 0 for a plain hole;
    ``end`` how far a screw may go in, None where it comes out.
    """

    dia: float
    metal: float
    thread: float
    end: float | None


def hole_for_screw(shape: Shape | None, feature: str) -> HoleForScrew | None:
    """The hole of that name; None for what is no hole, or leans.

    Examples
    --------
    >>> from tommybar.shapes.features import Dim
    >>> hole = PlateHole("fix", "top", 20.0, 10.0, Dim(5.5), sink_dia=10.0, sink_depth=5.0)
    >>> hole_for_screw(PlateShape(Dim(40.0), Dim(20.0), Dim(12.0), holes=(hole,)), "fix").metal
    7.0
    """
    if isinstance(shape, PlateShape | SheetShape):
        flat = next((one for one in shape.holes if one.name == feature), None)
        return _in_plate(shape, flat) if flat is not None and not flat.tilt else None
    if not isinstance(shape, TurnedShape):
        return None
    holes: tuple[Bore | CircleHoles | CrossHole, ...] = (
        *shape.bores,
        *shape.circle_holes,
        *shape.cross_holes,
    )
    hole = next((one for one in holes if one.name == feature), None)
    if isinstance(hole, Bore):
        return _bore(shape, hole)
    if isinstance(hole, CircleHoles):
        return _on_circle(hole)
    return _across(shape, hole) if isinstance(hole, CrossHole) else None


def _in_plate(shape: PlateShape | SheetShape, hole: PlateHole) -> HoleForScrew:
    if isinstance(shape, PlateShape):
        deep = face_size(shape, hole.face).depth - _cut_away(shape, hole)
    else:
        deep = shape.thickness.value
    metal = deep if hole.sink_angle else deep - hole.sink_depth  # a sunk cone's screw counts its head
    full = metal if hole.depth is None else hole.depth
    return HoleForScrew(
        drawn_hole(hole.dia, hole.thread),
        metal,
        full if hole.thread else 0.0,
        hole.depth,
    )


def _cut_away(shape: PlateShape, hole: PlateHole) -> float:
    """How much of the plate a pocket, a slot or a step takes away where a hole goes through, on both faces [mm]."""
    size = face_size(shape, hole.face)
    behind = BEHIND[hole.face]
    found = 0.0
    for face, x in ((hole.face, hole.x), (behind, size.width - hole.x)):
        deep = [0.0]
        for pocket in shape.pockets:
            inside = (
                abs(x - pocket.x) < pocket.length.value / 2
                and abs(hole.y - pocket.y) < pocket.width.value / 2
            )
            if pocket.face == face and pocket.depth is not None and inside:
                deep.append(pocket.depth)
        for slot in shape.slots:
            c, s = math.cos(math.radians(slot.angle)), math.sin(math.radians(slot.angle))
            u, v = x - slot.x, hole.y - slot.y
            along, across = abs(u * c + v * s), abs(v * c - u * s)
            inside = along < slot.long / 2 and across < slot.width.value / 2
            if slot.face == face and slot.depth is not None and inside:
                deep.append(slot.depth)
        for step in shape.steps:
            left = x if face == "top" else size.width - x
            from_side = {
                "left": left,
                "right": size.width - left,
                "front": hole.y,
                "back": size.height - hole.y,
            }
            if step.face == face and from_side[step.side] < step.wide.value:
                deep.append(step.depth.value)
        found += max(deep)
    return found


def _bore(shape: TurnedShape, bore: Bore) -> HoleForScrew:
    """A bore, without the wider ones that are sunk before it."""
    sunk = {"A": 0.0, "B": 0.0}
    for one in shape.bores:
        if not one.through and one.dia.value > bore.dia.value:
            sunk[one.face] = max(sunk[one.face], one.depth)
    long = shape.length.value - sunk["A"] - sunk["B"] if bore.through else bore.depth - sunk[bore.face]
    full = min(bore.full or long, long)
    dia = drawn_hole(bore.dia, bore.thread)
    return HoleForScrew(dia, long, full if bore.thread else 0.0, None if bore.through else full)


def _on_circle(holes: CircleHoles) -> HoleForScrew:
    long = holes.end - holes.start
    return HoleForScrew(
        drawn_hole(holes.dia, holes.thread),
        long - holes.sink_depth,
        long - holes.sink_depth if holes.thread else 0.0,
        long if holes.blind else None,
    )


def _across(shape: TurnedShape, hole: CrossHole) -> HoleForScrew:
    """A hole across the axis: metal along its own axis, thread only where the metal is whole all round it.

    On a round the metal beside the hole's axis begins lower than on it, so
    that the first turns of a thread are cut on two sides only:
    sqrt(R^2 - (e + d/2)^2) is where it is whole, e beside the part's axis.
    """
    outside, inner = outside_radius(shape, hole.z), bore_radius(shape, hole.z)
    half, aside = drawn_hole(hole.dia, hole.thread) / 2, abs(hole.offset)
    level = _flat_at(shape, hole)
    top = outside if level is None else level
    whole = top if level is not None else _chord(outside, aside + half)
    floor = _chord(inner, max(0.0, aside - half))  # a bore's wall stands highest where it is nearest the axis
    if hole.depth is not None:
        floor = max(floor, top - hole.depth)
    reach = top - _chord(inner, aside) if hole.depth is None else hole.depth
    metal = 2 * top if hole.walls == 2 else reach
    thread = max(0.0, whole - floor - hole.sink_depth) if hole.thread else 0.0
    end = hole.depth
    return HoleForScrew(2 * half, metal - hole.sink_depth, thread, end)


def _chord(radius: float, aside: float) -> float:
    """How high a circle stands at a distance beside its middle; 0 outside it [mm]."""
    return math.sqrt(max(0.0, radius**2 - aside**2))


def _flat_at(shape: TurnedShape, hole: CrossHole) -> float | None:
    """How far from the axis the flat lies that a hole is drilled in; None where it is drilled in the round."""
    half = drawn_hole(hole.dia, hole.thread) / 2
    for flats in shape.flats:
        inside = flats.start <= hole.z - half + 1e-9 and hole.z + half <= flats.end + 1e-9
        turn = 360.0 / flats.count
        off = (hole.angle - flats.angle + turn / 2) % turn - turn / 2
        if inside and abs(off) < 1e-6:
            return flats.aimed
    return None
