"""Heads, washers and nuts on a plate: over its edge, on one another, and the spanner's jaws round them."""

from __future__ import annotations

import math
from dataclasses import dataclass
from itertools import combinations

from tommybar.checks.checked import PRACTICE, Checked, at_least
from tommybar.design.joints import ScrewJoint
from tommybar.design.model import Part, SizedDesign
from tommybar.facts.fasteners import nut, screw_head, washer
from tommybar.findings import Finding
from tommybar.refusals import Refusal
from tommybar.shapes.features import PlateHole, PlateShape
from tommybar.shapes.plates import face_size
from tommybar.shop.model import Shop

HEXAGON = ("ISO 4017", "ISO 4014")
SPANNER = 2.2  # width over a spanner's jaws, as a share of the size across flats
AIR = 0.5  # between two heads [mm]
REMEDY = "Move the hole, take a smaller screw or one with a hexagon socket."


@dataclass(frozen=True)
class _Seat:
    """A head or nut on the face of a plate: what it takes there, and what turning it takes [mm]."""

    part: Part
    hole: PlateHole
    face: str
    x: float
    y: float
    dia: float
    tool: float


def look(design: SizedDesign, shop: Shop) -> Checked:
    """Every screw joint whose head or nut lies on a plate."""
    seats = [seat for joint in design.screw_joints for seat in _seats(design, joint)]
    found: list[Finding | None] = []
    for seat in dict.fromkeys(seats):
        found.append(_over_the_edge(seat))
    for one, other in combinations(dict.fromkeys(seats), 2):
        if (one.part.name, one.face) == (other.part.name, other.face) and one.hole != other.hole:
            found.append(_beside(one, other))
    return Checked(tuple(dict.fromkeys(one for one in found if one is not None)))


def _seats(design: SizedDesign, joint: ScrewJoint) -> list[_Seat]:
    """The head at the first hole, the nut at the last; what no table has is left to the design's own check."""
    try:
        head = screw_head(joint.head, joint.screw)
        tool = SPANNER * head.key if joint.head in HEXAGON and head.key else head.diameter
        wide = washer(joint.screw, joint.washers[0]).outside if joint.washers else 0.0
        found = [_seat(design, joint.through[0], max(head.diameter, wide), tool, False)]
        if joint.nut:
            flats = nut(joint.screw, joint.nut).across_flats
            wide = washer(joint.screw, joint.washers[-1]).outside if len(joint.washers) > 1 else 0.0
            corners = flats / math.cos(math.pi / 6)
            found.append(_seat(design, joint.through[-1], max(corners, wide), SPANNER * flats, True))
    except Refusal:
        return []
    return [one for one in found if one is not None]


def _seat(design: SizedDesign, name: str, dia: float, tool: float, far: bool) -> _Seat | None:
    part = next((one for one in design.parts if one.name == name.split(".")[0]), None)
    if part is None or not isinstance(part.shape, PlateShape):
        return None
    hole = next((one for one in part.shape.holes if one.name == name.partition(".")[2]), None)
    if hole is None or (not far and (hole.sink_depth > 0 or hole.sink_angle > 0)):
        return None
    face = f"behind {hole.face}" if far else hole.face
    return _Seat(part, hole, face, hole.x, hole.y, dia, tool)


def _over_the_edge(seat: _Seat) -> Finding | None:
    assert isinstance(seat.part.shape, PlateShape)
    face = face_size(seat.part.shape, seat.hole.face)
    near = min(seat.x, face.width - seat.x, seat.y, face.height - seat.y)
    words = f"The head at {seat.hole.name} stands over the edge; from its middle to the edge"
    place = {"part": seat.part.name, "feature": seat.hole.name, "remedy": REMEDY}
    return at_least(687, words, near, seat.dia / 2, source=PRACTICE, **place)


def _beside(one: _Seat, other: _Seat) -> Finding | None:
    """Room for both heads, and for a spanner round the one that needs it."""
    apart = math.hypot(one.x - other.x, one.y - other.y)
    wanted = max(one.tool + other.dia, other.tool + one.dia, one.dia + other.dia) / 2 + AIR
    words = f"Heads at {one.hole.name} and {other.hole.name} leave no room to turn them; middle to middle"
    place = {"part": one.part.name, "feature": one.hole.name, "remedy": REMEDY}
    return at_least(688, words, apart, wanted, source=PRACTICE, **place)
