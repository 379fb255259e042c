"""What a point on a part's surface belongs to, in the words of its design."""

from __future__ import annotations

import math

from tommybar.design.model import Part
from tommybar.shapes.features import PlateHole, PlateShape, Pocket, Slot, TurnedShape
from tommybar.shapes.radii import bore_radius, land_radius
from tommybar.shapes.solids.frames import Frame, Vector, back, point, within
from tommybar.shapes.solids.plate import face_frame

CLOSE = 0.15  # of a chord, or of the corner of a mesh, to the surface that it stands for [mm]


def wall_named(part: Part, stands: Frame, way: Frame, at: Vector) -> str:
    """What a point, told in the frame ``way``, belongs to on a part that stands at ``stands``."""
    own = point(within(back(stands), way), at)
    name = part.name.replace("_", " ")
    if isinstance(part.shape, TurnedShape):
        wall = _of_turned(part.shape, own)
    elif isinstance(part.shape, PlateShape):
        wall = _of_plate(part.shape, own)
    else:
        wall = ""
    return f"{wall} of {name}" if wall else name


def _of_turned(shape: TurnedShape, at: Vector) -> str:
    radius, z = math.hypot(at[0], at[1]), at[2]
    for land in shape.outside:
        if land.start - CLOSE <= z <= land.end + CLOSE:
            inside = min(max(z, land.start), land.end)
            edge = min(abs(z - land.start), abs(z - land.end)) <= CLOSE
            if abs(radius - land_radius(land, inside)) <= CLOSE or (
                edge and radius <= land_radius(land, inside) + CLOSE
            ):
                return land.name.replace("_", " ")
    for recess in shape.recesses:
        floor = recess.depth if recess.face == "A" else shape.length.value - recess.depth
        within_depth = z <= floor + CLOSE if recess.face == "A" else z >= floor - CLOSE
        if within_depth and min(abs(radius - recess.inside / 2), abs(radius - recess.outside / 2)) <= CLOSE:
            return f"the wall of {recess.name.replace('_', ' ')}"
    bore = bore_radius(shape, z)
    if bore > 0 and abs(radius - bore) <= CLOSE:
        return "the bore"
    return ""


def _of_plate(shape: PlateShape, at: Vector) -> str:
    cut: tuple[Pocket | Slot | PlateHole, ...] = (*shape.pockets, *shape.slots, *shape.holes)
    for one in cut:
        x, y, z = point(back(face_frame(shape, one.face)), at)
        if z > CLOSE or (one.depth is not None and z < -_deep(one) - CLOSE):
            continue
        if isinstance(one, PlateHole):
            off = math.hypot(x - one.x, y - one.y)
            if one.sink_dia and abs(off - one.sink_dia / 2) <= CLOSE:
                return f"the counterbore of {one.name.replace('_', ' ')}"
            continue
        if isinstance(one, Slot):
            c, s = math.cos(math.radians(one.angle)), math.sin(math.radians(one.angle))
            u, v = (x - one.x) * c + (y - one.y) * s, (y - one.y) * c - (x - one.x) * s
            sides = one.long / 2 - abs(u), one.width.value / 2 - abs(v)
        else:
            sides = one.length.value / 2 - abs(x - one.x), one.width.value / 2 - abs(y - one.y)
        if min(sides) >= -CLOSE and min(abs(side) for side in sides) <= CLOSE:
            return f"the wall of {one.name.replace('_', ' ')}"
    for step in shape.steps:
        x, y, z = point(back(face_frame(shape, step.face)), at)
        wide, high = (shape.length.value, shape.width.value)
        far = {"left": x, "right": wide - x, "front": y, "back": high - y}[step.side]
        if step.face == "bottom":
            far = {"left": wide - x, "right": x, "front": y, "back": high - y}[step.side]
        if abs(far - step.wide.value) <= CLOSE and -step.depth.value - CLOSE <= z <= CLOSE:
            return f"the shoulder of {step.name.replace('_', ' ')}"
    return ""


def _deep(one: Pocket | Slot | PlateHole) -> float:
    return max(one.depth or 0.0, getattr(one, "sink_depth", 0.0))
