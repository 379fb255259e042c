"""Holes of a size at the mill: through and blind, with limits and without."""

from __future__ import annotations

from dataclasses import replace

from tommybar.facts.drawing.general_tolerances import general_tolerance
from tommybar.facts.drills import point_length
from tommybar.making.cards import Step
from tommybar.making.cuts import feed_for
from tommybar.making.lengths import Mm
from tommybar.making.mill_steps import MillBench, Plunge
from tommybar.making.milling import boring_head
from tommybar.making.milling.boring_head import still
from tommybar.making.milling.rules import mill_rule
from tommybar.making.reaming import HolePlan, drilled_size, hole_plan, predrill_for
from tommybar.shapes.features import Dim
from tommybar.shop.model import Reamer, Shop


def within(dim: Dim) -> tuple[float, float] | None:
    """The limits of a size, or None [mm]."""
    if dim.smallest is None or dim.largest is None:
        return None
    return dim.smallest, dim.largest


def mill_hole_plan(dim: Dim, shop: Shop, depth: float) -> HolePlan | None:
    """Drills and finish of a through hole at the mill: the lathe's boring bars do not count, the boring head does."""
    plan = hole_plan(
        dim.value, replace(shop, tools=()), limits=dim.toleranced, depth=depth, within=within(dim)
    )
    if plan is not None:
        return plan
    reamer = _reamer_of(dim, shop)
    to = predrill_for(dim.value, shop) if reamer is not None else dim.target
    start = boring_head.start_hole(shop, to)
    if start is None:
        return None
    opened = hole_plan(start, replace(shop, tools=(), reamers=()), limits=False, depth=depth)
    drills = opened.drills if opened is not None else (start,)
    return HolePlan(drills, "bore" if reamer is None else "bore and ream", reamer, to)


def _reamer_of(dim: Dim, shop: Shop) -> Reamer | None:
    """The reamer that makes these limits, once a hole stands for it."""
    with_any_drill = replace(shop, tools=(), drills=tuple(n / 100 for n in range(50, 2600)))
    plan = hole_plan(dim.value, with_any_drill, limits=dim.toleranced, within=within(dim))
    return plan.reamer if plan is not None else None


def through_hole(
    bench: MillBench,
    dim: Dim,
    thick: float,
    holes: str,
    count: int,
    feature: str,
    *,
    crossing: float = 0.0,
    long: bool = False,
    also: tuple[str, ...] = (),
) -> None:
    """Drill, and where limits are given ream or bore, a through hole."""
    plan = mill_hole_plan(dim, bench.shop, thick)
    if plan is None:
        words, bound = boring_head.why_not(bench.shop, dim.value)
        fine = f" to {dim.zone}" if dim.zone else ""
        bench.stop(
            416 if dim.toleranced else 411,
            f"Nothing at the mill makes {feature}, {dim.value:g} mm{fine}: no drill or reamer does, and {words}.",
            feature,
            "Add a reamer with its drill or a boring head, bore it in the lathe on the faceplate, "
            "or let the size follow a tool that is owned.",
            figure=f"{dim.value:g} mm",
            bound=bound,
        )
        return
    for size in plan.drills:
        bench.drill(size, thick, holes, count, feature, through=True, crossing=crossing, long=long, also=also)
    if plan.finish in ("bore", "bore and ream"):
        boring_head.bore(
            bench, plan.bore_to, dim, thick, feature, last=plan.reamer is None, blind=False, count=count
        )
    if plan.reamer is not None:
        ream(bench, plan.reamer, dim, f"Through {Mm(thick):.4g}", thick + 1.0, holes, feature, count)


