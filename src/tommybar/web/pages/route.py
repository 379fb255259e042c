"""Route: a part's cards in order, why each holding, what was turned down, and the section at every rung."""

from __future__ import annotations

from dataclasses import dataclass

from starlette.responses import Response

from tommybar.dryrun.runs import CardRun
from tommybar.making.cards import Card, Measure, Step
from tommybar.pack.machine.contents import big_number
from tommybar.pack.machine.sketch import grip_sketch
from tommybar.pack.units import Reader
from tommybar.planning import PartPlan
from tommybar.refusals import Refusal, nearest
from tommybar.shop.model import Shop
from tommybar.web.ask import Ask, answer
from tommybar.web.pages.opened import Head, Told, head_of, plan_of, told


@dataclass(frozen=True)
class Rung:
    """One step of a card."""

    number: int
    do: str
    tool: str
    speed: str
    big: str
    kind: str
    dial: tuple[str, ...]
    passes: tuple[str, ...]
    why: str
    cautions: tuple[str, ...]
    measure: tuple[str, ...]
    minutes: str
    sketch: str


@dataclass(frozen=True)
class CardShown:
    """One grip."""

    number: int
    of: int
    machine: str
    title: str
    hold: str
    out: str
    seat: str
    runout: str
    why: str
    rejected: tuple[tuple[str, str], ...]
    before: tuple[str, ...]
    drawer: tuple[str, ...]
    gap: str
    minutes: str
    after: str
    wrong: tuple[str, ...]
    sketch: str
    rungs: tuple[Rung, ...]
    places: tuple[tuple[str, ...], ...]
    chords: tuple[str, ...]
    forecast: tuple[str, ...]


@dataclass(frozen=True)
class RoutePage:
    """All cards of one part."""

    head: Head
    names: tuple[tuple[str, int], ...]  # parts in making order with their number of cards
    part: str
    changed: str
    cards: tuple[CardShown, ...]
    findings: tuple[Told, ...]
    unit: str


def route(ask: Ask) -> Response:
    """The page of the first part to be made, or of the one that the address names."""
    plan, reader = plan_of(ask), ask.reader
    made = [one for one in plan.parts if one.part.shape is not None]
    name = str(ask.path.get("part", made[0].part.name))
    one = next((one for one in made if one.part.name == name), None)
    if one is None:
        known = [one.part.name for one in made]
        raise Refusal(f'No part that is made is named "{name[:60]}".', nearest(name, known))
    page = RoutePage(
        head_of(ask, "route", plan),
        tuple((other.part.name, len(other.cards)) for other in made),
        name,
        one.changed,
        tuple(_card(card, one, plan.shop, reader) for card in one.cards),
        told(finding for finding in plan.findings if finding.part == name and 300 <= finding.number < 600),
        reader.unit,
    )
    return answer(ask, "route.html", page, "designs")


def _card(card: Card, part: PartPlan, shop: Shop, reader: Reader) -> CardShown:
    run = next((one for one in part.run.cards if one.card == card.number), None) if part.run else None
    hold = card.hold
    seen = run is not None and run.smallest_gap >= 0
    drawn = run is not None and bool(run.before)
    return CardShown(
        card.number,
        card.of,
        card.machine,
        card.title.replace("_", " "),
        f"{hold.device}, on {reader.length(hold.length, 1)} of the {hold.surface.replace('_', ' ')}"
        if hold.length
        else hold.device,
        reader.length(hold.sticks_out, 1) if hold.sticks_out > 0 else "",
        hold.stop,
        reader.length(hold.runout, 3) if hold.runout else "",
        hold.why or card.why,
        tuple((one.holding, one.reason) for one in hold.rejected),
        card.before_starting,
        card.drawer,
        f"{reader.length(run.smallest_gap, 1)} {reader.unit}, {run.gap_where}" if run and seen else "",
        f"{card.minutes:.0f} min",
        card.after,
        card.goes_wrong,
        grip_sketch(card, run, shop, reader) if run and drawn else "",
        tuple(_rung(card, step, run if drawn else None, shop, reader) for step in card.steps),
        tuple(
            (
                str(one.n),
                reader.length(one.x),
                reader.length(one.y),
                one.dial_x,
                one.dial_y,
                one.overshoot,
                one.what,
            )
            for one in card.places
        ),
        card.chord_checks,
        tuple(
            f"{one.of} to {one.to}: {reader.length(one.expected, 3)} expected, {reader.length(one.worst, 3)} at worst, "
            f"{reader.length(one.within, 3)} allowed ({one.how})"
            for one in card.runout
        ),
    )


def _rung(card: Card, step: Step, run: CardRun | None, shop: Shop, reader: Reader) -> Rung:
    big, kind = big_number(step.big, step.big_kind, reader)
    speed = f"{step.speed:g} rev/min" if step.speed else "by hand"
    if step.cutting_speed:
        speed += f", {step.cutting_speed:.0f} m/min"
    return Rung(
        step.number,
        step.do.replace("_", " "),
        step.tool,
        speed,
        big,
        kind,
        step.dial,
        tuple(f"{reader.length(one.to)}: {one.dial}" for one in step.passes),
        step.why,
        step.cautions,
        tuple(_measure(one, reader) for one in step.measure),
        f"{step.minutes:.1f} min" if step.minutes else "",
        grip_sketch(card, run, shop, reader, step) if run else "",
    )


def _measure(one: Measure, reader: Reader) -> str:
    words = one.size.replace("_", " ").replace(".", " ")
    if one.dim.smallest is not None and one.dim.largest is not None:
        words += f" {' to '.join(reader.limits(one.dim.smallest, one.dim.largest))}"
    else:
        words += f" {reader.length(one.dim.value)}"
    return words + (f", {one.instrument}" if one.instrument else "")
