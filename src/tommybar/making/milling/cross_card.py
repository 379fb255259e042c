"""Cards for holes across a round: one for each angle, and one more where a drill must come from the other side."""

from __future__ import annotations

from dataclasses import dataclass

from tommybar.design.model import Part
from tommybar.facts.drills import drill_length, point_length
from tommybar.findings import Finding
from tommybar.making.cards import Card, Hold
from tommybar.making.lengths import Mm
from tommybar.making.mill_steps import MillBench
from tommybar.making.milling.clocking import from_circle, turned_to
from tommybar.making.milling.counterbores import counterbore
from tommybar.making.milling.cross_stand import (
    beside_lines,
    body_at,
    bore_of,
    dia_at,
    drill_of,
    grip_lines,
    place_of,
    zero_lines,
)
from tommybar.making.milling.room import both_sides, known, room_lines, stands_out
from tommybar.making.milling.round_holding import RoundHold, held_for_cross, vee_rise
from tommybar.making.milling.safety import START
from tommybar.making.milling.sized_holes import blind_hole, through_hole
from tommybar.making.milling.touching import finder_of
from tommybar.making.milling.travel import within_travel
from tommybar.making.practice import rule
from tommybar.making.visiting import Spot, hole_places
from tommybar.shapes.features import CrossHole, TurnedShape
from tommybar.shop.model import Mill, Shop

OVERLAP = 1.0  # holes from two sides meet by so much; common practice, no source [mm]


@dataclass(frozen=True)
class Side:
    """Holes drilled with one angle up; ``second``: from the far side, to meet those of the first."""

    angle: float
    holes: tuple[CrossHole, ...]
    second: bool = False


def cross_cards(
    part: Part, shape: TurnedShape, shop: Shop, mill: Mill, before: int, gives_to: dict[str, tuple[str, ...]]
) -> tuple[list[Card], list[Finding]]:
    """A card for each angle that has to be up."""
    cards: list[Card] = []
    findings: list[Finding] = []
    first = min(shape.cross_holes, key=lambda h: (h.angle, h.z), default=None)
    for side in _sides(shape, shop):
        assert first is not None
        card, found = _card(part, shape, side, first, shop, mill, before + len(cards) + 1, gives_to)
        cards.append(card)
        findings += found
    return cards, findings


def _sides(shape: TurnedShape, shop: Shop) -> list[Side]:
    sides: dict[float, list[CrossHole]] = {}
    back: dict[float, list[CrossHole]] = {}
    for hole in shape.cross_holes:
        sides.setdefault(hole.angle, []).append(hole)
        if hole.walls == 2 and (hole.thread or _short_by(shape, hole, shop)[0] > 0):
            back.setdefault((hole.angle + 180.0) % 360.0, []).append(hole)
    found = [Side(angle, tuple(sides[angle])) for angle in sorted(sides)]
    found += [Side(angle, tuple(back[angle]), second=True) for angle in sorted(back)]
    return found


def _short_by(shape: TurnedShape, hole: CrossHole, shop: Shop) -> tuple[float, bool]:
    """By how much the drill fails to cross the part [mm], and whether a long one that is owned was counted."""
    size = drill_of(hole)
    distance = dia_at(shape, hole) + rule("cut", "through") + point_length(size)
    short = both_sides(size, distance)
    if short <= 0:
        return 0.0, False
    if any(abs(d - size) < 0.06 for d in shop.long_drills):
        return both_sides(size, distance, long=True), True
    return short, False


