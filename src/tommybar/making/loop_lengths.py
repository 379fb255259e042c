"""Lengths that a float depends on: where they are measured, and what the last one may be."""

from __future__ import annotations

from dataclasses import dataclass, replace

from tommybar.design.model import LoopRelation, Part, SizedDesign
from tommybar.making.cards import Card, Measure, Step
from tommybar.making.instruments import instrument_name
from tommybar.shapes.features import Dim, PlateShape, TurnedShape
from tommybar.shop.model import Shop


@dataclass(frozen=True)
class LoopLength:
    """One member of a float loop that lies on this part."""

    name: str  # as tommybar record calls it: shaft.seat.long, base.width
    dim: Dim  # with limits for the member that is made last
    gives_to: tuple[str, ...]  # the member made last, when it is another


def loop_lengths(design: SizedDesign, part: str) -> tuple[LoopLength, ...]:
    """Members of float loops on that part; the one made last with the limits that the float leaves it."""
    found = []
    for loop in design.loops:
        last = _last_member(loop)
        for term in loop.terms:
            if term.name.split(".")[0] != part:
                continue
            if term.name == last:
                found.append(LoopLength(term.name, _limits(loop, term.name), ()))
            else:
                found.append(LoopLength(term.name, Dim(term.value, term.name), (last,) if last else ()))
    return tuple(found)


def _last_member(loop: LoopRelation) -> str:
    of_part = [term.name for term in loop.terms if term.name.split(".")[0] == loop.made_last.split(".")[0]]
    return of_part[0] if len(of_part) == 1 else ""


def _limits(loop: LoopRelation, name: str) -> Dim:
    """The loop solved for one member, the others at their figures.

    With factor f and the rest r the float is r + f x; it must lie between its bounds.
    """
    mine = next(term for term in loop.terms if term.name == name)
    rest = sum(term.factor * term.value for term in loop.terms if term.name != name)
    ends = sorted(((loop.least - rest) / mine.factor, (loop.most - rest) / mine.factor))
    because = f"for a float of {loop.least:g} to {loop.most:g}"
    return Dim(mine.value, name, "", round(ends[0], 4), round(ends[1], 4), because)


def with_measures(
    cards: tuple[Card, ...], part: Part, lengths: tuple[LoopLength, ...], shop: Shop
) -> tuple[Card, ...]:
    """The cards with a hold point where each of these lengths is cut for the last time."""
    for length in lengths:
        place = _where(cards, part, length.name)
        if place is None:
            continue
        measure = Measure(
            length.name, length.dim, instrument_name(shop, length.dim, "length"), length.gives_to
        )
        cards = tuple(
            replace(
                card, steps=tuple(_held(step, measure) if step.key == place else step for step in card.steps)
            )
            for card in cards
        )
    return cards


def _held(step: Step, measure: Measure) -> Step:
    return replace(step, measure=(*step.measure, measure))


def _where(cards: tuple[Card, ...], part: Part, name: str) -> str | None:
    feature = name.split(".")[1]
    shape = part.shape
    if isinstance(shape, PlateShape):
        cut = [step.key for card in cards for step in card.steps if step.feature == feature]
        return cut[-1] if cut else next((step.key for card in cards for step in card.steps), None)
    if not isinstance(shape, TurnedShape):
        return None
    order = [one.name for one in shape.outside]
    if feature not in order:
        return None
    n = order.index(feature)
    ends = {feature, *order[max(n - 1, 0) : n + 2]}
    ends |= {"face A"} if n == 0 else set()
    ends |= {"face B"} if n == len(order) - 1 else set()
    cut = [
        step.key
        for card in cards
        if card.machine == "lathe"
        for step in card.steps
        if step.feature in ends and step.tool_kind == "knife" and not step.do.startswith("Rough")
    ]
    return cut[-1] if cut else None
