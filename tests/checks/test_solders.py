"""Soldered joints: gaps by the table, and which melts first."""

from __future__ import annotations

from tommybar.checks.solders import look
from tommybar.design.joints import SolderRelation

from .asking import SHOP, design, disc, part

PARTS = (part("bell", disc(25.0, 90.0, 23.0)), part("cap", disc(23.0, 5.0)), part("foot", disc(10.0, 9.0)))


def numbers(*joints: SolderRelation) -> list[int]:
    """What is found about these joints."""
    return [one.number for one in look(design(PARTS, solders=joints), SHOP).findings]


def joint(shaft: str, alloy: str, order: int, gap: tuple[float, float] = (0.05, 0.1)) -> SolderRelation:
    """A joint into the bell."""
    return SolderRelation("bell.bore", f"{shaft}.rim", gap, 5.0, alloy, order)


def test_a_gap_outside_the_table_is_told() -> None:
    """Silver solder runs into 0.05 to 0.10 mm."""
    assert numbers(joint("cap", "silver solder 55", 1)) == []
    assert numbers(joint("cap", "silver solder 55", 1, (0.05, 0.2))) == [676]
    assert numbers(joint("cap", "silver solder 55", 1, (0.0, 0.1))) == [676]


def test_what_melts_higher_is_soldered_first() -> None:
    """55 melts from 630 C; tin-silver flows at 221; the other way about the first joint lets go."""
    assert numbers(joint("cap", "silver solder 55", 1), joint("foot", "tin-silver", 2)) == []
    assert numbers(joint("cap", "tin-silver", 1), joint("foot", "silver solder 55", 2)) == [677]
    # tin-lead flows at 190, tin-silver melts from 221: 31 K apart; 50/50 flows at 215, 6 K apart
    assert numbers(joint("cap", "tin-silver", 1), joint("foot", "tin-lead 60/40", 2)) == []
    assert numbers(joint("cap", "tin-silver", 1), joint("foot", "tin-lead 50/50", 2)) == [677]


def test_joints_of_one_heat_and_of_different_parts_are_left_alone() -> None:
    """The same order is one heat."""
    assert numbers(joint("cap", "tin-silver", 1), joint("foot", "tin-silver", 1)) == []
