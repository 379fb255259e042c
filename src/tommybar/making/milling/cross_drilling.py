"""Drilling across a round: one wall or both, from one side or two, what lies under it and how long the drill is."""

from __future__ import annotations

from tommybar.facts.drills import drill_length, point_length
from tommybar.making.lengths import Mm
from tommybar.making.mill_steps import MillBench
from tommybar.making.milling.counterbores import counterbore
from tommybar.making.milling.cross_stand import bore_of, dia_at, drill_of
from tommybar.making.milling.room import both_sides, known, stands_out
from tommybar.making.milling.round_holding import RoundHold, vee_rise
from tommybar.making.milling.sized_holes import blind_hole, through_hole
from tommybar.making.practice import rule
from tommybar.shapes.features import CrossHole, TurnedShape
from tommybar.shop.model import Shop

OVERLAP = 1.0  # holes from two sides meet by so much; common practice, no source [mm]


def short_by(shape: TurnedShape, hole: CrossHole, shop: Shop) -> tuple[float, bool]:
    """By how much the drill fails to cross the part [mm], and whether a long one that is owned was counted."""
    size = drill_of(hole)
    distance = dia_at(shape, hole) + rule("cut", "through") + point_length(size)
    short = both_sides(size, distance)
    if short <= 0:
        return 0.0, False
    if any(abs(d - size) < 0.06 for d in shop.long_drills):
        return both_sides(size, distance, long=True), True
    return short, False


def drill_across(
    bench: MillBench,
    shape: TurnedShape,
    hole: CrossHole,
    lies: RoundHold,
    second: bool,
    count: int = 1,
    feature: str = "",
) -> None:
    """Drill, tap and counterbore a hole, or ``count`` alike, all of whose names are its name."""
    feature = feature or hole.name
    dia, bore = dia_at(shape, hole), bore_of(shape, hole)
    wall = (dia - bore) / 2
    size = drill_of(hole)
    short, long = short_by(shape, hole, bench.shop) if hole.walls == 2 else (0.0, False)
    thick = wall if hole.walls == 1 else dia
    bench.under = _under_words(hole, bore, lies)
    if second and hole.thread and short <= 0:
        bench.tap(hole.thread, None, size, f"{hole.name}, from this side", count, feature)
        return
    solid = hole.walls == 1 and bore <= 0 and not hole.into  # drawn to the axis
    depth = dia / 2 if hole.depth is None and solid else hole.depth
    if depth is not None:
        if hole.thread:
            bench.tapped(hole.thread, depth, dia, hole.name, count, feature)
        else:
            blind_hole(bench, hole.dia, depth, dia, hole.name, count, feature)
        return
    if short > 0:
        thick = wall if bore > 0 else dia / 2 + (0.0 if second else OVERLAP)
        _told_short(bench, hole, size, dia, short, long)
    elif hole.walls == 2:
        _under(bench, hole, size, dia, lies)
    _flutes(bench, hole, size, thick if bore <= 0 else wall, long)
    also = _also(hole, dia, size, wall, bore, short)
    crossing = dia if hole.walls == 2 and short <= 0 else 0.0
    if hole.thread:
        drill = bench.tapping_drill(hole.thread, hole.name)
        if drill is not None:
            bench.drill(
                drill, thick, hole.name, count, feature, through=True, long=long, crossing=crossing, also=also
            )
            bench.tap(hole.thread, None, drill, hole.name, count, feature)
    else:
        through_hole(
            bench, hole.dia, thick, hole.name, count, feature, crossing=crossing, long=long, also=also
        )
    if hole.sink_dia > 0 and not second:
        counterbore(bench, hole.sink_dia, hole.sink_depth, hole.dia.value, hole.name, count, feature)


def _under_words(hole: CrossHole, bore: float, lies: RoundHold) -> str:
    """What a drill that comes through meets."""
    if "arbor" in lies.device:
        return "It runs on into the arbor, which may be spoiled."
    if hole.walls == 1 and bore > 0:
        return ""  # it stops in the bore
    return "Nothing under the hole: parallels clear, scrap beneath." if lies.blind_under else ""


def _also(
    hole: CrossHole, dia: float, size: float, wall: float, bore: float, short: float
) -> tuple[str, ...]:
    lines = [f"Depth counts from the top of the round {Mm(dia):g}, where the point first touches."]
    if hole.walls == 1 and bore > 0:
        room = wall + bore
        lines.append(
            f"Through the wall of {Mm(wall):.2f}; the far wall of the bore is met at {Mm(room):.2f}: stop before."
        )
    if hole.walls == 2 and short <= 0 and bore > 0:
        lines.append(
            "Through the near wall and on through the far one in one go: the first guides the second."
        )
    if hole.walls == 2 and hole.thread:
        lines.append("Tap each wall from its own side; the tap does not reach across.")
    return tuple(lines)


def _told_short(bench: MillBench, hole: CrossHole, size: float, dia: float, short: float, long: bool) -> None:
    owned = stands_out(size, long=long)
    overall = drill_length(size).overall
    bench.caution(
        436,
        f"{hole.name} goes through {dia:g} mm: a drill {size:g} mm ({overall:g} mm long) stands out {owned:.1f} mm and is "
        f"{short:.1f} mm too short; it is drilled from both sides."
        + (
            " The two halves do not meet to the limits: ream both in one go by hand."
            if hole.dia.toleranced
            else ""
        ),
        hole.name,
        f"Or buy a drill of the long series ({drill_length(size, 'long').overall:g} mm) and write it under long_drills."
        if known(size, long=True)
        else "Turn it over and meet in the middle; no long series is made so thin.",
        f"{dia + rule('cut', 'through') + point_length(size):.1f} mm to cross",
        f"{owned:.1f} mm out of the chuck",
    )


def _under(bench: MillBench, hole: CrossHole, size: float, dia: float, lies: RoundHold) -> None:
    """What lies under a hole that goes right through: the root of the vee, or a parallel."""
    goes = rule("cut", "through") + point_length(size)
    gap = vee_rise(dia) - dia / 2
    if "vee" in lies.device and (goes > gap or size / 2 > gap - rule("cut", "through")):
        bench.caution(
            438,
            f"{hole.name}: the drill comes {goes:.1f} mm out below the round and would cut the vee, whose root lies "
            f"{gap:.1f} mm below.",
            hole.name,
            "Let the place of the hole overhang the block's end, or put the block's slot under it.",
            f"{goes:.1f} mm, {size:g} mm wide",
            f"{gap:.1f} mm to the root of the vee",
        )


def _flutes(bench: MillBench, hole: CrossHole, size: float, metal: float, long: bool) -> None:
    flute = drill_length(size, "long" if long else "jobber").flute
    if metal + point_length(size) > flute:
        bench.caution(
            439,
            f"{hole.name}: {metal:g} mm of metal is deeper than the drill's flutes; chips jam.",
            hole.name,
            "Draw the drill right out every half diameter, or use a long-series drill.",
            f"{metal + point_length(size):.1f} mm",
            f"{flute:g} mm of flute",
        )
