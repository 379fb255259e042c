"""Screws made here: a screwdriver in their slot, a spanner on their flats."""

from __future__ import annotations

import pytest

from tommybar.assembly.placing import assembled
from tommybar.checks.driver_access import look
from tommybar.checks.made_screws import made_screws
from tommybar.checks.screw_seats import Seat
from tommybar.design.joints import ThreadRelation
from tommybar.design.model import FitRelation
from tommybar.shapes.features import Bore, Cylinder, Dim, Flats, HeadSlot, TurnedShape

from .asking import design, part


def bush(wall: float, deep: float) -> object:
    """A bush with a flange at face B and a blind M6 at the bottom of a wide bore in face A."""
    length = 20.0 + deep
    return part(
        "bush",
        TurnedShape(
            Dim(length),
            (
                Cylinder("outside", Dim(wall + 10.0), 0.0, length - 5.0),
                Cylinder("flange", Dim(wall + 30.0), length - 5.0, length),
            ),
            bores=(
                Bore("well", Dim(wall), "A", deep, False),
                Bore("tapped", Dim(6.0), "A", 14.0 + deep, False, thread="M6"),
            ),
        ),
    )


def screw(**features: object) -> object:
    """A screw with a head of 12, its slot or flats at the head, M6 below it."""
    shape = TurnedShape(
        Dim(20.0),
        (Cylinder("head", Dim(12.0), 0.0, 8.0), Cylinder("thread", Dim(6.0), 8.0, 20.0, thread="M6")),
        **features,  # type: ignore[arg-type]
    )
    return part("screw", shape)


SLOT = {"head_slots": (HeadSlot("slot", "A", Dim(1.6), 2.0),)}
RELATION = (ThreadRelation("screw.thread", "bush.tapped", "M6", 12.0, locked="shoulder"),)


def told(*parts: object, threads: object = RELATION, **more: object) -> list[tuple[int, str]]:
    """Numbers and severities of what is told."""
    made = design(parts, threads=threads, **more)  # type: ignore[arg-type]
    return [(one.number, one.severity) for one in look(made, assembled(made))]


def test_slots_and_flats_are_found_with_their_tools() -> None:
    """A slot takes a screwdriver and its stub, two flats an open spanner; a plain head none."""
    both = {**SLOT, "flats": (Flats("flats", 2, 5.0, 0.0, 8.0, across=Dim(10.0)),)}
    made = design([bush(20.0, 8.0), screw(**both)], threads=RELATION)  # type: ignore[list-item]
    found = [one for one in made_screws(made, assembled(made)) if isinstance(one, Seat)]
    assert [(one.hole, [tool.name for tool in one.tools]) for one in found] == [
        ("screw.slot", ["screwdriver", "stub screwdriver"]),
        ("screw.flats", ["size 10 open spanner"] * 3),
    ]
    assert found[1].tools[0].arm is not None
    assert found[1].tools[0].arm.swing == 150.0  # two flats every 180, less twice 15 for turning it over
    plain = design([bush(20.0, 8.0), screw()], threads=RELATION)  # type: ignore[list-item]
    assert list(made_screws(plain, assembled(plain))) == []


@pytest.mark.parametrize(
    ("wall", "deep", "expected"),
    [
        (14.0, 8.0, []),  # flush with the mouth: nothing beside the blade
        (14.0, 120.0, []),  # a blade of 150 and 8 wide reaches down a hole of 14
        (14.0, 170.0, [(686, "caution")]),  # 162 over the slot: the handle of 34 meets the wall
    ],
)
def test_a_slot_at_the_bottom_of_a_bore(wall: float, deep: float, expected: list[tuple[int, str]]) -> None:
    """The slot lies 8 over the floor of the bore; a screwdriver for M6 is 150 long."""
    assert told(bush(wall, deep), screw(**SLOT)) == expected


@pytest.mark.parametrize(("wall", "expected"), [(20.0, []), (60.0, [(686, "caution")])])
def test_flats_below_a_rim(wall: float, expected: list[tuple[int, str]]) -> None:
    """Flats flush with the bore's mouth take a spanner of 5.1 above them only in part: deep in a bore none swings."""
    flats = {"flats": (Flats("flats", 2, 5.0, 0.0, 8.0, across=Dim(10.0)),)}
    deep = 30.0 if expected else 1.0
    assert told(bush(wall, deep), screw(**flats)) == expected


def test_a_screw_that_adjusts_is_reached_with_all_in_place() -> None:
    """A cap slid over the bush shuts the slot in: nothing is told unless the screw has travel to be turned over."""
    cap = part(
        "cap",
        TurnedShape(
            Dim(30.0),
            (Cylinder("cap", Dim(40.0), 0.0, 30.0),),
            bores=(Bore("inside", Dim(24.0), "A", 25.0, False),),
        ),
    )
    how = {"fits": (FitRelation("cap.inside", "bush.outside", "H7/g6"),)}
    parts = (bush(14.0, 10.0), screw(**SLOT), cap)
    assert told(*parts, **how) == []
    adjusting = (ThreadRelation("screw.thread", "bush.tapped", "M6", 12.0, 3.0),)
    found = told(*parts, threads=adjusting, **how)
    assert [number for number, _ in found] == [686]
