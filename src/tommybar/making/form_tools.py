"""Form tools from the drawer: radius tools for coves and rounded edges, pointed tools for vees, each in one plunge.

A form tool copies its own shape, so it is taken only where its radius or
angle is the drawn one; else the table and the file make the curve.
"""

from __future__ import annotations

import math

from tommybar.making.bench import Bench, cutting_minutes
from tommybar.making.cards import Move, Step
from tommybar.making.contours import Contour, beside, groove_contour, land_contour
from tommybar.making.cuts import feed_for
from tommybar.making.dials import travel_words
from tommybar.making.jobs import in_card
from tommybar.making.lengths import Mm
from tommybar.making.practice import rule
from tommybar.making.rigidity import plunging_feed_held
from tommybar.shapes.features import Arc, Groove
from tommybar.shapes.outside import arc_of
from tommybar.shop.model import Tool

SAME_RADIUS = 0.01  # how far a form tool's radius may be off the drawn one; common practice, no source [mm]
SAME_ANGLE = 0.5  # the same for the included angle of a pointed tool; common practice, no source [deg]
WIDEST = 5.0  # edge in the cut at once from which a small lathe chatters; common practice, no source [mm]
FLAT = 0.05  # how much a neighbour may stand above the end of a curve; common practice, no source [mm]
KEPT = 1.0  # from the tool's side to the jaws; common practice, no source [mm]


def radius_tool(bench: Bench, leaves: str, radius: float) -> Tool | None:
    """The owned form tool that leaves that radius, round or hollow; None where there is none [mm]."""
    fitting = [
        tool
        for tool in bench.shop.tools
        if tool.kind == "form" and tool.leaves == leaves and abs(tool.radius - radius) <= SAME_RADIUS
    ]
    return min(fitting, key=lambda tool: tool.letter, default=None)


def reach_of(tool: Tool) -> float:
    """How deep a form tool goes beside larger metal: its reach, or twice its radius where it is not said [mm]."""
    return tool.reach or 2 * tool.radius


def point_tool(bench: Bench, included: float) -> Tool | None:
    """The owned pointed tool of that included angle: for screw threads, or of 90 degrees for chamfers [deg]."""
    fitting = [
        tool
        for tool in bench.shop.tools
        if (tool.kind == "threading" and abs(tool.angle - included) <= SAME_ANGLE)
        or (tool.kind == "chamfer" and abs(2 * tool.angle - included) <= SAME_ANGLE)
    ]
    return min(fitting, key=lambda tool: (tool.kind != "threading", tool.letter), default=None)


def form_hollow(bench: Bench, land: Arc) -> bool:
    """Plunge a hollow land with the form tool of its radius; False where none is owned or its neighbours are in the way."""
    if land.bulge != "in":
        return False
    tool = radius_tool(bench, "hollow", land.radius)
    arc = arc_of(land)
    contour = land_contour(land, bench.length, bench.option.free)
    at = in_card(arc.centre[0], bench.length, bench.option.free)
    (near, r_near), (far, r_far) = contour.points[0], contour.points[-1]
    ahead, behind = beside(bench.shape, land, bench.option.free)
    tangent = [abs(abs(at - z) - land.radius) < FLAT for z in (near, far)]
    if tool is None or at - max(land.radius, tool.shank / 2) < bench.option.jaw_front + KEPT:
        return False
    if (ahead > r_near + FLAT and not tangent[0]) or (behind > r_far + FLAT and not tangent[1]):
        return False
    floor = arc.centre[1] - arc.radius
    highest = max(ahead, behind, bench.work.largest(near + land.radius, far - land.radius) / 2)
    if highest - floor > reach_of(tool) - rule("cut", "retract"):
        return False
    words = f"{land.form}, radius {Mm(land.radius):g}"
    _plunge(bench, land.name, tool, (at, floor), highest, words, near - far)
    _follow(bench, contour)
    return True


