"""Holes on the axis: centre, drills, boring, reamer, tap, and their edges."""

from __future__ import annotations

from tommybar.making.axial_drills import START, axial_moves, depth_words, drill_through_sizes
from tommybar.making.bench import Bench, cutting_minutes, named
from tommybar.making.blind_bores import REAMER_LEAD, blind_plan
from tommybar.making.cards import Measure, Move, Pass, Step
from tommybar.making.cuts import feed_for, finishing_passes, roughing_passes
from tommybar.making.jobs import Job, comes_out, mouth_level
from tommybar.making.lengths import Mm
from tommybar.making.practice import rule
from tommybar.making.reaming import HolePlan, hole_plan
from tommybar.making.rigidity import boring_cut
from tommybar.making.tapping import tap, tapping_hole
from tommybar.making.turning import coarse_dial
from tommybar.shapes.features import Bore
from tommybar.shop.model import Tool


def _through_depth(bench: Bench) -> float:
    """How deep the full diameter goes for a through hole, from the free face [mm]."""
    ending = bench.option.ending
    if ending == "part":
        blade = min((t.width for t in bench.shop.tools if t.kind == "parting"), default=2.0)
        return bench.length + rule("blank", "part_rest") + blade + 0.3
    if ending == "saw":
        return bench.length + rule("blank", "saw_rest") + bench.shop.saw_kerf + 0.3
    return -bench.work.bottom + rule("cut", "through")


def _within(drawn: Bore) -> tuple[float, float] | None:
    if drawn.dia.smallest is None or drawn.dia.largest is None:
        return None
    return drawn.dia.smallest, drawn.dia.largest


def _plan(bench: Bench, drawn: Bore) -> HolePlan | None:
    if bench.hollow > 0:  # a boring bar enters the bore of the tube; no drill is wanted
        return HolePlan((), "bore", None, drawn.dia.value)
    if not drawn.through:
        blind = blind_plan(drawn, bench.shop, bench.length)
        return None if blind is None else blind.tools
    return hole_plan(
        drawn.dia.value,
        bench.shop,
        limits=drawn.dia.toleranced,
        finish_later=bool(drawn.after),
        depth=_full_depth(bench, drawn),
        within=_within(drawn),
    )


def _full_depth(bench: Bench, drawn: Bore) -> float:
    if not drawn.through:
        return drawn.depth
    out = comes_out(drawn, bench.drawn, bench.option.free)
    whole = _through_depth(bench)
    return whole if out > bench.length - 1e-6 else min(whole, out + rule("cut", "through"))


def drill_bore(bench: Bench, job: Job) -> None:
    """Centre and drills of one bore, before anything is roughed thin."""
    drawn = next(b for b in bench.drawn.bores if b.name == job.feature)
    depth = _full_depth(bench, drawn)
    if drawn.thread:
        tapping_hole(bench, drawn, depth)
        return
    if drawn.bottom == "ball":
        bench.find(
            428,
            "stop",
            f"{drawn.name} has a round bottom of {drawn.dia.value / 2:g} mm radius; no card is written for it.",
            feature=drawn.name,
            figure=f"{drawn.dia.value / 2:g} mm radius, {drawn.depth + drawn.dia.value / 2:g} mm deep",
            bound="drills, slot drills and boring bars: cone or flat",
            remedy=f"A ball-nosed cutter of that size in the tailstock chuck; or make a half-round bit: silver steel of "
            f"{drawn.dia.value:g} mm, its end turned to a ball of {drawn.dia.value / 2:g} mm radius, filed flat to the middle, "
            "hardened, stoned, and fed into the drilled hole; or draw it as drilled.",
        )
    if bench.hollow > 0:
        return
    blind = None if drawn.through else blind_plan(drawn, bench.shop, bench.length)
    plan = _plan(bench, drawn)
    if blind is not None and blind.problem is not None:
        words, figure, bound, remedy = blind.problem
        bench.find(418, "stop", words, feature=drawn.name, figure=figure, bound=bound, remedy=remedy)
        return
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
    if plan.finish in ("bore", "bore and ream"):
        opened = max(plan.drills[-1], blind.cutter if blind is not None else 0.0)
        if _bar_for(bench, drawn, plan, opened) is None:
            return  # nothing finishes it, so nothing begins it
    if plan.finish == "drill" and not drawn.after and abs(plan.drills[-1] - drawn.dia.value) > 0.03:
        bench.find(
            419,
            "note",
            f"{drawn.name} is drilled {Mm(plan.drills[-1]):tool} where {Mm(drawn.dia.value):g} is drawn.",
            feature=drawn.name,
            figure=f"{plan.drills[-1]:g} mm",
            bound="ISO 2768-1 class m, as no limits are given",
            remedy="Give the hole limits if it must be nearer.",
        )
    if plan.reamer is not None and drawn.through:
        depth += REAMER_LEAD * plan.reamer.size  # the reamer's lead must not meet the drill's cone
    flat = blind is not None and drawn.bottom == "flat" and blind.cutter > 0
    drill_through_sizes(
        bench, job.feature, plan.drills, blind.drill_to if blind is not None else depth, blind_flat=flat
    )
    if blind is not None and blind.cutter > 0:
        floored(bench, drawn, blind.cutter)


