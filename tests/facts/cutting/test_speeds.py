"""Cutting speeds by material, tool and operation."""

from __future__ import annotations

from itertools import product

import pytest

from tommybar.facts.cutting import cutting_speed, operation_names
from tommybar.facts.materials import material_names
from tommybar.refusals import Refusal

FOOT = 0.3048  # [m]


@pytest.mark.parametrize(
    ("name", "low_ft", "high_ft"),
    [
        ("aluminium 6082", 196, 700),
        ("mild steel", 80, 250),
        ("stainless steel 303", 30, 180),
        ("copper", 95, 250),
    ],
)
def test_turning_speeds_lie_within_the_published_tables(name: str, low_ft: float, high_ft: float) -> None:
    """HSS turning stays inside the wider of two university tables [ft/min]."""
    speed = cutting_speed(name, "HSS", "turning")
    assert low_ft * FOOT <= speed.low < speed.high <= high_ft * FOOT


@pytest.mark.parametrize(
    ("name", "low", "high"),
    [
        ("mild steel", 25, 35),
        ("silver steel", 15, 20),
        ("free-cutting brass", 60, 90),
        ("aluminium 6082", 60, 100),
        ("phosphor bronze", 20, 35),
        ("grey cast iron", 18, 22),
        ("C45", 18, 30),
    ],
)
def test_turning_speeds_of_common_practice(name: str, low: float, high: float) -> None:
    """The figures that small shops go by [m/min]."""
    speed = cutting_speed(name, "HSS", "turning")
    assert (speed.low, speed.high) == (low, high)


@pytest.mark.parametrize("name", ["mild steel", "brass", "304"])
def test_operations_take_their_part_of_the_base(name: str) -> None:
    """Parting and forming a third to a half of turning, reaming a third to a half of drilling."""
    turning, drilling = (cutting_speed(name, "HSS", operation) for operation in ("turning", "drilling"))
    for operation, base in (("parting", turning), ("forming", turning), ("reaming", drilling)):
        speed = cutting_speed(name, "HSS", operation)
        assert speed.low == pytest.approx(base.low / 3, rel=0.01)
        assert speed.high == pytest.approx(base.high / 2)
        assert speed.note


def test_every_material_has_every_operation_and_a_source() -> None:
    """No hole in the table: low is below high, carbide is faster than HSS, the source is named."""
    for name, operation in product(material_names(), operation_names()):
        slow = cutting_speed(name, "HSS", operation)
        assert 0 < slow.low < slow.high
        assert "common practice" in slow.source
        if operation in operation_names("carbide"):
            fast = cutting_speed(name, "carbide", operation)
            assert fast.low > slow.low
            assert fast.high > slow.high


def test_other_words_for_an_operation_are_understood() -> None:
    """Part off and parting are one thing, tap and threading too."""
    assert cutting_speed("brass", "HSS", "part off") == cutting_speed("brass", "HSS", "parting")
    assert cutting_speed("brass", "HSS", "Tap") == cutting_speed("brass", "HSS", "threading")


@pytest.mark.parametrize(
    ("tool", "operation", "words"),
    [
        ("HSS", "turnning", r'The operation is "turnning".*Did you mean "turning"'),
        ("diamond", "turning", r'The tool material is "diamond"'),
        ("carbide", "knurling", r"knurling with carbide; the table has it for HSS only"),
    ],
)
def test_what_the_table_does_not_hold_is_refused(tool: str, operation: str, words: str) -> None:
    """Unknown words and carbide where nobody uses it are refused."""
    with pytest.raises(Refusal, match=words):
        cutting_speed("brass", tool, operation)
