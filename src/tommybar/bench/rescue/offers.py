"""A try planned in earnest: what it costs in minutes and metal, what it changes, what still stands against it."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from typing import Any

from tommybar.bench.as_built import drawn_sizes
from tommybar.bench.begun import keep_begun
from tommybar.bench.entries import Entry, new_entry
from tommybar.bench.inputs import Inputs, plan_with
from tommybar.bench.replan import Changes, changes_between
from tommybar.bench.rescue.situation import Situation, Try
from tommybar.made import Made
from tommybar.made.record import Measured
from tommybar.making.begun import begun_cards
from tommybar.making.cards import Card
from tommybar.making.step_keys import is_ticked
from tommybar.planning import Plan


@dataclass(frozen=True)
class Offer:
    """A way out, planned. Cheapest first: no new stops, then fewest minutes, then least metal."""

    words: str
    minutes: float  # of work more than the plan as it stood [min]
    metal: float  # that has to be started again [g]
    lost: tuple[str, ...]  # parts that have to be made again
    stops: tuple[str, ...]  # what would newly forbid starting
    changes: Changes
    change: dict[str, Any]  # what the ``change`` entry says that takes this offer; empty: none is needed
    readings: tuple[tuple[str, float], ...]  # sizes to be recorded with it

    @property
    def plan(self) -> Plan:
        """The plan when the offer is taken."""
        return self.changes.plan

    @property
    def price(self) -> tuple[int, float, float]:
        """What offers are ranked by."""
        return len(self.stops), self.minutes, self.metal


def tried(situation: Situation, one: Try) -> Offer:
    """Plan a try. Raises :class:`Refusal` when no design can be so."""
    inputs = _inputs(situation.inputs, one)
    plan = plan_with(inputs)
    lost = _lost(situation, plan, inputs, one)
    if lost:
        inputs = replace(inputs, made=_without(inputs.made, lost))
        plan = plan_with(inputs)
    begun = dict.fromkeys({key.split("/")[0] for key in begun_cards(inputs.made)}, situation.plan)
    plan = keep_begun(plan, begun, inputs.made)
    before = {finding.words for finding in situation.plan.stops}
    return Offer(
        one.words,
        round(minutes_left(plan) - minutes_left(situation.plan) + one.by_hand, 1),
        round(sum(_mass(plan, part) for part in {*lost, *one.new_blank}), 1),
        lost,
        (
            *dict.fromkeys(stop.words for stop in plan.stops if stop.words not in before),
            *_too_short(plan, one),
        ),
        changes_between(situation.plan, plan, situation.stand),
        _change(one, lost, plan.scale if one.smaller else None),
        one.readings,
    )


def _inputs(inputs: Inputs, one: Try) -> Inputs:
    made = _without(inputs.made, one.forget)
    frozen = tuple(Measured(size, value) for size, value in one.readings)
    return Inputs(
        one.design or inputs.design_text,
        one.shop or inputs.shop_text,
        replace(made, measured=(*made.measured, *frozen)),
        None if one.smaller else one.scale or inputs.scale,
        {**inputs.pins, **one.pins},
        one.stock or inputs.stock,
    )


def _without(made: Made, gone: Iterable[str]) -> Made:
    """The record without the ticks and sizes of some parts, or without some sizes."""
    names = set(gone)

    def stays(key: str) -> bool:
        return not {key, key.replace("/", ".").split(".")[0]} & names

    return replace(
        made,
        measured=tuple(one for one in made.measured if stays(one.size)),
        ticks=tuple(one for one in made.ticks if stays(one.key)),
        whereabouts=tuple(one for one in made.whereabouts if stays(one.part)),
    )


def _lost(situation: Situation, plan: Plan, inputs: Inputs, one: Try) -> tuple[str, ...]:
    """Parts that are begun and would now be of another shape, and those that the try gives up."""
    was = {part.name: part for part in drawn_sizes(situation.inputs.design, situation.plan).parts}
    now = {part.name: part for part in drawn_sizes(inputs.design, plan).parts}
    begun = situation.touched()
    other = {name for name, part in was.items() if part != now.get(name) and name not in one.keep}
    return tuple(sorted((begun & other) | (begun & set(one.forget))))


def _too_short(plan: Plan, one: Try) -> tuple[str, ...]:
    """That the blank in hand does not do for the route, when it does not."""
    if one.out_of is None:
        return ()
    part, there = one.out_of
    blank = plan.part(part).blank
    if blank is not None and blank.length <= there + 1e-9:
        return ()
    wants = f"wants a blank of {blank.length:g} mm" if blank else "has no route"
    return (f"{part} {wants}; {there:g} mm are there.",)


def _mass(plan: Plan, part: str) -> float:
    blank = next((one.blank for one in plan.parts if one.part.name == part), None)
    return blank.mass if blank else 0.0


def minutes_left(plan: Plan) -> float:
    """Minutes of work on cards and steps that are not ticked [min]."""
    done = {one.key for one in plan.made.ticks if one.done}
    return sum(_left(card, done) * part.part.count for part in plan.parts for card in part.cards)


def _left(card: Card, done: set[str]) -> float:
    if f"{card.part}/{card.number}" in done or all(is_ticked(card, step, done) for step in card.steps):
        return 0.0
    return max(card.minutes - sum(step.minutes for step in card.steps if is_ticked(card, step, done)), 0.0)


def _change(one: Try, lost: tuple[str, ...], scale: float | None) -> dict[str, Any]:
    said: dict[str, Any] = {
        "design": one.design,
        "shop": one.shop,
        "pins": dict(one.pins),
        "stock": one.stock or "",
        "scale": one.scale or scale,
        "forget": sorted({*one.forget, *lost}),
    }
    kept = {key: value for key, value in said.items() if value}
    return {"because": one.words, **kept} if kept else {}


def taking(offer: Offer, *, device: str, number: int, by: str = "", at: str = "") -> tuple[Entry, ...]:
    """The entries that take an offer: the change, then the sizes that go with it."""
    given: list[tuple[str, str, dict[str, Any]]] = []
    if offer.change:
        given.append(("change", "", offer.change))
    given += [("size", size, {"value": value}) for size, value in offer.readings]
    return tuple(
        new_entry(kind, key, device=device, number=number + index, by=by, at=at, **said)
        for index, (kind, key, said) in enumerate(given)
    )
