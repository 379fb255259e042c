"""Curves turned by a table of diameters against places, then filed and polished to blend.

The knife takes the side that faces the free end, a blade what falls away
towards the chuck, as deep as it reaches. Each cut stops where the curve
begins, so that no cut of the table is below it.
"""

from __future__ import annotations

import math

from tommybar.making.bench import Bench, cutting_minutes, named
from tommybar.making.cards import Move, Pass, Step
from tommybar.making.contours import Contour, beside, falls, land_contour
from tommybar.making.cuts import feed_for
from tommybar.making.dials import travel_words
from tommybar.making.form_tools import form_edge, form_hollow
from tommybar.making.jobs import Job, in_card
from tommybar.making.lengths import Mm
from tommybar.making.plunging import plunge_contour, plunge_land
from tommybar.making.practice import rule
from tommybar.making.rigidity import allowed_cut
from tommybar.making.valley_cones import turn_in_valley
from tommybar.making.valley_edges import FILE_UP
from tommybar.shapes.features import Arc, Cone, Cylinder, Land

SKIN = 0.05  # left under every cut of a table for the file, radial; common practice, no source [mm]
FINEST = 0.05  # least step of a table, radial [mm]
COARSEST = 0.5  # greatest step of a table that a file still blends, radial; common practice, no source [mm]
ROWS = 16  # of a table, about
SMOOTH = 0.02  # radii that differ by less run on into each other [mm]
RUN_ON = 0.3  # how far a file runs on over what a curve runs into; common practice, no source [mm]


def turn_curve(bench: Bench, job: Job) -> None:
    """Turn a curved land: table with the knife, table with the blade where it falls, file and emery."""
    land = next(f for f in bench.shape.outside if f.name == job.feature)
    assert isinstance(land, Arc)
    if form_hollow(bench, land):
        return
    contour = land_contour(land, bench.length, bench.option.free)
    if _dips(contour):
        ahead, _ = beside(bench.shape, land, bench.option.free)
        plunge_contour(bench, land.name, contour, ahead, SKIN, curved=True)
        blend(bench, land.name, contour, *curve_words(land))
        return
    rising = tuple(place for place in contour.points if place[0] >= contour.apex - 1e-9)
    if len(rising) > 1:
        _terraces(bench, land, Contour(rising))
    if falls(contour):
        falling = Contour(tuple(place for place in contour.points if place[0] <= contour.apex + 1e-9))
        ahead, _ = beside(bench.shape, land, bench.option.free)
        plunge_contour(bench, land.name, falling, max(contour.largest, ahead), SKIN, curved=True)
    blend(bench, land.name, contour, *curve_words(land))


def _dips(contour: Contour) -> bool:
    """Whether a curve is lowest between its ends, so that a blade has to go down into it."""
    ends = min(contour.points[0][1], contour.points[-1][1])
    return contour.least < ends - 1e-6


def curve_words(land: Land) -> tuple[str, str, str]:
    """A curve in words, its figure, and what kind of figure that is."""
    if isinstance(land, Arc):
        return f"{land.form}, radius {Mm(land.radius):g}", f"{land.radius:g}", "radius mm"
    return (
        "cone that narrows towards the chuck",
        f"{min(land.start_dia, land.end_dia):.2f}",
        "DIA mm small end",
    )


def plunge_shaped(bench: Bench, job: Job) -> None:
    """A land between larger ones: a cone with a knife where one finds room, else plunged, and blended if no cylinder."""
    land = next(f for f in bench.shape.outside if f.name == job.feature)
    if isinstance(land, Cone) and turn_in_valley(bench, land):
        return
    if isinstance(land, Arc) and form_hollow(bench, land):
        return
    plunge_land(bench, job)
    if not isinstance(land, Cylinder):
        blend(bench, land.name, land_contour(land, bench.length, bench.option.free), *curve_words(land))


def table(contour: Contour, has: float, deepest: float) -> list[tuple[float, float]]:
    """Rows (radius, place to stop at) of cuts down a side that rises towards the chuck [mm]."""
    least, top = contour.least + SKIN, has
    each = min(deepest, COARSEST, max(FINEST, (top - least) / ROWS))
    count = max(1, math.ceil((top - least) / each - 1e-6))
    rows = []
    for n in range(1, count + 1):
        r = top - (top - least) * n / count
        stop = next((z for z, at in contour.points if at + SKIN > r - 1e-9), contour.points[-1][0])
        before = [z for z, at in contour.points if at + SKIN <= r - 1e-9]
        rows.append((r, _between(contour, min(before), stop, r - SKIN) if before else contour.points[0][0]))
    return [row for row in rows if row[1] < contour.points[0][0] - 1e-6]


def _between(contour: Contour, near: float, far: float, r: float) -> float:
    """Where the side reaches a radius, between two neighbouring points [mm]."""
    low, high = contour.at(near), contour.at(far)
    return near if high - low < 1e-9 else near + (far - near) * min(1.0, max(0.0, (r - low) / (high - low)))


