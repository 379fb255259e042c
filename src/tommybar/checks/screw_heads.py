"""Heads, washers and nuts on one face: over its edge, on one another, and the spanner's jaws round them."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import combinations

from tommybar.checks.checked import PRACTICE, Checked, at_least
from tommybar.design.joints import ScrewJoint
from tommybar.design.model import Part, SizedDesign
from tommybar.facts.fasteners import nut, open_spanner, screw_head, washer
from tommybar.findings import Finding
from tommybar.refusals import Refusal
from tommybar.shapes.features import CircleHoles, PlateHole, PlateShape, TurnedShape
from tommybar.shapes.outlines import plate_loop
from tommybar.shapes.plates import face_size
from tommybar.shapes.radii import bore_radius, outside_radius
from tommybar.shapes.solids.rings import chorded, of_pieces
from tommybar.shop.model import Shop

HEXAGON = ("ISO 4017", "ISO 4014")
AIR = 0.5  # between two heads [mm]
INSIDE = 1e-3  # below a face, where the metal that it belongs to is asked for [mm]
REMEDY = "Move the hole, take a smaller screw or one with a hexagon socket."


@dataclass(frozen=True)
class _Seat:
    """A head or nut on a face: what it takes there, what turning it takes, how near the edge is [mm]."""

    part: str
    hole: str
    face: str
    x: float
    y: float
    dia: float
    tool: float
    edge: float


def look(design: SizedDesign, shop: Shop) -> Checked:
    """Every screw joint whose head or nut lies on a plate or on a face of a turned part."""
    seats = list(dict.fromkeys(seat for joint in design.screw_joints for seat in _seats(design, joint)))
    found: list[Finding | None] = [_over_the_edge(seat) for seat in seats]
    for one, other in combinations(seats, 2):
        if (one.part, one.face) == (other.part, other.face) and (one.x, one.y) != (other.x, other.y):
            found.append(_beside(one, other))
    return Checked(tuple(_said_once(one for one in found if one is not None)))


def _said_once(found: Iterator[Finding]) -> list[Finding]:
    """Equal holes of a circle are one feature: what is told of it is told once."""
    return list({(one.number, one.words): one for one in found}.values())


def _seats(design: SizedDesign, joint: ScrewJoint) -> list[_Seat]:
    """The head at the first hole, the nut at the last; what no table has is told with the assembly."""
    found: list[_Seat] = []
    try:
        if joint.head:  # a stud has none
            head = screw_head(joint.head, joint.screw)
            tool = open_spanner(head.key).width if joint.head in HEXAGON and head.key else head.diameter
            wide = washer(joint.screw, joint.washers[0]).outside if joint.washers else 0.0
            found += _seated(design, joint.through[0], max(head.diameter, wide), tool, False)
        if joint.nut:
            flats = nut(joint.screw, joint.nut).across_flats
            wide = washer(joint.screw, joint.washers[-1]).outside if len(joint.washers) > 1 else 0.0
            corners = flats / math.cos(math.pi / 6)
            width = open_spanner(flats).width
            found += _seated(design, joint.through[-1], max(corners, wide), width, True)
    except Refusal:
        return found
    return found


def _seated(design: SizedDesign, name: str, dia: float, tool: float, far: bool) -> Iterator[_Seat]:
    part = next((one for one in design.parts if one.name == name.split(".")[0]), None)
    feature = name.partition(".")[2]
    if part is not None and isinstance(part.shape, PlateShape):
        for hole in part.shape.holes:
            if hole.name == feature and (far or not (hole.sink_depth > 0 or hole.sink_angle > 0)):
                yield _on_plate(part, part.shape, hole, dia, tool, far)
    elif part is not None and isinstance(part.shape, TurnedShape):
        for holes in part.shape.circle_holes:
            if holes.name == feature and (far or not holes.sink_depth):
                yield from _on_circle(part, part.shape, holes, dia, tool, far)


def _on_plate(part: Part, shape: PlateShape, hole: PlateHole, dia: float, tool: float, far: bool) -> _Seat:
    face = face_size(shape, hole.face)
    edge = min(hole.x, face.width - hole.x, hole.y, face.height - hole.y)
    if shape.outline is not None and hole.face in ("top", "bottom"):
        x = hole.x if hole.face == "top" else face.width - hole.x
        edge = _to_outline(shape, x, hole.y)
    side = f"behind {hole.face}" if far else hole.face
    return _Seat(part.name, hole.name, side, hole.x, hole.y, dia, tool, edge)


def _to_outline(shape: PlateShape, x: float, y: float) -> float:
    """How far a place lies inside the outline of a plate, below nought outside it [mm]."""
    from shapely import Point, Polygon

    outline = Polygon(chorded(of_pieces(plate_loop(shape)), 360, keep_area=False))
    far = float(outline.exterior.distance(Point(x, y)))
    return far if outline.covers(Point(x, y)) else -far


def _on_circle(
    part: Part, shape: TurnedShape, holes: CircleHoles, dia: float, tool: float, far: bool
) -> Iterator[_Seat]:
    """Heads on a face or shoulder of a turned part: its edges are circles about the part's axis."""
    at_start = (holes.face == "A") != far
    z = holes.start if at_start else holes.end
    into, out = (z + INSIDE, z - INSIDE) if at_start else (z - INSIDE, z + INSIDE)
    middle = holes.circle / 2
    edges = [outside_radius(shape, into) - middle]
    hub = outside_radius(shape, out) if 0 < out < shape.length.value else 0.0
    if hub < middle:  # a hub that stands out of the shoulder there is a wall and no edge
        edges.append(middle - bore_radius(shape, into) if bore_radius(shape, into) else middle)
    face = "A" if at_start else "B"
    for recess in shape.recesses:
        mouth = 0.0 if recess.face == "A" else shape.length.value
        if recess.face == face and abs(mouth - z) < INSIDE:
            edges += [abs(middle - recess.inside / 2), abs(middle - recess.outside / 2)]
    for n in range(holes.count):
        angle = math.radians(holes.start_angle + 360 * n / holes.count)
        x, y = round(middle * math.cos(angle), 9), round(middle * math.sin(angle), 9)
        yield _Seat(part.name, holes.name, f"{face} {z:.6g}", x, y, dia, tool, min(edges))


def _over_the_edge(seat: _Seat) -> Finding | None:
    words = f"The head at {seat.hole} stands over the edge; from its middle to the edge"
    place = {"part": seat.part, "feature": seat.hole, "remedy": REMEDY}
    return at_least(687, words, seat.edge, seat.dia / 2, source=PRACTICE, **place)


def _beside(one: _Seat, other: _Seat) -> Finding | None:
    """Room for both heads, and for a spanner round the one that needs it."""
    apart = math.hypot(one.x - other.x, one.y - other.y)
    wanted = max(one.tool + other.dia, other.tool + one.dia, one.dia + other.dia) / 2 + AIR
    both = f"{one.hole} and {other.hole}" if one.hole != other.hole else f"two holes of {one.hole}"
    words = f"Heads at {both} leave no room to turn them; middle to middle"
    place = {"part": one.part, "feature": one.hole, "remedy": REMEDY}
    return at_least(688, words, apart, wanted, source=PRACTICE, **place)
