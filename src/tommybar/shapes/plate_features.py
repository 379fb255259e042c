"""The features of a plate as the bodies that they take away from it."""

from __future__ import annotations

import math

from tommybar.facts.drills import point_length
from tommybar.refusals import Refusal
from tommybar.shapes.features import (
    Dovetail,
    PlateFace,
    PlateHole,
    PlateShape,
    PlateSlit,
    PlateStep,
    Pocket,
    Slot,
    Vee,
)
from tommybar.shapes.holes import drawn_hole
from tommybar.shapes.outlines import Loop, circle, placed, rectangle, stadium
from tommybar.shapes.plate_cuts import Cone, Cut, EdgeCut
from tommybar.shapes.plate_frames import face_frame, run_across, sunk_prism
from tommybar.shapes.plates import drilled_depth, face_size

Stretch = tuple[float, float, float, float]
"""A stretch of a hole: from, radius there, to, radius there; along its axis from the face [mm]."""


def profile_of_hole(hole: PlateHole, shape: PlateShape) -> tuple[Stretch, ...]:
    """Stretches of a hole along its axis: counterbore or countersink, the hole, its drill tip.

    A counterbore and its hole overlap, as they do in the metal. A tip that
    would reach through the far face of a plain plate ends there.
    """
    radius = drawn_hole(hole.dia, hole.thread) / 2
    deep = drilled_depth(hole, shape)
    behind = face_size(shape, hole.face).depth
    lean = math.radians(hole.tilt)
    over = radius * math.tan(lean)
    found: list[Stretch] = []
    if hole.depth is None:
        found.append((-over, radius, behind / math.cos(lean) + over, radius))
    else:
        found.append((-over, radius, deep, radius))
        if hole.bottom == "drill":
            found.append((deep, radius, deep + point_length(2 * radius), 0.0))
    wide = hole.sink_dia / 2
    if wide > radius and hole.sink_angle:
        down = (wide - radius) / math.tan(math.radians(hole.sink_angle / 2))
        found.append((0.0, wide, down, radius))
    elif wide > radius and hole.sink_depth > 0:
        found.append((-wide * math.tan(lean), wide, hole.sink_depth, wide))
    return tuple(found)


def hole_cuts(hole: PlateHole, shape: PlateShape) -> list[Cut]:
    """An upright hole whole, and of one in a side what is no cone."""
    found: list[Cut] = []
    at = face_frame(shape, hole.face)
    upright = hole.face in ("top", "bottom")
    for start, r1, end, r2 in profile_of_hole(hole, shape):
        if r1 == r2:
            found.append(sunk_prism(shape, hole.face, circle(hole.x, hole.y, r1), start, end))
        elif upright:
            x, y, z1 = at.point(hole.x, hole.y, start)
            z2 = at.point(hole.x, hole.y, end)[2]
            found.append(Cone(x, y, z1, r1, z2, r2) if z1 < z2 else Cone(x, y, z2, r2, z1, r1))
    return found


def slot_loop(slot: Slot) -> Loop:
    """The outline of a slot on its face."""
    if slot.long < slot.width.target - 1e-9:
        raise Refusal(
            f"{slot.name} is {slot.long:g} mm long and {slot.width.target:g} mm wide; "
            "its length overall must not be less than its width.",
            "Give its length overall, or make it a hole.",
        )
    return placed(stadium(slot.long, slot.width.target), slot.x, slot.y, slot.angle)


def pocket_loop(pocket: Pocket) -> Loop:
    """The outline of a pocket on its face."""
    a, b = pocket.length.target / 2, pocket.width.target / 2
    if pocket.corner > min(a, b) + 1e-9:
        raise Refusal(
            f"{pocket.name} has corners of {pocket.corner:g} mm radius; half its narrower side is "
            f"{min(a, b):g} mm.",
            "Give a smaller corner radius.",
        )
    return placed(rectangle(-a, -b, a, b, pocket.corner), pocket.x, pocket.y)


