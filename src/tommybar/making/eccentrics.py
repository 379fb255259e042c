"""Eccentric lands: after all else the part is set over in the four-jaw and the land turned about its own axis."""

from __future__ import annotations

import math

from tommybar.design.model import Part
from tommybar.findings import Finding
from tommybar.making.bench import Bench, cutting_minutes, named
from tommybar.making.cards import Card, Hold, Measure, Move, Step
from tommybar.making.contours import in_front
from tommybar.making.cuts import feed_for, finishing_passes, roughing_passes
from tommybar.making.grips import Option, device_words, grip_needed, gripping, slenderness, standing_out
from tommybar.making.jobs import largest, span_in_card
from tommybar.making.lengths import Mm
from tommybar.making.practice import rule
from tommybar.making.rigidity import allowed_cut
from tommybar.making.warnings import before_starting
from tommybar.making.workpiece import Workpiece
from tommybar.shapes.features import Cylinder, Eccentric, Face, TurnedShape
from tommybar.shop.model import Jaws, Shop

FASTEST = 400.0  # of work set over; 300 to 400 is common practice, no source [rev/min]
CLOCKED = 0.02  # TIR to which a patient hand sets the throw; common practice, no source [mm]


def packing(throw: float, radius: float) -> float:
    """Packing under one jaw of a three-jaw chuck that sets round work over by a throw.

        p = 1.5 e + R - sqrt(R^2 - 0.75 e^2)

    Parameters
    ----------
    throw : float
        Eccentricity e, 0 to 1.15 R [mm]
    radius : float
        Radius R of the work, above 0 [mm]

    Returns
    -------
    float
        Thickness of the packing [mm]

    Notes
    -----
    Jaws that touch at a point each, 120 deg apart; wide jaws touch beside it,
    so that the packing is corrected by half of what the indicator still wants.

    Examples
    --------
    A throw of 2 mm on 20 mm round:

    >>> round(packing(2.0, 10.0), 3)
    3.151

    References
    ----------
    source: geometry (cosine rule at 120 deg).
    """
    return 1.5 * throw + radius - math.sqrt(radius**2 - 0.75 * throw**2)


def eccentric_cards(
    part: Part,
    drawn: TurnedShape,
    shape: TurnedShape,
    shop: Shop,
    before: int,
    gives_to: dict[str, tuple[str, ...]],
) -> tuple[list[Card], list[Finding]]:
    """One card for each eccentric land."""
    cards: list[Card] = []
    findings: list[Finding] = []
    for land in drawn.outside:
        if isinstance(land, Eccentric):
            card, found = _card(part, drawn, shape, land, shop, before + len(cards) + 1, gives_to)
            findings += found
            if card is not None:
                cards.append(card)
    return cards, findings


def _held(shape: TurnedShape, land: Eccentric, shop: Shop) -> tuple[Option, Cylinder] | None:
    """The four-jaw on the thickest cylinder behind the land, with the end free that the land is nearest to."""
    length = shape.length.value
    found: list[tuple[tuple[float, str, str], Option, Cylinder]] = []
    faces: tuple[Face, ...] = ("A", "B")
    for free in faces:
        near, far = span_in_card(land.start, land.end, length, free)
        for other in shape.outside:
            if not isinstance(other, Cylinder) or other.name == land.name or other.thread or other.knurl:
                continue
            top, low = span_in_card(other.start, other.end, length, free)
            for jaws in shop.jaws:
                jaws_front = _front(jaws, other, top, low, far, length)
                if jaws_front is None:
                    continue
                front, grip = jaws_front
                option = Option(
                    jaws,
                    device_words(jaws, other.dia.target),
                    other.name,
                    other.dia.target,
                    grip,
                    free,
                    front,
                    "",
                    CLOCKED,
                    0.0,
                    protects="thin copper or aluminium strips under the jaws",
                )
                found.append(((-near, other.name, free), option, other))
    if not found:
        return None
    _, option, other = min(found, key=lambda one: one[0])
    return option, other


def _front(
    jaws: Jaws, held: Cylinder, top: float, low: float, far: float, length: float
) -> tuple[float, float] | None:
    """(jaw front, grip) on a cylinder behind the eccentric land, or None where the four-jaw does not hold it."""
    depth = gripping(jaws, held.dia.target)
    if jaws.device != "four-jaw" or jaws.grips != "outside" or depth <= 0 or top > far + 1e-6:
        return None
    beyond = low + length  # what stands behind it, inside the jaws [mm]
    grip = min(depth - beyond, top - low)
    front = min(low + grip, far - rule("grip", "clear"))
    grip = front - low
    if grip + 1e-6 < grip_needed(held.dia.target, -front, False):
        return None
    return front, grip


