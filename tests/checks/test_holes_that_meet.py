"""Holes of a plate that run into each other are told of, but for a screw that bears on what its neighbour holds."""

from __future__ import annotations

from tommybar.design.joints import SeatRelation
from tommybar.design.model import FitRelation
from tommybar.shapes.features import Dim, PlateHole

from .asking import found_in, part, plate

ROD = PlateHole("rod", "top", 20.0, 20.0, Dim(8.0), None)
LOCK = PlateHole("lock", "left", 20.0, 5.0, Dim(4.0), 16.0, thread="M4")
BASE = part("base", plate(ROD, LOCK))
SEAT = (SeatRelation("grub", "base.lock", "thread_dia", 4.0),)
FIT = (FitRelation("base.rod", "rod.rod", "H7/h8"),)


def told(**relations: object) -> list[int]:
    return [one.number for one in found_in(BASE, **relations) if one.number == 626]


def test_a_screw_may_bear_on_what_the_other_hole_holds() -> None:
    assert told(seats=SEAT, fits=FIT) == []


def test_holes_that_meet_for_no_such_reason_are_told_of() -> None:
    """Without the screw, or with nothing fitted in the other hole, metal is lost by mistake."""
    assert told() == [626]
    assert told(seats=SEAT) == [626]
    assert told(fits=FIT) == [626]
