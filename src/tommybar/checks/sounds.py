"""What sounds: the length that gives the note, and the ears of those who stand near."""

from __future__ import annotations

from tommybar.checks.checked import Checked
from tommybar.checks.figures import Figure
from tommybar.design.model import SizedDesign
from tommybar.findings import Finding
from tommybar.shop.model import Shop

SOUND = 343.0  # speed of sound in air at 20 C [m/s]


def look(design: SizedDesign, shop: Shop) -> Checked:
    """Every duty that names a note."""
    found: list[Finding] = []
    figures: list[Figure] = []
    for duty in design.duties:
        if duty.kind != "sound" or not duty.figure:
            continue
        part = duty.on[0].split(".")[0] if duty.on else ""
        length = 1000 * SOUND / (4 * duty.figure)
        how = (
            f"{SOUND:g} m/s over 4 x {duty.figure:g} Hz at 20 C; the tube itself is a few mm shorter: tune it"
        )
        figures.append(
            Figure("quarter wave of a stopped tube", part, length, "mm", 1, how, "acoustics of stopped pipes")
        )
        found.append(
            Finding(
                673,
                "caution",
                f"It sounds at {duty.figure:g} Hz, and a whistle near the ear can harm hearing at once.",
                part,
                figure=f"{duty.figure:g} Hz",
                bound="ears protected, nobody close, the first trial softly",
                remedy="Wear ear protection when tuning, point it away, and begin with little air.",
                source="common caution, no source",
            )
        )
    return Checked(tuple(found), tuple(figures))
