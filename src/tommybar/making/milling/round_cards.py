"""Cards for what is milled on a round: flats and prisms, slots across a face, slots and keyways along it."""

from __future__ import annotations

from dataclasses import dataclass

from tommybar.design.model import Part
from tommybar.findings import Finding
from tommybar.making.cards import Card, Hold
from tommybar.making.jobs import largest_outside
from tommybar.making.lengths import Mm
from tommybar.making.mill_steps import MillBench
from tommybar.making.milling.clocking import divides, sideways
from tommybar.making.milling.cross_stand import body_at
from tommybar.making.milling.divided import device_axis
from tommybar.making.milling.flats import flat
from tommybar.making.milling.prisms import prism
from tommybar.making.milling.room import room_lines
from tommybar.making.milling.round_holding import RoundHold, held_round
from tommybar.making.milling.rules import mill_rule
from tommybar.making.milling.safety import START
from tommybar.making.milling.slots import slot
from tommybar.making.milling.touching import axis_words, between_touches, finder_of, spindle_at_left_edge
from tommybar.making.visiting import hole_places
from tommybar.shapes.features import CrossSlot, Cylinder, Dim, Flats, HeadSlot, Keyway, TurnedShape
from tommybar.shop.model import Mill, Shop


@dataclass(frozen=True)
class _Place:
    """What every card of this file is written with."""

    part: Part
    shape: TurnedShape
    shop: Shop
    mill: Mill
    gives_to: dict[str, tuple[str, ...]]


def round_cards(
    part: Part, shape: TurnedShape, shop: Shop, mill: Mill, before: int, gives_to: dict[str, tuple[str, ...]]
) -> tuple[list[Card], list[Finding]]:
    """A card for each set of flats, each slot in a face, each keyway and each wall of a slot along the round."""
    place = _Place(part, shape, shop, mill, gives_to)
    made: list[tuple[Card, list[Finding]]] = []
    for flats in shape.flats:
        made.append(_flats_card(place, flats, before + len(made) + 1))
    for across in shape.head_slots:
        made.append(_head_card(place, across, before + len(made) + 1))
    for one in shape.cross_slots:
        for turned in range(one.walls):
            made.append(_along_card(place, one, before + len(made) + 1, second=turned == 1))
    for key in shape.keyways:
        made.append(_keyway_card(place, key, before + len(made) + 1))
    return [card for card, _ in made], [finding for _, found in made for finding in found]


def _bench(place: _Place, number: int, face: str) -> MillBench:
    return MillBench(place.part, place.shop, place.mill, number, place.gives_to, face=face)


def _dia(shape: TurnedShape, z: float) -> tuple[str, float]:
    body = body_at(shape, z)
    return (body.name, body.dia.value) if body is not None else ("outside", largest_outside(shape))


def _gripped(shape: TurnedShape, start: float, end: float) -> tuple[str, float]:
    """The cylinder with the longest stretch outside a span, to hold the part by; else the one that is cut."""

    def beside(land: Cylinder) -> float:
        return max(min(land.end, start) - land.start, land.end - max(land.start, end))

    held = [one for one in shape.outside if isinstance(one, Cylinder) and beside(one) > 1e-6]
    if not held:
        return _dia(shape, (start + end) / 2)
    longest = max(held, key=lambda one: (beside(one), one.name))
    return longest.name, longest.dia.value


def _card(
    place: _Place,
    bench: MillBench,
    title: str,
    held: tuple[str, float],
    lies: RoundHold,
    before_starting: tuple[str, ...],
    wrong: tuple[str, ...],
    why: str,
    stop: str = "face A to the left, against a stop",
) -> tuple[Card, list[Finding]]:
    if not lies.owned:
        bench.caution(
            431,
            f"{place.part.name} is {held[1]:g} mm where it is held; vice and vee block of the shop file do not take it.",
            title,
            "Lay it in a pair of vee blocks on the table and clamp it down, or borrow a larger vee block.",
            f"{held[1]:g} mm",
            f"vice {place.mill.vice_opening:g} mm wide, vee block to {place.mill.vee_to:g} mm",
        )
    card = Card(
        place.part.name,
        bench.number,
        bench.number,
        "mill",
        title,
        "",
        Hold(lies.device, "", held[0], held[1], 0.0, 0.0, lies.runout, lies.words, stop),
        tuple(bench.steps),
        (*before_starting, *START),
        bench.drawer(),
        hole_places(place.mill, bench.spots),
        minutes=bench.minutes(),
        goes_wrong=wrong,
        why=why,
    )
    return card, bench.findings


