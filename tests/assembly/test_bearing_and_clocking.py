"""Bought parts in their seats, screws in their holes, points in cups, and angles about a common axis."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from tommybar.assembly.interference import overlaps
from tommybar.assembly.order import order_of
from tommybar.assembly.placing import assembled
from tommybar.assembly.sweep import clearances
from tommybar.design.joints import ClockingRelation, ContactRelation, ScrewJoint, SeatRelation, ThreadRelation
from tommybar.design.model import FitRelation, Part, ScrewRelation, SizedDesign
from tommybar.shapes.bought import BoughtShape
from tommybar.shapes.features import (
    Bore,
    CircleHoles,
    Cone,
    CrossHole,
    Cup,
    Cylinder,
    Dim,
    Flats,
    Shape,
    Slot,
    TurnedShape,
)
from tommybar.shapes.solids.frames import Frame, direction, point

from .mechanism import FOOT, mechanism, part, with_shape


def bought(name: str, shape: BoughtShape, count: int = 1) -> Part:
    """A bought part with its envelope."""
    return Part(name, "bought", "", count, None, bought=shape.designation, envelope=shape)


def design_of(*parts: Part, **more: object) -> SizedDesign:
    """A design of some parts and relations."""
    return SizedDesign("Test", "A", "mm", (), parts, **more)  # type: ignore[arg-type]


def disc(name: str, *bores: Bore, **features: object) -> Part:
    """A disc 30 across and 12 thick."""
    shape: Shape = TurnedShape(Dim(12.0), (Cylinder("rim", Dim(30.0), 0.0, 12.0),), bores=bores, **features)  # type: ignore[arg-type]
    return part(name, shape)


def seen_from(anchor: Frame, frame: Frame, spot: tuple[float, float, float]) -> tuple[float, float, float]:
    """A point of one piece in the frame of another."""
    from tommybar.shapes.solids.frames import back, within

    return point(within(back(anchor), frame), spot)


def test_a_bearing_bears_on_the_floor_of_its_seat() -> None:
    """A bearing 5 wide in a housing bored 8 deep from face A lies from 3 to 8."""
    bearing = BoughtShape(
        "625", "ball bearing", (("inside", 5.0), ("outside", 16.0), ("width", 5.0)), "table"
    )
    housing = disc("housing", Bore("seat", Dim(16.0), "A", 8.0, False))
    whole = assembled(
        design_of(
            housing,
            bought("bearing", bearing),
            seats=(SeatRelation("bearing", "housing.seat", "outside", 16.0),),
        )
    )
    place, home = whole.of("bearing"), whole.of("housing")

    assert place and home
    ends = sorted(seen_from(home.frame, place.frame, (0, 0, z))[2] for z in (0.0, 5.0))
    assert ends == pytest.approx([3.0, 8.0])


def test_screws_stand_in_their_holes_on_the_face_or_its_counterbore() -> None:
    """Four screws of a post's two holes: heads outside the posts, shanks pointing into the foot."""
    screw = BoughtShape(
        "ISO 4762 M4 x 12",
        "socket head screw",
        (("thread_dia", 4.0), ("length", 12.0), ("head_dia", 7.0), ("head_height", 4.0)),
        "table",
    )
    joints = tuple(
        ScrewJoint((f"post.foot_{n}",), f"foot.{face}_{n}", "M4", "ISO 4762", "", 1.0, 6.0, bought="screws")
        for face in ("front", "back")
        for n in (1, 2)
    )
    design = mechanism()
    design = replace(design, parts=(*design.parts, bought("screws", screw, 4)), screw_joints=joints)
    found = [one for one in assembled(design).placements if one.part == "screws"]

    assert len(found) == 4
    # posts are 6 thick outside the foot's 0 and 30; the heads' seats lie 1 below their outer faces
    assert sorted(round(one.frame[7], 6) for one in found) == [-5.0, -5.0, 35.0, 35.0]
    for one in found:
        assert direction(one.frame, (0, 0, 1))[1] == pytest.approx(1.0 if one.frame[7] < 0 else -1.0)


def test_a_clocking_turns_a_piece_about_the_common_axis() -> None:
    """A flat on the shaft asked 90 degrees on from the hub's grub hole stands there, whatever both are drawn at."""
    hub = disc(
        "hub", Bore("bore", Dim(8.0), "A", 12.0, True), cross_holes=(CrossHole("grub", Dim(3.0), 6.0, 20.0),)
    )
    shaft = part(
        "shaft",
        TurnedShape(
            Dim(12.0),
            (Cylinder("seat", Dim(8.0), 0.0, 12.0),),
            flats=(Flats("flat", 1, 3.5, 0.0, 12.0, 75.0),),
        ),
    )
    clock = ClockingRelation("shaft.flat", "hub.grub", 90.0, 0.5)
    whole = assembled(
        design_of(hub, shaft, fits=(FitRelation("hub.bore", "shaft.seat", "H7/g6"),), clockings=(clock,))
    )
    one, other = whole.of("hub"), whole.of("shaft")

    assert one and other

    def angle(frame: Frame, drawn: float) -> float:
        """Seen from face A of the hub: up is -y there."""
        x, y, _ = direction(frame, (math.cos(math.radians(drawn)), -math.sin(math.radians(drawn)), 0.0))
        return math.degrees(math.atan2(-y, x))

    assert (angle(other.frame, 75.0) - angle(one.frame, 20.0)) % 360 == pytest.approx(90.0)


