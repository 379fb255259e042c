"""The bought screws of a design, and which of them a relation means."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from tommybar.design.model import ScrewRelation, SizedDesign


@dataclass(frozen=True)
class BoughtScrew:
    """A bought screw as its designation says it: "ISO 4762 M5 x 16"."""

    name: str
    standard: str
    size: str
    length: float
    count: int


def once_each(design: SizedDesign) -> Iterator[ScrewRelation]:
    """Relations that differ in more than which of several equal holes they name."""
    seen = set()
    for relation in design.screws:
        key = (tuple(stem(name) for name in relation.through), stem(relation.into), relation.screw)
        if key not in seen:
            seen.add(key)
            yield relation


def stem(name: str) -> str:
    """The name that equal holes share: "base.front" of "base.front_2"."""
    head, _, tail = name.rpartition("_")
    return head if tail.isdigit() else name


def bought_screws(design: SizedDesign) -> tuple[BoughtScrew, ...]:
    """The bought screws of a design."""
    found = []
    for part in design.parts:
        words = part.bought.replace("×", "x").split()
        if len(words) == 5 and words[3] == "x" and words[0] == "ISO":
            found.append(BoughtScrew(part.name, f"ISO {words[1]}", words[2], float(words[4]), part.count))
    return tuple(found)


def bought_for(design: SizedDesign, relation: ScrewRelation) -> BoughtScrew | None:
    """The bought screw that a relation means: the one its joint names, or the first of its size.

    A grub screw joins nothing that it goes through.
    """
    named = {
        joint.bought
        for joint in design.screw_joints
        if joint.into == relation.into and joint.screw == relation.screw and joint.bought
    }
    fitting = [s for s in bought_screws(design) if s.size == relation.screw and s.standard != "ISO 4026"]
    return next((one for one in fitting if one.name in named), fitting[0] if fitting else None)
