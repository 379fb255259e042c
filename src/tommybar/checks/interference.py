"""Pieces that stand in one another where they are put together."""

from __future__ import annotations

from tommybar.assembly.interference import THIN, overlaps
from tommybar.assembly.placing import Assembly
from tommybar.checks.loose import UNSETTLED, loose_pieces
from tommybar.design.model import SizedDesign
from tommybar.findings import Finding


def look(design: SizedDesign, whole: Assembly) -> tuple[Finding, ...]:
    """A stop for each two parts that share metal, a caution where the place of one is not settled."""
    loose = loose_pieces(design, whole)
    found: dict[tuple[str, str], Finding] = {}
    for one in overlaps(design, whole):
        first, second = one.first[0], one.second[0]
        if (first, second) in found:
            continue
        at = ", ".join(f"{v:.1f}" for v in one.at)
        size = " x ".join(f"{v:.2f}" for v in one.reach)
        unsettled = one.first in loose or one.second in loose
        found[(first, second)] = Finding(
            653,
            "caution" if unsettled else "stop",
            f"{_called(first, second)} stand in each other: {one.volume:.3g} mm3 of metal, {size} mm, about "
            f"({at}) in the assembly's frame" + (f"; {UNSETTLED}." if unsettled else "."),
            first,
            figure=f"{one.thick:.2f} mm thick",
            bound=f"{THIN:g} mm, what fits and chords may share",
            remedy=f"Move or shorten one of them, or give {second.replace('_', ' ')} room.",
            source="solids of the parts where their relations place them",
        )
    return tuple(found.values())


def _called(first: str, second: str) -> str:
    one, other = first.replace("_", " "), second.replace("_", " ")
    return f"Two pieces of {one}" if one == other else f"{one[0].upper() + one[1:]} and {other}"