def form_groove(bench: Bench, groove: Groove) -> bool:
    """Plunge a round or vee groove with the tool of its form; False where none is owned."""
    contour = groove_contour(bench.shape, groove, bench.option.free)
    near, far = contour.points[0][0], contour.points[-1][0]
    wide, top = near - far, bench.work.largest(near, far) / 2
    deep = top - contour.least
    if deep <= 0 or wide <= 0:
        return False
    included = 2 * math.degrees(math.atan2(wide / 2, deep))
    tool = (
        point_tool(bench, included)
        if groove.form == "vee"
        else radius_tool(bench, "hollow", (wide**2 / 4 + deep**2) / (2 * deep))
    )
    if tool is None:
        return False
    half = max(tool.shank / 2, tool.radius)
    beside_it = bench.work.largest((near + far) / 2 + half, (near + far) / 2 - half) / 2
    if (near + far) / 2 - half < bench.option.jaw_front + KEPT:
        return False
    limit = reach_of(tool) if tool.kind == "form" else tool.shank / 2
    if beside_it - contour.least > limit - 1e-6:
        return False
    words = f"{groove.form} groove, {Mm(wide):g} wide" + (
        f", {included:.0f} deg" if groove.form == "vee" else ""
    )
    _plunge(bench, groove.name, tool, ((near + far) / 2, contour.least), beside_it, words, wide)
    _follow(bench, contour)
    return True


def form_edge(bench: Bench, feature: str, at: float, radius: float, r_land: float, back: bool) -> bool:
    """Round an edge with the form tool of its radius; False where none is owned.

    ``at`` is where the edge stands, ``r_land`` the radius of its land,
    ``back`` whether it looks towards the chuck [mm, card frame].
    """
    tool = radius_tool(bench, "round", radius)
    if tool is None:
        return False
    # the reference is the middle of the tool's hollow, which lies radius inside both sides of the corner
    centre = (at + radius if back else at - radius, r_land - radius)
    beside_it = bench.work.largest(at + radius + rule("cut", "approach"), at - radius) / 2
    words = f"edge, radius {Mm(radius):g}"
    _plunge(bench, feature, tool, centre, max(beside_it, r_land), words, radius * math.pi / 2, back=back)
    return True


def _plunge(
    bench: Bench,
    feature: str,
    tool: Tool,
    to: tuple[float, float],
    highest: float,
    words: str,
    edge: float,
    *,
    back: bool = False,
) -> None:
    z, r = to
    away = highest + tool.radius + rule("cut", "approach")
    moves = [Move(z, away), Move(z, r), Move(z, away)]
    has = 2 * highest
    speed = bench.speed(tool, "forming", has, feature)
    feed = feed_for(bench.part.material, tool.material, "forming", "roughing")
    held = plunging_feed_held(bench, edge, has, speed, feed, feature)
    rounding = tool.kind == "form" and tool.leaves == "round"
    figure = f"{tool.radius:g}" if tool.kind == "form" else f"{2 * r:.2f}"
    cautions = [
        "The whole edge cuts at once: slowest speed that it likes, oil, steady feed, carriage locked."
        + (
            f" {Mm(edge):.1f} of edge: if it hums, take the middle out with a narrower tool first."
            if edge > WIDEST
            else ""
        )
    ]
    if held.bound:
        cautions.append(held.bound)
    name = f"{tool.letter}: {'form tool' if tool.kind == 'form' else tool.kind}"
    name += f", leaves {tool.leaves}, radius {Mm(tool.radius):g}" if tool.kind == "form" else ""
    bench.add(
        Step(
            0,
            f"{'Round' if rounding else 'Plunge'} {feature} with the form tool"
            + (", from its back" if back else "")
            if tool.kind == "form"
            else f"Plunge {feature} with the pointed tool",
            feature,
            name,
            "form",
            speed.rpm,
            speed.reached,
            held.feed,
            figure,
            "radius mm" if tool.kind == "form" else "DIA mm floor",
            (
                f"{words[:1].upper()}{words[1:]}: "
                + (
                    "set the tool square, its hollow over the corner."
                    if rounding
                    else f"the tool's lowest point at Z {Mm(-z):.2f}."
                ),
                (
                    f"Feed in until both ends of the curve just meet, {Mm(tool.radius):g} from the corner each way, with no step."
                    if rounding
                    else f"In {travel_words(bench.cross, highest - r)} from touching {Mm(has):.2f} DIA ({bench.cross_words}), to "
                    f"{Mm(2 * r):.2f}."
                ),
                "Dwell two turns at the end; then a gauge of the form against it with a light behind.",
            ),
            minutes=cutting_minutes(moves, speed.rpm, held.feed, 1),
            why="A tool of the drawn form is owned, so the curve need not be stepped out and filed.",
            cautions=tuple(cautions),
            moves=tuple(moves),
            tool_letter=tool.letter,
        )
    )


def _follow(bench: Bench, contour: Contour) -> None:
    work = bench.work
    for (z1, r1), (z2, r2) in zip(contour.points, contour.points[1:], strict=False):
        if z1 - z2 > 1e-6:
            work = work.turned(z1, z2, 2 * max(r1, r2))
    bench.work = work