def _card(
    part: Part,
    shape: TurnedShape,
    side: Side,
    first: CrossHole,
    shop: Shop,
    mill: Mill,
    number: int,
    gives_to: dict[str, tuple[str, ...]],
) -> tuple[Card, list[Finding]]:
    bench = MillBench(part, shop, mill, number, gives_to, face="the top of the round")
    one = side.holes[0]
    body = body_at(shape, one.z)
    dia = dia_at(shape, one)
    lies = held_for_cross(mill, shape, dia)
    if not side.second or not all(h.thread and _short_by(shape, h, shop)[0] <= 0 for h in side.holes):
        bench.spot(len(side.holes), one.name)
    beside = beside_lines(bench, shape, body, list(side.holes))
    for hole in side.holes:
        _drill(bench, shape, hole, lies, side.second)
    bench.plunges = [p for p in bench.plunges if p.size > 0]
    if not lies.owned:
        bench.caution(
            431,
            f"{part.name} is {dia:g} mm where it is held; vice and vee block of the shop file do not take it.",
            one.name,
            "Lay it in a pair of vee blocks on the table and clamp it down, or borrow a larger vee block.",
            f"{dia:g} mm",
            f"vice {mill.vice_opening:g} mm wide, {mill.vice_depth:g} mm deep; vee block to {mill.vee_to:g} mm",
        )
    sign = -1.0 if side.second else 1.0
    spots = [
        Spot(
            *place_of(hole, lies, sign),
            f"{hole.name}: {hole.thread or f'dia {Mm(hole.dia.value):g}'}",
        )
        for hole in side.holes
    ]
    within_travel(bench, spots)
    hold = Hold(
        lies.device,
        "",
        body.name if body else "outside",
        dia,
        0.0,
        0.0,
        lies.runout,
        "The hole must point at the axis, so the axis is found by touching both sides of the round. "
        + lies.words,
        "face A to the fixed jaw, its rim on the bed"
        if lies.by_faces
        else "face A to the left, against a stop",
    )
    again = side.angle != first.angle or side.second
    clocked = turned_to(bench, first, side.angle, dia, one.name) if again else ()
    whence = () if again else from_circle(shape.circle_holes, one)
    names = ", ".join(h.name for h in side.holes)
    card = Card(
        part.name,
        number,
        number,
        "mill",
        f"across{' from the other side' if side.second else ''}: {names}",
        "",
        hold,
        tuple(bench.steps),
        (
            *zero_lines(lies, dia, finder_of(shop)),
            *whence,
            *clocked,
            *grip_lines(bench, body, lies, dia, one.name),
            *beside,
            "A broken-through bore catches the drill: feed gently at the end.",
            *room_lines(bench, lies.base, lies.tall or dia),
            *START,
        ),
        bench.drawer(),
        hole_places(mill, spots),
        (),
        bench.minutes(),
        goes_wrong=(
            "The drill slides off the round: spot first, or mill a small flat.",
            "A burr inside the bore: run the reamer or a scraper through by hand afterwards.",
        ),
        why="Drilled after turning, so that the bore it meets is finished and can be deburred.",
    )
    return card, bench.findings


def _drill(bench: MillBench, shape: TurnedShape, hole: CrossHole, lies: RoundHold, second: bool) -> None:
    dia, bore = dia_at(shape, hole), bore_of(shape, hole)
    wall = (dia - bore) / 2
    size = drill_of(hole)
    short, long = _short_by(shape, hole, bench.shop) if hole.walls == 2 else (0.0, False)
    thick = wall if hole.walls == 1 else dia
    if second and hole.thread and short <= 0:
        bench.tap(hole.thread, None, size, f"{hole.name}, from this side", 1, hole.name)
        return
    if hole.depth is not None:
        if hole.thread:
            bench.tapped(hole.thread, hole.depth, dia, hole.name, 1, hole.name)
        else:
            blind_hole(bench, hole.dia, hole.depth, dia, hole.name, 1, hole.name)
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
                drill, thick, hole.name, 1, hole.name, through=True, long=long, crossing=crossing, also=also
            )
            bench.tap(hole.thread, None, drill, hole.name, 1, hole.name)
    else:
        through_hole(bench, hole.dia, thick, hole.name, 1, hole.name, crossing=crossing, long=long, also=also)
    if hole.sink_dia > 0 and not second:
        counterbore(bench, hole.sink_dia, hole.sink_depth, hole.dia.value, hole.name, 1, hole.name)


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
