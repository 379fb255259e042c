"""Metal round threads, and holes that come out where they should not."""

from __future__ import annotations

import math

from tommybar.checks.checked import PRACTICE, Checked, at_least
from tommybar.design.model import Part, SizedDesign
from tommybar.facts.drills import point_length
from tommybar.findings import Finding
from tommybar.shapes.features import CrossHole, TurnedShape
from tommybar.shapes.holes import drawn_hole
from tommybar.shapes.radii import bore_radius, bore_span, outside_radius, thinnest_wall
from tommybar.shop.model import Shop

ROUND_SHARE = 0.5  # of the thread's diameter
LEAST_LEFT = (
    0.5  # before the point of a drill, which presses a thinner floor through; common practice, no source [mm]
)
REMEDY = "Take a smaller thread, move it, or give the part more metal there."


def look(design: SizedDesign, shop: Shop) -> Checked:
    """Every turned part with a tapped bore or a cross hole."""
    found: list[Finding | None] = []
    for part in design.parts:
        if isinstance(part.shape, TurnedShape):
            found += _tapped_bores(part, part.shape)
            for hole in part.shape.cross_holes:
                found += _cross(part, part.shape, hole)
            found += _circles(part, part.shape)
    return Checked(tuple(one for one in found if one is not None))


def _tapped_bores(part: Part, shape: TurnedShape) -> list[Finding | None]:
    found: list[Finding | None] = []
    for bore in shape.bores:
        if bore.thread:
            wall, _ = thinnest_wall(shape, bore)
            wall -= (bore.dia.value - drawn_hole(bore.dia, bore.thread)) / 2
            wanted = ROUND_SHARE * bore.dia.value
            words = f"Little metal round the thread {bore.thread}"
            found.append(at_least(620, words, wall, wanted, part=part.name, feature=bore.name, remedy=REMEDY))
    return found


def _cross(part: Part, shape: TurnedShape, hole: CrossHole) -> list[Finding | None]:
    """A cross hole: metal along the axis on both sides, and whether it meets the bore as it is meant to."""
    land = next((body for body in shape.outside if body.start <= hole.z <= body.end), None)
    dia = hole.dia.value
    found: list[Finding | None] = []
    if land is not None and hole.thread:
        beside = min(hole.z - land.start, land.end - hole.z) - dia / 2
        words = f"Little metal beside the thread {hole.thread} of {hole.name} along {land.name}"
        place = {"part": part.name, "feature": hole.name, "remedy": REMEDY}
        found.append(at_least(621, words, beside, ROUND_SHARE * dia, **place))
    met = [
        bore.name
        for bore in shape.bores
        if bore_span(bore, shape)[0] - dia / 2 < hole.z < bore_span(bore, shape)[1] + dia / 2
    ]
    if hole.depth is not None and met and not hole.into:  # blind: its point may stop short of the bore
        left = _before_bore(shape, hole, dia)
        if left > 0:
            words = f"The drill for {hole.name} comes near {met[0]}"
            place = {"part": part.name, "feature": hole.name, "remedy": "Make it shallower, or move it."}
            found.append(at_least(619, words, left, LEAST_LEFT, **place))
            return found
    across = any(other.name == hole.into for other in shape.cross_holes)  # holes_across looks at that
    if hole.into and hole.into not in met and not across:
        found.append(
            Finding(
                622,
                "stop",
                f"{hole.name} is to go into {hole.into}, but at {hole.z:g} mm from face A there is no such bore.",
                part.name,
                hole.name,
                figure=f"{hole.z:g} mm",
                bound=f"where {hole.into} is",
                remedy="Move the hole, or name the bore that it meets.",
                source="geometry of the part",
            )
        )
    elif met and not hole.into:
        found.append(
            Finding(
                623,
                "caution",
                f"{hole.name} breaks into {met[0]}; the design does not say that it is meant to.",
                part.name,
                hole.name,
                figure=f"{hole.z:g} mm from face A",
                bound=f"clear of {met[0]}",
                remedy=f'Say "into: {met[0]}" if it is meant, or move it.',
                source="geometry of the part",
            )
        )
    elif (
        hole.depth is None and hole.walls == 1 and not met and not across and bore_radius(shape, hole.z) <= 0
    ):
        found.append(
            Finding(
                694,
                "caution",
                f"{hole.name} ends in solid metal at the axis: no bore lies there, and the design gives no depth.",
                part.name,
                hole.name,
                figure=f"{outside_radius(shape, hole.z):g} mm deep",
                bound='"deep", "walls: 2" or "into" written at the hole',
                remedy='Say "walls: 2" if it goes right through, "deep" if it is blind, "into" if it meets a hole.',
                source="geometry of the part",
            )
        )
    return found


def _before_bore(shape: TurnedShape, hole: CrossHole, dia: float) -> float:
    """Metal between the point of a blind cross hole's drill and the bore behind it; below 0 where it breaks in [mm]."""
    assert hole.depth is not None
    drill = drawn_hole(hole.dia, hole.thread)
    floor = outside_radius(shape, hole.z) - hole.depth
    inside = max(bore_radius(shape, z) for z in (hole.z - dia / 2, hole.z, hole.z + dia / 2))
    full = math.hypot(floor, max(0.0, abs(hole.offset) - drill / 2))  # the edge of its full diameter
    tip = math.hypot(floor - point_length(drill), hole.offset)
    return min(full, tip) - inside


def _circles(part: Part, shape: TurnedShape) -> list[Finding | None]:
    """Holes along the axis that run into a bore."""
    found: list[Finding | None] = []
    for holes in shape.circle_holes:
        dia = drawn_hole(holes.dia, holes.thread)
        inner = bore_radius(shape, (holes.start + holes.end) / 2)
        room = holes.circle / 2 - dia / 2 - inner
        if inner > 0 and room < 0:
            found.append(
                Finding(
                    624,
                    "stop",
                    f"{holes.name} runs {-room:.2f} mm into the bore.",
                    part.name,
                    holes.name,
                    figure=f"{room:.2f} mm",
                    bound="0 mm",
                    remedy="Take a larger circle or smaller holes.",
                    source=PRACTICE,
                )
            )
    return found
