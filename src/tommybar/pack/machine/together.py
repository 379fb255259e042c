"""Putting it together, as the last card at the machine: the order of assembly, a step for each thing that goes on."""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Any

from tommybar.assembly.links import Piece
from tommybar.assembly.order import Order, Step, order_of
from tommybar.checks import check_together
from tommybar.findings import Finding, in_order
from tommybar.making.lengths import spoken
from tommybar.pack.units import Reader
from tommybar.planning import Plan
from tommybar.refusals import OwnFault, Refusal

NAME = "assembly"
FOR_GOOD = "It does not come off again: look that all before it is as it should be."
DRY = (
    "Wipe every face, edges broken, no chips in threads or bores.",
    "Try each joint dry by hand first; what is pressed, bonded or soldered does not come apart again.",
)
WORDS = {"stop": "STOP", "caution": "Caution", "note": "Note"}


def findings_together(plan: Plan, reader: Reader) -> tuple[Finding, ...]:
    """What the placed and moving pieces of a plan show, the gravest first."""
    return in_order([spoken(one, reader.unit) for one in check_together(plan.design)])


def stops_together(plan: Plan, reader: Reader) -> tuple[Finding, ...]:
    """The stops among them that the plan does not tell already."""
    known = {(one.number, one.words) for one in plan.findings}
    return tuple(
        one
        for one in findings_together(plan, reader)
        if one.severity == "stop" and (one.number, one.words) not in known
    )


def assembly_part(plan: Plan, reader: Reader) -> dict[str, Any] | None:
    """The assembly in the form of a part of one card; None for what is one piece, or has no order."""
    if sum(part.count for part in plan.design.parts) < 2:
        return None
    try:
        order = order_of(plan.design)
    except (OwnFault, Refusal):
        return None  # the checks tell that it could not be looked at
    if not order.steps:
        return None
    names = {part.name for part in plan.design.parts}
    name = NAME if NAME not in names else f"{NAME}-of-all"
    found = findings_together(plan, reader)
    return {"name": name, "count": 1, "material": "", "changed": "", "cards": [_card(name, order, found)]}


def _card(name: str, order: Order, found: Sequence[Finding]) -> dict[str, Any]:
    first: dict[str, int] = {}  # the step in which a part is seen for the first time
    for step in order.steps:
        for part, _ in (*step.pieces, *step.onto):
            first.setdefault(part, step.number)
    of_step = {
        step.number: [one for one in found if first.get(one.part) == step.number] for step in order.steps
    }
    told = {id(one) for several in of_step.values() for one in several}
    before = [line for one in found if id(one) not in told for line in _lines(one)]
    if order.stuck:
        before.append(f"Not reached by any straight way: {_named(order.stuck)}. See the assembly sheet.")
    return {
        "key": f"{name}/1",
        "number": 1,
        "of": 1,
        "machine": "bench",
        "title": "Put it together",
        "hold": "",
        "stop": "",
        "out": "",
        "why": "",
        "before": [*DRY, *before],
        "drawer": [],
        "after": "turn it by hand through its whole movement before anything drives it",
        "wrong": [],
        "minutes": 0,
        "gap": "",
        "places": [],
        "chords": [],
        "sketch": "",
        "steps": [
            _step(f"{name}/1/{key}", step, of_step[step.number])
            for key, step in zip(_keys(order.steps), order.steps, strict=True)
        ],
    }


def _keys(steps: Sequence[Step]) -> list[str]:
    """Each step by the piece that it puts on, whatever its place in the order."""
    keys: list[str] = []
    for step in steps:
        part, instance = step.pieces[0]
        key = f"{part}-{instance}"
        again = sum(1 for one in keys if one == key or one.startswith(f"{key}."))
        keys.append(f"{key}.{again + 1}" if again else key)
    return keys


def _step(key: str, step: Step, found: Sequence[Finding]) -> dict[str, Any]:
    return {
        "key": key,
        "n": step.number,
        "do": step.words,
        "tool": "",
        "speed": "",
        "cutting": "",
        "feed": "",
        "big": "",
        "kind": "",
        "dial": [],
        "passes": [],
        "minutes": 0,
        "why": "",
        "cautions": [*([FOR_GOOD] if step.lasting else []), *(line for one in found for line in _lines(one))],
        "measure": [],
        "sketch": "",
    }


def _lines(one: Finding) -> list[str]:
    words = re.sub(r"_", " ", one.words)
    return [f"{WORDS[one.severity]}: {words} {one.remedy}".strip()]


def _named(pieces: Sequence[Piece]) -> str:
    return ", ".join(f"{part.replace('_', ' ')} {instance}" for part, instance in pieces)
