"""A spring of 0.6 wire, 5 outside, 12 active of 14 turns, 24 free: figures by hand with G = 79.3 GPa.

The table's wire has E = 206 GPa and a ratio of 0.29, so G = 79.84 GPa, 0.7 % more.
"""

from __future__ import annotations

from dataclasses import replace

import pytest

from tommybar.checks.springs import rate, shear, solid
from tommybar.design.joints import Duty
from tommybar.design.model import Part
from tommybar.shapes.features import Dim, SpringShape

from .asking import figures_of, finds, found_in

SPRING = SpringShape("compression", 0.6, Dim(5.0), 12.0, 14.0, 24.0)


def spring(shape: SpringShape = SPRING) -> Part:
    """The spring as a part."""
    return Part("spring", "wire", "spring wire", 1, shape)


def stroke(most: float) -> tuple[Duty, ...]:
    """A duty that presses it so far from free."""
    return (Duty("stroke", ("spring",), None, most),)


def test_rate_solid_length_and_stress_by_hand() -> None:
    """79300 x 0.6^4 / (8 x 4.4^3 x 12) = 1.257 N/mm; 14 x 0.6 = 8.4; 15.1 N gives 783 and, with Wahl's 1.203, 942."""
    assert rate(SPRING, 79300.0) == pytest.approx(1.257, abs=0.001)
    assert solid(SPRING) == pytest.approx(8.4)
    assert shear(SPRING, 15.1) == pytest.approx((783.2, 942.4), abs=1.0)
    assert rate(replace(SPRING, active=16.0), 79300.0) == pytest.approx(0.943, abs=0.001)


def test_figures_at_twelve_millimetres() -> None:
    """15.1 N and 941 MPa at 12 mm with G = 79.3 GPa; the table's wire gives 0.7 % more."""
    got = figures_of(spring(), duties=stroke(12.0))

    assert got["rate", "spring"].value == pytest.approx(1.257, rel=0.008)
    assert got["force", "spring"].value == pytest.approx(15.1, rel=0.008)
    assert got["stress in the wire", "spring"].value == pytest.approx(941, rel=0.009)


@pytest.mark.parametrize(("most", "number"), [(12.0, 662), (8.0, 0), (15.5, 661), (15.7, 660)])
def test_strokes_are_held_to_the_wire_and_to_solid(most: float, number: int) -> None:
    """24 - 8.4 = 15.6 to solid, of which 12 x 0.06 = 0.72 is kept; 0.45 x 1760 = 792 MPa is reached at 10.0 mm."""
    got = [one.number for one in found_in(spring(), duties=stroke(most)) if 660 <= one.number <= 662]
    assert number in got if number else got == []


def test_more_turns_cure_the_stress_and_thicker_wire_does_not() -> None:
    """Over 12 mm: 16 active turns 11.3 N and 705 MPa, solid at 10.8; 0.7 wire in the same 5 mm is stressed more."""
    more = spring(replace(SPRING, active=16.0, total=18.0))
    assert figures_of(more, duties=stroke(12.0))["solid length", "spring"].value == pytest.approx(10.8)
    assert figures_of(more, duties=stroke(12.0))["stress in the wire", "spring"].value == pytest.approx(
        705, rel=0.009
    )
    assert not [one for one in found_in(more, duties=stroke(12.0)) if 660 <= one.number <= 662]
    thick = figures_of(spring(replace(SPRING, wire=0.7)), duties=stroke(12.0))["stress in the wire", "spring"]
    assert thick.value > figures_of(spring(), duties=stroke(12.0))["stress in the wire", "spring"].value


def test_a_force_says_how_far_it_is_pressed() -> None:
    """20 N over 1.266 N/mm is 15.8 mm: past solid."""
    assert finds(660, spring(), duties=(Duty("force", ("spring",), 20.0),)).severity == "stop"
