"""Chains of lengths: one length that two loops would each make to measure, and a length counted on both sides."""

from __future__ import annotations

from itertools import combinations

from tommybar.checks.checked import Checked
from tommybar.design.model import LoopRelation, SizedDesign
from tommybar.findings import Finding
from tommybar.shop.model import Shop

SOURCE = "the loops of the design"


def look(design: SizedDesign, shop: Shop) -> Checked:
    """Every loop, and every two of them."""
    found = [one for loop in design.loops for one in _both_sides(loop)]
    for one, other in combinations(design.loops, 2):
        last = _last(one)
        if last and last == _last(other):
            found.append(_one_for_two(one, other, last))
    return Checked(tuple(found))


def _last(loop: LoopRelation) -> str:
    """The length that is made to measure; empty when the part that is made last has several in the loop."""
    names = [
        one.name
        for one in loop.terms
        if loop.made_last == one.name or one.name.split(".")[0] == loop.made_last
    ]
    return names[0] if len(set(names)) == 1 else ""


def _one_for_two(one: LoopRelation, other: LoopRelation, last: str) -> Finding:
    return Finding(
        692,
        "caution",
        f'{last} is made to measure for "{one.name}" and again for "{other.name}": one length cannot close both.',
        last.split(".")[0],
        last.partition(".")[2],
        figure="two loops",
        bound="one loop for each length that is made last",
        remedy="Let another part be made last in one of them.",
        source=SOURCE,
    )


def _both_sides(loop: LoopRelation) -> list[Finding]:
    """A length that opens the gap and fills it too is dimensioned twice and says nothing."""
    found = []
    for name in dict.fromkeys(one.name for one in loop.terms):
        factors = [one.factor for one in loop.terms if one.name == name]
        if min(factors) < 0 < max(factors):
            found.append(
                Finding(
                    693,
                    "caution",
                    f'{name} stands on both sides of "{loop.name}" and cancels out: the chain is doubled there.',
                    name.split(".")[0],
                    name.partition(".")[2],
                    figure="both sides",
                    bound="each length once",
                    remedy="Take it out of the loop, or name the length that is meant.",
                    source=SOURCE,
                )
            )
    return found
