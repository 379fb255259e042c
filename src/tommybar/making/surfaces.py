"""Recesses, grooves, edges, threads, knurls: what follows the plain turning."""

from __future__ import annotations

import math

from tommybar.facts.threads import thread
from tommybar.making.bench import Bench, cutting_minutes, named
from tommybar.making.cards import Measure, Move, Step
from tommybar.making.cones import slope_edge
from tommybar.making.contours import groove_contour
from tommybar.making.cuts import feed_for
from tommybar.making.dials import backlash_words, travel_words
from tommybar.making.form_tools import form_groove
from tommybar.making.forms import blend
from tommybar.making.jobs import Job, span_in_card
from tommybar.making.lengths import Mm
from tommybar.making.plunging import blade_for, plunge_contour
from tommybar.making.practice import rule
from tommybar.making.screw_cutting import cut_screw
from tommybar.making.tail_shape import beside_point
from tommybar.making.valley_edges import PAST
from tommybar.shapes.features import Cylinder, Dim, Knurl, Recess

DIE_LEAD = 2.0  # threads that a die turned over still leaves unfinished; common practice, no source
FORM_LEFT = (
    0.05  # left in a round or vee groove for the file or form tool, radial; common practice, no source [mm]
)
RING = 0.25  # of a knife's nose left in a corner, at most; common practice, no source [mm]
HOLDER = 8.0  # how far the bit of a groove tool stands out beside its blade; common practice, no source [mm]


def recess(bench: Bench, job: Job) -> None:
    """Plunge a recess or ring groove in a face side by side, then sweep walls and floor once."""
    shape = _sunk(bench, job)
    narrow = job.kind == "face groove"
    land = (shape.outside - shape.inside) / 2
    lean = [math.tan(math.radians(one)) for one in (shape.inside_draft, shape.outside_draft)]
    inner, outer = shape.inside / 2, shape.outside / 2
    floor = (inner + shape.depth * lean[0], outer - shape.depth * lean[1])
    tool = bench.tool(
        "recess",
        lambda t: t.width <= floor[1] - floor[0] - (0.0 if narrow else 0.5) + 1e-6 and t.reach >= shape.depth,
        lambda t: -t.width,
        f"{job.feature} ({Mm(shape.depth):g} deep, {Mm(land):.1f} wide)",
        f"at most {Mm(floor[1] - floor[0] - (0.0 if narrow else 0.5)):.1f} wide and {Mm(shape.depth):g} or more long below its "
        f"shank, its outer side relieved for a wall of {Mm(outer):g} radius",
    )
    if tool is None:
        return
    _relief(bench, shape, tool.reach)
    speed = bench.speed(tool, "grooving", shape.outside, job.feature)
    feed = feed_for(bench.part.material, tool.material, "grooving", "roughing")
    w = tool.width
    left = min(rule("cut", "recess_left"), max(0.0, (floor[1] - floor[0] - w) / 2))
    start = rule("cut", "approach")
    first, last = floor[1] - left, floor[0] + w + left
    number = max(1, math.ceil((first - last) / (0.8 * w) - 1e-6) + 1) if first - last > 1e-6 else 1
    step = (first - last) / (number - 1) if number > 1 else 0.0
    moves = [Move(start, first)]
    for n in range(number):
        r = first - n * step
        moves += [Move(start, r, rapid=True), Move(-(shape.depth - left), r), Move(start, r, rapid=True)]
    off = [_nose_off(tool.nose, one) for one in (shape.inside_draft, shape.outside_draft)]
    floor = (floor[0] - off[0], floor[1] + off[1])
    out, back = outer + start * lean[1] + off[1], inner + w - start * lean[0] - off[0]
    moves += [Move(start, out, rapid=True), Move(-shape.depth, floor[1])]
    if (
        shape.inside_draft > 0
    ):  # both walls cut inwards: drawn out along a leaning wall, the tool's side would rub
        middle = (floor[0] + w + floor[1]) / 2
        moves += [Move(-shape.depth, middle), Move(start, middle), Move(start, back, rapid=True)]
        moves += [Move(-shape.depth, floor[0] + w), Move(-shape.depth, middle), Move(start, middle)]
    else:
        moves += [Move(-shape.depth, floor[0] + w), Move(start, back)]
    cross = bench.cross
    bench.add(
        Step(
            0,
            f"{'Groove' if narrow else 'Recess'} face {bench.option.free}, {number} plunge{'s' if number > 1 else ''}, "
            "then sweep the floor",
            job.feature,
            named(tool),
            "recess",
            speed.rpm,
            speed.reached,
            feed,
            f"{shape.depth:.2f}",
            "Z deep mm",
            (
                f"Outer corner at {Mm(shape.outside):.2f} DIA; inner corner at {Mm(shape.inside):.2f} when the outer reads "
                f"{Mm(shape.inside + 2 * w):.2f} (tool {Mm(w):g} wide): {travel_words(cross, outer - inner - w)} apart "
                f"({bench.cross_words}).",
                f"Plunge to {Mm(shape.depth - left):.2f}, last sweep at {Mm(shape.depth):.2f}: top slide "
                f"{travel_words(bench.shop.lathe.top_slide, shape.depth)} from touching the face.",
                *_draft_words(shape),
                backlash_words(cross),
            ),
            minutes=cutting_minutes(moves, speed.rpm, feed, number + 1) + rule("minutes", "measure"),
            why="Both walls and the floor are swept in one pass, so that the corners meet.",
            measure=_recess_measures(bench, shape),
            moves=tuple(moves),
            tool_letter=tool.letter,
        )
    )


