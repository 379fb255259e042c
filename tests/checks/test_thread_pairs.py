"""Threads that relations join: engagement by the metal, and like metals that are turned on each other."""

from __future__ import annotations

import pytest

from tommybar.design.joints import ThreadRelation
from tommybar.shapes.features import Bore, Dim

from .asking import disc, finds, found_in, part, stud


def told(
    material: str, engaged: float, travel: float = 0.0, screw: str = "mild steel"
) -> list[tuple[int, str]]:
    """Numbers and severities of what is found about an M6 pair."""
    boss = part(
        "boss", disc(30.0, 30.0, bores=(Bore("hole", Dim(6.0), "A", 30.0, True, thread="M6"),)), material
    )
    pair = (ThreadRelation("screw.thread", "boss.hole", "M6", engaged, travel),)
    found = found_in(part("screw", stud(), screw), boss, threads=pair)
    return [(one.number, one.severity) for one in found if one.number in (634, 641)]


@pytest.mark.parametrize(
    ("material", "full", "least"),
    [("mild steel", 6.0, 4.8), ("free-cutting brass", 9.0, 6.0), ("aluminium 6082", 12.0, 7.8)],
)
def test_engagement_by_the_metal(material: str, full: float, least: float) -> None:
    """One diameter in steel, one and a half in brass, two in aluminium; much less is a caution."""
    assert told(material, full) == []
    assert told(material, full - 0.1) == [(634, "note")]
    assert told(material, least - 0.1) == [(634, "caution")]


def test_aluminium_turned_in_aluminium_galls() -> None:
    """Only where it is turned: with travel, and with the same alloy on both sides."""
    assert told("aluminium 6082", 12.0, 5.0, "aluminium 6082") == [(641, "caution")]
    assert told("aluminium 6082", 12.0, 0.0, "aluminium 6082") == []
    assert told("free-cutting brass", 9.0, 5.0, "silver steel") == []


def test_words_name_the_metal_and_the_length() -> None:
    """M6 8 deep in aluminium: 12 for full strength."""
    boss = part(
        "boss",
        disc(30.0, 8.0, bores=(Bore("hole", Dim(6.0), "A", 8.0, True, thread="M6"),)),
        "aluminium 6082",
    )
    pair = (ThreadRelation("screw.thread", "boss.hole", "M6", 8.0),)
    one = finds(634, part("screw", stud()), boss, threads=pair)
    assert (one.part, one.feature, one.figure) == ("boss", "hole", "8 mm")
    assert "12.0 mm" in one.bound
