"""Drills that begin or end on a slope: they wander going in, and leave a block at its side."""

from __future__ import annotations

import math

from tommybar.checks.checked import PRACTICE, Checked
from tommybar.design.model import Part, SizedDesign
from tommybar.findings import Finding
from tommybar.shapes.features import CrossHole, PlateHole, PlateShape, TurnedShape
from tommybar.shapes.plates import face_size
from tommybar.shapes.radii import land_radius
from tommybar.shop.model import Shop

STEEPEST = 10.0  # between a drill and the square to the face it enters [deg]
MARGIN = 3.0  # metal beside the ellipse of a slanting hole [mm]


def look(design: SizedDesign, shop: Shop) -> Checked:
    """Cross holes on cones and arcs, leaning holes of plates."""
    found: list[Finding] = []
    for part in design.parts:
        if isinstance(part.shape, TurnedShape):
            for cross in part.shape.cross_holes:
                found += _on_land(part, part.shape, cross)
        elif isinstance(part.shape, PlateShape):
            for hole in part.shape.holes:
                if hole.tilt:
                    found += _leaning(part, part.shape, hole)
    return Checked(tuple(found))


def _on_land(part: Part, shape: TurnedShape, hole: CrossHole) -> list[Finding]:
    land = next((one for one in shape.outside if one.start < hole.z < one.end), None)
    if land is None:
        return []
    half = min(hole.dia.value / 2, hole.z - land.start, land.end - hole.z)
    rise = land_radius(land, hole.z + half) - land_radius(land, hole.z - half)
    slope = math.degrees(math.atan2(abs(rise), 2 * half))
    aside = math.degrees(math.asin(min(1.0, abs(hole.offset) / max(land_radius(land, hole.z), 1e-9))))
    steep = max(slope, aside)
    if steep <= STEEPEST or hole.sink_dia > 0 or any(one.start <= hole.z <= one.end for one in shape.flats):
        return []
    return [_wanders(part, hole.name, steep)]


def _leaning(part: Part, shape: PlateShape, hole: PlateHole) -> list[Finding]:
    found = [] if hole.flat or hole.tilt <= STEEPEST else [_wanders(part, hole.name, hole.tilt)]
    found += _leaves(part, shape, hole)
    return found


def _wanders(part: Part, name: str, steep: float) -> Finding:
    return Finding(
        680,
        "caution",
        f"The drill for {name} begins on a slope of {steep:.1f} deg and wanders.",
        part.name,
        name,
        figure=f"{steep:.1f} deg",
        bound=f"{STEEPEST:g} deg",
        remedy="Mill a flat or a spot face there first, and begin with a short stiff drill.",
        source=PRACTICE,
    )


def _leaves(part: Part, shape: PlateShape, hole: PlateHole) -> list[Finding]:
    """Whether the ellipses of a leaning through hole lie in the faces that it should go in and out by."""
    if hole.depth is not None:
        return []
    face = face_size(shape, hole.face)
    run = face.depth * math.tan(math.radians(hole.tilt))
    long = hole.dia.value / math.cos(math.radians(hole.tilt))
    a = math.radians(hole.towards)
    # half the ellipse that the hole cuts in a face, along each side of it
    half = [math.hypot(long / 2 * math.cos(a), hole.dia.value / 2 * math.sin(a))]
    half.append(math.hypot(long / 2 * math.sin(a), hole.dia.value / 2 * math.cos(a)))
    # going in, the axis drifts towards the side that it leans to
    ends = [(hole.x, hole.y), (hole.x + run * math.cos(a), hole.y + run * math.sin(a))]
    room = min(
        min(x - half[0], face.width - x - half[0], y - half[1], face.height - y - half[1]) for x, y in ends
    )
    if room >= MARGIN - 1e-6:
        return []
    wanted = run + long + 2 * MARGIN
    return [
        Finding(
            681,
            "stop" if room < 0 else "caution",
            f"{hole.name} leans {hole.tilt:g} deg, drifts {run:.2f} mm and is {long:.2f} mm long in the face: it needs "
            f"{wanted:.2f} mm along its lean, and {max(room, 0.0):.2f} mm are left beside it.",
            part.name,
            hole.name,
            figure=f"{room:.2f} mm",
            bound=f"{MARGIN:g} mm",
            remedy="Lean it along the longer side, make the block longer or lower, or lean it less.",
            source="geometry of the part; the margin is common practice, no source",
        )
    ]