def _nose_off(nose: float, draft: float) -> float:
    """How much further towards a leaning wall the tool's corner goes, since its nose touches first there [mm]."""
    lean = math.radians(draft)
    return nose * (math.sin(lean) + math.cos(lean) - 1) / math.cos(lean)


def _sunk(bench: Bench, job: Job) -> Recess:
    """The recess of a job; a ring groove counts as a narrow one."""
    found = next((r for r in bench.shape.recesses if r.name == job.feature), None)
    if found is not None:
        return found
    ring = next(g for g in bench.shape.face_grooves if g.name == job.feature)
    return Recess(ring.name, ring.face, ring.inside, ring.outside, ring.depth)


def _draft_words(shape: Recess) -> tuple[str, ...]:
    if not (shape.inside_draft or shape.outside_draft):
        return ()
    return (
        f"Walls lean: top slide {shape.outside_draft:g} deg from the axis for the outer one, {shape.inside_draft:g} for the "
        "inner one; each in along its wall, then across the floor.",
    )


def _recess_measures(bench: Bench, shape: Recess) -> tuple[Measure, ...]:
    return (
        bench.measured(
            f"{bench.part.name}.{shape.name}.deep",
            Dim(shape.depth, f"{bench.part.name}.{shape.name}.deep"),
            "depth",
        ),
    )


def _relief(bench: Bench, shape: Recess, reach: float) -> None:
    """The heel of a straight tool rubs the outer wall below centre: say the angle to grind."""
    depth_below = bench.shop.lathe.centre_height and max(
        t.shank for t in bench.shop.tools if t.kind == "recess"
    )
    wall = shape.outside / 2
    if depth_below >= wall:
        return
    back = wall - math.sqrt(wall**2 - depth_below**2)
    angle = math.degrees(math.atan(back / depth_below))
    bench.find(
        421,
        "note",
        f"The outer wall of {shape.name} curves away under the tool: a shank {depth_below:g} mm deep below centre "
        f"needs its outer flank relieved by {back:.2f} mm ({angle:.1f} deg).",
        feature=shape.name,
        figure=f"{angle:.1f} deg",
        bound=f"{wall:.2f} mm, radius of the outer wall",
        remedy="Grind the outer flank of the recess tool at least so much.",
        source="R - sqrt(R^2 - h^2), geometry",
    )