def ream(
    bench: MillBench,
    reamer: Reamer,
    dim: Dim,
    how_deep: str,
    deep: float,
    holes: str,
    feature: str,
    count: int = 1,
) -> None:
    """Ream where the drill or the boring head has just been."""
    speed = bench.speed("reaming", reamer.size, feature)
    bench.plunges.append(Plunge("reamer", reamer.size, deep + bench.sunk, feature))
    bench.add(
        Step(
            0,
            f"Ream {Mm(reamer.size):tool} {reamer.zone}, {holes}",
            feature,
            f"reamer {Mm(reamer.size):tool} {reamer.zone}",
            "reamer",
            speed.rpm,
            speed.reached,
            feed_for(bench.part.material, "HSS", "reaming", "finishing", reamer.size),
            f"{reamer.size:g} {reamer.zone}",
            "DIA mm",
            (f"{how_deep}, slow and steady, lubricant; {still(count)}.",),
            minutes=4.0 * count,
            why="The reamer fixes the size; the mate is made to suit it.",
            measure=bench.measured(dim, feature, "inside"),
            tool_size=reamer.size,
        )
    )


def reamer_lead(size: float) -> float:
    """How far beyond its sized part a machine reamer must go [mm]."""
    return max(mill_rule("reamer_lead"), mill_rule("reamer_lead_share") * size)


def blind_hole(
    bench: MillBench,
    dim: Dim,
    depth: float,
    metal: float,
    holes: str,
    count: int,
    feature: str,
    *,
    flat: bool = False,
) -> None:
    """A blind hole ``depth`` deep in ``metal``: drilled, reamed below its depth, end-milled, or bored flat."""
    room = metal - mill_rule("floor_least")
    if dim.toleranced:
        _fine_blind(bench, dim, depth, room, holes, count, feature, flat)
        return
    drill = drilled_size(dim.value, bench.shop)
    if flat:
        _flat_blind(bench, dim, depth, room, holes, count, feature)
    elif drill is None:
        bench.stop(
            411,
            f"Nothing in the drawer makes {feature}, {dim.value:g} mm.",
            feature,
            "Add the drill, or let the size follow one that is owned.",
            figure=f"{dim.value:g} mm",
        )
    else:
        _point_inside(bench, depth + point_length(drill), metal, feature)
        bench.drill(drill, depth, holes, count, feature, through=False)


def _point_inside(bench: MillBench, tip: float, metal: float, feature: str) -> None:
    if tip > metal - 1e-6:
        bench.stop(
            417,
            f"{feature}: the drill's point goes {tip:.2f} mm deep and comes out of {metal:.2f} mm of metal.",
            feature,
            "Make the hole shallower, or flat at its bottom with an end mill.",
            figure=f"{tip:.2f} mm",
            bound=f"{metal:g} mm of metal",
        )


def end_mill_of(size: float, shop: Shop, limits: tuple[float, float] | None) -> float | None:
    """An end mill that leaves a hole of that size, by ISO 2768-1 class m or within wide limits [mm]."""
    over = mill_rule("cutter_over")
    if limits is not None:
        if limits[1] - limits[0] < mill_rule("seat_limits"):
            return None
        fits = [c for c in shop.cutters if limits[0] <= c and c + over <= limits[1]]
    else:
        band = general_tolerance(size, "m")
        fits = [c for c in shop.cutters if abs(c - size) <= band + 1e-9]
    return min(fits, key=lambda c: (abs(c - size), c), default=None)