def finish_bore(bench: Bench, job: Job) -> None:
    """Boring bar, reamer or tap of one bore, after the roughing."""
    drawn = next(b for b in bench.drawn.bores if b.name == job.feature)
    if drawn.thread:
        tap(bench, drawn)
        return
    plan = _plan(bench, drawn)
    if plan is None or drawn.name not in bench.bored:
        return
    if plan.finish in ("bore", "bore and ream"):
        _bored(bench, drawn, plan, _bored_depth(bench, drawn, plan))
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


def _reamed(bench: Bench, bore: Bore, plan: HolePlan, depth: float) -> None:
    reamer = plan.reamer
    assert reamer is not None
    speed = bench.speed(None, "reaming", reamer.size, bore.name)
    feed = feed_for(bench.part.material, "HSS", "reaming", "finishing", reamer.size)
    deep = depth + 0.1 * reamer.size
    moves = axial_moves(deep)
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
                *depth_words(bench, deep, 100.0, 0.0),
                *hint,
            ),
            minutes=cutting_minutes(moves, speed.rpm, feed, 1) + rule("minutes", "measure"),
            why="The reamer fixes the size; the shaft is made to suit it afterwards.",
            measure=(bench.measured(f"{bench.part.name}.{bore.name}", bore.dia, "inside"),),
            moves=tuple(moves),
            tool_size=reamer.size,
        )
    )


def _bored_depth(bench: Bench, bore: Bore, plan: HolePlan) -> float:
    lead = REAMER_LEAD * plan.reamer.size if plan.reamer is not None else 0.0  # its core wants room there
    return _full_depth(bench, bore) + lead


def _bar_for(bench: Bench, bore: Bore, plan: HolePlan, has: float) -> Tool | None:
    """The stoutest bar that enters a hole of that diameter and reaches as deep as the bore; a stop where there is none."""
    depth = _bored_depth(bench, bore, plan)
    return bench.tool(
        "boring",
        lambda t: (t.smallest_bore or t.shank) <= has + 1e-6 and t.reach >= depth - 1e-6,
        lambda t: -t.shank,
        f"{bore.name} ({Mm(depth):.1f} deep from {has:g} mm)",
    )


