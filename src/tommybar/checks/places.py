"""Pieces that nothing places, and what had to be taken for granted to place the others."""

from __future__ import annotations

from tommybar.assembly.placing import Assembly
from tommybar.design.model import SizedDesign
from tommybar.findings import Finding

SOURCE = "relations of the design"


def look(design: SizedDesign, whole: Assembly) -> tuple[Finding, ...]:
    """One note for each part that is not placed, one for each thing that no relation says."""
    found = [
        Finding(
            650,
            "note",
            f"{part.replace('_', ' ')} is left out of the assembly: {reason}. Nothing is said of what it meets.",
            part,
            figure="not placed",
            bound="a relation for every piece",
            remedy="Say by a relation what it is joined to.",
            source=SOURCE,
        )
        for part, reason in dict.fromkeys((one.part, one.reason) for one in whole.unplaced)
    ]
    for words in whole.said:
        apart = any(one in words for one in (": their axes lie", ": the shoulder stands", ": their faces "))
        found.append(
            Finding(
                652 if apart else 651,
                "stop" if apart else "note",
                words[0].upper() + words[1:],
                figure=words.rpartition(": ")[2].rstrip("."),
                bound="pieces that lie as all relations say" if apart else "said by a relation",
                remedy="Make the places of the holes and shoulders agree."
                if apart
                else "Look whether it is meant so; say it by a relation if it matters.",
                source=SOURCE,
            )
        )
    return tuple(found)
