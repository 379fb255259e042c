"""Keys, spanners and sockets at the heads of a design: walls of the own part, other parts, and the order."""

from __future__ import annotations

import math
import re
from dataclasses import replace

import pytest

from tommybar.assembly.placing import assembled
from tommybar.checks.driver_access import look
from tommybar.checks.screw_seats import Seat, seats
from tommybar.design.joints import ScrewJoint, SeatRelation
from tommybar.design.model import FitRelation
from tommybar.findings import Finding
from tommybar.making.lengths import spoken
from tommybar.shapes.envelopes import envelope
from tommybar.shapes.features import (
    Bend,
    Bore,
    CircleHoles,
    CrossHole,
    Cylinder,
    Dim,
    PlateHole,
    PlateShape,
    PlateStep,
    Pocket,
    Recess,
    SheetShape,
    TurnedShape,
)

from .asking import design, disc, part

# ISO 4017 M6: 10 across flats, head 4; jaws 22, socket 14.5; ISO 4762 M6: head 10 by 6, key 5 (33 and 85 long)


def told(*parts: object, **relations: object) -> list[Finding]:
    """What is told of access; every finding says all that it must."""
    made = design(parts, **relations)  # type: ignore[arg-type]
    found = list(look(made, assembled(made)))
    assert all(one.figure and one.bound and one.remedy and one.source for one in found)
    return found


def numbers(found: list[Finding]) -> list[tuple[int, str]]:
    """Numbers and severities."""
    return [(one.number, one.severity) for one in found]


def joint(through: str, head: str = "ISO 4017", into: str = "base.tapped", **more: object) -> ScrewJoint:
    """An M6 through one hole into the base."""
    return ScrewJoint((through,), into, "M6", head, "", 0.0, 10.0, **more)  # type: ignore[arg-type]


def base(x: float = 40.0, y: float = 30.0) -> object:
    """A base with its thread under the hole."""
    shape = PlateShape(
        Dim(80.0), Dim(60.0), Dim(12.0), holes=(PlateHole("tapped", "top", x, y, Dim(6.0), thread="M6"),)
    )
    return part("base", shape)


def ledge(gap: float, high: float = 20.0) -> object:
    """A cover 30 thick with a step cut in it: the shoulder stands so far from the screw's axis."""
    shape = PlateShape(
        Dim(80.0),
        Dim(60.0),
        Dim(10.0 + high),
        holes=(PlateHole("fix", "top", 40.0, 30.0, Dim(6.6)),),
        steps=(PlateStep("ledge", "top", "left", Dim(40.0 + gap), Dim(high)),),
    )
    return part("cover", shape)


@pytest.mark.parametrize(
    ("gap", "expected"),
    [
        (12.0, []),
        (9.6, []),  # the jaws' mouth looks at the wall: 11 cos 30 = 9.53
        (9.4, [(689, "note")]),  # a socket of 14.5 goes in
        (7.1, [(686, "caution")]),  # 7.25 is its half; a thin-walled one might
        (6.2, [(686, "stop")]),  # corner 5.77 and 0.8 of wall
    ],
)
def test_a_hexagon_head_beside_a_shoulder(gap: float, expected: list[tuple[int, str]]) -> None:
    """ISO 4017 M6 at the floor of a step, its shoulder 20 high."""
    found = told(ledge(gap), base(), screw_joints=(joint("cover.fix"),))
    assert numbers(found) == expected
    if expected and expected[0][0] == 686:
        assert (found[0].part, found[0].feature) == ("cover", "fix")
        assert (found[0].figure, found[0].bound) == (f"{gap:.2f} mm", "11.00 mm")
        assert "the shoulder of ledge of cover" in found[0].words
        assert "size 10 open spanner" in found[0].words
        assert "size 10 socket wants" in found[0].words
        assert "extension" not in found[0].words  # it wants the same room