def _x_words(place: _Place) -> str:
    finder = finder_of(place.shop)
    return (
        f"X zero on face A, to the left: touched from outside with a {Mm(finder):g} finder, the spindle is at X "
        f"{Mm(spindle_at_left_edge(finder)):+.2f}."
    )


def _clocked(place: _Place, angle: float, dia: float, feature: str) -> tuple[str, ...]:
    """What an angle counts from, when the part has anything else to be clocked to."""
    shape = place.shape
    others = [
        *((one.name, one.start_angle) for one in shape.circle_holes),
        *((one.name, one.angle) for one in shape.cross_holes),
        *((one.name, one.angle) for one in shape.flats),
        *((one.name, one.angle) for one in shape.cross_slots),
        *((one.name, one.angle) for one in shape.keyways),
    ]
    named = next((one for one in others if one[0] != feature), None)
    if named is None:
        return ()
    off = sideways(dia, mill_rule("dividing_error"))
    return (
        f"{(angle - named[1]) % 360:g} deg from {named[0]}, counter-clockwise as seen from face A; "
        f"{mill_rule('dividing_error'):g} deg is {Mm(off):.2f} at the outside.",
    )


def _flats_card(place: _Place, flats: Flats, number: int) -> tuple[Card, list[Finding]]:
    bench = _bench(place, number, "the top of the round")
    length = place.shape.length.value
    _, dia = _dia(place.shape, (flats.start + flats.end) / 2)
    closed = (flats.start > 1e-6, flats.end < length - 1e-6)
    lines: tuple[str, ...] = ()
    if flats.count > 1:
        across = flats.across or Dim(2 * flats.level, f"{place.part.name}.{flats.name}")
        lines = prism(bench, flats.name, flats.count, across, dia, flats.start, flats.end, closed=closed)
    else:
        flat(bench, flats.name, dia, flats.level, flats.start, flats.end, closed=closed)
    held = _gripped(place.shape, flats.start, flats.end)
    lies = held_round(place.mill, held[1])
    if flats.count > 1 and divides(place.shop):
        high = max(0.0, device_axis(place.mill) - dia / 2)
        lies = RoundHold(
            "dividing device, axis level",
            "The flats are turned on by angles, so the part stays in the dividing device's chuck or collet.",
            high,
            False,
        )
    return _card(
        place,
        bench,
        f"flats: {flats.name}",
        held,
        lies,
        (
            _x_words(place),
            *axis_words(dia, finder_of(place.shop)),
            *_clocked(place, flats.angle, dia, flats.name),
            *lines,
            *room_lines(bench, lies.base, dia),
        ),
        (
            "The wrong diameter goes into the depth: measure the round first.",
            "The part turns in its grip under the cutter: tighten, light cuts.",
        ),
        "After turning, while there is a round to measure from.",
    )


def _head_card(place: _Place, one: HeadSlot, number: int) -> tuple[Card, list[Finding]]:
    bench = _bench(place, number, f"face {one.face}")
    length = place.shape.length.value
    name, dia = _dia(place.shape, 0.0 if one.face == "A" else length)
    slot(bench, one.name, dia, one.width, one.depth, start_open=True, end_open=True, middle=(0.0, 0.0))
    held = (
        _gripped(place.shape, 0.0, one.depth)
        if one.face == "A"
        else _gripped(place.shape, length - one.depth, length)
    )
    lies = RoundHold(
        "vice, upright in a vee against the fixed jaw",
        f"Upright, face {one.face} up; a vee block or vee pad keeps it square, card or brass keeps its finish.",
        place.mill.vice_height,
        False,
    )
    finder = finder_of(place.shop)
    travel, half = between_touches(dia, finder)
    return _card(
        place,
        bench,
        f"slot in face {one.face}: {one.name}",
        held,
        lies,
        (
            f"Zero on the axis, both ways: touch both sides of {name}, the spindle moves {Mm(travel):.2f} with a {Mm(finder):g} "
            f"finder; come back {Mm(half):.2f}, set 0.",
            *_clocked(place, one.angle, dia, one.name),
            *room_lines(bench, place.mill.vice_height, length),
        ),
        ("The slot beside the middle: cut 0.2 deep first and measure what stands on both sides.",),
        "The slot runs straight across the axis, so the axis is found first.",
        stop=f"face {one.face} up",
    )


