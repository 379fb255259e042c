"""Cards that are begun keep their order: a plan made later is laid over the route that is under way."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace

from tommybar.findings import Finding, in_order
from tommybar.made import Made
from tommybar.made.dims import dims_of
from tommybar.making.cards import Card, Measure
from tommybar.plan import PartPlan, Plan
from tommybar.shapes.features import Dim

KEPT = 713  # number of the finding that a begun route was kept
SOURCE = "the journal of the build"


def begun_cards(made: Made) -> frozenset[str]:
    """Cards (part/number) of which a step or the whole was ticked."""
    return frozenset("/".join(one.key.split("/")[:2]) for one in made.ticks if one.done)


def same_order(one: Card, other: Card) -> bool:
    """Whether two cards do the same things in the same grip in the same order, whatever their figures."""
    return _order(one) == _order(other)


def _order(card: Card) -> tuple[object, ...]:
    hold = card.hold
    steps = tuple((step.feature, step.tool_kind) for step in card.steps)
    return card.machine, card.free_end, hold.device.split()[0], hold.surface, steps


def keep_begun(new: Plan, begun_with: Mapping[str, Plan], made: Made) -> Plan:
    """The new plan, with the routes of begun parts in the order in which they were begun.

    ``begun_with`` is the plan that each part was begun with. Where the new
    route begins with the same cards it is taken with its new figures. Where
    it would turn a begun card round, the old route stays; its hold points get
    the new limits, and a finding says so.
    """
    begun = begun_cards(made)
    dims = dims_of(new.design)
    parts, findings = [], list(new.findings)
    for one in new.parts:
        old = begun_with.get(one.part.name)
        kept = _kept(one, old.part(one.part.name), begun, dims) if old else one
        if kept is not one:
            findings.append(_told(one.part.name, sorted(begun)))
        parts.append(kept)
    if all(mine is theirs for mine, theirs in zip(parts, new.parts, strict=True)):
        return new
    return replace(new, parts=tuple(parts), findings=in_order(findings))


def _kept(new: PartPlan, old: PartPlan, begun: frozenset[str], dims: Mapping[str, Dim]) -> PartPlan:
    last = max((card.number for card in old.cards if f"{card.part}/{card.number}" in begun), default=0)
    if len(new.cards) >= last and all(
        same_order(mine, theirs) for mine, theirs in zip(new.cards[:last], old.cards[:last], strict=True)
    ):
        return new
    return replace(
        new, blank=old.blank, cards=tuple(_with_limits(card, dims) for card in old.cards), run=old.run
    )


def _with_limits(card: Card, dims: Mapping[str, Dim]) -> Card:
    def now(measures: Iterable[Measure]) -> tuple[Measure, ...]:
        return tuple(replace(one, dim=dims.get(one.size, one.dim)) for one in measures)

    return replace(card, steps=tuple(replace(step, measure=now(step.measure)) for step in card.steps))


def _told(part: str, begun: list[str]) -> Finding:
    mine = ", ".join(key for key in begun if key.split("/")[0] == part)
    return Finding(
        KEPT,
        "caution",
        f"The route of {part} would now be another; its cards are begun and stay in their order.",
        part=part,
        figure=f"begun: {mine}",
        bound="begun cards keep their order",
        remedy="Work to the limits on the cards; where they cannot be reached so, make the part again.",
        source=SOURCE,
    )