@pytest.mark.parametrize(("high", "expected"), [(1.9, []), (2.1, [(686, "stop")])])
def test_a_spanner_held_on_the_upper_half_of_a_head(high: float, expected: list[tuple[int, str]]) -> None:
    """The same 6.2 beside a shoulder no higher than half the head of 4: the spanner is held above it."""
    found = told(ledge(6.2, high), base(), screw_joints=(joint("cover.fix"),))
    assert numbers(found) == expected


def test_a_head_with_a_socket_needs_only_its_own_width() -> None:
    """ISO 4762 in the same place: 5 for the head and the key from above; at 4.9 the head meets the wall."""
    assert told(ledge(5.1), base(), screw_joints=(joint("cover.fix", "ISO 4762"),)) == []
    found = told(ledge(4.9), base(), screw_joints=(joint("cover.fix", "ISO 4762"),))
    assert numbers(found) == [(686, "stop")]
    assert "the head itself" in found[0].words
    assert (found[0].figure, found[0].bound) == ("4.90 mm", "5.00 mm")


def pocketed(deep: float, long: float, wide: float) -> object:
    """A block with a pocket round a screw."""
    shape = PlateShape(
        Dim(200.0),
        Dim(200.0),
        Dim(deep + 10.0),
        holes=(PlateHole("fix", "top", 100.0, 100.0, Dim(6.6)),),
        pockets=(Pocket("well", "top", 100.0, 100.0, Dim(long), Dim(wide), 3.0, deep),),
    )
    return part("cover", shape)


@pytest.mark.parametrize(
    ("deep", "expected"), [(30.0, []), (60.0, []), (79.0, []), (110.0, [(686, "caution")])]
)
def test_a_key_in_a_well(deep: float, expected: list[tuple[int, str]]) -> None:
    """A 5 mm key: its short arm reaches 6 + 33 - 3 = 36 over the floor, its long arm 6 + 85 - 3 = 88.

    In a well of 30 by 16 the long arm (85) swings only above it; deeper than
    that, the key is lost in it, and so is the handle (25) of a driver with a
    blade of 75.
    """
    found = told(
        pocketed(deep, 30.0, 16.0), base(100.0, 100.0), screw_joints=(joint("cover.fix", "ISO 4762"),)
    )
    assert numbers(found) == expected
    if expected:
        assert found[0].bound == "60 deg"
        assert "the wall of well of cover" in found[0].words


def test_a_counterbore_narrower_than_a_socket_and_deeper_than_it() -> None:
    """ISO 4017 M6 sunk 30: a counterbore of 13 takes no socket (corner 5.77 and 0.8 of wall is 6.57), 16 takes one."""

    def sunk(dia: float) -> object:
        hole = PlateHole("fix", "top", 40.0, 30.0, Dim(6.6), sink_dia=dia, sink_depth=30.0)
        return part("cover", PlateShape(Dim(80.0), Dim(60.0), Dim(45.0), holes=(hole,)))

    how = {"screw_joints": (joint("cover.fix"),)}
    found = told(sunk(13.0), base(), **how)
    assert numbers(found) == [(686, "stop")]
    assert "the counterbore of fix of cover" in found[0].words
    found = told(sunk(16.0), base(), **how)
    assert numbers(found) == [(689, "note")]
    assert "socket on an extension" in found[0].words


