"""Lands that a blade cuts: valleys between larger ones, stems behind a disc, flanks that fall towards the chuck."""

from __future__ import annotations

import math

from tommybar.making.bench import Bench, cutting_minutes, named
from tommybar.making.cards import Measure, Move, Step
from tommybar.making.contours import Contour, in_front, land_contour
from tommybar.making.cuts import feed_for
from tommybar.making.dials import backlash_words, travel_words
from tommybar.making.grinding import grind_words
from tommybar.making.jobs import Job
from tommybar.making.lengths import Mm
from tommybar.making.practice import rule
from tommybar.making.rigidity import plunging_feed_held
from tommybar.making.turning import rough
from tommybar.shapes.features import Cylinder
from tommybar.shop.model import Tool

FLOOR_LEFT = 0.1  # left on floor and walls for the last sweep, radial; common practice, no source [mm]
OVERLAP = 0.8  # of a blade's width from one plunge to the next; common practice, no source
CURVE_STEP = 0.4  # from one plunge to the next along a curve; common practice, no source [mm]
FILED = 2.0  # how much over a curve is left to the file at most, radial; common practice, no source [mm]
JAWS = 2.0  # from a blade's left corner to the jaws: its holder stands 1 mm to its left [mm]
DAYLIGHT = 0.5  # of a blade's reach, left between its holder and the work; common practice, no source [mm]


def blade_for(
    bench: Bench,
    feature: str,
    deep: float,
    wide: float,
    *,
    curved: bool = False,
    grooves_first: bool = False,
) -> Tool | None:
    """The blade that reaches so deep into a gap so wide; a stop when the drawer has none.

    ``grooves_first`` takes a grooving tool where one reaches, however deep it
    leaves the parting blade in the drawer.
    """
    fitting = [
        tool
        for tool in bench.shop.tools
        if tool.kind in ("parting", "groove") and tool.width <= wide + 1e-6 and tool.reach >= deep + DAYLIGHT
    ]
    short = [
        tool
        for tool in bench.shop.tools
        if grooves_first and tool.kind == "groove" and tool.width <= wide + 1e-6 and tool.reach >= deep - 1e-6
    ]
    if short:
        return min(short, key=lambda tool: (-tool.width, tool.letter))
    if fitting:
        return max(
            fitting, key=lambda tool: (-tool.width if curved else tool.width, -tool.reach, tool.letter)
        )
    have = ", ".join(
        f"{t.letter}: {t.width:g} wide, {t.reach:g} deep"
        for t in bench.shop.tools
        if t.kind in ("parting", "groove")
    )
    bench.find(
        423,
        "stop",
        f"{feature} lies {deep:.1f} mm below what stands beside it, in a gap of {wide:.1f} mm; no blade gets there.",
        feature=feature,
        figure=f"{deep:.1f} mm deep, {wide:.1f} mm wide",
        bound=have or "no blade in the drawer",
        remedy=grind_words(
            "parting",
            bench.part.material,
            f"at most {Mm(min(wide, 3.0)):.1f} wide, {Mm(deep + DAYLIGHT):.1f} or more from its holder to its edge",
        )
        + " Or a wider gap, or the part of two pieces.",
        source="geometry",
    )
    return None


def plunge_land(bench: Bench, job: Job) -> None:
    """Plunge a land out side by side, then sweep its floor once; its neighbours are finished before."""
    land = next(f for f in bench.shape.outside if f.name == job.feature)
    contour = land_contour(land, bench.length, bench.option.free)
    near, far = contour.points[0][0], contour.points[-1][0]
    front = in_front(bench.shape, land, bench.option.free)
    straight = isinstance(land, Cylinder)
    if straight:
        far = _far_end(bench, far)
        contour = Contour(((near, contour.least), (far, contour.least)))
    thickest = max(front, contour.largest)
    if bench.work.largest(near, far) > 2 * thickest + rule("cut", "finish_left") + 0.05:
        rough(bench, job, 2 * thickest, far)
    plunge_contour(bench, land.name, contour, front, FLOOR_LEFT, curved=not straight)


def _far_end(bench: Bench, far: float) -> float:
    """Past the end of the part where it is cut from its stub: what the saw or the blade goes through is thin then."""
    if far > -bench.length + 1e-6 or not bench.option.ending:
        return far
    if bench.option.ending == "part":
        blade = min((t.width for t in bench.shop.tools if t.kind == "parting"), default=2.0)
        return far - rule("blank", "part_rest") - blade
    return far - rule("blank", "saw_rest") - bench.shop.saw_kerf


def _past(bench: Bench, far: float, end: float, wide: float) -> tuple[tuple[float, float], ...]:
    """What stands behind a curve where a blade may run on over it: lands that are thinner yet, or the stub."""
    free = bench.option.free
    wide = max(0.0, min(wide, far - bench.option.jaw_front - JAWS))
    order = sorted(
        (land_contour(land, bench.length, free) for land in bench.shape.outside),
        key=lambda c: -c.points[0][0],
    )
    against = [one for one in order if abs(one.points[0][0] - far) < 1e-6 and one.points[0][1] > end + 1e-3]
    if against:
        return ()  # it runs against something larger: the blade's side stops there
    found = [
        place
        for one in order
        if one.points[0][0] <= far + 1e-6
        for place in one.points
        if place[0] > far - wide
    ]
    behind = [one for one in order if one.points[0][0] <= far + 1e-6]
    if behind:
        low = max(far - wide, -bench.length)
        return (*found, (low, max(one.at(low) for one in behind[:1])))
    return ((far - wide, 0.0),) if bench.option.ending else ()


