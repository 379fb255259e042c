"""Cards that are begun keep their order: which they are, and when two routes are the same so far."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace

from tommybar.findings import Finding
from tommybar.made import Made
from tommybar.making.cards import Card, Measure
from tommybar.making.step_keys import is_ticked
from tommybar.making.turned import Making
from tommybar.shapes.features import Dim

KEPT = 713  # number of the finding that a begun route was kept


def begun_cards(made: Made) -> frozenset[str]:
    """Cards (part/number) of which a step or the whole was ticked."""
    return frozenset("/".join(one.key.split("/")[:2]) for one in made.ticks if one.done)


def ticked_steps(card: Card, made: Made) -> int:
    """How many steps of a card lie up to the last one that is ticked; all of them when the card itself is."""
    done = {one.key for one in made.ticks if one.done}
    if f"{card.part}/{card.number}" in done:
        return len(card.steps)
    return max((index for index, step in enumerate(card.steps, 1) if is_ticked(card, step, done)), default=0)


def same_order(one: Card, other: Card, steps: int | None = None) -> bool:
    """Whether two cards do the same in the same grip and order, whatever their figures; the first ``steps`` of it."""
    return _order(one, steps) == _order(other, steps)


def _order(card: Card, steps: int | None) -> tuple[object, ...]:
    hold = card.hold
    done = tuple((step.feature, step.tool_kind) for step in card.steps[:steps])
    return card.machine, card.free_end, hold.device.split()[0], hold.surface, done


def same_so_far(new: tuple[Card, ...], old: tuple[Card, ...], made: Made) -> bool:
    """Whether a new route begins as the old one does, up to the last step of it that is ticked."""
    begun = begun_cards(made)
    last = max((card.number for card in old if f"{card.part}/{card.number}" in begun), default=0)
    return len(new) >= last and all(
        same_order(mine, theirs, ticked_steps(theirs, made))
        for mine, theirs in zip(new[:last], old[:last], strict=True)
    )


def with_limits(cards: tuple[Card, ...], dims: Mapping[str, Dim]) -> tuple[Card, ...]:
    """Cards with the limits at their hold points as they are now; order and cuts stay."""

    def now(measures: Iterable[Measure]) -> tuple[Measure, ...]:
        return tuple(replace(one, dim=dims.get(one.size, one.dim)) for one in measures)

    return tuple(
        replace(card, steps=tuple(replace(step, measure=now(step.measure)) for step in card.steps))
        for card in cards
    )


def kept_in_order(new: Making, old: Making, made: Made, dims: Mapping[str, Dim]) -> Making:
    """The new making of a begun part, or the old one where the new would turn round what is done.

    ``old`` is what the part was begun with; its hold points get the limits
    of now, and a caution says that the order was kept.
    """
    if not old.cards or same_so_far(new.cards, old.cards, made):
        return new
    part = old.cards[0].part
    return replace(
        old,
        cards=with_limits(old.cards, dims),
        findings=(*old.findings, told_kept(part, begun_cards(made))),
    )


def told_kept(part: str, begun: Iterable[str]) -> Finding:
    """The caution that a begun route stays in its order."""
    mine = ", ".join(sorted(key for key in begun if key.split("/")[0] == part))
    return Finding(
        KEPT,
        "caution",
        f"The route of {part} would now be another; its cards are begun and stay in their order.",
        part=part,
        figure=f"begun: {mine}",
        bound="begun cards keep their order",
        remedy="Work to the limits on the cards; where they cannot be reached so, make the part again.",
        source="the record of the making",
    )
