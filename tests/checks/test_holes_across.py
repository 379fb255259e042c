"""Set screws on pins and cross holes on holes of a circle; distances by hand."""

from __future__ import annotations

import pytest

from tommybar.checks.holes_across import distance
from tommybar.shapes.features import CircleHoles, CrossHole, Dim

from .asking import disc, finds, found_in, part


def boss(*holes: CrossHole, circle: tuple[CircleHoles, ...] = ()) -> object:
    """A boss 30 across and 30 long with a bore of 8."""
    return part("boss", disc(30.0, 30.0, 8.0, cross_holes=holes, circle_holes=circle))


def test_distances_of_stretches_by_hand() -> None:
    """Crossing lines 3 apart, parallel ones 4, and end to end 5."""
    assert distance((0, 0, 0), (10, 0, 0), (5, -5, 3), (5, 5, 3)) == pytest.approx(3.0)
    assert distance((0, 0, 0), (10, 0, 0), (0, 4, 0), (10, 4, 0)) == pytest.approx(4.0)
    assert distance((0, 0, 0), (1, 0, 0), (4, 4, 0), (9, 4, 0)) == pytest.approx(5.0)


def test_a_set_screw_beside_a_pin_wants_both_radii_and_one_and_a_half() -> None:
    """M4 drilled 3.3 and a pin of 3, 4 mm apart along the axis: 4 - 1.65 - 1.5 = 0.85 of 1.5."""
    screw = CrossHole("grub", Dim(4.0), 12.0, thread="M4", into="bore")
    pin = CrossHole("pin", Dim(3.0), 16.0, walls=2, into="bore")

    assert finds(683, boss(screw, pin)).figure == "0.85 mm"  # type: ignore[arg-type]
    further = CrossHole("pin", Dim(3.0), 16.7, walls=2, into="bore")
    assert not [one for one in found_in(boss(screw, further)) if one.number in (682, 683)]  # type: ignore[arg-type]


def test_in_one_plane_a_quarter_turn_clears_and_a_half_turn_strikes_a_through_pin() -> None:
    """At 90 deg the bore of 8 keeps them apart (4 sqrt 2 - 3.15 = 2.51); at 180 the pin comes out in the screw."""

    def pair(angle: float) -> list[int]:
        screw = CrossHole("grub", Dim(4.0), 15.0, angle, thread="M4", into="bore")
        pin = CrossHole("pin", Dim(3.0), 15.0, 0.0, walls=2, into="bore")
        return [one.number for one in found_in(boss(screw, pin)) if one.number in (682, 683)]  # type: ignore[arg-type]

    assert pair(90.0) == []
    assert pair(180.0) == [682]


def test_a_cross_hole_on_a_hole_of_a_circle() -> None:
    """Hole of 3 on a circle of 22 at 0 deg stands in the way of a cross hole at 0 deg, not of one at 90."""
    ease = (CircleHoles("ease", Dim(3.0), 1, 22.0, 0.0, 0.0, 30.0),)
    grub = CrossHole("grub", Dim(4.0), 15.0, 0.0, thread="M4", into="bore")
    assert finds(682, boss(grub, circle=ease)).severity == "stop"  # type: ignore[arg-type]
    clear = CrossHole("grub", Dim(4.0), 15.0, 90.0, thread="M4", into="bore")
    assert not [one for one in found_in(boss(clear, circle=ease)) if one.number in (682, 683)]  # type: ignore[arg-type]


def test_a_set_screw_may_go_into_a_hole_across_when_the_design_says_so() -> None:
    """A rod's hole right through 16, an M5 a quarter turn on: into it is meant; 10 along the axis it never meets it."""
    rod = CrossHole("rod", Dim(6.0), 30.0, walls=2)

    def post(z: float, into: str) -> object:
        screw = CrossHole("lock", Dim(5.0), z, 90.0, thread="M5", into=into)
        return part("post", disc(16.0, 60.0, cross_holes=(rod, screw)))

    assert [one.number for one in found_in(post(30.0, "rod")) if one.severity != "note"] == []  # type: ignore[arg-type]
    assert finds(682, post(30.0, "")).severity == "stop"  # type: ignore[arg-type]
    assert finds(622, post(40.0, "rod")).figure == "4.90 mm"  # type: ignore[arg-type]