def groove(bench: Bench, job: Job) -> None:
    """Plunge an outside groove to its floor, in as many plunges as the blade needs."""
    shape = next(g for g in bench.shape.grooves if g.name == job.feature)
    near, far = span_in_card(shape.start, shape.end, bench.length, bench.option.free)
    has = bench.work.largest(near, far)
    if shape.form != "square" and form_groove(bench, shape):
        return
    if shape.form != "square":
        contour = groove_contour(bench.shape, shape, bench.option.free)
        front = max(has, bench.work.largest(near + HOLDER, near)) / 2
        plunge_contour(bench, shape.name, contour, front, FORM_LEFT, curved=True)
        blend(
            bench,
            shape.name,
            contour,
            f"{shape.form} groove, {Mm(near - far):g} wide",
            f"{shape.floor:.2f}",
            "DIA mm floor",
        )
        return
    deep = (has - shape.floor) / 2
    beside = max(has, bench.work.largest(near + HOLDER, near))  # the bit stands out towards the free end
    below = (beside - shape.floor) / 2
    tool = blade_for(bench, job.feature, below, near - far, grooves_first=True)
    if tool is None:
        return
    speed = bench.speed(tool, "grooving", has, job.feature)
    feed = feed_for(bench.part.material, tool.material, "grooving", "roughing")
    number = max(1, math.ceil((near - far) / tool.width - 1e-6))
    shift = (near - far - tool.width) / max(number - 1, 1)
    behind = bench.work.largest(near + 0.5, far - 0.5)
    away = behind / 2 + 1.0
    moves = [Move(far + tool.width, away)]
    for n in range(number):
        z = far + tool.width + n * shift
        moves += [Move(z, away, rapid=True), Move(z, shape.floor / 2), Move(z, away)]
    for z, beside_it in (
        (far + tool.width - RING, bench.work.largest(far, far - RING)),
        (near + RING, bench.work.largest(near + RING, near)),
    ):
        if (
            shape.floor + 0.01 < beside_it < has - 0.01
        ):  # the ring that a knife's nose left in the corner there
            moves += [Move(z, away, rapid=True), Move(z, beside_it / 2), Move(z, away)]
    bench.add(
        Step(
            0,
            f"Groove {job.feature} {Mm(near - far):g} wide",
            job.feature,
            named(tool),
            "groove",
            speed.rpm,
            speed.reached,
            feed,
            f"{shape.floor:.2f}",
            "DIA mm",
            (
                f"Right corner of the blade at Z {Mm(-(far + tool.width)):.2f} from the face"
                + (f", then at {Mm(-near):.2f}." if number > 1 else "."),
                f"In {travel_words(bench.cross, deep)} from touching {Mm(has):.2f} DIA ({bench.cross_words}).",
            ),
            minutes=cutting_minutes(moves, speed.rpm, feed, number),
            why="The die and the mating face need a clear corner.",
            moves=tuple(moves),
            tool_letter=tool.letter,
        )
    )
    bench.work = bench.work.turned(near, far, shape.floor)


def edge(bench: Bench, job: Job) -> None:
    """Chamfer an outside edge at 45 degrees with the flank of a pointed tool."""
    feature = next(f for f in bench.shape.outside if f.name == job.feature)
    assert isinstance(feature, Cylinder)
    near, _ = span_in_card(job.start, job.end, bench.length, bench.option.free)
    angle = feature.edge_angle
    if job.side == "B" and feature.edge_end_angle is not None:
        angle = feature.edge_end_angle
    if abs(angle - 45) > 0.5:
        slope_edge(bench, job, feature.dia.value / 2, angle)
        return
    tool = bench.tool("chamfer", lambda t: True, lambda t: t.width, job.name)
    if tool is None:
        return
    dia = feature.dia.value
    speed = bench.speed(tool, "turning", dia, job.feature)
    feed = feed_for(bench.part.material, tool.material, "forming", "roughing")
    before = bench.work.largest(near + tool.shank, near) / 2 if near < -1e-6 else 0.0
    right = tool.shank / 2 - job.size - 0.3  # keeps the tool's left side off the jaws
    if bench.centred > 0 and near > -1e-6:
        right = min(right, beside_point(bench.centred, dia / 2 - job.size, bench.option.mandrel))
    floor = bench.work.largest(near + PAST + 0.1, near) / 2 if near < -1e-6 else 0.0
    spare = max(0.0, dia / 2 - job.size - floor)
    least = min(PAST, spare)  # a low step leaves no room for the point beyond the chamfer
    z = near + max(least, min(right, dia / 2 - job.size - before - PAST))
    r = near + dia / 2 - job.size - z
    away = dia / 2 + rule("cut", "approach")
    moves = [Move(z, away), Move(z, r), Move(z, away)]
    bench.add(
        Step(
            0,
            f"Chamfer {job.feature}",
            job.feature,
            named(tool),
            "chamfer",
            speed.rpm,
            speed.reached,
            feed,
            f"{round(job.size, 3):g}",
            "x 45 deg",
            (f"Touch the corner, then in {travel_words(bench.cross, job.size)} ({bench.cross_words}).",),
            minutes=cutting_minutes(moves, speed.rpm, feed, 1),
            moves=tuple(moves),
            tool_letter=tool.letter,
        )
    )


