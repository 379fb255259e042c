"""Thin walls of turned parts: round bores, beside recesses, between holes and their edges."""

from __future__ import annotations

import math

from tommybar.checks.checked import Checked, at_least
from tommybar.design.model import Part, SizedDesign
from tommybar.findings import Finding
from tommybar.shapes.features import CircleHoles, Recess, TurnedShape
from tommybar.shapes.holes import drawn_hole
from tommybar.shapes.inside import drawn_bore
from tommybar.shapes.radii import bore_radius, outside_radius, thinnest_wall
from tommybar.shop.model import Shop

LEAST_WALL = 1.5  # [mm]
WALL_SHARE = 0.15  # of the hole's diameter
EDGE_SHARE = 1.5  # of a tapped hole's diameter, from its middle to the edge
LEAST_WEB = 2.0  # left under a recess [mm]
THIN_DISC = 12.0  # a web thinner than the diameter over this bends while it is cut
REMEDY = "Make the hole smaller, move it, or give the part more metal there."


def wall_wanted(hole: float) -> float:
    """Least metal beside a hole: 1.5 mm, or 0.15 of its diameter [mm]."""
    return max(LEAST_WALL, WALL_SHARE * hole)


def ring_wanted(bore: float) -> float:
    """Least wall round a bore on the axis: 1.5 mm, or a sixteenth of it, where jaws press a ring oval [mm].

    Below that the radius is over eight times the wall (mechanics C6: thin rings).
    """
    return max(LEAST_WALL, bore / 16)


def look(design: SizedDesign, shop: Shop) -> Checked:
    """Every turned part."""
    found: list[Finding | None] = []
    for part in design.parts:
        if isinstance(part.shape, TurnedShape):
            found += _bores(part, part.shape)
            for recess in part.shape.recesses:
                found += _recess(part, part.shape, recess)
            for holes in part.shape.circle_holes:
                found += _circle(part, part.shape, holes)
    return Checked(tuple(one for one in found if one is not None))


def _bores(part: Part, shape: TurnedShape) -> list[Finding | None]:
    found: list[Finding | None] = []
    tube = part.blank_from == "tube"
    remedy = "Hold it on a plug under the jaws, as its card says, or take a thicker tube." if tube else REMEDY
    for bore in shape.bores:
        if tube and bore.through and not bore.dia.toleranced:
            continue  # the wall as the tube brings it: the card has its plug
        if not bore.thread:
            wall, z = thinnest_wall(shape, bore)
            words = f"The wall round {bore.name} is thin, {z:.1f} mm from face A"
            wanted = ring_wanted(drawn_bore(bore))
            found.append(at_least(610, words, wall, wanted, part=part.name, feature=bore.name, remedy=remedy))
    return found


def _recess(part: Part, shape: TurnedShape, recess: Recess) -> list[Finding | None]:
    """The rim outside a recess and the web under it."""
    length = shape.length.value
    floor = recess.depth if recess.face == "A" else length - recess.depth
    inward = 1e-6 if recess.face == "A" else -1e-6
    rim = outside_radius(shape, floor - inward) - recess.outside / 2
    far = [
        other.depth
        for other in shape.recesses
        if other.face != recess.face and other.inside < recess.outside and other.outside > recess.inside
    ]
    web = _behind(shape, recess) - recess.depth - max(far, default=0.0)
    wide = recess.outside
    place = {"part": part.name, "feature": recess.name}
    found = [
        at_least(611, f"The rim outside {recess.name} is thin", rim, LEAST_WALL, remedy=REMEDY, **place),
        at_least(
            612, f"The web under {recess.name} is thin", web, LEAST_WEB, remedy="Make it shallower.", **place
        ),
    ]
    if LEAST_WEB <= web < wide / THIN_DISC:
        found.append(
            Finding(
                613,
                "note",
                f"The web under {recess.name} is {web:.1f} mm thick and {wide:.0f} mm across: rough both sides before "
                "finishing either, with light last cuts.",
                part.name,
                recess.name,
                figure=f"{web:.1f} mm",
                bound=f"{wide / THIN_DISC:.1f} mm, a twelfth of the diameter",
                remedy="Rough both sides first, then finish each with light cuts, gripped no tighter than needed.",
                source="common practice, no source",
            )
        )
    return found


def _behind(shape: TurnedShape, recess: Recess) -> float:
    """Length of metal along the axis at the middle of a recess before it is cut [mm]."""
    middle = (recess.inside + recess.outside) / 4
    return sum(
        body.end - body.start
        for body in shape.outside
        if outside_radius(shape, (body.start + body.end) / 2) > middle
    )


def _circle(part: Part, shape: TurnedShape, holes: CircleHoles) -> list[Finding | None]:
    """Metal between holes of a circle, to the bore, and to the outside."""
    dia = drawn_hole(holes.dia, holes.thread)
    out, middle = holes.circle / 2, (holes.start + holes.end) / 2
    place = {"part": part.name, "feature": holes.name, "remedy": REMEDY}
    wanted = wall_wanted(dia)
    found: list[Finding | None] = []
    if holes.count > 1:
        between = 2 * out * math.sin(math.pi / holes.count) - dia
        found.append(at_least(614, f"Little metal between the holes {holes.name}", between, wanted, **place))
    inner = bore_radius(shape, middle)
    if inner > 0:
        found.append(
            at_least(
                615, f"Little metal from {holes.name} to the bore", out - dia / 2 - inner, wanted, **place
            )
        )
    edge = outside_radius(shape, middle) - out
    if holes.thread:
        far = EDGE_SHARE * holes.dia.value
        found.append(
            at_least(616, f"{holes.name} is tapped near the edge; middle to edge", edge, far, **place)
        )
    else:
        found.append(
            at_least(617, f"Little metal from {holes.name} to the outside", edge - dia / 2, wanted, **place)
        )
    for recess in shape.recesses:
        room = min(out - dia / 2 - recess.inside / 2, recess.outside / 2 - out - dia / 2)
        meets = recess.inside / 2 < out < recess.outside / 2
        if meets:
            found.append(
                at_least(618, f"{holes.name} lies close to a wall of {recess.name}", room, 0.5, **place)
            )
    return found