def test_a_point_stands_in_its_cup() -> None:
    """A 90 degree cup of 6 across is 3 deep: the tip of the pivot lies there, its shank outside."""
    jewel = disc("jewel", cups=(Cup("cup", "A", 6.0, 90.0),))
    pivot = part(
        "pivot",
        TurnedShape(Dim(30.0), (Cone("point", 0.0, 6.0, 0.0, 6.0), Cylinder("shank", Dim(6.0), 6.0, 30.0))),
    )
    contact = ContactRelation("pivot.point", "jewel.cup", "point in cup")
    whole = assembled(design_of(jewel, pivot, contacts=(contact,)))
    one, other = whole.of("jewel"), whole.of("pivot")

    assert one and other
    assert seen_from(one.frame, other.frame, (0, 0, 0)) == pytest.approx((0.0, 0.0, 3.0))
    assert seen_from(one.frame, other.frame, (0, 0, 30.0)) == pytest.approx((0.0, 0.0, -27.0))


def test_the_nearest_corner_counts_wherever_it_lies() -> None:
    """A slot 24 wide under the wheel leaves corners 12 beside and 30 below the axis: sqrt(12^2 + 30^2) - 20."""
    slotted = replace(FOOT, slots=(Slot("gap", "top", 30.0, 15.0, 80.0, Dim(24.0), 9.0, 90.0),))
    found = {
        (one.moving[0], one.fixed[0]): one for one in clearances(with_shape(mechanism(), "foot", slotted))
    }

    assert found["wheel", "foot"].gap == pytest.approx(math.hypot(12.0, 30.0) - 20.0, abs=0.05)


def test_screws_are_driven_when_what_they_hold_is_in_place() -> None:
    """Each post's screws come right after the post, and share no metal with it or the foot but their thread."""
    screw = BoughtShape(
        "ISO 4762 M4 x 12",
        "socket head screw",
        (("thread_dia", 4.0), ("length", 12.0), ("head_dia", 7.0), ("head_height", 4.0)),
        "table",
    )
    joints = tuple(
        ScrewJoint((f"post.foot_{n}",), f"foot.{face}_{n}", "M4", "ISO 4762", "", 0.0, 6.0)
        for face in ("front", "back")
        for n in (1, 2)
    )
    design = mechanism()
    design = replace(design, parts=(*design.parts, bought("screws", screw, 4)), screw_joints=joints)
    whole = assembled(design)
    words = [step.words for step in order_of(design, whole).steps]
    second = next(n for n, text in enumerate(words) if text.startswith("Screw the post (2 of 2)"))

    assert words[second + 1] == "Drive the screws (3 of 4) through the post (2 of 2)."
    assert words[second + 2] == "Drive the screws (4 of 4) through the post (2 of 2)."
    assert overlaps(design, whole) == ()
    assert "screws are drawn in post: it is the only ISO 4762 M4 of the design." in whole.said


def test_a_thread_goes_in_as_far_as_it_is_engaged() -> None:
    """A thread 10 long before a collar, engaged 6 in a knob 8 thick: its end stands 6 inside the knob."""
    rod = TurnedShape(
        Dim(30.0),
        (Cylinder("thread", Dim(5.0), 0.0, 10.0, thread="M5"), Cylinder("grip", Dim(9.0), 10.0, 30.0)),
    )
    knob = TurnedShape(
        Dim(8.0),
        (Cylinder("rim", Dim(20.0), 0.0, 8.0),),
        bores=(Bore("hole", Dim(4.2), "A", 8.0, True, thread="M5"),),
    )
    relation = ThreadRelation("rod.thread", "knob.hole", "M5", 6.0, locked="lock nut")
    whole = assembled(design_of(part("rod", rod), part("knob", knob), threads=(relation,)))
    one, other = whole.of("rod"), whole.of("knob")

    assert one and other
    faces = sorted(seen_from(one.frame, other.frame, (0, 0, z))[2] for z in (0.0, 8.0))
    assert faces == pytest.approx([-2.0, 6.0])


def test_a_ring_of_six_screws_is_found_whichever_way_it_is_numbered() -> None:
    """A cover drilled clockwise and a housing tapped the other way round, 30 degrees on, lie hole over hole."""
    cover = disc("cover", circle_holes=(CircleHoles("through", Dim(3.4), 6, 22.0, 0.0, 0.0, 12.0),))
    housing = disc(
        "housing",
        circle_holes=(
            CircleHoles("tapped", Dim(2.5), 6, 22.0, 30.0, 4.0, 12.0, thread="M3", face="B", blind=True),
        ),
    )
    screws = (ScrewRelation(("cover.through",), "housing.tapped", "M3"),)
    whole = assembled(design_of(cover, housing, screws=screws))
    one, other = whole.of("cover"), whole.of("housing")

    assert one and other
    assert whole.said == ()
    near = sorted(abs(seen_from(other.frame, one.frame, (0, 0, z))[2] - 12.0) for z in (0.0, 12.0))
    assert near == pytest.approx([0.0, 12.0])  # face on face
    assert overlaps(design_of(cover, housing, screws=screws), whole) == ()
