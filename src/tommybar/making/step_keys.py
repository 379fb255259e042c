"""What a step is called in a record of the making: by what it does, not by its place on the card.

A key is part/card/what.deed, like ``shaft/1/journal_a.rough``. A plan made
again may put a step in before it: the tick stays with the deed. Records of
earlier days name a step by its place on the card (``shaft/1/3``); they are
read as they always were.
"""

from __future__ import annotations

import re
from collections.abc import Container
from dataclasses import replace

from tommybar.making.cards import Card, Step

FINISH = ("finish", "two")  # "Finish cut on ..." and "Two equal last cuts on ..." are the same deed
SIZED = ("drill", "centre drill")  # tools that go into one hole one after another


def keyed(cards: tuple[Card, ...]) -> tuple[Card, ...]:
    """The cards with every step named by what it does; no two steps of a part share a name."""
    return tuple(replace(card, steps=_steps(card)) for card in cards)


def keys_of(card: Card, step: Step) -> tuple[str, str]:
    """The names under which a step may stand in a record: by its deed, and by its place as in earlier days."""
    return step.key, f"{card.part}/{card.number}/{step.number}"


def is_ticked(card: Card, step: Step, keys: Container[str]) -> bool:
    """Whether a record of these keys has the step."""
    return any(key in keys for key in keys_of(card, step))


def _steps(card: Card) -> tuple[Step, ...]:
    found: list[Step] = []
    used: dict[str, int] = {}
    for step in card.steps:
        name = _name(step)
        used[name] = used.get(name, 0) + 1
        again = f".{used[name]}" if used[name] > 1 else ""
        found.append(replace(step, key=f"{card.part}/{card.number}/{name}{again}"))
    return tuple(found)


def _name(step: Step) -> str:
    """What and deed, in letters, figures, dots and hyphens; never a bare number.

    >>> from tommybar.making.cards import Step
    >>> _name(Step(3, "Drill bore 9.8", "bore", "drill 9.8", "drill", 0, 0, 0, "", "", (), tool_size=9.8))
    'bore.drill-9.8'
    """
    deed = re.match(r"[A-Za-z]*", step.do.strip())
    verb = deed[0].lower() if deed and deed[0] else _plain(step.tool_kind)
    verb = FINISH[0] if verb in FINISH else verb
    size = f"-{step.tool_size:g}" if step.tool_kind in SIZED and step.tool_size else ""
    return f"{_plain(step.feature) or 'card'}.{verb or 'do'}{size}"


def _plain(words: str) -> str:
    return re.sub(r"[^A-Za-z0-9_.]+", "-", words).strip("-.")
