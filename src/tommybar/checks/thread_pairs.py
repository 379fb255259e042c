"""Threads that a relation joins: how much is engaged, and whether like metals gall where they are turned often."""

from __future__ import annotations

from tommybar.checks.checked import PRACTICE, Checked
from tommybar.checks.engagement import engagement_wanted
from tommybar.design.joints import ThreadRelation
from tommybar.design.model import Part, SizedDesign
from tommybar.facts.materials import material, may_run_together
from tommybar.facts.threads import thread
from tommybar.findings import Finding
from tommybar.shop.model import Shop

# Engaged length over diameter for the screw's full strength, by the metal with the internal thread.
FULL = {"steel": 1.0, "stainless": 1.0, "titanium": 1.0, "brass": 1.5, "bronze": 1.5, "cast iron": 1.5}
SOFT = 2.0


def look(design: SizedDesign, shop: Shop) -> Checked:
    """Every thread relation between two parts."""
    found: list[Finding | None] = []
    for relation in design.threads:
        parts = {one.name: one for one in design.parts}
        inside, outside = (parts.get(name.split(".")[0]) for name in (relation.inside, relation.outside))
        if inside is not None and outside is not None and inside.material and outside.material:
            found += [_short(relation, inside), _galls(relation, inside, outside)]
    return Checked(tuple(one for one in found if one is not None))


def _short(relation: ThreadRelation, inside: Part) -> Finding | None:
    """A caution below what holds a light load, a note below what holds as much as the screw itself."""
    dia = thread(relation.thread).major
    share = FULL.get(material(inside.material).family, SOFT)
    full, least = share * dia, engagement_wanted(inside.material, dia)
    if relation.engaged >= full - 1e-6:
        return None
    weak = relation.engaged < least - 1e-6
    wanted = least if weak else full
    return Finding(
        634,
        "caution" if weak else "note",
        f"{relation.outside} is {relation.engaged:g} mm in {relation.inside} ({inside.material}); "
        + ("that holds little." if weak else f"{full:.1f} mm make it as strong as the screw."),
        inside.name,
        relation.inside.partition(".")[2],
        figure=f"{relation.engaged:g} mm",
        bound=f"{wanted:.1f} mm, {wanted / dia:.2g} diameters in {inside.material}",
        remedy="Engage more, or see that a hand, not a machine, loads it.",
        source=PRACTICE,
    )


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
