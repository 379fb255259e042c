"""What a card says on paper, line by line, so that two of them can be compared."""

from __future__ import annotations

import hashlib

from tommybar.making.cards import Card, HolePlace, Measure, Step
from tommybar.planning import Plan


def card_key(card: Card) -> str:
    """The name of a card: part/number."""
    return f"{card.part}/{card.number}"


def card_lines(card: Card) -> tuple[str, ...]:
    """The printed content of a card: how it is held, each step, each place, each hold point."""
    hold = card.hold
    head = [
        f"card {card.number} of {card.of}, {card.machine}: {card.title}",
        f"held in {hold.device} on {hold.surface} {hold.dia:.3f}, {hold.length:.2f} gripped,"
        f" {hold.sticks_out:.2f} out {hold.stop}".rstrip(),
        *(f"before: {line}" for line in card.before_starting),
    ]
    steps = [line for step in card.steps for line in _step(step)]
    places = [_place(one) for one in card.places] + [f"check: {line}" for line in card.chord_checks]
    return (*head, *steps, *places, f"after: {card.after}")


def _step(step: Step) -> list[str]:
    speed = f"{step.speed:g} rev/min" if step.speed else "by hand"
    lines = [
        f"{step.number}. {step.do}: {step.big} {step.big_kind}; {step.tool}; {speed}; feed {step.feed:.3f}"
    ]
    lines += [f"{step.number}. dial: {line}" for line in step.dial]
    lines += [f"{step.number}. cut to {one.to:.3f}: {one.dial}" for one in step.passes]
    return lines + [f"{step.number}. measure {_measure(one)}" for one in step.measure]


def _measure(one: Measure) -> str:
    limits = ""
    if one.dim.smallest is not None and one.dim.largest is not None:
        limits = f", {one.dim.smallest:.4f} to {one.dim.largest:.4f}"
    return f"{one.size} {one.dim.target:.4f}{limits}, {one.instrument}".rstrip(", ")


def _place(one: HolePlace) -> str:
    return f"place {one.n}: {one.x:.3f}, {one.y:.3f} {one.dial_x} {one.dial_y} {one.what} {one.overshoot}".strip()


def card_mark(card: Card) -> str:
    """Short name of what a card says; two cards with the same mark say the same.

    ``of`` may grow by a card later in the route without making this one stale,
    so the head line is left out of it.
    """
    return hashlib.sha256("\n".join(card_lines(card)[1:]).encode()).hexdigest()[:12]


def card_marks(plan: Plan) -> dict[str, str]:
    """The mark of every card of a plan, by its key."""
    return {card_key(card): card_mark(card) for part in plan.parts for card in part.cards}