def screw(bench: Bench, job: Job) -> None:
    """Cut an outside thread with the die held square, by hand."""
    drawn = next(f for f in bench.drawn.outside if f.name == job.feature)
    assert isinstance(drawn, Cylinder)
    named_thread = thread(drawn.thread)
    if drawn.thread not in bench.shop.dies or drawn.left or bench.option.dog is not None:
        if not cut_screw(bench, drawn):
            bench.find(
                416,
                "stop",
                f"No {'left-hand ' if drawn.left else ''}{drawn.thread} die in the drawer for {job.feature}.",
                feature=job.feature,
                bound="dies owned (right hand): " + (", ".join(bench.shop.dies) or "none"),
                remedy="Buy or borrow the die, or let the size follow a thread that is owned; or cut it with a single point, "
                "where lead screw, change gears and threading tool stand in the shop file.",
            )
        return
    near, far = span_in_card(drawn.start, drawn.end, bench.length, bench.option.free)
    bench.add(
        Step(
            0,
            f"Thread {drawn.thread} with the die, by hand",
            job.feature,
            f"die {drawn.thread}",
            "die",
            0.0,
            0.0,
            named_thread.pitch,
            drawn.thread,
            f"{named_thread.threads_per_inch:g} tpi"
            if named_thread.threads_per_inch
            else f"pitch {round(named_thread.pitch, 3):g}",
            (
                f"{Mm(near - far):g} long, {_thread_end(bench, drawn, named_thread.pitch)}. Die in the tailstock "
                "holder to start it square, oil.",
                "Back half a turn every turn. Turn the die over for the last threads.",
                "Try the nut before the part leaves the chuck.",
            ),
            minutes=5.0,
            cautions=("Spindle stopped, out of gear.",),
            why="The die fixes the size, so it comes after the blank diameter and every groove.",
            tool_size=named_thread.major,
        )
    )


def _thread_end(bench: Bench, land: Cylinder, pitch: float) -> str:
    """Where the die stops: an undercut at the thread's inner end, or short of a shoulder by the die's lead."""
    inner = land.end if bench.option.free == "A" else land.start
    if any(g.start - 1e-6 <= inner <= g.end + 1e-6 for g in bench.drawn.grooves):
        return "to the undercut"
    if inner < 1e-6 or inner > bench.length - 1e-6:
        return "right over its end"
    return (
        f"up to the shoulder: the die's lead leaves the last {Mm(DIE_LEAD * pitch):.1f} without full thread"
    )


def knurl(bench: Bench, job: Job, pattern: Knurl) -> None:
    """Roll a knurl on a diameter that takes a whole number of teeth."""
    feature = next(f for f in bench.shape.outside if f.name == job.feature)
    assert isinstance(feature, Cylinder)
    tool = bench.tool(
        "knurling",
        lambda t: abs(t.pitch - pattern.pitch) < 0.06 and t.pattern in ("", pattern.pattern),
        lambda t: abs(t.pitch - pattern.pitch),
        f"{job.feature} ({pattern.pattern}, pitch {pattern.pitch:g})",
    )
    if tool is None:
        return
    speed = bench.speed(tool, "knurling", feature.dia.value, job.feature)
    teeth = math.floor(math.pi * feature.dia.value / pattern.pitch + 0.01)
    near, far = span_in_card(feature.start, feature.end, bench.length, bench.option.free)
    bench.add(
        Step(
            0,
            f"Knurl {job.feature}, {pattern.pattern}, pitch {pattern.pitch:g}",
            job.feature,
            named(tool),
            "knurling",
            speed.rpm,
            speed.reached,
            0.3,
            f"{feature.dia.value:.2f}",
            "DIA mm before",
            (
                f"{teeth} teeth: the diameter takes a whole number, so the wheels do not double-track.",
                f"From Z {Mm(-near):.1f} to {Mm(-far):.1f}; plenty of oil, wheels in firmly at once.",
            ),
            minutes=5.0,
            why="Heavy work comes early, while the metal behind it is thick.",
            tool_letter=tool.letter,
        )
    )
