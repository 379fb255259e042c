"""A turned part as a construction: the half-section turned round, and what is cut across it."""

from __future__ import annotations

import math

from tommybar.shapes.clocking import in_frame
from tommybar.shapes.curves import ArcPiece
from tommybar.shapes.features import (
    BoreKeyway,
    CircleHoles,
    CrossHole,
    CrossSlot,
    Eccentric,
    Flats,
    HeadSlot,
    Keyway,
    Slit,
    TurnedShape,
)
from tommybar.shapes.holes import drawn_hole
from tommybar.shapes.inside import POINT_ANGLE, drawn_bore
from tommybar.shapes.profile import profile
from tommybar.shapes.radii import bore_span, outside_radius
from tommybar.shapes.solids.frames import Frame, frame, shifted, turned, within
from tommybar.shapes.solids.nodes import BEYOND, Less, Node, Prism, Turn, less, rod
from tommybar.shapes.solids.rings import Ring, box, chorded, counter_clockwise, polygon, stadium


def turned_part(shape: TurnedShape) -> Node:
    """The whole part; its axis is z and face A lies at z = 0."""
    shape = in_frame(shape)
    ring = section_ring(shape)
    far = max(r for r, _ in chorded(ring, 16, keep_area=True)) + BEYOND  # lies outside all metal
    cuts: list[Node] = []
    for land in shape.outside:
        if isinstance(land, Eccentric):
            cuts.append(_beside(land, far))
    for holes in shape.circle_holes:
        cuts += _circle_holes(holes, shape)
    cuts += [_cross_hole(hole, shape, far) for hole in shape.cross_holes]
    for flats in shape.flats:
        cuts += _flats(flats, shape, far)
    cuts += [_head_slot(slot, shape, far) for slot in shape.head_slots]
    cuts += [_cross_slot(slot, far) for slot in shape.cross_slots]
    cuts += [_keyway(key, shape, far) for key in shape.keyways]
    cuts += [_bore_keyway(key, shape) for key in shape.bore_keyways]
    cuts += [_slit(slit, shape, far) for slit in shape.slits]
    return less(Turn(ring), cuts)


def section_ring(shape: TurnedShape) -> Ring:
    """The half-section as a ring of (radius, z)."""
    corners = []
    for piece in profile(shape):
        bulge = -math.tan(piece.sweep / 4) if isinstance(piece, ArcPiece) else 0.0
        corners.append((piece.start[1], piece.start[0], bulge))
    return counter_clockwise(tuple(corners))


def _past(shape: TurnedShape, start: float, end: float) -> tuple[float, float]:
    """A stretch along the axis, drawn past the faces that it reaches."""
    length = shape.length.value
    return (
        start - BEYOND if start <= 1e-9 else start,
        end + BEYOND if end >= length - 1e-9 else end,
    )


def _tip(dia: float) -> float:
    return dia / 2 / math.tan(math.radians(POINT_ANGLE / 2))


def _beside(land: Eccentric, far: float) -> Node:
    """What lies round a cylinder whose axis is beside that of the part."""
    own = rod(
        land.dia.target,
        land.start - BEYOND,
        land.end + BEYOND,
        within(turned(land.angle), shifted(x=land.throw)),
    )
    return Less(rod(2 * far, land.start, land.end), (own,))


def _circle_holes(holes: CircleHoles, shape: TurnedShape) -> list[Node]:
    """Each hole of a pitch circle, with its counterbore and, when it is blind, its drill tip."""
    dia = drawn_hole(holes.dia, holes.thread)
    start, end = _past(shape, holes.start, holes.end)
    ring = box(0.0, start, dia / 2, end)
    if holes.blind and holes.face == "A":
        ring = polygon([(0, start), (dia / 2, start), (dia / 2, end), (0, end + _tip(dia))])
    elif holes.blind:
        ring = polygon([(0, start - _tip(dia)), (dia / 2, start), (dia / 2, end), (0, end)])
    found: list[Node] = []
    for n in range(holes.count):
        angle = holes.start_angle + 360 * n / holes.count
        at = within(turned(angle), shifted(x=holes.circle / 2))
        found.append(Turn(ring, at))
        if holes.sink_dia > dia and holes.sink_depth > 0:
            if holes.face == "A":
                found.append(rod(holes.sink_dia, start, holes.start + holes.sink_depth, at))
            else:
                found.append(rod(holes.sink_dia, holes.end - holes.sink_depth, end, at))
    return found


def _out(angle: float, z: float = 0.0, left: float = 0.0) -> Frame:
    """A frame on the axis at z whose own z looks out towards ``angle`` and whose own x lies along the part."""
    return within(turned(angle), frame((0, 0, 1), (0, 1, 0), (-1, 0, 0), (0.0, left, z)))


def _towards(angle: float, z: float = 0.0, aside: float = 0.0) -> Frame:
    """A frame on the axis at z: own z out towards ``angle``, own x across it, own y along the part."""
    return within(turned(angle), frame((0, 1, 0), (0, 0, 1), (1, 0, 0), (0.0, aside, z)))