def _too_steep(bench: Bench, feature: str, contour: Contour, reaches: Contour, wide: float) -> bool:
    """Whether the blade leaves more than a file takes, since the curve is steep where it must stop."""
    near, far = contour.points[0][0], contour.points[-1][0]
    last = max(reaches.points[-1][0], far - wide)
    left = max(
        reaches.most(near, near - wide) - contour.at(near), reaches.most(last + wide, last) - contour.at(far)
    )
    if left <= FILED:
        return False
    bench.find(
        427,
        "stop",
        f"{feature} is so steep that a blade {wide:g} mm wide leaves {left:.1f} mm over it; a file takes {FILED:g} mm.",
        feature=feature,
        figure=f"{left:.1f} mm left",
        bound=f"{FILED:g} mm",
        remedy=grind_words("form", bench.part.material, "to the curve itself")
        + " Or a narrower blade, or a floor beside its low end as wide as a knife's shank and "
        "1.5 mm more: a cone is then turned from there, right-hand where it rises towards the chuck, left-hand where it falls.",
        source="geometry; what a file takes is common practice, no source",
    )
    return True


def plunge_contour(
    bench: Bench, feature: str, contour: Contour, front: float, left: float, *, curved: bool
) -> None:
    """Plunges down to a contour, and the sweep of a straight floor."""
    near, far = contour.points[0][0], contour.points[-1][0]
    has = bench.work.largest(near, far)
    deep = max(front, has / 2) - contour.least
    tool = blade_for(bench, feature, deep, near - far, curved=curved)
    if tool is None:
        return
    w = tool.width
    reaches = contour
    if curved and feature in {land.name for land in bench.shape.outside}:
        reaches = Contour((*contour.points, *_past(bench, far, contour.points[-1][1], w)))
    if curved and _too_steep(bench, feature, contour, reaches, w):
        return
    speed = bench.speed(tool, "grooving", has, feature)
    feed = feed_for(bench.part.material, tool.material, "grooving", "roughing")
    held = plunging_feed_held(bench, w, has, speed, feed, feature)
    feed = held.feed
    beside_ = max(front, has / 2, bench.work.largest(near + 30.0, far - 1.0) / 2)
    away = beside_ + 1.0
    wall = 0.0 if curved else min(left, (near - far - w) / 2)
    first, last = near - wall, max(reaches.points[-1][0], far - w) + w + wall
    each = min(OVERLAP * w, CURVE_STEP) if curved else OVERLAP * w
    count = max(1, math.ceil((first - last) / each - 1e-6)) if first > last + 1e-6 else 0
    moves = [Move(first, away)]
    for n in range(count + 1):
        z = first - (first - last) * n / count if count else first
        r = reaches.most(z, z - w) + left
        moves += [Move(z, away, rapid=True), Move(z, r), Move(z, away)]
    if not curved:
        floor = contour.least
        moves += [Move(near, away, rapid=True), Move(near, floor), Move(near, away)]
        moves += [Move(far + w, away, rapid=True), Move(far + w, floor), Move(near, floor), Move(near, away)]
    size = 2 * contour.least
    bench.add(
        Step(
            0,
            f"Plunge {feature} out with the blade, {count + 1} plunge{'s' if count else ''}"
            + ("" if curved else ", then sweep its floor"),
            feature,
            named(tool),
            "groove",
            speed.rpm,
            speed.reached,
            feed,
            f"{size:.2f}",
            "DIA mm",
            (
                f"Right corner of the blade at Z {Mm(-first):.2f} first, then {Mm(each if count else 0.0):.2f} further each, "
                f"the last at {Mm(-last):.2f}; the blade is {Mm(w):tool} wide, its left corner that much further.",
                f"{Mm(deep):.1f} below what stands beside it; in {travel_words(bench.cross, has / 2 - contour.least)} from "
                f"touching {Mm(has):.2f} DIA ({bench.cross_words}).",
                *(
                    (
                        "Each plunge stops over the curve: by the table of its diameters, blade corners looked at both sides.",
                    )
                    if curved
                    else (
                        f"Plunges leave {Mm(left):g} on floor and walls; then down both walls and along the floor.",
                    )
                ),
                backlash_words(bench.cross),
            ),
            minutes=cutting_minutes(moves, speed.rpm, feed, count + 2),
            why="Last, when what stands before it is finished: from here on nothing may push against it.",
            cautions=(
                "A deep blade grabs: carriage locked for each plunge, oil, steady feed, chips cleared.",
            ),
            measure=_measures(bench, feature),
            moves=tuple(moves),
            tool_letter=tool.letter,
        )
    )
    if curved:
        work = bench.work
        for (z1, r1), (z2, r2) in zip(contour.points, contour.points[1:], strict=False):
            if z1 - z2 > 1e-6:
                work = work.turned(z1, z2, 2 * max(r1, r2))
        bench.work = work
    else:
        bench.work = bench.work.turned(near, far, size)


def _measures(bench: Bench, feature: str) -> tuple[Measure, ...]:
    drawn = next((f for f in bench.drawn.outside if f.name == feature), None)
    if not isinstance(drawn, Cylinder) or not drawn.dia.toleranced:
        return ()
    return (bench.measured(f"{bench.part.name}.{feature}", drawn.dia, "outside"),)