def _bored(bench: Bench, bore: Bore, plan: HolePlan, depth: float) -> None:
    has = bench.bored[bore.name]
    target = plan.bore_to if plan.reamer else bench.shape_bore(bore.name)
    tool = _bar_for(bench, bore, plan, has)
    if tool is None:
        return
    left = rule("cut", "finish_left")
    limits = bore.dia.toleranced and plan.reamer is None
    speed = bench.speed(tool, "boring", target, bore.name)
    feed = feed_for(bench.part.material, tool.material, "boring", "finishing")
    deepest = boring_cut(bench, tool, depth, feed)
    passes: tuple[Pass, ...] = ()
    if target - left > has + 0.05:
        passes = roughing_passes(has, target - left, deepest, bench.cross, +1.0)
    start = passes[-1].to if passes else has
    passes = (*passes, *finishing_passes(start, target, bench.cross, +1.0, two=limits))
    clear = has / 2 - 0.3
    flat = not bore.through and bore.bottom == "flat"
    moves = [Move(START, clear)]
    for cut in passes:
        inward = (has if flat else cut.to) / 2 - rule("cut", "retract")
        r = (target if cut is passes[-1] else cut.to) / 2
        moves += [Move(START, r, rapid=True), Move(-depth, r), Move(-depth, inward)]
        moves += [Move(START, inward, rapid=True)]
    measures: tuple[Measure, ...] = ()
    if limits:
        measures = (bench.measured(f"{bench.part.name}.{bore.name}", bore.dia, "inside"),)
    ratio = depth / max(tool.shank, 1.0)
    cautions = (
        (
            f"The bar stands out {ratio:.1f} x its thickness: cuts of {Mm(deepest):.2f} at most, expect spring.",
        )
        if ratio > 4
        else ()
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
                f"({bench.cross_words}).",
                f"Stop at Z {Mm(depth):.2f} from the face"
                + (
                    ", then draw the bar inwards over the floor "
                    + (
                        "until it runs out into the bore."
                        if bench.hollow > 0
                        else "to where the slot drill left it flat."
                    )
                    if flat
                    else "."
                ),
                *((f"Leaves {Mm(bore.dia.value - target):.2f} for the reamer.",) if plan.reamer else ()),
            ),
            passes,
            cutting_minutes(moves, speed.rpm, feed, len(passes)),
            cautions=(*cautions, *(coarse_dial(bench, bore.dia) if limits else ())),
            measure=measures,
            moves=tuple(moves),
            tool_letter=tool.letter,
        )
    )
    bench.bored[bore.name] = target


def floored(bench: Bench, bore: Bore, cutter: float) -> None:
    """Flatten the floor with a slot drill in the tailstock chuck."""
    speed = bench.speed(None, "drilling", cutter, bore.name)
    feed = feed_for(bench.part.material, "HSS", "drilling", "roughing", cutter)
    moves = axial_moves(bore.depth)
    bench.add(
        Step(
            0,
            f"Flatten the floor of {bore.name} with a slot drill {Mm(cutter):tool}",
            bore.name,
            f"slot drill {Mm(cutter):tool}",
            "slot drill",
            speed.rpm,
            speed.reached,
            feed,
            f"{bore.depth:.2f}",
            "deep mm",
            (
                "Two lips that cut to the centre, in the tailstock chuck, standing out as little as will do.",
                *depth_words(bench, bore.depth, cutter, 0.0),
            ),
            minutes=cutting_minutes(moves, speed.rpm, feed, 1),
            why="A drill leaves a cone; what seats on the floor would rock on it.",
            cautions=(
                "A slot drill grabs where it breaks into the drill's cone: feed gently, quill locked lightly.",
            ),
            moves=tuple(moves),
            tool_size=cutter,
        )
    )
    bench.bored[bore.name] = max(cutter, bench.bored.get(bore.name, 0.0))


def edge_of_bore(bench: Bench, job: Job) -> None:
    """Break the mouth of a bore at the free face."""
    drawn = next(b for b in bench.drawn.bores if b.name == job.feature)
    has = bench.shape_bore(drawn.name)
    mouth = has + 2 * job.size
    level = mouth_level(bench.drawn, drawn, bench.option.free)
    wide = [one.dia.value for one in bench.drawn.bores if not one.through and one.face == bench.option.free]
    wide += [one.end_dia for one in bench.drawn.bore_tapers if one.face == bench.option.free]
    opens = min((dia for dia in wide if dia > has), default=0.0) if level > 0 else 0.0
    able = [c for c in bench.shop.countersinks if c >= mouth and (opens <= 0 or c <= opens - 0.2)]
    if able:
        size = min(able)
        speed = bench.speed(None, "countersinking", mouth, job.feature)
        moves = axial_moves(level + mouth / 2)
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
                (
                    f"{Mm(job.size):g} x 45 deg: stop when the mouth measures {Mm(mouth):.1f}.",
                    *((f"Its mouth lies on the floor {Mm(level):.2f} below the face.",) if level > 0 else ()),
                ),
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
            (
                "Spindle stopped; no countersink of this size in the drawer"
                + (f" goes into the bore of {Mm(opens):g} above it." if level > 0 else "."),
            ),
            minutes=1.5,
        )
    )
