"""Blind holes on the axis: how deep the drill goes, what makes the floor, and what cannot be made."""

from __future__ import annotations

from dataclasses import dataclass, replace

from tommybar.facts.drawing.general_tolerances import general_tolerance
from tommybar.facts.drills import point_length
from tommybar.facts.threads import tap_depths, thread
from tommybar.making.practice import rule
from tommybar.making.reaming import HolePlan, hole_plan, openings
from tommybar.shapes.features import Bore, BoreTaper, Dim
from tommybar.shop.model import Shop

REAMER_LEAD = 0.15  # of a reamer's diameter: its lead, and a little; common practice, no source


@dataclass(frozen=True)
class BlindPlan:
    """Tools of a blind hole. ``problem`` is empty, or (words, figure, bound, remedy) of a stop."""

    tools: HolePlan
    drill_to: float  # full diameter of the last drill, from the face [mm]; for a flat floor the tip's depth
    cutter: float = 0.0  # slot drill that flattens the floor [mm]; 0: the drill's cone stays
    problem: tuple[str, str, str, str] | None = None


def blind_plan(bore: Bore, shop: Shop, length: float) -> BlindPlan | None:
    """Route of a blind hole in a part of that length [mm]; None when nothing in the drawer makes it.

    A reamer needs the drill deeper than its own depth by its lead and room
    for chips. A flat floor is cut by a slot drill; a reamer leaves its lead
    there, so that limits down to a flat floor need a boring bar.
    """
    dim = bore.dia
    within = (dim.smallest, dim.largest) if dim.smallest is not None and dim.largest is not None else None
    plan = hole_plan(
        dim.value,
        shop,
        limits=dim.toleranced,
        finish_later=bool(bore.after),
        depth=bore.depth,
        within=within,
    )
    if bore.bottom == "drill":
        return None if plan is None else _coned(bore, plan, length)
    return _flat(bore, plan, shop)


def _coned(bore: Bore, plan: HolePlan, length: float) -> BlindPlan:
    lead = rule("reaming", "blind_lead") * bore.dia.value if plan.reamer is not None else 0.0
    deep = bore.depth + lead
    tip = point_length(plan.drills[-1])
    left, least = length - deep - tip, rule("reaming", "floor_least")
    if left >= least - 1e-6:
        return BlindPlan(plan, deep)
    words = (
        f"{bore.name}: drilled {deep:.1f} deep for the reamer's lead, the drill's tip comes to {deep + tip:.1f} mm "
        f"in a part {length:g} mm long."
        if lead
        else f"{bore.name}: the drill's tip comes to {deep + tip:.1f} mm in a part {length:g} mm long."
    )
    return BlindPlan(
        plan,
        deep,
        problem=(
            words,
            f"{left:.1f} mm of floor",
            f"{least:g} mm at least",
            "Make the hole shallower or through, or draw a flat floor and bore it.",
        ),
    )


def _flat(bore: Bore, plan: HolePlan | None, shop: Shop) -> BlindPlan | None:
    size, depth = bore.dia.value, bore.depth
    cutters = [c for c in shop.cutters if c <= shop.lathe.drill_chuck + 1e-6]
    if plan is None or plan.finish == "drill":
        band = general_tolerance(max(size, 0.5), "m")
        near = [c for c in cutters if abs(c - size) <= band and not bore.dia.toleranced and not bore.after]
        if near:
            cutter = min(near, key=lambda c: (abs(c - size), c))
            before = [
                d
                for d in shop.drills
                if d <= cutter - 0.3 and point_length(d) < depth - rule("cut", "face_left")
            ]
            drills = openings(max(before), shop, depth) if before else ()
            return BlindPlan(
                HolePlan(drills, "cutter", None, cutter), depth - rule("cut", "face_left"), cutter
            )
        if plan is not None and bore.after:
            return BlindPlan(plan, depth)
    bars = [
        t
        for t in shop.tools
        if t.kind == "boring" and t.reach >= depth - 1e-6 and (t.smallest_bore or t.shank) < size
    ]
    for bar in sorted(bars, key=lambda t: -t.shank):
        enters = bar.smallest_bore or bar.shank
        able = [
            c for c in cutters if enters <= c <= size - rule("cut", "finish_left") and c >= 2 * enters - size
        ]
        if able:
            cutter = max(able)
            before = [
                d
                for d in shop.drills
                if d <= cutter - 0.3 and point_length(d) < depth - rule("cut", "face_left")
            ]
            drills = openings(max(before), shop, depth) if before else ()
            return BlindPlan(HolePlan(drills, "bore", None, size), depth - rule("cut", "face_left"), cutter)
    if plan is None:
        return None
    have = ", ".join(
        f"{t.letter} from {t.smallest_bore or t.shank:g}, {t.reach:g} deep"
        for t in shop.tools
        if t.kind == "boring"
    )
    return BlindPlan(
        plan,
        depth,
        problem=(
            f"{bore.name}: nothing in the drawer makes a flat floor {depth:g} mm deep in a hole of {size:g} mm.",
            f"{size:g} x {depth:g} mm",
            f"boring bars: {have or 'none'}; slot drills: {', '.join(f'{c:g}' for c in cutters) or 'none'}",
            "Draw the floor as the drill leaves it, add a slot drill of that size, or a bar that enters and reaches.",
        ),
    )


def tapped_depth(bore: Bore) -> float:
    """How deep the tapping drill of a blind hole goes with its full diameter, from the face [mm].

    As drawn when the drawing says the length of full thread beside the depth,
    if the tap's lead has room there; else the depth is that of full thread.
    """
    deep = tap_depths(thread(bore.thread), bore.full or bore.depth).full_diameter_depth
    return max(bore.depth, deep)


def as_bored(bore: Bore, shop: Shop, length: float) -> tuple[tuple[Bore, ...], tuple[BoreTaper, ...]]:
    """The hole as its route leaves it: below a reamed or bored size stand the reamer's lead and the drilled hole."""
    if bore.through or bore.thread or bore.after or bore.bottom != "drill":
        return (bore,), ()
    plan = blind_plan(bore, shop, length)
    if plan is None or plan.problem or plan.tools.finish == "drill":
        return (bore,), ()
    drill = plan.tools.drills[-1]
    deeper = Bore(f"{bore.name}, drilled", Dim(drill), bore.face, plan.drill_to, False, "drill")
    made = (replace(bore, bottom="flat"), deeper)
    if plan.tools.reamer is None:
        return made, ()
    waits = plan.tools.bore_to or drill
    size = plan.tools.reamer.size
    lead = BoreTaper(f"{bore.name}, lead", bore.face, bore.depth, (size - waits) / 2, size, waits)
    if not plan.tools.bore_to:
        return made, (lead,)
    bored = Bore(f"{bore.name}, bored", Dim(waits), bore.face, bore.depth + REAMER_LEAD * size, False, "flat")
    return (*made, bored), (lead,)