def _wall(shape: TurnedShape, z: float, dia: float) -> float:
    length = shape.length.value
    bores = [
        b.dia.value
        for b in shape.bores
        if b.through or (b.face == "A" and z < b.depth) or (b.face == "B" and z > length - b.depth)
    ]
    return (dia - max(bores, default=0.0)) / 2


def _along_card(place: _Place, one: CrossSlot, number: int, *, second: bool) -> tuple[Card, list[Finding]]:
    bench = _bench(place, number, "the top of the round")
    middle = (one.start + one.end) / 2
    name, dia = _dia(place.shape, middle)
    wall = _wall(place.shape, middle, dia)
    slot(
        bench,
        one.name,
        one.end - one.start,
        one.width,
        wall,
        at=", far wall" if second else "",
        through=True,
        middle=(middle, 0.0),
    )
    lies = held_round(place.mill, dia)
    turned = (
        (
            f"Turned 180 deg from the first side: a pin through the finished slot stands upright by a square, or the "
            f"dividing device; {mill_rule('dividing_error'):g} deg is {Mm(sideways(dia, mill_rule('dividing_error'))):.2f} at "
            "the outside.",
        )
        if second
        else _clocked(place, one.angle, dia, one.name)
    )
    return _card(
        place,
        bench,
        f"slot along the round{', far wall' if second else ''}: {one.name}",
        (name, dia),
        lies,
        (
            _x_words(place),
            *axis_words(dia, finder_of(place.shop)),
            *turned,
            f"Depth counts from the top of the round: the wall is {Mm(wall):.2f} there.",
            *room_lines(bench, lies.base, dia),
        ),
        ("A thin wall is pinched by the jaws: hold beside the slot, lightly.",),
        "Each wall is cut from its own side, so that the short cutter reaches.",
    )


def _keyway_card(place: _Place, one: Keyway, number: int) -> tuple[Card, list[Finding]]:
    bench = _bench(place, number, "the top of the round")
    middle = (one.start + one.end) / 2
    name, dia = _dia(place.shape, middle)
    length = place.shape.length.value
    if one.form == "sunk":
        slot(
            bench,
            one.name,
            one.end - one.start,
            one.width,
            one.depth,
            start_open=one.start <= 1e-6,
            end_open=one.end >= length - 1e-6,
            middle=(middle, 0.0),
        )
    else:
        bench.stop(
            905,
            f"{one.name}: a {one.form} keyway is cut with a disc cutter of {one.cutter:g} mm, {one.width.value:g} mm wide; "
            "such cutters are not in the shop file.",
            one.name,
            "Draw it sunk, for an end mill, or cut it from the drawing with a cutter that you have tried.",
            figure=f"{one.cutter:g} mm",
            bound="disc cutters: not in the shop file",
        )
    lies = held_round(place.mill, dia)
    return _card(
        place,
        bench,
        f"keyway: {one.name}",
        (name, dia),
        lies,
        (
            _x_words(place),
            *axis_words(dia, finder_of(place.shop)),
            *_clocked(place, one.angle, dia, one.name),
            f"Depth {Mm(one.depth):.2f} counts from the top of the round; measured from the floor to the far side it is "
            f"{Mm(dia - one.depth):.2f}.",
            *room_lines(bench, lies.base, dia),
        ),
        ("Depth counted from the edge of the keyway: it is lower than the top of the round.",),
        "After turning, when the top of the round can be touched.",
    )
