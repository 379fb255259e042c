"""Holes on the axis: centre, drills, boring, reamer, tap, and their edges."""

from __future__ import annotations

import math

from tommybar.facts.drills import point_length
from tommybar.facts.threads import tap_depths, thread
from tommybar.making.bench import Bench, cutting_minutes, named
from tommybar.making.cards import Measure, Move, Pass, Step
from tommybar.making.cuts import feed_for, finishing_passes, roughing_passes
from tommybar.making.dials import graduation_words, travel_words
from tommybar.making.jobs import Job
from tommybar.making.lengths import Mm
from tommybar.making.practice import rule
from tommybar.making.reaming import HolePlan, allowance, hole_plan
from tommybar.shapes.features import Bore

STUB_TAP = 4.0  # threads drilled below the part when its stub closes the hole; lead and chips
REAMER_LEAD = 0.15  # of a reamer's diameter: its lead, and a little; common practice, no source
START = 2.0  # feed of a drill starts this far from the face [mm]


def bore_dia(bore: Bore) -> float:
    """Diameter of a bore as the lathe leaves it [mm]."""
    return bore.dia.value


def _through_depth(bench: Bench) -> float:
    """How deep the full diameter goes for a through hole, from the free face [mm]."""
    ending = bench.option.ending
    if ending == "part":
        blade = min((t.width for t in bench.shop.tools if t.kind == "parting"), default=2.0)
        return bench.length + rule("blank", "part_rest") + blade + 0.3
    if ending == "saw":
        return bench.length + rule("blank", "saw_rest") + bench.shop.saw_kerf + 0.3
    return -bench.work.bottom + rule("cut", "through")


def _plan(bench: Bench, drawn: Bore) -> HolePlan | None:
    return hole_plan(
        drawn.dia.value,
        bench.shop,
        limits=drawn.dia.toleranced,
        finish_later=bool(drawn.after),
        depth=_full_depth(bench, drawn),
    )


def _full_depth(bench: Bench, drawn: Bore) -> float:
    return _through_depth(bench) if drawn.through else drawn.depth


def drill_bore(bench: Bench, job: Job) -> None:
    """Centre and drills of one bore, before anything is roughed thin."""
    drawn = next(b for b in bench.drawn.bores if b.name == job.feature)
    depth = _full_depth(bench, drawn)
    if drawn.thread:
        _tapping_hole(bench, drawn, depth)
        return
    plan = _plan(bench, drawn)
    if plan is None:
        bench.find(
            411,
            "stop",
            f"Nothing in the drawer makes {job.feature}, {drawn.dia.value:g} mm.",
            feature=job.feature,
            figure=f"{drawn.dia.value:g} mm",
            remedy="Add a drill, reamer or boring bar, or let the size follow a reamer that is owned.",
        )
        return
    _no_reamer_words(bench, drawn, plan)
    if plan.reamer is not None and drawn.through:
        depth += REAMER_LEAD * plan.reamer.size  # the reamer's lead must not meet the drill's cone
    _drills(bench, job.feature, plan.drills, depth, blind_flat=not drawn.through and drawn.bottom == "flat")


def finish_bore(bench: Bench, job: Job) -> None:
    """Boring bar, reamer or tap of one bore, after the roughing."""
    drawn = next(b for b in bench.drawn.bores if b.name == job.feature)
    if drawn.thread:
        _tap(bench, drawn)
        return
    plan = _plan(bench, drawn)
    if plan is None:
        return
    if plan.finish in ("bore", "bore and ream"):
        _bored(bench, drawn, plan, _full_depth(bench, drawn))
    if plan.reamer is not None:
        _reamed(bench, drawn, plan, _full_depth(bench, drawn))
    bench.bored[drawn.name] = bench.shape_bore(drawn.name)


