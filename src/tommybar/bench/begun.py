"""Cards that are begun keep their order: a plan made later is laid over the route that is under way."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from tommybar.design.model import Part, SizedDesign
from tommybar.findings import Finding, in_order
from tommybar.made import Made
from tommybar.made.dims import dims_of, lengths_of
from tommybar.making.begun import begun_cards, same_so_far, told_kept, with_limits
from tommybar.planning import PartPlan, Plan
from tommybar.shapes.features import Dim

OTHER = 714  # number of the finding that a begun part is of another shape now
SHAPE = 0.25  # new limits move a figure by less than this; more is another shape [mm]
SOURCE = "the journal of the build"


def part_dims(part: Part) -> dict[str, Dim]:
    """The named figures of one part."""
    alone = SizedDesign(part.name, "", "mm", (), (part,))
    lengths = {name: Dim(value, name) for name, value in lengths_of(alone).items()}
    return lengths | dims_of(alone)


def same_shape(one: Part, other: Part) -> bool:
    """Whether two states of a part have the same figures, but for what new limits moved."""
    mine, theirs = part_dims(one), part_dims(other)
    return set(mine) == set(theirs) and all(
        abs(dim.value - theirs[name].value) < SHAPE for name, dim in mine.items()
    )


def keep_begun(new: Plan, begun_with: Mapping[str, Plan], made: Made) -> Plan:
    """The new plan, with the routes of begun parts in the order in which they were begun.

    ``begun_with`` is the plan that each part was begun with. Where the new
    route begins with the same cards, up to the last ticked step, it is taken.
    Where it would turn round what is done, the old route stays; its hold
    points get the new limits, and a finding says so. A part that is of another
    shape now gets its new cards all the same, since the old ones would make
    the wrong thing; that is told too.
    """
    begun = begun_cards(made)
    dims = dims_of(new.design)
    parts, findings = [], list(new.findings)
    for one in new.parts:
        old = begun_with.get(one.part.name)
        before = next((was for was in old.parts if was.part.name == one.part.name), None) if old else None
        kept = one if before is None else _kept(one, before, begun, made, dims)
        if before is not None and kept is not one and not same_shape(one.part, before.part):
            kept = one
            findings.append(_told_of_shape(one.part.name, sorted(begun)))
        elif kept is not one:
            findings.append(told_kept(one.part.name, begun))
        parts.append(kept)
    if len(findings) == len(new.findings):
        return new
    return replace(new, parts=tuple(parts), findings=in_order(findings))


def _kept(
    new: PartPlan, old: PartPlan, begun: frozenset[str], made: Made, dims: Mapping[str, Dim]
) -> PartPlan:
    if same_so_far(new.cards, old.cards, made):
        return new
    return replace(new, blank=old.blank, cards=with_limits(old.cards, dims), run=old.run)


def _told_of_shape(part: str, begun: list[str]) -> Finding:
    mine = ", ".join(key for key in begun if key.split("/")[0] == part)
    return Finding(
        OTHER,
        "caution",
        f"{part} is of another shape than when its cards were begun; they are written anew.",
        part=part,
        figure=f"begun: {mine}",
        bound="the new shape",
        remedy="Look which steps the piece in hand still wants before going on.",
        source=SOURCE,
    )
