"""Plates and blocks: outline, holes in their faces, and what is left as moments.

Frame of a plate: x along the length, y along the width, both from the lower
left corner of the top face; z is the depth below the top face [mm].
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from tommybar.facts.drills import point_length
from tommybar.facts.threads import tap_depths, thread
from tommybar.refusals import Refusal
from tommybar.shapes.features import PlateFace, PlateHole, PlateShape
from tommybar.shapes.holes import drawn_hole
from tommybar.shapes.moments import Moments, block, cone_tip, rod
from tommybar.shapes.properties import MassProperties


@dataclass(frozen=True)
class FaceSize:
    """A face as it is seen from outside: its width, its height, and how deep the plate is behind it [mm]."""

    width: float
    height: float
    depth: float


def face_size(shape: PlateShape, face: PlateFace) -> FaceSize:
    """Width, height and depth of one face of a plate [mm]."""
    x, y, z = shape.length.value, shape.width.value, shape.thickness.value
    return {
        "top": FaceSize(x, y, z),
        "bottom": FaceSize(x, y, z),
        "front": FaceSize(x, z, y),
        "back": FaceSize(x, z, y),
        "left": FaceSize(y, z, x),
        "right": FaceSize(y, z, x),
    }[face]


def drilled_depth(hole: PlateHole, shape: PlateShape) -> float:
    """How deep the full diameter of a hole goes [mm]: through, or to its depth with the tap's lead."""
    deep = face_size(shape, hole.face).depth
    if hole.depth is None:
        return deep
    full = tap_depths(thread(hole.thread), hole.depth).full_diameter_depth if hole.thread else hole.depth
    if not 0 < hole.depth < deep:
        raise Refusal(
            f"{hole.name} is {hole.depth:g} mm deep; the plate is {deep:g} mm there, "
            "and a blind hole must stay inside.",
            "Say that it runs through, or make it shallower.",
        )
    return min(full, deep)


def outline_area(shape: PlateShape) -> float:
    """Area of a plate's outline in plan [mm2].

    Examples
    --------
    >>> from tommybar.shapes.features import Dim
    >>> outline_area(PlateShape(Dim(30.0), Dim(20.0), Dim(5.0)))
    600.0
    """
    return shape.length.value * shape.width.value - (4 - math.pi) * shape.corner**2


def plate_moments(shape: PlateShape) -> Moments:
    """Moments of a plate with its corners rounded and its holes taken off.

    Exact for what is drawn: blind holes end in a 118-degree drill tip, tapped
    ones stand at the tapping drill.
    """
    length, width, thickness = shape.length.value, shape.width.value, shape.thickness.value
    for name, figure in (("length", length), ("width", width), ("thickness", thickness)):
        if not figure > 0:
            raise Refusal(f"The {name} of the plate is {figure:g} mm; it must be above 0 mm.")
    if shape.corner > min(length, width) / 2:
        raise Refusal(
            f"The corner radius is {shape.corner:g} mm; "
            f"the plate has room for {min(length, width) / 2:g} mm.",
            "Give a smaller corner radius.",
        )
    body = block(length, width, thickness)
    if shape.corner > 0:
        body -= _corners(shape)
    for hole in shape.holes:
        body -= _hole(hole, shape)
    return body


def plate_properties(shape: PlateShape, density_g_cm3: float) -> MassProperties:
    """Mass, centre and moments of inertia of a plate; see :func:`tommybar.shapes.mass.mass_properties`."""
    body, grams = plate_moments(shape), density_g_cm3 / 1000
    x, y, z = body.x / body.volume, body.y / body.volume, body.z / body.volume
    xx, yy = body.xx - body.volume * x * x, body.yy - body.volume * y * y
    zz = body.zz - body.volume * z * z
    return MassProperties(
        volume=body.volume,
        mass=body.volume * grams,
        centre=z,
        inertia_axis=(xx + yy) * grams,
        inertia_across=((xx + yy) / 2 + zz) * grams,
        off_axis=(x, y),
    )


def _corners(shape: PlateShape) -> Moments:
    """What the four rounded corners take off: small squares less quarter discs."""
    c, t = shape.corner, shape.thickness.value
    square = block(c, c, t)
    v, to_centre = math.pi * c * c / 4 * t, 4 * c / (3 * math.pi)
    quarter = Moments(v, v * to_centre, v * to_centre, v * t / 2, v * c * c / 4, v * c * c / 4, v * t * t / 3)
    # quarter disc measured from the arc's centre, which lies c inside both edges; mirrored for each corner
    total = Moments()
    for x_edge, x_in in ((0.0, 1.0), (shape.length.value, -1.0)):
        for y_edge, y_in in ((0.0, 1.0), (shape.width.value, -1.0)):
            total += _mirrored(square, x_in, y_in).shifted(x_edge, y_edge)
            total -= _mirrored(quarter, -x_in, -y_in).shifted(x_edge + x_in * c, y_edge + y_in * c)
    return total


def _mirrored(body: Moments, x_sign: float, y_sign: float) -> Moments:
    return Moments(body.volume, x_sign * body.x, y_sign * body.y, body.z, body.xx, body.yy, body.zz)


def _hole(hole: PlateHole, shape: PlateShape) -> Moments:
    """One hole in its face, placed in the plate's frame."""
    face = face_size(shape, hole.face)
    dia, deep = drawn_hole(hole.dia, hole.thread), drilled_depth(hole, shape)
    reach = max(dia, hole.sink_dia) / 2
    if not (reach <= hole.x <= face.width - reach and reach <= hole.y <= face.height - reach):
        raise Refusal(
            f"{hole.name} is {2 * reach:g} mm in diameter at {hole.x:g}, {hole.y:g} mm; it must lie "
            f"inside the {hole.face} face, {face.width:g} x {face.height:g} mm.",
            "Move it inwards, or make the plate larger.",
        )
    body = rod(dia, 0.0, deep)
    if hole.depth is not None:
        tip = min(point_length(dia), face.depth - deep)
        full = point_length(dia)
        body += cone_tip(dia, deep, full)
        if tip < full:  # the point comes out at the far face: what lies beyond is no metal
            body -= cone_tip(dia * (1 - tip / full), deep + tip, full - tip)
    if hole.sink_dia > dia:
        body += rod(hole.sink_dia, 0.0, hole.sink_depth) - rod(dia, 0.0, hole.sink_depth)
    return _placed(body, hole.face, hole.x, hole.y, shape)


def _placed(body: Moments, face: PlateFace, x: float, y: float, shape: PlateShape) -> Moments:
    """A hole drawn about the axis of its own depth, put where it belongs in the plate's frame."""
    length, width, thickness = shape.length.value, shape.width.value, shape.thickness.value
    v, deep, flat, along = body.volume, body.z, body.xx, body.zz
    if face == "top":
        return body.shifted(x, y, 0.0)
    if face == "bottom":
        return Moments(v, 0.0, 0.0, -deep, flat, flat, along).shifted(length - x, y, thickness)
    up = thickness - y
    if face == "front":
        return Moments(v, 0.0, deep, 0.0, flat, along, flat).shifted(x, 0.0, up)
    if face == "back":
        return Moments(v, 0.0, -deep, 0.0, flat, along, flat).shifted(length - x, width, up)
    if face == "left":
        return Moments(v, deep, 0.0, 0.0, along, flat, flat).shifted(0.0, width - x, up)
    return Moments(v, -deep, 0.0, 0.0, along, flat, flat).shifted(length, x, up)
