"""A plate or block as a construction: its outline drawn out, and what is cut in its faces.

x along the length, y along the width, z up from the bottom face [mm].
"""

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
from tommybar.shapes.outlines import plate_loop
from tommybar.shapes.plates import drilled_depth, face_size
from tommybar.shapes.solids.edges import edge_cuts
from tommybar.shapes.solids.frames import Frame, cosine, frame, shifted, sine, turned, within
from tommybar.shapes.solids.nodes import BEYOND, Node, Prism, Turn, less, rod
from tommybar.shapes.solids.rings import box, of_pieces, polygon, rounded, stadium


def plate_part(shape: PlateShape) -> Node:
    """The whole plate or block."""
    thickness = shape.thickness.value
    ring = of_pieces(plate_loop(shape))
    cuts: list[Node] = []
    for edge in shape.edges:
        cuts += edge_cuts(edge, ring, thickness)
    for hole in shape.holes:
        cuts += hole_cuts(hole, shape)
    cuts += [_slot(slot, shape) for slot in shape.slots]
    cuts += [_pocket(pocket, shape) for pocket in shape.pockets]
    cuts += [_step(step, shape) for step in shape.steps]
    cuts += [_vee(vee, shape) for vee in shape.vees]
    for tail in shape.dovetails:
        cuts += _dovetail(tail, shape)
    cuts += [_slit(slit, shape) for slit in shape.slits]
    return less(Prism(ring, thickness), cuts)


def face_frame(shape: PlateShape, face: PlateFace) -> Frame:
    """The frame of a face: x and y on it as it is seen from outside, z out of the metal.

    Examples
    --------
    >>> from tommybar.shapes.features import Dim
    >>> face_frame(PlateShape(Dim(30.0), Dim(20.0), Dim(5.0)), "top")[11]
    5.0
    """
    x, y, z = shape.length.value, shape.width.value, shape.thickness.value
    if face == "top":
        return shifted(z=z)
    if face == "bottom":
        return frame((-1, 0, 0), (0, 1, 0), (0, 0, -1), (x, 0, 0))
    if face == "front":
        return frame((1, 0, 0), (0, 0, 1), (0, -1, 0))
    if face == "back":
        return frame((-1, 0, 0), (0, 0, 1), (0, 1, 0), (x, y, 0))
    if face == "left":
        return frame((0, -1, 0), (0, 0, 1), (-1, 0, 0), (0, y, 0))
    return frame((0, 1, 0), (0, 0, 1), (1, 0, 0), (x, 0, 0))


def hole_frame(hole: PlateHole, shape: PlateShape) -> Frame:
    """The frame of a hole: its origin where its axis meets the face, its z out of the metal."""
    at = within(face_frame(shape, hole.face), shifted(hole.x, hole.y))
    if not hole.tilt:
        return at
    c, s = cosine(hole.tilt), sine(hole.tilt)
    lean = frame((c, 0, s), (0, 1, 0), (-s, 0, c))  # going in, the hole moves towards its own x
    return within(within(at, turned(hole.towards)), lean)


def hole_cuts(hole: PlateHole, shape: PlateShape) -> list[Node]:
    """A hole with its drill tip, its counterbore or its countersink."""
    dia, at = drawn_hole(hole.dia, hole.thread), hole_frame(hole, shape)
    slope = math.tan(math.radians(hole.tilt))
    over = BEYOND + max(dia, hole.sink_dia) / 2 * slope
    if hole.depth is None:
        deep = (face_size(shape, hole.face).depth + BEYOND) / cosine(hole.tilt) + dia / 2 * slope
        found: list[Node] = [rod(dia, -deep, over, at)]
    else:
        deep = drilled_depth(hole, shape)
        tip = point_length(dia) if hole.bottom == "drill" else 0.0
        corners = [(0.0, -deep - tip), (dia / 2, -deep), (dia / 2, over), (0.0, over)]
        found = [Turn(polygon(corners), at)]
    if hole.sink_dia > dia:
        sunk = hole.sink_dia / 2
        if hole.sink_angle:
            down = sunk / math.tan(math.radians(hole.sink_angle / 2))
            found.append(Turn(polygon([(0, -down), (sunk, 0), (sunk, over), (0, over)]), at))
        elif hole.sink_depth > 0:
            found.append(rod(hole.sink_dia, -hole.sink_depth, over, at))
    return found


def _depth(given: float | None, shape: PlateShape, face: PlateFace) -> float:
    return face_size(shape, face).depth + BEYOND if given is None else given