def _card(
    part: Part,
    drawn: TurnedShape,
    shape: TurnedShape,
    land: Eccentric,
    shop: Shop,
    number: int,
    gives_to: dict[str, tuple[str, ...]],
) -> tuple[Card | None, list[Finding]]:
    held = _held(drawn, land, shop)
    if held is None:
        return None, [_unheld(part, land, shop)]
    option, by = held
    own = land.dia.target
    swings = own + 4 * land.throw  # what the round that is left sweeps about the land's own axis
    work = Workpiece(
        tuple(
            (*span_in_card(f.start, f.end, drawn.length.value, option.free), largest(f) + 2 * land.throw)
            for f in (shape.outside if option.free == "A" else tuple(reversed(shape.outside)))
        )
    )
    bench = Bench(part, shape, drawn, option, shop, work, number, gives_to)
    ahead = in_front(drawn, land, option.free)
    if ahead + land.throw > own / 2 + 1e-6:
        return None, [_hidden(part, land, ahead)]
    tool = bench.tool("knife", lambda t: t.hand in ("right", "both"), lambda t: t.nose, land.name)
    if tool is None:
        return None, bench.findings
    near, far = span_in_card(land.start, land.end, drawn.length.value, option.free)
    slow = tuple(n for n in shop.lathe.speeds if n <= FASTEST) or shop.lathe.speeds[:1]
    speed = bench.speed(tool, "turning", swings, land.name)
    rpm = min(speed.rpm, max(slow))
    reached = math.pi * swings * rpm / 1000
    deepest = allowed_cut(bench, tool, work, near, swings, speed)
    feed = feed_for(part.material, tool.material, "turning", "finishing")
    left = rule("cut", "finish_left")
    passes = roughing_passes(swings, own + left, deepest.depth, bench.cross)
    passes = (*passes, *finishing_passes(passes[-1].to, own, bench.cross, two=land.dia.toleranced))
    path = [Move(0.0, 0.0), Move(near - far, 0.0)] * len(passes)
    bench.add(_set_over(bench, land, by))
    measures: tuple[Measure, ...] = ()
    if land.dia.toleranced:
        measures = (bench.measured(f"{part.name}.{land.name}", land.dia, "outside"),)
    bench.add(
        Step(
            0,
            f"Turn the eccentric {land.name}, {len(passes)} cuts",
            land.name,
            named(tool),
            "knife",
            rpm,
            reached,
            feed,
            f"{own:.3f}" if land.dia.toleranced else f"{own:.2f}",
            "DIA mm",
            (
                f"Touch with the high side towards the tool: {Mm(swings):.2f} DIA there; the cut is interrupted until the land "
                f"is nearly round ({bench.cross_words}).",
                f"From Z {Mm(-near):.2f} to {Mm(-far):.2f}.",
            ),
            passes,
            cutting_minutes(path, rpm, feed, len(passes)) + rule("minutes", "measure"),
            why="Last in the lathe: once it is turned, the land it was set over by is all that still runs true.",
            cautions=(
                f"Unbalanced: {FASTEST:g} rev/min at most, a weight opposite, first start from out of its plane; turn it once "
                "by hand. No jaw may stand out of the body by more than a third of its length.",
                *((deepest.bound,) if deepest.bound else ()),
            ),
            measure=measures,
            tool_letter=tool.letter,
        )
    )
    slim = standing_out(drawn, option.free, option.jaw_front)
    card = Card(
        part.name,
        number,
        number,
        "lathe",
        f"set over {land.throw:g}, face {option.free} outwards: {land.name}",
        option.free,
        Hold(
            option.device,
            option.jaws.name if option.jaws else "",
            option.surface,
            round(option.dia, 3),
            math.floor(option.grip * 100) / 100,
            round(-option.jaw_front, 2),
            option.runout,
            f"{by.name} is set over in the four-jaw, so that the axis of {land.name} becomes that of the spindle.",
            "seated square: its face must run true however far it is set over",
        ),
        tuple(bench.steps),
        before_starting(option, shop, -option.jaw_front, slenderness(slim), bench.steps),
        tuple(dict.fromkeys(step.tool for step in bench.steps)),
        minutes=round(bench.minutes + rule("minutes", "set_up"), 1),
        goes_wrong=(
            "Throw and run-out mixed up: the indicator shows twice the throw.",
            "The part leans while it is set over: clock its side as well as its round.",
        ),
        why="Everything about the main axis is finished first.",
    )
    return card, bench.findings


def _set_over(bench: Bench, land: Eccentric, by: Cylinder) -> Step:
    radius = by.dia.target / 2
    three = (
        (
            f"Or in the three-jaw, for a throw that may be off by a tenth: {Mm(packing(land.throw, radius)):.2f} of packing "
            "under one jaw.",
        )
        if land.throw < 1.1 * radius
        else ()
    )
    return Step(
        0,
        f"Set {by.name} over until the indicator shows {Mm(2 * land.throw):.2f}",
        land.name,
        "lever or dial indicator",
        "hand",
        0.0,
        0.0,
        0.0,
        f"{2 * land.throw:.2f}",
        "TIR mm",
        (
            f"Twice the throw of {Mm(land.throw):.2f}. True it first, then move one pair of jaws; the other pair reads the same "
            "on both sides.",
            f"The high side looks to {land.angle:g} deg as seen from face A: mark it before.",
            *three,
        ),
        minutes=8.0,
        why="The indicator swings by twice the throw, so that it sees an error doubled.",
        cautions=("Spindle by hand only, out of gear.",),
    )


def _unheld(part: Part, land: Eccentric, shop: Shop) -> Finding:
    have = [jaws for jaws in shop.jaws if jaws.device == "four-jaw"]
    return Finding(
        426,
        "stop",
        f"{land.name} is eccentric by {land.throw:g} mm; no cylinder behind it can be held in a four-jaw chuck.",
        part=part.name,
        feature=land.name,
        figure=f"{land.throw:g} mm throw",
        bound=f"{have[0].name}: "
        + ", ".join(f"{low:g}-{high:g} mm, {deep:g} deep" for low, high, deep in have[0].ranges)
        if have
        else "no four-jaw chuck in the shop",
        remedy="Leave a longer cylinder beside it, add a four-jaw chuck, or press a pin into an eccentric hole.",
    )


def _hidden(part: Part, land: Eccentric, ahead: float) -> Finding:
    return Finding(
        426,
        "stop",
        f"{land.name}: what stands in front of it sweeps {2 * (ahead + land.throw):.2f} mm about its axis, more than the land.",
        part=part.name,
        feature=land.name,
        figure=f"{2 * (ahead + land.throw):.2f} mm",
        bound=f"{land.dia.target:g} mm, the land",
        remedy="Draw it at the end of the part, or make it a pin that is pressed in.",
        source="geometry",
    )
