"""The angle about a common axis at which one piece stands to another."""

from __future__ import annotations

import math

from tommybar.assembly.links import Link, Piece
from tommybar.design.model import SizedDesign
from tommybar.shapes.features import TurnedShape
from tommybar.shapes.solids.frames import HERE, Frame, direction, turned, within


def clocked(told: Frame, anchor: Piece, piece: Piece, link: Link, design: SizedDesign) -> Frame:
    """``told``, where ``piece`` stands from ``anchor``, turned about their axis as a clocking relation says.

    Without one it stays as it is: both parts' own x axes then lie as near to
    one another as the joint lets them.
    """
    if link.kind not in ("fit", "thread") or any(
        one.at != HERE for pair in link.pairs for one in (pair.hole, pair.shaft)
    ):
        return told
    for relation in design.clockings:
        mine, other = relation.feature.partition("."), relation.datum.partition(".")
        sign = 1.0
        if (mine[0], other[0]) == (anchor[0], piece[0]):
            mine, other, sign = other, mine, -1.0
        if (mine[0], other[0]) != (piece[0], anchor[0]):
            continue
        own, datum = _angle(design, piece[0], mine[2]), _angle(design, anchor[0], other[2])
        if own is None or datum is None:
            continue
        # angles are told as seen from face A, where the frame turns the other way
        x, y, _ = direction(told, (math.cos(math.radians(own)), -math.sin(math.radians(own)), 0.0))
        stands = math.degrees(math.atan2(y, x))
        return within(turned(-datum - sign * relation.angle - stands), told)
    return told


def _angle(design: SizedDesign, part: str, name: str) -> float | None:
    """Where a feature looks, seen from face A of its part [deg]; None when it looks nowhere."""
    shape = design.part(part).shape
    if not isinstance(shape, TurnedShape):
        return None
    for holes in shape.circle_holes:
        if holes.name == name:
            return holes.start_angle
    groups = (
        shape.cross_holes,
        shape.flats,
        shape.head_slots,
        shape.cross_slots,
        shape.keyways,
        shape.bore_keyways,
        shape.slits,
    )
    return next((one.angle for group in groups for one in group if one.name == name), None)