def _no_reamer_words(bench: Bench, bore: Bore, plan: HolePlan) -> None:
    if bore.dia.toleranced and plan.reamer is None and not bore.after:
        owned = ", ".join(f"{Mm(one.size):g}" for one in bench.shop.reamers)
        bench.find(
            412,
            "caution",
            f"No {bore.dia.value:g} mm reamer: {bore.name} is bored to size by measuring.",
            feature=bore.name,
            figure=f"{bore.dia.value:g} mm",
            bound=f"reamers owned: {owned or 'none'}",
            remedy="Borrow the reamer, or bore to a plug made to the size and fit the mate to what comes out.",
        )


def _deep_words(bench: Bench, depth: float, dia: float, point: float) -> tuple[str, ...]:
    tail = bench.shop.lathe.tailstock
    peck = depth / dia > rule("cut", "peck")
    words = [
        f"Tip touching the face is 0. Tip to {Mm(depth + point):.1f}: {travel_words(tail, depth + point)} "
        f"({graduation_words(tail)}).",
    ]
    if peck:
        words.append(f"Deeper than {rule('cut', 'peck'):g} diameters: clear the chips every {Mm(dia):.0f}.")
    return tuple(words)


def _axial(depth: float) -> list[Move]:
    return [Move(20.0, 0.0), Move(START, 0.0, rapid=True), Move(-depth, 0.0), Move(20.0, 0.0, rapid=True)]


def _centre(bench: Bench, feature: str) -> None:
    if any(step.tool_kind == "centre drill" for step in bench.steps):
        return
    if not bench.shop.centre_drills:
        bench.find(
            413,
            "caution",
            "No centre drill in the drawer: start the drill from a turned dimple.",
            feature=feature,
        )
        return
    size = min(bench.shop.centre_drills, key=lambda d: (abs(d - 2.5), d))
    speed = bench.speed(None, "centre drilling", size, feature)
    depth = round(1.3 * size, 2)
    bench.add(
        Step(
            0,
            f"Centre drill, {Mm(size):tool} pilot",
            feature,
            f"centre drill {Mm(size):tool}",
            "centre drill",
            speed.rpm,
            speed.reached,
            0.03,
            f"{depth:.1f}",
            "deep mm",
            ("Just into the cone; it only has to start the drill.",),
            minutes=cutting_minutes(_axial(depth), speed.rpm, 0.03, 1),
            why="A short stiff drill starts on the axis; a long one wanders.",
            moves=tuple(_axial(depth)),
            tool_size=size,
        )
    )


def _drills(bench: Bench, feature: str, drills: tuple[float, ...], depth: float, *, blind_flat: bool) -> None:
    already = bench.bored.get(feature, 0.0)
    _centre(bench, feature)
    for n, drill in enumerate(drills):
        if drill <= already:
            continue
        point = point_length(drill)
        full = depth - (point if blind_flat else 0.0)
        if full <= 0:
            full = depth
        speed = bench.speed(None, "drilling", drill, feature)
        feed = feed_for(bench.part.material, "HSS", "drilling", "roughing", drill)
        moves = _axial(full + point)
        cautions: tuple[str, ...] = ()
        if bench.part.material.endswith("brass"):
            cautions = ("Brass grabs: stone the drill's lips to no rake, lock what can be locked.",)
        bench.add(
            Step(
                0,
                f"Drill {feature} {Mm(drill):tool}" + (", pilot" if n == 0 and len(drills) > 1 else ""),
                feature,
                f"drill {Mm(drill):tool}",
                "drill",
                speed.rpm,
                speed.reached,
                feed,
                f"{full + point:.1f}",
                "tip deep mm",
                (
                    f"Full diameter to {Mm(full):.1f} deep, the point {Mm(point):.1f} more.",
                    *_deep_words(bench, full, drill, point),
                ),
                minutes=cutting_minutes(moves, speed.rpm, feed, max(1, math.ceil(full / drill / 3))),
                cautions=cautions,
                moves=tuple(moves),
                tool_size=drill,
            )
        )
    bench.bored[feature] = max(drills[-1], already)


