"""Threads that relations join: like metals that are turned on each other."""

from __future__ import annotations

from tommybar.design.joints import ThreadRelation
from tommybar.shapes.features import Bore, Dim

from .asking import disc, found_in, part, stud


def told(
    material: str, engaged: float, travel: float = 0.0, screw: str = "mild steel"
) -> list[tuple[int, str]]:
    """Numbers and severities of what is found about an M6 pair."""
    boss = part(
        "boss", disc(30.0, 30.0, bores=(Bore("hole", Dim(6.0), "A", 30.0, True, thread="M6"),)), material
    )
    pair = (ThreadRelation("screw.thread", "boss.hole", "M6", engaged, travel),)
    found = found_in(part("screw", stud(screw_long=13.0), screw), boss, threads=pair)
    return [(one.number, one.severity) for one in found if one.number in (630, 634, 641)]


def test_aluminium_turned_in_aluminium_galls() -> None:
    """Only where it is turned: with travel, and with the same alloy on both sides."""
    assert told("aluminium 6082", 12.0, 5.0, "aluminium 6082") == [(641, "caution")]
    assert told("aluminium 6082", 12.0, 0.0, "aluminium 6082") == []
    assert told("free-cutting brass", 9.0, 5.0, "silver steel") == []
