"""Pockets and slots: floors, walls, holes beside them; distances by hand."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tommybar.shapes.features import Dim, PlateHole, Pocket, Slot

from .asking import finds, found_in, part, plate


def pocket(x: float = 30.0, long: float = 20.0, deep: float | None = 6.0) -> Pocket:
    """A pocket 10 wide in the middle of the width of 40."""
    return Pocket("pocket", "top", x, 20.0, Dim(long), Dim(10.0), 3.0, deep)


def numbers(*cuts: Pocket | Slot, holes: tuple[PlateHole, ...] = ()) -> list[int]:
    """Findings of a plate 60 x 40 x 10 with these cuts."""
    shape = replace(
        plate(*holes),
        pockets=tuple(one for one in cuts if isinstance(one, Pocket)),
        slots=tuple(one for one in cuts if isinstance(one, Slot)),
    )
    return [one.number for one in found_in(part("plate", shape)) if one.number in (627, 628, 629)]


@pytest.mark.parametrize(("deep", "expected"), [(8.0, []), (8.1, [627]), (None, [])])
def test_the_floor_keeps_two_millimetres(deep: float | None, expected: list[int]) -> None:
    """10 thick: 8 deep leaves 2.0, 8.1 leaves 1.9; a pocket right through has no floor."""
    assert numbers(pocket(deep=deep)) == expected


def test_the_wall_to_the_edge() -> None:
    """Middle at 11.5, half of 20: 1.5 mm; at 11.4 it is 1.4; beyond the edge it is open."""
    assert numbers(pocket(11.5)) == []
    assert numbers(pocket(11.4)) == [628]
    assert numbers(pocket(5.0)) == []


def test_a_hole_beside_a_pocket() -> None:
    """Pocket to x = 40; a hole of 5 at x = 43.9 leaves 1.4 mm, at 44 it leaves 1.5; one inside is meant."""
    near, far = PlateHole("h", "top", 43.9, 20.0, Dim(5.0)), PlateHole("h", "top", 44.0, 20.0, Dim(5.0))
    inside = PlateHole("h", "top", 30.0, 20.0, Dim(5.0))
    assert numbers(pocket(), holes=(near,)) == [629]
    assert numbers(pocket(), holes=(far,)) == numbers(pocket(), holes=(inside,)) == []


def test_two_slots_side_by_side() -> None:
    """Slots of 6 across: middles 7.4 apart leave 1.4 mm."""

    def slots(apart: float) -> list[Slot]:
        return [Slot(f"s{n}", "top", 30.0, 15.0 + n * apart, 20.0, Dim(6.0), 5.0) for n in (0, 1)]

    assert numbers(*slots(7.6)) == []
    assert numbers(*slots(7.4)) == [629]
    shape = replace(plate(), slots=tuple(slots(7.4)))
    assert finds(629, part("plate", shape)).figure == "1.40 mm"
