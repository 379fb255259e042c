"""The angle about a common axis at which one piece stands to another."""

from __future__ import annotations

import math
from collections.abc import Mapping

from tommybar.assembly.links import Link, Piece
from tommybar.design.model import SizedDesign
from tommybar.shapes.features import TurnedShape
from tommybar.shapes.solids.frames import HERE, Frame, Vector, back, direction, turned, within

SQUARE = 1e-6  # how far a direction may lean along the axis it is clocked about


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


def clocked_across(
    here: Frame, piece: Piece, link: Link, frames: Mapping[Piece, Frame], design: SizedDesign
) -> Frame:
    """``here``, where ``piece`` stands, turned about a joint that lies across it as a clocking relation says.

    The angle is told about that joint, counter-clockwise as it is seen from
    outside along it, from where the datum looks to where the feature looks: a
    blind bore out of its mouth, anything else on the axis of its part towards
    face A.
    """
    pair = link.pairs[0]
    mine = pair.hole if link.first == piece else pair.shaft
    if link.kind not in ("fit", "thread") or mine.at == HERE:
        return here
    axis = within(here, mine.at)
    for relation in design.clockings:
        own, datum = relation.feature.partition("."), relation.datum.partition(".")
        other = (datum[0], piece[1] if (datum[0], piece[1]) in frames else 1)
        if own[0] != piece[0] or other not in frames or other == piece:
            continue
        ends = []
        for (part, _, feature), frame in ((own, here), (datum, frames[other])):
            looks = _looks(design, part, feature)
            if looks is not None:
                x, y, z = direction(within(back(axis), frame), looks)
                ends += [math.degrees(math.atan2(y, x))] if abs(z) < SQUARE else []
        if len(ends) == 2:
            turn = turned(round(ends[1] + relation.angle - ends[0], 9))
            return within(within(within(axis, turn), back(axis)), here)
    return here


def _looks(design: SizedDesign, part: str, name: str) -> Vector | None:
    """Where a feature of a turned part looks, in the part's own frame; None when it looks nowhere."""
    shape = design.part(part).shape
    if not isinstance(shape, TurnedShape):
        return None
    angle = _angle(design, part, name)
    if angle is not None:
        return math.cos(math.radians(angle)), -math.sin(math.radians(angle)), 0.0
    bore = next((one for one in shape.bores if one.name == name), None)
    if bore is not None and not bore.through and bore.face == "B":
        return 0.0, 0.0, 1.0
    return 0.0, 0.0, -1.0


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