def _cross_hole(hole: CrossHole, shape: TurnedShape, far: float) -> Node:
    """A hole across the axis, from outside to the axis, right through, or to its depth."""
    dia, outside = drawn_hole(hole.dia, hole.thread), outside_radius(shape, hole.z)
    at = _towards(hole.angle, hole.z, hole.offset)
    start = -far if hole.walls == 2 else 0.0
    corners = [(0.0, start), (dia / 2, start)]
    if hole.depth is not None:
        start = outside - hole.depth
        corners = [(0.0, start - _tip(dia)), (dia / 2, start)]
    corners += [(dia / 2, far), (0.0, far)]
    if hole.sink_dia > dia and hole.sink_depth > 0:
        floor = outside - hole.sink_depth
        corners[-2:-1] = [(dia / 2, floor), (hole.sink_dia / 2, floor), (hole.sink_dia / 2, far)]
    return Turn(polygon(corners), at)


def _flats(flats: Flats, shape: TurnedShape, far: float) -> list[Node]:
    """What lies beyond each flat."""
    start, end = _past(shape, flats.start, flats.end)
    return [
        Prism(
            box(-far, start, far, end),
            2 * far,
            within(_towards(flats.angle + 360 * n / flats.count), shifted(z=flats.aimed)),
        )
        for n in range(flats.count)
    ]


def _head_slot(slot: HeadSlot, shape: TurnedShape, far: float) -> Node:
    """A slot straight across a face: its width lies square to ``angle``."""
    length, half = shape.length.value, slot.width.target / 2
    start, end = (-BEYOND, slot.depth) if slot.face == "A" else (length - slot.depth, length + BEYOND)
    return Prism(box(-far, -half, far, half), end - start, within(shifted(z=start), turned(slot.angle)))


def _cross_slot(slot: CrossSlot, far: float) -> Node:
    """A slot along the axis with half-round ends, through one wall or both."""
    long, middle = slot.end - slot.start, (slot.start + slot.end) / 2
    at = within(turned(slot.angle), frame((0, 0, 1), (0, -1, 0), (1, 0, 0), (0.0, 0.0, middle)))
    ring = stadium(long, slot.width.target)
    if slot.walls == 1:
        return Prism(ring, far, at)
    return Prism(ring, 2 * far, within(at, shifted(z=-far)))


def _keyway(key: Keyway, shape: TurnedShape, far: float) -> Node:
    """A keyway in a shaft, of the form its cutter leaves."""
    middle, wide = (key.start + key.end) / 2, key.width.target
    top = outside_radius(shape, middle)
    floor = top - key.depth
    if key.form == "sunk":
        at = within(turned(key.angle), frame((0, 0, 1), (0, -1, 0), (1, 0, 0), (floor, 0.0, middle)))
        return Prism(stadium(key.end - key.start, wide), far, at)
    # the disc's axis lies across: own x along the part, own y outwards, own z across
    at = within(turned(key.angle), frame((0, 0, 1), (1, 0, 0), (0, 1, 0), (0.0, -wide / 2, 0.0)))
    radius = key.cutter / 2
    if key.form == "woodruff":
        return Prism(_disc(middle, floor + radius, radius, far), wide, at)
    return Prism(_sled(key, floor, radius, far), wide, at)


def _disc(along: float, high: float, radius: float, far: float) -> Ring:
    """A disc of a cutter, and the room above its middle that its arbor passes."""
    if high >= far:
        return ((along + radius, high, 1.0), (along - radius, high, 1.0))
    return (
        (along - radius, high, 1.0),
        (along + radius, high, 0.0),
        (along + radius, far, 0.0),
        (along - radius, far, 0.0),
    )


def _sled(key: Keyway, floor: float, radius: float, far: float) -> Ring:
    """A floor from start to end that runs out at both in the arc of the disc."""
    quarter = math.tan(math.pi / 8)
    high = floor + radius
    return (
        (key.start - radius, high, quarter),
        (key.start, floor, 0.0),
        (key.end, floor, quarter),
        (key.end + radius, high, 0.0),
        (key.end + radius, max(far, high + BEYOND), 0.0),
        (key.start - radius, max(far, high + BEYOND), 0.0),
    )


def _bore_keyway(key: BoreKeyway, shape: TurnedShape) -> Node:
    """A keyway along a bore, as long as the bore."""
    bore = next(one for one in shape.bores if one.name == key.on)
    start, end = _past(shape, *bore_span(bore, shape))
    half, out = key.width.target / 2, drawn_bore(bore) / 2 + key.depth
    return Prism(box(0.0, -half, out, half), end - start, within(shifted(z=start), turned(key.angle)))


def _slit(slit: Slit, shape: TurnedShape, far: float) -> Node:
    """A saw cut in a plane through the axis."""
    length = shape.length.value
    deep = length + BEYOND if slit.depth is None else slit.depth
    start, end = (-BEYOND, deep) if slit.face == "A" else (length - deep, length + BEYOND)
    near = 0.0 if slit.walls == 1 else -far
    ring = box(near, -slit.width / 2, far, slit.width / 2)
    return Prism(ring, end - start, within(shifted(z=start), turned(slit.angle)))
