"""Cards for holes across a round: one in the dividing device, or one for each angle that has to be up."""

from __future__ import annotations

from dataclasses import dataclass, replace

from tommybar.design.model import Part
from tommybar.findings import Finding
from tommybar.making.cards import Card, Hold, Step
from tommybar.making.lengths import Mm
from tommybar.making.mill_steps import MillBench
from tommybar.making.milling.clocking import from_circle, turned_to
from tommybar.making.milling.cross_drilling import drill_across, short_by
from tommybar.making.milling.cross_stand import (
    beside_lines,
    body_at,
    dia_at,
    grip_lines,
    place_of,
    zero_lines,
)
from tommybar.making.milling.divided import Divided, in_device, place_in_device, turned_words
from tommybar.making.milling.room import room_lines
from tommybar.making.milling.round_holding import held_for_cross
from tommybar.making.milling.safety import START
from tommybar.making.milling.touching import finder_of
from tommybar.making.milling.travel import within_travel
from tommybar.making.visiting import Spot, hole_places
from tommybar.shapes.features import CrossHole, TurnedShape
from tommybar.shop.model import Mill, Shop

CATCHES = "A broken-through bore catches the drill: feed gently at the end."
SLIDES = "The drill slides off the round: spot first, or mill a small flat."
BURR_INSIDE = "A burr inside the bore: run the reamer or a scraper through by hand afterwards."
WHY_LAST = "Drilled after turning, so that the bore it meets is finished and can be deburred."


@dataclass(frozen=True)
class Side:
    """Holes drilled with one angle up; ``second``: from the far side, to meet those of the first."""

    angle: float
    holes: tuple[CrossHole, ...]
    second: bool = False


def cross_cards(
    part: Part, shape: TurnedShape, shop: Shop, mill: Mill, before: int, gives_to: dict[str, tuple[str, ...]]
) -> tuple[list[Card], list[Finding]]:
    """One card in the dividing device when there are several angles; else a card for each that has to be up."""
    cards: list[Card] = []
    findings: list[Finding] = []
    first = min(shape.cross_holes, key=lambda h: (h.angle, h.z), default=None)
    sides = _sides(shape, shop)
    if first is not None and len(sides) > 1 and len({dia_at(shape, h) for h in shape.cross_holes}) == 1:
        held = in_device(shape, shape.cross_holes, dia_at(shape, first), shop)
        if held is not None:
            card, found = _divided_card(part, shape, sides, first, held, shop, mill, before + 1, gives_to)
            return [card], found
    for side in sides:
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
        if hole.walls == 2 and (hole.thread or short_by(shape, hole, shop)[0] > 0):
            back.setdefault((hole.angle + 180.0) % 360.0, []).append(hole)
    found = [Side(angle, tuple(sides[angle])) for angle in sorted(sides)]
    found += [Side(angle, tuple(back[angle]), second=True) for angle in sorted(back)]
    return found


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
    if not side.second or not all(h.thread and short_by(shape, h, shop)[0] <= 0 for h in side.holes):
        bench.spot(len(side.holes), one.name)
    beside = beside_lines(bench, shape, body, list(side.holes))
    for hole in side.holes:
        drill_across(bench, shape, hole, lies, side.second)
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
            CATCHES,
            *room_lines(bench, lies.base, lies.tall or dia),
            *START,
        ),
        bench.drawer(),
        hole_places(mill, spots),
        (),
        bench.minutes(),
        goes_wrong=(
            SLIDES,
            BURR_INSIDE,
        ),
        why=WHY_LAST,
    )
    return card, bench.findings


def _divided_card(
    part: Part,
    shape: TurnedShape,
    sides: list[Side],
    first: CrossHole,
    held: Divided,
    shop: Shop,
    mill: Mill,
    number: int,
    gives_to: dict[str, tuple[str, ...]],
) -> tuple[Card, list[Finding]]:
    """All holes round a part in one setting: every tool goes round all its angles before the next."""
    bench = MillBench(part, shop, mill, number, gives_to, face="the top of the round")
    lies = held.hold
    dia = dia_at(shape, first)
    turns = [(hole, (side.angle - first.angle) % 360.0, side.second) for side in sides for hole in side.holes]
    spotted = [
        hole for hole, _, second in turns if not (second and hole.thread and _reaches(shape, hole, shop))
    ]
    bench.spot(len(spotted), first.name)
    holes = [hole for hole, _, _ in turns]
    beside = beside_lines(bench, shape, body_at(shape, first.z), list(dict.fromkeys(holes)))
    for alike in _alike(turns):
        hole, _, second = alike[0]
        names = ", ".join(dict.fromkeys(one.name for one, _, _ in alike))
        at = ", ".join(f"{turn:g}" for _, turn, _ in alike)
        before = len(bench.steps)
        drill_across(bench, shape, replace(hole, name=names), lies, second, len(alike), hole.name)
        for n in range(before, len(bench.steps)):
            bench.steps[n] = _at_angles(bench.steps[n], at)
    bench.plunges = [p for p in bench.plunges if p.size > 0]
    spots = [
        Spot(
            *place_in_device(hole, held, shape.length.value, second),
            f"device at {turn:g} deg: {hole.name}{', far wall' if second else ''}, "
            f"{hole.thread or f'dia {Mm(hole.dia.value):g}'}",
        )
        for hole, turn, second in turns
    ]
    within_travel(bench, spots)
    finder = finder_of(shop)
    card = Card(
        part.name,
        number,
        number,
        "mill",
        "across: " + ", ".join(dict.fromkeys(hole.name for hole in holes)),
        held.free,
        Hold(lies.device, "", held.surface, held.dia, 0.0, 0.0, lies.runout, lies.words, held.stop),
        tuple(bench.steps),
        (
            *zero_lines(lies, dia, finder, held.free),
            turned_words(first, dia),
            *from_circle(shape.circle_holes, first),
            *beside,
            CATCHES,
            *room_lines(bench, lies.base, dia),
            *START,
        ),
        bench.drawer(),
        hole_places(mill, spots),
        (),
        bench.minutes(),
        goes_wrong=(
            SLIDES,
            "The device turned back a little: always come to the angle from the same side, and lock it.",
            BURR_INSIDE,
        ),
        why=WHY_LAST,
    )
    return card, bench.findings


_Turn = tuple[CrossHole, float, bool]


def _alike(turns: list[_Turn]) -> list[list[_Turn]]:
    """Holes that the same steps make: alike in all but their angle; one with limits is measured by itself."""
    groups: dict[object, list[_Turn]] = {}
    for one in turns:
        hole, _, second = one
        own = hole.name if hole.dia.toleranced else ""
        dia = round(hole.dia.value, 6)
        like = (
            second,
            own,
            dia,
            hole.z,
            hole.walls,
            hole.thread,
            hole.into,
            hole.offset,
            hole.depth,
            hole.sink_dia,
        )
        groups.setdefault(like, []).append(one)
    return list(groups.values())


def _at_angles(step: Step, at: str) -> Step:
    first, *more = step.dial
    return replace(step, dial=(f"Device at {at} deg: {first[:1].lower()}{first[1:]}", *more))


def _reaches(shape: TurnedShape, hole: CrossHole, shop: Shop) -> bool:
    return short_by(shape, hole, shop)[0] <= 0