def _sunk(shape: PlateShape, face: PlateFace, ring: Frame, deep: float) -> Frame:
    """A frame on a face, moved and turned by ``ring``, at the floor of what is ``deep``."""
    return within(within(face_frame(shape, face), ring), shifted(z=-deep))


def _slot(slot: Slot, shape: PlateShape) -> Node:
    deep = _depth(slot.depth, shape, slot.face)
    place = within(shifted(slot.x, slot.y), turned(slot.angle))
    ring = stadium(slot.long, slot.width.target)
    return Prism(ring, deep + BEYOND, _sunk(shape, slot.face, place, deep))


def _pocket(pocket: Pocket, shape: PlateShape) -> Node:
    deep = _depth(pocket.depth, shape, pocket.face)
    a, b, r = pocket.length.target / 2, pocket.width.target / 2, pocket.corner
    ring = rounded([(-a, -b, r), (a, -b, r), (a, b, r), (-a, b, r)])
    return Prism(ring, deep + BEYOND, _sunk(shape, pocket.face, shifted(pocket.x, pocket.y), deep))


def _step(step: PlateStep, shape: PlateShape) -> Node:
    """A step along one side; the side is that of the plate, whichever face it is cut in."""
    x, y, z = shape.length.value, shape.width.value, shape.thickness.value
    wide, deep, far = step.wide.target, step.depth.target, BEYOND
    ring = {
        "front": box(-far, -far, x + far, wide),
        "back": box(-far, y - wide, x + far, y + far),
        "left": box(-far, -far, wide, y + far),
        "right": box(x - wide, -far, x + far, y + far),
    }[step.side]
    return Prism(ring, deep + far, shifted(z=z - deep if step.face == "top" else -far))


def _across(shape: PlateShape, face: PlateFace, along: str) -> tuple[Frame, float]:
    """A frame at the start of a face whose z runs along it, x across, y out of the metal; and how long."""
    size = face_size(shape, face)
    at = face_frame(shape, face)
    if along == "x":
        turn = frame((0, 1, 0), (0, 0, 1), (1, 0, 0), (-BEYOND, 0, 0))
        return within(at, turn), size.width + 2 * BEYOND
    turn = frame((-1, 0, 0), (0, 0, 1), (0, 1, 0), (0, -BEYOND, 0))
    return within(at, turn), size.height + 2 * BEYOND


def _sign(along: str) -> float:
    return 1.0 if along == "x" else -1.0


def _vee(vee: Vee, shape: PlateShape) -> Node:
    at, long = _across(shape, vee.face, vee.along)
    middle, half = _sign(vee.along) * vee.at, vee.width / 2
    down = half / math.tan(math.radians(vee.included / 2))
    ring = [(middle, -down), (middle + half, 0), (middle + half, BEYOND), (middle - half, BEYOND)]
    return Prism(polygon([*ring, (middle - half, 0)]), long, at)


def _dovetail(tail: Dovetail, shape: PlateShape) -> list[Node]:
    """A slot narrow at its mouth, or all that lies beside a tail narrow at its foot."""
    at, long = _across(shape, "top", tail.along)
    middle, half, deep = _sign(tail.along) * tail.at, tail.narrow.target / 2, tail.depth
    wide = half + deep / math.tan(math.radians(tail.angle))
    if not tail.tail:
        ring = [(-wide, -deep), (wide, -deep), (half, 0), (half, BEYOND), (-half, BEYOND), (-half, 0)]
        return [Prism(polygon((middle + u, v) for u, v in ring), long, at)]
    size = face_size(shape, "top")
    far = (size.height if tail.along == "x" else size.width) + BEYOND
    right = [(half, -deep), (far, -deep), (far, BEYOND), (wide, BEYOND), (wide, 0)]
    left = [(-u, v) for u, v in reversed(right)]
    return [Prism(polygon((middle + u, v) for u, v in side), long, at) for side in (right, left)]


def _slit(slit: PlateSlit, shape: PlateShape) -> Node:
    """A saw cut from a side through the whole thickness."""
    x, y, half = shape.length.value, shape.width.value, slit.width / 2
    if slit.long <= 0:
        raise Refusal(f"{slit.name} is {slit.long:g} mm long; it must be above 0 mm.")
    a = slit.at if slit.side in ("front", "right") else (x if slit.side == "back" else y) - slit.at
    ring = {
        "front": box(a - half, -BEYOND, a + half, slit.long),
        "back": box(a - half, y - slit.long, a + half, y + BEYOND),
        "left": box(-BEYOND, a - half, slit.long, a + half),
        "right": box(x - slit.long, a - half, x + BEYOND, a + half),
    }[slit.side]
    return Prism(ring, shape.thickness.value + 2 * BEYOND, shifted(z=-BEYOND))
