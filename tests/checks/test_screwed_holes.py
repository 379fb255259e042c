"""Holes that screws meet in turned parts and sheet: metal under the head, thread all round, where it ends."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tommybar.checks.screwed_holes import screwed_hole
from tommybar.design.joints import ScrewJoint, SeatRelation
from tommybar.design.model import ScrewRelation
from tommybar.shapes.envelopes import envelope
from tommybar.shapes.features import (
    Bore,
    CircleHoles,
    CrossHole,
    Cylinder,
    Dim,
    Flats,
    PlateHole,
    PlateShape,
    PlateStep,
    Pocket,
    SheetShape,
    Slot,
    TurnedShape,
)

from .asking import design, disc, finds, found_in, part, plate


def hole(shape, name):
    """The hole of that name in a part called it."""
    found = screwed_hole(design([part("it", shape)]), f"it.{name}")
    assert found is not None
    return found


def collar(dia=30.0, bore=10.0, **cross):
    """A collar 20 long with an M5 across its middle into the bore."""
    one = CrossHole("grub", Dim(5.0), 10.0, thread="M5", into="bore", **cross)
    return disc(dia, 20.0, bore, cross_holes=(one,))


def test_a_thread_across_a_round_counts_only_where_it_is_cut_all_round():
    """Collar 30 over 10 with the 4.2 drill of M5: sqrt(15^2 - 2.1^2) - 5 = 9.852 by hand, not 10."""
    one = hole(collar(), "grub")
    assert one.thread == pytest.approx(math.sqrt(15**2 - 2.1**2) - 5)
    assert (one.metal, one.end) == (pytest.approx(10.0), None)


def test_a_flat_under_the_hole_makes_the_thread_whole_from_the_flat_on():
    """A flat 13 from the axis: 13 - 5 = 8 all round."""
    shape = disc(
        30.0,
        20.0,
        10.0,
        cross_holes=(CrossHole("grub", Dim(5.0), 10.0, thread="M5", into="bore"),),
        flats=(Flats("flat", 1, 13.0, 0.0, 20.0),),
    )
    assert hole(shape, "grub").thread == pytest.approx(8.0)


def test_a_blind_hole_across_ends_at_its_depth_below_the_top_of_the_round():
    """Six deep in a bar of 30: the thread is whole over 6 - (15 - sqrt(15^2 - 2.1^2))."""
    one = hole(disc(30.0, 20.0, cross_holes=(CrossHole("x", Dim(5.0), 10.0, thread="M5", depth=6.0),)), "x")
    assert one.thread == pytest.approx(6.0 - (15 - math.sqrt(15**2 - 2.1**2)))
    assert one.end == 6.0


@given(dia=st.floats(12.0, 60.0), bore=st.floats(0.0, 9.0), aside=st.floats(0.0, 2.0))
def test_a_wider_round_never_has_less_thread(dia, bore, aside):
    """Law: more metal outside the same bore engages at least as much, and never more than the metal on the axis."""
    near = hole(collar(dia, bore, offset=aside), "grub")
    far = hole(collar(dia + 1.0, bore, offset=aside), "grub")
    assert far.thread >= near.thread - 1e-9
    assert near.thread <= near.metal + 1e-9


def test_bores_and_circles_of_a_turned_part():
    """A flange of 12 with a counterbored bore, a blind tapped bore and six tapped holes on a circle."""
    shape = TurnedShape(
        Dim(40.0),
        (Cylinder("flange", Dim(60.0), 0.0, 12.0), Cylinder("hub", Dim(30.0), 12.0, 40.0)),
        bores=(Bore("tapped", Dim(6.0), "B", 15.0, False, thread="M6", full=12.0),),
        circle_holes=(
            CircleHoles("fix", Dim(5.5), 6, 45.0, 0.0, 0.0, 12.0, sink_dia=10.0, sink_depth=5.0),
            CircleHoles("blind", Dim(4.0), 3, 45.0, 30.0, 4.0, 12.0, thread="M4", face="B", blind=True),
        ),
    )
    assert hole(shape, "fix").metal == 7.0  # 12 less the counterbore of 5
    assert (hole(shape, "tapped").thread, hole(shape, "tapped").end) == (12.0, 12.0)
    assert (hole(shape, "blind").thread, hole(shape, "blind").end) == (8.0, 8.0)


def test_sheet_and_what_is_no_hole():
    """Two of sheet are two of metal; a leaning hole and a land are not followed."""
    sheet = SheetShape(Dim(40.0), Dim(20.0), Dim(2.0), holes=(PlateHole("fix", "top", 9.0, 9.0, Dim(4.5)),))
    assert hole(sheet, "fix").metal == 2.0
    leaning = plate(PlateHole("fix", "top", 9.0, 9.0, Dim(4.5), tilt=20.0))
    assert screwed_hole(design([part("it", leaning)]), "it.fix") is None
    assert screwed_hole(design([part("it", disc())]), "it.rim") is None


END = Bore("end", Dim(4.0), "B", 14.0, False, thread="M4", full=10.0)
WASHER = disc(18.0, 2.0, 4.5)


def held(length, *, washers=(), end=END):
    """A turned washer of 2 held on the end of a steel stud by a cap screw M4."""
    parts = [
        part("washer", WASHER),
        part("stud", disc(12.0, 40.0, bores=(end,))),
        part("screw", None, "", bought=f"ISO 4762 M4 x {length:g}"),
    ]
    joint = ScrewJoint(("washer.bore",), "stud.end", "M4", "ISO 4762", "", 0.0, 2.0, washers, bought="screw")
    return parts, {
        "screws": (ScrewRelation(("washer.bore",), "stud.end", "M4"),),
        "screw_joints": (joint,),
    }


@pytest.mark.parametrize(("length", "told"), [(8, []), (5, ["caution"]), (16, ["stop"])])
def test_a_screw_into_the_end_of_a_turned_part_is_followed(length, told):
    """M4 x 8 less 2 is 6 of 10: 1.5 d in steel. 5 less 2 is 3: less than 3.2. 16 less 2 bottoms at 10."""
    parts, how = held(length)
    found = [one for one in found_in(*parts, **how) if one.number in (630, 631, 632, 633, 690)]
    assert [one.severity for one in found] == told


def test_a_washer_under_the_head_takes_from_the_thread():
    """ISO 7089 M4 is 0.8 thick (public tables): 6 - 2 - 0.8 = 3.2 is just 0.8 d, and a note asks for 4."""
    parts, how = held(6, washers=("ISO 7089",))
    found = [one for one in found_in(*parts, **how) if one.number == 630]
    assert [(one.severity, one.figure, one.bound) for one in found] == [("note", "3.20 mm", "4.00 mm")]


@pytest.mark.parametrize(("washers", "told"), [((), ["stop"]), (("ISO 7089",), [])])
def test_a_washer_keeps_a_screw_from_the_bottom(washers, told):
    """M4 x 12 less 2 is 10 in a thread of 9.5; with a washer of 0.8 it is 9.2."""
    parts, how = held(12, washers=washers, end=Bore("end", Dim(4.0), "B", 14.0, False, thread="M4", full=9.5))
    found = [one for one in found_in(*parts, **how) if one.number == 631]
    assert [one.severity for one in found] == told


@pytest.mark.parametrize(
    ("cut", "metal"),
    [
        ({}, 20.0),
        ({"pockets": (Pocket("well", "top", 15.0, 20.0, Dim(20.0), Dim(20.0), 2.0, 6.0),)}, 14.0),
        ({"pockets": (Pocket("well", "top", 45.0, 20.0, Dim(20.0), Dim(20.0), 2.0, 6.0),)}, 20.0),
        ({"pockets": (Pocket("well", "bottom", 45.0, 20.0, Dim(20.0), Dim(20.0), 2.0, 6.0),)}, 14.0),
        ({"slots": (Slot("way", "top", 15.0, 20.0, 30.0, Dim(8.0), 5.0, 90.0),)}, 15.0),
        ({"slots": (Slot("way", "top", 15.0, 35.0, 20.0, Dim(8.0), 5.0),)}, 20.0),
        ({"steps": (PlateStep("ledge", "top", "left", Dim(20.0), Dim(4.0)),)}, 16.0),
        ({"steps": (PlateStep("ledge", "bottom", "left", Dim(20.0), Dim(4.0)),)}, 16.0),
        ({"steps": (PlateStep("ledge", "bottom", "right", Dim(20.0), Dim(4.0)),)}, 20.0),
    ],
)
def test_what_is_cut_away_over_and_under_a_hole_is_no_metal_under_its_head(cut, metal):
    """A block of 60 by 40 by 20 with a hole at 15, 20 of its top face."""
    shape = PlateShape(
        Dim(60.0), Dim(40.0), Dim(20.0), holes=(PlateHole("fix", "top", 15.0, 20.0, Dim(5.5)),), **cut
    )
    assert hole(shape, "fix").metal == metal


def test_a_screw_that_does_not_pass_the_washer_is_told():
    """A bore of 4 does not let M4 through."""
    parts, how = held(8)
    parts[0] = part("washer", disc(18.0, 2.0, 4.0))
    assert finds(632, *parts, **how).part == "washer"


def test_a_countersunk_screw_is_as_long_as_it_is_with_its_head():
    """ISO 10642 M4 x 10 in a sunk plate of 3: 7 engaged, the cone's depth not taken off twice."""
    hole_ = PlateHole("fix", "top", 20.0, 20.0, Dim(4.5), sink_dia=9.0, sink_angle=90.0, sink_depth=2.3)
    parts = [
        part("dial", plate(hole_, thick=3.0)),
        part(
            "block",
            plate(PlateHole("foot", "top", 20.0, 20.0, Dim(4.0), 12.0, "M4"), thick=20.0),
            "mild steel",
        ),
        part("screw", None, "", bought="ISO 10642 M4 x 10"),
    ]
    relation = (ScrewRelation(("dial.fix",), "block.foot", "M4"),)
    from .asking import figures_of

    assert figures_of(*parts, screws=relation)["thread engaged", "block"].value == 7.0


@pytest.mark.parametrize(("dia", "told"), [(30.0, []), (16.0, ["caution"])])
def test_a_grub_screw_in_a_thin_wall_engages_little(dia, told):
    """M5 wants 0.8 d = 4: a collar of 16 over 10 has sqrt(8^2 - 2.1^2) - 5 = 2.72."""
    grub = part("grub", None, "", bought="ISO 4026 M5 x 6", envelope=envelope("ISO 4026 M5 x 6"))
    seat = (SeatRelation("grub", "collar.grub", "thread_dia", 5.0),)
    found = [one for one in found_in(part("collar", collar(dia)), grub, seats=seat) if one.number == 630]
    assert [one.severity for one in found] == told
    assert [one.figure for one in found] == (["2.72 mm"] if told else [])