def _flat_blind(
    bench: MillBench, dim: Dim, depth: float, room: float, holes: str, count: int, feature: str
) -> None:
    limits = within(dim)
    cutter = end_mill_of(dim.value, bench.shop, limits)
    below = [d for d in bench.shop.drills if d <= dim.value - 0.5 and d <= bench.shop.lathe.drill_chuck]
    if cutter is not None:
        if below:
            drill = max(below)
            before = depth - point_length(drill)
            if before > 0:
                bench.drill(drill, before, f"{holes}, before the end mill", count, feature, through=False)
        plunge_end_mill(bench, cutter, depth, dim, holes, count, feature)
        return
    start = boring_head.start_hole(bench.shop, dim.target)
    if start is not None and depth - point_length(start) > 0:
        bench.drill(
            start, depth - point_length(start), f"{holes}, before boring", count, feature, through=False
        )
        boring_head.bore(bench, dim.target, dim, depth, feature, last=True, blind=True, count=count)
        return
    words, bound = boring_head.why_not(bench.shop, dim.value)
    owned = ", ".join(f"{c:g}" for c in bench.shop.cutters) or "none"
    bench.stop(
        905,
        f"{feature}: no end mill makes {dim.value:g} mm{' ' + dim.zone if dim.zone else ''}, {depth:g} mm deep and flat, "
        f"and {words}.",
        feature,
        "Buy an end mill of that size or a boring head, let it go through, or bore it in the lathe.",
        figure=f"{dim.value:g} mm, {depth:g} mm deep, {room:.2f} mm of room below the face",
        bound=f"end mills: {owned} mm; {bound}",
    )


def _fine_blind(
    bench: MillBench, dim: Dim, depth: float, room: float, holes: str, count: int, feature: str, flat: bool
) -> None:
    """Limits: a reamer whose lead and drill point find room below, else an end mill or boring head."""
    plan = hole_plan(dim.value, replace(bench.shop, tools=()), limits=True, depth=depth, within=within(dim))
    if plan is not None and plan.reamer is not None and not flat:
        lead = reamer_lead(plan.reamer.size)
        last = plan.drills[-1]
        if depth + lead + point_length(last) <= room + 1e-9:
            for size in plan.drills:
                bench.drill(size, depth + lead, holes, count, feature, through=False)
            ream(
                bench,
                plan.reamer,
                dim,
                f"Sized {Mm(depth):.2f} deep: the reamer's end goes {Mm(depth + lead):.2f} below {bench.face}, stop set",
                depth + lead,
                holes,
                feature,
                count,
            )
            return
        needed = depth + lead + point_length(last)
        if end_mill_of(dim.value, bench.shop, within(dim)) is None and (
            boring_head.start_hole(bench.shop, dim.target) is None
        ):
            bench.stop(
                905,
                f"{feature}: to ream {dim.value:g} mm {depth:g} mm deep the drill's point goes {needed:.2f} mm deep "
                f"(reamer's lead {lead:.1f} mm, point {point_length(last):.1f} mm).",
                feature,
                f"Make it {max(depth - (needed - room), 0.0):.1f} mm deep, let it go through, "
                "or finish it with a boring head.",
                figure=f"{needed:.2f} mm",
                bound=f"{room:.2f} mm, the metal less {mill_rule('floor_least'):g} mm",
            )
            return
    _flat_blind(bench, dim, depth, room, holes, count, feature)


def plunge_end_mill(
    bench: MillBench, cutter: float, depth: float, dim: Dim, holes: str, count: int, feature: str
) -> None:
    """Plunge an end mill into a drilled hole, to a flat bottom."""
    speed = bench.speed("counterboring", cutter, feature)
    bench.plunges.append(Plunge("end mill", cutter, depth + bench.sunk, feature))
    bench.add(
        Step(
            0,
            f"End-mill {Mm(cutter):tool} to {Mm(depth):.2f} deep, {holes}",
            feature,
            f"end mill {Mm(cutter):tool}",
            "end mill",
            speed.rpm,
            speed.reached,
            feed_for(bench.part.material, "HSS", "drilling", "roughing", cutter) / 2,
            f"{depth:.2f}",
            "deep mm",
            (
                f"Straight down by the quill, stop at {Mm(depth):.2f} below {bench.face}; do not move the table.",
                "A cutter that does not cut to its centre needs the drilled hole under it.",
            ),
            minutes=count * 2.5,
            cautions=("Hold it in a collet, not in the drill chuck.",),
            measure=bench.measured(dim, feature, "inside") if dim.toleranced else (),
            tool_size=cutter,
        )
    )