def _reamed(bench: Bench, bore: Bore, plan: HolePlan, depth: float) -> None:
    reamer = plan.reamer
    assert reamer is not None
    speed = bench.speed(None, "reaming", reamer.size, bore.name)
    feed = feed_for(bench.part.material, "HSS", "reaming", "finishing", reamer.size)
    deep = depth + 0.1 * reamer.size
    moves = _axial(deep)
    hint = (
        (f"This reamer cuts {Mm(reamer.cuts_over):+.3f}: expect {Mm(reamer.size + reamer.cuts_over):.3f}.",)
        if reamer.cuts_over
        else ()
    )
    bench.add(
        Step(
            0,
            f"Ream {bore.name} {Mm(reamer.size):tool} {reamer.zone}",
            bore.name,
            f"reamer {Mm(reamer.size):tool} {reamer.zone}",
            "reamer",
            speed.rpm,
            speed.reached,
            feed,
            f"{deep:.1f}",
            "deep mm",
            (
                f"{Mm(reamer.size - bench.bored[bore.name]):.2f} to take out on diameter. Slow, steady feed, "
                "lubricant; never turn it backwards; draw it out turning.",
                *_deep_words(bench, deep, 100.0, 0.0),
                *hint,
            ),
            minutes=cutting_minutes(moves, speed.rpm, feed, 1) + rule("minutes", "measure"),
            why="The reamer fixes the size; the shaft is made to suit it afterwards.",
            measure=(bench.measured(f"{bench.part.name}.{bore.name}", bore.dia, "inside"),),
            moves=tuple(moves),
            tool_size=reamer.size,
        )
    )


def _bored(bench: Bench, bore: Bore, plan: HolePlan, depth: float) -> None:
    has = bench.bored[bore.name]
    target = plan.bore_to if plan.reamer else bench.shape_bore(bore.name)
    tool = bench.tool(
        "boring",
        lambda t: (t.smallest_bore or t.shank) <= has + 1e-6 and t.reach >= depth - 1e-6,
        lambda t: -t.shank,
        f"{bore.name} ({Mm(depth):.1f} deep from {has:g} mm)",
    )
    if tool is None:
        return
    left = rule("cut", "finish_left")
    limits = bore.dia.toleranced and plan.reamer is None
    speed = bench.speed(tool, "boring", target, bore.name)
    feed = feed_for(bench.part.material, tool.material, "boring", "finishing")
    passes: tuple[Pass, ...] = ()
    if target - left > has + 0.05:
        passes = roughing_passes(has, target - left, 0.5, bench.cross, +1.0)
    start = passes[-1].to if passes else has
    passes = (*passes, *finishing_passes(start, target, bench.cross, +1.0, two=limits))
    clear = has / 2 - 0.3
    moves = [Move(START, clear)]
    for cut in passes:
        inward = cut.to / 2 - rule("cut", "retract")
        moves += [Move(START, cut.to / 2, rapid=True), Move(-depth, cut.to / 2), Move(-depth, inward)]
        moves += [Move(START, inward, rapid=True)]
    measures: tuple[Measure, ...] = ()
    if limits:
        measures = (bench.measured(f"{bench.part.name}.{bore.name}", bore.dia, "inside"),)
    ratio = depth / max(tool.shank, 1.0)
    cautions = (
        (f"The bar stands out {ratio:.1f} x its thickness: light cuts, expect spring.",) if ratio > 4 else ()
    )
    bench.add(
        Step(
            0,
            f"Bore {bore.name}, {len(passes)} cuts",
            bore.name,
            named(tool),
            "boring",
            speed.rpm,
            speed.reached,
            feed,
            f"{target:.3f}" if limits else f"{target:.2f}",
            "DIA mm",
            (
                f"Touch in the {Mm(has):.2f} hole, set 0; outwards, last cut {passes[-1].dial} "
                f"({graduation_words(bench.cross)}).",
                f"Stop at Z {Mm(depth):.2f} from the face.",
                *((f"Leaves {Mm(bore.dia.value - target):.2f} for the reamer.",) if plan.reamer else ()),
            ),
            passes,
            cutting_minutes(moves, speed.rpm, feed, len(passes)),
            cautions=cautions,
            measure=measures,
            moves=tuple(moves),
            tool_letter=tool.letter,
        )
    )
    bench.bored[bore.name] = target


