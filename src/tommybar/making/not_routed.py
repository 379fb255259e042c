"""Features that the drawing shows and that no card makes yet, each told as a stop.

The list is by kind of feature: who adds the steps for a kind takes it out
here, so that a feature can be made or be told, and never be passed over.
"""

from __future__ import annotations

from tommybar.design.model import Part
from tommybar.findings import Finding
from tommybar.shapes.features import TurnedShape

NUMBER = 906
TURNED = (("bore_grooves", "a groove in a bore"),)


def not_routed(part: Part) -> tuple[Finding, ...]:
    """One stop for each feature of a part that no card makes yet."""
    shape = part.shape
    if isinstance(shape, TurnedShape):
        found = [(one.name, words) for field, words in TURNED for one in getattr(shape, field)]
        return tuple(_told(part.name, name, words) for name, words in found)
    return ()


def _told(part: str, feature: str, what: str) -> Finding:
    return Finding(
        NUMBER,
        "stop",
        f"{feature or part}: no card is written yet for {what}.",
        part=part,
        feature=feature,
        remedy="Make it from the drawing by your own order of work, or leave it out.",
    )