def _terraces(bench: Bench, land: Arc, side: Contour) -> None:
    near, far = side.points[0][0], side.points[-1][0]
    has = bench.work.largest(near, far)
    tool = bench.tool("knife", lambda t: t.hand in ("right", "both"), lambda t: t.nose, land.name)
    if tool is None or has / 2 - side.least < FINEST:
        return
    speed = bench.speed(tool, "turning", has, land.name)
    feed = feed_for(bench.part.material, tool.material, "turning", "finishing")
    deepest = allowed_cut(bench, tool, bench.work, near, has, speed)
    rows = table(side, has / 2, deepest.depth)
    if not rows:
        return
    ahead, _ = beside(bench.shape, land, bench.option.free)
    start = near + (rule("cut", "approach") if ahead <= side.least + 1e-6 else 0.0)
    away = has / 2 + rule("cut", "retract")
    moves = [Move(start, away)]
    passes = []
    before = has / 2
    for r, stop in rows:
        moves += [Move(start, r), Move(stop, r), Move(stop + 0.3, r + 0.3)]
        moves += [Move(stop + 0.3, away, rapid=True), Move(start, away, rapid=True)]
        dial = f"{travel_words(bench.cross, has / 2 - r)}; stop at Z {Mm(-stop):.2f}"
        passes.append(Pass(round(2 * r, 3), round(before - r, 4), dial))
        before = r
    bench.add(
        Step(
            0,
            f"Step out {land.name} by the table, {len(rows)} cuts",
            land.name,
            named(tool),
            "knife",
            speed.rpm,
            speed.reached,
            feed,
            f"{land.radius:g}",
            "radius mm",
            (
                f"Touch on {Mm(has):.2f} DIA and on the face, both dials 0; each row is a diameter and where its cut stops "
                f"({bench.cross_words}).",
                f"Every row leaves {Mm(SKIN):.2f} or more over the curve: the nose of the tool, "
                f"{Mm(tool.nose):.1f}, lies inside the steps.",
                f"A form tool ground to radius {Mm(land.radius):g} does it in one plunge, where there is one and the land is "
                "short.",
            ),
            tuple(passes),
            cutting_minutes(moves, speed.rpm, feed, len(rows)),
            why="A lathe without a form tool makes a curve of small steps, which a file then joins.",
            cautions=(deepest.bound,) if deepest.bound else (),
            moves=tuple(moves),
            tool_letter=tool.letter,
        )
    )
    work = bench.work
    for n, (r, stop) in enumerate(rows):
        behind = rows[n + 1][1] if n + 1 < len(rows) else near
        if behind > stop + 1e-9:
            work = work.turned(behind, stop, 2 * r)
    bench.work = work


def blend(bench: Bench, feature: str, contour: Contour, words: str, big: str, big_kind: str) -> None:
    """File and polish along a contour until a gauge of it shows no light."""
    before, after = _continued(bench, contour)
    places = [Move(z, max(r, 0.0)) for z, r in (*before, *contour.points, *after)]
    high = contour.largest + 6.0
    moves = [Move(places[0].z, high), Move(places[0].z, places[0].r), *places[1:], Move(places[-1].z, high)]
    dia = 2 * contour.largest
    speed = bench.speed(None, "turning", dia, feature)
    bench.add(
        Step(
            0,
            f"File and polish {feature} to blend",
            feature,
            "fine file, emery on a stick",
            "file",
            speed.rpm,
            speed.reached,
            0.0,
            big,
            big_kind,
            (
                f"{words[:1].upper()}{words[1:]}: file only until the corners of the steps just vanish, then emery on a stick.",
                "Hold a gauge of the form, cut from thin sheet, against it with a light behind; mark the high places with blue.",
            ),
            minutes=4.0,
            why="The steps lie a little over the curve, so what the file takes off is the steps and no more.",
            cautions=(
                "Handle on the file, left hand over the chuck or file from behind; sleeves up, no gloves or rings. Emery on a "
                "stick, never wrapped round the work.",
            ),
            moves=tuple(moves),
        )
    )


def _continued(bench: Bench, contour: Contour) -> tuple[list[tuple[float, float]], list[tuple[float, float]]]:
    """A little of what runs on smoothly from a contour at both ends: the file takes the ring of a tool's nose there."""
    (near, r_near), (far, r_far) = contour.points[0], contour.points[-1]
    before, after = [], []
    for land in bench.shape.outside:
        one = land_contour(land, bench.length, bench.option.free)
        (top, r_top), (low, r_low) = one.points[0], one.points[-1]
        if abs(low - near) < 1e-6 and abs(r_low - r_near) < SMOOTH and top - low > RUN_ON:
            before = [(near + RUN_ON, one.at(near + RUN_ON))]
        if abs(top - far) < 1e-6 and abs(r_top - r_far) < SMOOTH and top - low > RUN_ON:
            after = [(far - RUN_ON, one.at(far - RUN_ON))]
    return before, after


def round_edge(bench: Bench, job: Job) -> None:
    """Round an outside edge with a form tool or a file; a large one gets its table first."""
    radius = job.size
    near, r_land = _edge_place(bench, job)
    if form_edge(bench, job.feature, near, radius, r_land, job.side != bench.option.free):
        return
    count = 24
    centre = (near - radius, r_land - radius)
    turn = [math.pi / 2 * n / count for n in range(count + 1)]
    behind = job.side != bench.option.free
    if behind:
        centre = (near + radius, r_land - radius)
        turn = [math.pi / 2 + t for t in turn]
    points = tuple((centre[0] + radius * math.cos(t), centre[1] + radius * math.sin(t)) for t in turn)
    contour = Contour(points)
    if radius > FILE_UP:
        _terraces(bench, Arc(job.feature, 0.0, radius, 2 * points[0][1], 2 * r_land, radius, "out"), contour)
    which = "edge at the back" if behind else "edge"
    blend(bench, job.feature, contour, f"{which}, radius {Mm(radius):g}", f"{radius:g}", "radius mm")


def _edge_place(bench: Bench, job: Job) -> tuple[float, float]:
    """Where an edge stands: its place and the radius of its land [mm, card frame]."""
    land = next(f for f in bench.shape.outside if f.name == job.feature)
    radius = land.start_dia / 2 if abs(land.start - job.start) < 1e-6 else land.end_dia / 2
    return in_card(job.start, bench.length, bench.option.free), radius