@pytest.mark.parametrize(("leg", "expected"), [(30.0, []), (20.0, [(689, "note")]), (16.0, [(686, "stop")])])
def test_the_flange_of_bent_sheet(leg: float, expected: list[tuple[int, str]]) -> None:
    """A strip of 2 bent up with 2 inside; a hole at 9 from its end, the inside of the flange at leg - 2.

    With a leg of 20 the flange stands 9 from the axis: less than the 9.53 of
    the jaws, enough for a socket over the fillet. With a leg of 16 the head's
    corner, 5.77, meets the fillet: it begins at 3, and stands sqrt(2^2 - 1.98^2)
    further off where it is looked at, 0.02 over the face.
    """
    bent = SheetShape(
        Dim(60.0),
        Dim(30.0),
        Dim(2.0),
        holes=(PlateHole("fix", "top", 9.0, 15.0, Dim(6.6)),),
        bends=(Bend("up", leg - 4.0, 90.0, 2.0),),
    )
    found = told(replace(part("clip", bent), kind="sheet"), base(), screw_joints=(joint("clip.fix"),))
    assert numbers(found) == expected
    if expected == [(686, "stop")]:
        assert float(found[0].figure.split()[0]) == pytest.approx(3 + math.sqrt(4 - 1.98**2), abs=0.02)
        assert "clip" in found[0].words


def flange(circle: float, rim: float = 30.0, deep: float = 12.0) -> object:
    """A turned flange with a ring-shaped recess, and holes on a circle in its floor."""
    shape = TurnedShape(
        Dim(20.0),
        (Cylinder("rim", Dim(80.0), 0.0, 20.0),),
        recesses=(Recess("well", "A", 0.0, 2 * rim, deep),),
        circle_holes=(CircleHoles("fix", Dim(6.6), 3, circle, 0.0, deep, 20.0, face="A"),),
    )
    return part("flange", shape)


@pytest.mark.parametrize(("circle", "expected"), [(39.0, [(689, "note")]), (47.2, [(686, "stop")])])
def test_heads_on_a_circle_in_the_recess_of_a_turned_part(
    circle: float, expected: list[tuple[int, str]]
) -> None:
    """A recess of 60 across and 12 deep: its wall stands 30 - c / 2 from the axis.

    At c = 39 the jaws go in, but the handle lies in the recess as well and
    does not swing; a socket does it. At 47.2 the wall stands 6.4 from the axis.
    """
    found = told(flange(circle), screw_joints=(joint("flange.fix", into=""),))
    assert numbers(found) == expected
    assert "the wall of well of flange" in found[0].words
    if expected[0][1] == "stop":
        assert float(found[0].figure.split()[0]) == pytest.approx(30.0 - circle / 2, abs=0.03)
    else:
        assert (found[0].figure, found[0].bound) == ("0 deg", "30 deg")


def spool(flanges: float, gap: float = 5.0) -> tuple[object, object]:
    """A grub screw M4 in the groove of a spool, between two flanges, and the bar that it holds."""
    wide = 2 * gap
    shape = TurnedShape(
        Dim(wide + 16.0),
        (
            Cylinder("left", Dim(flanges), 0.0, 8.0),
            Cylinder("hub", Dim(20.0), 8.0, 8.0 + wide),
            Cylinder("right", Dim(flanges), 8.0 + wide, 16.0 + wide),
        ),
        bores=(Bore("bore", Dim(8.0), "A", wide + 16.0, True),),
        cross_holes=(CrossHole("grub", Dim(4.0), 8.0 + gap, thread="M4", into="bore"),),
    )
    grub = part("grub", None, "", bought="ISO 4026 M4 x 5", envelope=envelope("ISO 4026 M4 x 5"))
    return part("spool", shape), grub


@pytest.mark.parametrize(
    ("flanges", "expected"),
    [
        (40.0, []),  # 10 high: the short arm, 18 less 1.5, swings above them
        (90.0, []),  # 35 high: the long arm, 52 less 1.5, does
        (160.0, [(689, "note")]),  # 70 high: a driver of 75 still does
        (240.0, [(686, "caution")]),  # 110 high: nothing does, and 10 deg are free between the flanges
    ],
)
def test_a_grub_screw_between_two_flanges(flanges: float, expected: list[tuple[int, str]]) -> None:
    """A 2 mm key (18 and 52 long) at the bottom of a groove 10 wide, in a hub of 20."""
    found = told(*spool(flanges), seats=(SeatRelation("grub", "spool.grub", "thread_dia", 4.0),))
    assert numbers(found) == expected
    if expected and expected[0][0] == 686:
        assert found[0].bound == "60 deg"
        # 180 - 2 acos((5 - 1.125) / (52 - 1.125)) = 8.7 between two flat walls
        assert float(found[0].figure.split()[0]) == pytest.approx(8.7, abs=0.6)
        assert any(f"{one} of spool" in found[0].words for one in ("left", "right"))


