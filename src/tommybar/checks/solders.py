"""Soldered joints: the gap that draws the alloy in, and the order of melting when there are several."""

from __future__ import annotations

from itertools import combinations

from tommybar.checks.checked import Checked
from tommybar.design.joints import SolderRelation
from tommybar.design.model import SizedDesign
from tommybar.facts.adhesives.solders import solder
from tommybar.findings import Finding
from tommybar.shop.model import Shop

APART = 30.0  # between the liquidus of a later joint and the solidus of an earlier one (common practice) [K]


def look(design: SizedDesign, shop: Shop) -> Checked:
    """Gaps of all soldered joints, and the order of each two that share a part."""
    named = [one for one in design.solders if one.solder]
    found = [_gap(one) for one in named]
    for one, other in combinations(sorted(named, key=lambda each: each.order), 2):
        if one.order < other.order and _parts(one) & _parts(other):
            found.append(_melts_first(one, other))
    return Checked(tuple(one for one in found if one is not None))


def _parts(one: SolderRelation) -> set[str]:
    return {one.hole.split(".")[0], one.shaft.split(".")[0]}


def _gap(joint: SolderRelation) -> Finding | None:
    least, most = solder(joint.solder).gap
    if joint.gap[0] >= least - 1e-6 and joint.gap[1] <= most + 1e-6:
        return None
    return Finding(
        676,
        "caution",
        f"The gap between {joint.hole} and {joint.shaft} is {joint.gap[0]:g} to {joint.gap[1]:g} mm; "
        f"{joint.solder} runs into {least:g} to {most:g} mm.",
        joint.hole.split(".")[0],
        joint.hole.partition(".")[2],
        figure=f"{joint.gap[0]:g} to {joint.gap[1]:g} mm",
        bound=f"{least:g} to {most:g} mm",
        remedy="Make the two to that gap, or punch three small dots that keep it open.",
        source=solder(joint.solder).source,
    )


def _melts_first(first: SolderRelation, later: SolderRelation) -> Finding | None:
    """The joint that is made later must flow well below the one that is there."""
    holds, flows = solder(first.solder).melting[0], solder(later.solder).melting[1]
    if flows <= holds - APART:
        return None
    return Finding(
        677,
        "caution",
        f"{later.hole} is soldered after {first.hole}: {later.solder} flows at {flows:g} C, and the first joint "
        f"({first.solder}) melts from {holds:g} C.",
        later.hole.split(".")[0],
        later.hole.partition(".")[2],
        figure=f"{flows:g} C",
        bound=f"{holds - APART:g} C",
        remedy="Make the joint that melts higher first, or solder both in one heat, held together.",
        source=solder(later.solder).source,
    )