def _tapping_hole(bench: Bench, bore: Bore, depth: float) -> None:
    drill = bench.tapping_drill(bore.thread, bore.name)
    if drill is None:
        return
    if bore.through and bench.option.ending:
        depth += STUB_TAP * thread(bore.thread).pitch  # the tap's lead runs into the stub
    full = depth if bore.through else tap_depths(thread(bore.thread), bore.depth, drill).full_diameter_depth
    pilot = min(bench.shop.drills, key=lambda d: abs(d - drill / 2))
    _drills(bench, bore.name, (drill,) if drill <= 6 else (pilot, drill), full, blind_flat=False)


def _tap(bench: Bench, bore: Bore) -> None:
    screw = thread(bore.thread)
    if bore.thread not in bench.shop.taps:
        bench.find(
            414,
            "stop",
            f"No {bore.thread} tap in the drawer for {bore.name}.",
            feature=bore.name,
            bound="taps owned: " + (", ".join(bench.shop.taps) or "none"),
            remedy="Buy or borrow the tap, or let the size follow a thread that is owned.",
        )
        return
    bench.add(
        Step(
            0,
            f"Tap {bore.thread} by hand, spindle stopped",
            bore.name,
            f"tap {bore.thread}",
            "tap",
            0.0,
            0.0,
            screw.pitch,
            bore.thread,
            _tap_words(bench, bore),
            (
                "Tap held in the tailstock chuck to start it square, turned by hand.",
                "Back half a turn every half turn; oil"
                + (", bottoming tap last." if not bore.through else "."),
            ),
            minutes=4.0,
            why=f"Tapped in the grip that drilled it, so that the thread stands square to face {bench.option.free}.",
            cautions=("Spindle stopped, out of gear.",),
            tool_size=screw.major,
        )
    )


def _tap_words(bench: Bench, bore: Bore) -> str:
    if not bore.through:
        return f"{Mm(bore.depth):.1f} deep"
    if bench.option.ending:  # the hole ends in the stub: say where to stop
        return f"{Mm(bench.length + rule('blank', 'saw_rest')):.1f} of full thread"
    return "through"


def edge_of_bore(bench: Bench, job: Job) -> None:
    """Break the mouth of a bore at the free face."""
    drawn = next(b for b in bench.drawn.bores if b.name == job.feature)
    has = bench.shape_bore(drawn.name)
    mouth = has + 2 * job.size
    able = [c for c in bench.shop.countersinks if c >= mouth]
    if able:
        size = min(able)
        speed = bench.speed(None, "countersinking", mouth, job.feature)
        moves = _axial(mouth / 2)
        bench.add(
            Step(
                0,
                f"Countersink the mouth of {job.feature}",
                job.feature,
                f"countersink {Mm(size):tool}, 90 deg",
                "countersink",
                speed.rpm,
                speed.reached,
                0.05,
                f"{mouth:.1f}",
                "DIA mm",
                (f"{Mm(job.size):g} x 45 deg: stop when the mouth measures {Mm(mouth):.1f}.",),
                minutes=1.5,
                moves=tuple(moves),
                tool_size=size,
            )
        )
        return
    bench.add(
        Step(
            0,
            f"Break the mouth of {job.feature} with a scraper",
            job.feature,
            "three-square scraper",
            "hand",
            0.0,
            0.0,
            0.0,
            f"{job.size:g}",
            "x 45 deg",
            ("Spindle stopped; no countersink as large as this in the drawer.",),
            minutes=1.5,
        )
    )


def allowance_words(size: float) -> str:
    """The reaming allowance in words, for the tool list."""
    least, most = allowance(size)
    return f"drill {Mm(least):g} to {Mm(most):g} under the reamer"