def feature_cuts(shape: PlateShape, outline: Loop) -> list[Cut]:
    """All that is cut in a plate but its holes."""
    found: list[Cut] = []
    for slot in shape.slots:
        found.append(sunk_prism(shape, slot.face, slot_loop(slot), 0.0, _deep(slot, shape)))
    for pocket in shape.pockets:
        found.append(sunk_prism(shape, pocket.face, pocket_loop(pocket), 0.0, _deep(pocket, shape)))
    found += [_step(one, shape) for one in shape.steps]
    found += [_vee(one, shape) for one in shape.vees]
    for tail in shape.dovetails:
        found += _dovetail(tail, shape)
    found += [_slit(one, shape) for one in shape.slits]
    thick = shape.thickness.value
    for edge in shape.edges:
        face, into = (0.0, 1.0) if edge.face == "top" else (thick, -1.0)
        if edge.size >= thick:
            raise Refusal(
                f"{edge.name} is {edge.size:g} mm; the plate is {thick:g} mm thick.", "Make it smaller."
            )
        found.append(EdgeCut(outline, face, into, edge.size, edge.round))
    return found


def _deep(one: Slot | Pocket, shape: PlateShape) -> float:
    behind = face_size(shape, one.face).depth
    deep = behind if one.depth is None else one.depth
    if not 0 < deep <= behind + 1e-9:
        raise Refusal(
            f"{one.name} is {deep:g} mm deep; the plate is {behind:g} mm there.", "Make it shallower."
        )
    return min(deep, behind)


def _step(step: PlateStep, shape: PlateShape) -> Cut:
    x, y, thick = shape.length.value, shape.width.value, shape.thickness.value
    wide, deep = step.wide.target, step.depth.target
    if not (0 < deep < thick and 0 < wide <= (y if step.side in ("front", "back") else x)):
        raise Refusal(
            f"{step.name} is {wide:g} mm wide and {deep:g} mm deep; the plate is {x:g} x {y:g} x "
            f"{thick:g} mm.",
            "Make it smaller.",
        )
    if step.face == "bottom":  # the bottom face is seen with its x turned about
        u = {"left": (x - wide, x), "right": (0.0, wide)}.get(step.side, (0.0, x))
    else:
        u = {"left": (0.0, wide), "right": (x - wide, x)}.get(step.side, (0.0, x))
    v = {"front": (0.0, wide), "back": (y - wide, y)}.get(step.side, (0.0, y))
    return sunk_prism(shape, step.face, rectangle(u[0], v[0], u[1], v[1]), 0.0, deep)


def vee_depth(vee: Vee) -> float:
    """How deep a vee goes below its face [mm].

    Examples
    --------
    >>> round(vee_depth(Vee("groove", "top", "x", 10.0, 8.0, 90.0)), 6)
    4.0
    """
    return vee.width / 2 / math.tan(math.radians(vee.included / 2))


def _vee(vee: Vee, shape: PlateShape) -> Cut:
    half, deep = vee.width / 2, vee_depth(vee)
    behind = face_size(shape, vee.face).depth
    if deep >= behind:
        raise Refusal(
            f"{vee.name} is {deep:.4g} mm deep; the plate is {behind:g} mm there.", "Make it narrower."
        )
    section = [(vee.at - half, 0.0), (vee.at + half, 0.0), (vee.at, deep)]
    return run_across(shape, vee.face, vee.along, section)


def _dovetail(tail: Dovetail, shape: PlateShape) -> list[Cut]:
    half, deep = tail.narrow.target / 2, tail.depth
    wide, at = half + deep / math.tan(math.radians(tail.angle)), tail.at
    if not tail.tail:
        section = [(at - half, 0.0), (at + half, 0.0), (at + wide, deep), (at - wide, deep)]
        return [run_across(shape, "top", tail.along, section)]
    size = face_size(shape, "top")
    far = size.height if tail.along == "x" else size.width
    left = [(0.0, 0.0), (at - wide, 0.0), (at - half, deep), (0.0, deep)]
    right = [(far, 0.0), (at + wide, 0.0), (at + half, deep), (far, deep)]
    return [run_across(shape, "top", tail.along, one) for one in (left, right)]


def _slit(slit: PlateSlit, shape: PlateShape) -> Cut:
    face: PlateFace = slit.side
    half, high = slit.width / 2, shape.thickness.value
    return sunk_prism(shape, face, rectangle(slit.at - half, 0.0, slit.at + half, high), 0.0, slit.long)
