"""What cards must say of parts that are made alike, or whose holes are spotted through from one to the other."""

from __future__ import annotations

from dataclasses import replace

from tommybar.design.joints import AlikeRelation, PatternRelation
from tommybar.design.model import Part, SizedDesign
from tommybar.making.cards import Card
from tommybar.making.lengths import Mm


def told_together(cards: tuple[Card, ...], part: Part, design: SizedDesign) -> tuple[Card, ...]:
    """The cards of a part with a line before starting for each such relation that bears on them."""
    if not cards:
        return cards
    made = list(cards)
    for pair in design.alike:
        for at, line in _alike(made, part, pair):
            made[at] = _before(made[at], line)
    for pattern in design.patterns:
        if pattern.spot_through:
            for at, line in _spotted(made, part, pattern):
                made[at] = _before(made[at], line)
    return tuple(made)


def _before(card: Card, line: str) -> Card:
    return replace(card, before_starting=(line, *card.before_starting))


def _named(names: tuple[str, ...]) -> str:
    words = [one.replace("_", " ") for one in names]
    return words[0] if len(words) == 1 else f"{', '.join(words[:-1])} and {words[-1]}"


def _alike(cards: list[Card], part: Part, pair: AlikeRelation) -> list[tuple[int, str]]:
    """On each card that cuts what must be alike: both in one setting, by the same dials."""
    mine = [one.partition(".")[2] for one in pair.members if one.partition(".")[0] == part.name]
    others = tuple(
        dict.fromkeys(p for p in (one.partition(".")[0] for one in pair.members) if p != part.name)
    )
    if not mine or not others:
        return []
    found = []
    for at, card in enumerate(cards):
        cut = {step.feature for step in card.steps}
        if "" not in mine and not cut & set(mine):
            continue
        how = {
            "mill": "clamp them together, the same face up, and cut both in one setting",
            "lathe": "turn both to the same readings of the dials, one after the other, before a tool is moved",
            "bench": "do the same to both, one after the other, and lay them together",
        }[card.machine]
        found.append((at, f"Alike with the {_named(others)} within {Mm(pair.within):g}: {how}."))
    return found


def _spotted(cards: list[Card], part: Part, pattern: PatternRelation) -> list[tuple[int, str]]:
    """On the card of the holes that are spotted, and on that of the holes which guide the drill."""
    found = []
    for mine, other, line in (
        (
            pattern.second,
            pattern.first,
            "Spot {own} through {other} of the {part}, both clamped in place: their places here only check it.",
        ),
        (
            pattern.first,
            pattern.second,
            "{own} guide the drill that spots {other} of the {part}: drill these first, and tap them after that.",
        ),
    ):
        own = tuple(one.partition(".")[2] for one in mine if one.partition(".")[0] == part.name)
        mates = tuple(one.partition(".")[2] for one in other)
        names = tuple(dict.fromkeys(one.partition(".")[0] for one in other))
        if not own or part.name in names:
            continue
        for at, card in enumerate(cards):
            if {step.feature for step in card.steps} & set(own):
                words = line.format(own=_named(own), other=_named(mates), part=_named(names))
                found.append((at, words[0].upper() + words[1:]))
                break
    return found
