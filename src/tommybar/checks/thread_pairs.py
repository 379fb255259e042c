"""Threads that a relation joins: whether like metals gall where they are turned often."""

from __future__ import annotations

from tommybar.checks.checked import Checked
from tommybar.design.joints import ThreadRelation
from tommybar.design.model import Part, SizedDesign
from tommybar.facts.materials import may_run_together
from tommybar.findings import Finding
from tommybar.shop.model import Shop


def look(design: SizedDesign, shop: Shop) -> Checked:
    """Every thread relation between two parts."""
    found: list[Finding | None] = []
    for relation in design.threads:
        parts = {one.name: one for one in design.parts}
        inside, outside = (parts.get(name.split(".")[0]) for name in (relation.inside, relation.outside))
        if inside is not None and outside is not None and inside.material and outside.material:
            found.append(_galls(relation, inside, outside))
    return Checked(tuple(one for one in found if one is not None))


def _galls(relation: ThreadRelation, inside: Part, outside: Part) -> Finding | None:
    if relation.travel <= 0:
        return None
    pair = may_run_together(inside.material, outside.material)
    if pair.verdict != "no":
        return None
    return Finding(
        641,
        "caution",
        f"{relation.outside} ({outside.material}) is turned in {relation.inside} ({inside.material}): {pair.reason}.",
        inside.name,
        relation.inside.partition(".")[2],
        figure=f"{outside.material} on {inside.material}",
        bound="two metals that are unlike",
        remedy="Take another metal for one of them, or put a bronze insert in.",
        source=pair.source,
    )