@pytest.mark.parametrize(
    ("shroud", "expected"), [(0.0, []), (12.0, [(689, "note")]), (40.0, [(686, "caution")])]
)
def test_a_nut_on_a_turned_thread(shroud: float, expected: list[tuple[int, str]]) -> None:
    """An M6 nut 5.2 high on the end of a spindle, in the open or in a bore of 16 round it.

    The bore leaves 8: no spanner, and a socket of 14.5 goes in. In the deep
    one the thread stands 19.8 out of the nut, more than the 15 that a socket
    of 25 takes; a deeper one might, so that it is no stop.
    """
    nut = part("nut", None, "", bought="ISO 4032 M6", envelope=envelope("ISO 4032 M6"))
    long = 25.0 if shroud == 40.0 else 10.0
    lands = (
        Cylinder("flange", Dim(40.0), 0.0, 3.0),
        Cylinder("collar", Dim(16.0), 3.0, 8.0),
        Cylinder("thread", Dim(6.0), 8.0, 8.0 + long, thread="M6"),
    )
    parts = [part("spindle", TurnedShape(Dim(8.0 + long), lands)), nut]
    relations: dict[str, object] = {"seats": (SeatRelation("nut", "spindle.thread", "thread_dia", 6.0),)}
    if shroud:
        tube = disc(60.0, 5.0 + shroud, 16.0)
        parts.append(part("shroud", tube))
        relations["fits"] = (FitRelation("shroud.bore", "spindle.collar", "H7/p6", "press"),)
    assert numbers(told(*parts, **relations)) == expected


def test_equal_holes_are_said_once() -> None:
    """Three holes on a circle, one sentence."""
    assert len(told(flange(47.2), screw_joints=(joint("flange.fix", into=""),))) == 1


def test_what_no_table_knows_is_told() -> None:
    """A screw of a standard that the tables do not hold is not passed over in silence."""
    found = told(ledge(20.0), base(), screw_joints=(joint("cover.fix", "ISO 9999"),))
    assert numbers(found) == [(691, "note")]
    assert "ISO 9999" in found[0].words


def test_the_seat_is_felt_for_at_the_floor_of_a_pocket() -> None:
    """A hole in a well of 12: the head sits 12 below the face, and the frame's z looks out of it."""
    made = design([pocketed(12.0, 60.0, 60.0), base(100.0, 100.0)], screw_joints=(joint("cover.fix"),))  # type: ignore[list-item]
    whole = assembled(made)
    (seat,) = [one for one in seats(made, whole) if isinstance(one, Seat)]
    stands = whole.of("cover")
    assert stands is not None
    (way,) = seat.ways
    height = stands.frame[11] + stands.frame[10] * 10.0  # the floor, 22 - 12
    assert way[11] == pytest.approx(height, abs=1e-4)
    assert way[10] == pytest.approx(stands.frame[10])


def test_asked_in_inches_no_length_is_left_in_millimetres() -> None:
    """Tools are called by their size, lengths turn with the reader's unit."""
    found = told(ledge(6.2), base(), screw_joints=(joint("cover.fix"),))
    found += told(*spool(240.0), seats=(SeatRelation("grub", "spool.grub", "thread_dia", 4.0),))
    for one in found:
        for said in (one.words, one.figure, one.bound, one.remedy):
            assert not re.search(r"\d mm", spoken(said, "in"))
    assert "size 10 open spanner" in spoken(found[0].words, "in")
