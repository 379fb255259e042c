"""Holes across a round: the axis by touching both sides, the drill's reach, what lies below, and clocking."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tommybar.making.milling.room import stands_out
from tommybar.making.milling.round_holding import held_round, vee_rise
from tommybar.making.milling.touching import between_touches, spindle_at_left_edge, spindle_at_right_edge
from tommybar.shapes.features import Bore, CircleHoles, CrossHole, Cylinder, Dim, TurnedShape

PLAIN = Dim(3.0, "piece.plain")


@pytest.fixture
def ring(disc):
    """Outside 56, inside 50, 10 wide, holes on its middle width: two M4 right across, two of 3.0 at right angles."""
    return disc(
        56.0,
        10.0,
        bores=(Bore("inside", Dim(50.0, "piece.inside"), "A", 10.0, True),),
        cross_holes=(
            CrossHole("screw", Dim(4.0, "piece.screw"), 5.0, 0.0, 2, "M4"),
            CrossHole("plain", PLAIN, 5.0, 90.0, 2),
        ),
    )


def said(card) -> str:
    """All that stands before the steps."""
    return " ".join(card.before_starting)


def test_edge_finder_arithmetic():
    """Half a 10 finder outside the edge: -5 at the left of 0, 65 at the right of 60; 66 and 33 about a 56 round."""
    assert spindle_at_left_edge(10.0) == -5.0
    assert spindle_at_right_edge(10.0, 60.0) == 65.0
    assert between_touches(56.0, 10.0) == (66.0, 33.0)


def test_the_axis_is_found_by_touching_both_sides(milled, ring):
    """The card gives the travel between the touches, half of it, and the signs."""
    words = said(milled(ring).cards[0])

    assert "the spindle moves 66.00 with a 10 finder; come back 33.00, set X 0" in words
    assert "left is touched at X -33.00, the right at X +33.00" in words
    assert "the spindle is at Y -5.00" in words


def test_a_thin_ring_stands_on_its_rim_held_by_its_faces(milled, ring, shop, numbers):
    """10 wide and 56 across: no vee holds it. Its middle lies 5 in front of the fixed jaw, on the axis."""
    card = milled(ring).cards[0]

    assert card.hold.device == "vice, by its faces, standing on its rim"
    assert [(p.x, p.y) for p in card.places] == [(0.0, -5.0)]
    assert 431 not in numbers(milled(ring), "caution")


def test_a_rod_lies_along_the_table(milled, disc):
    """20 round, 40 long, hole 12 from face A: X 12, Y 0; touched 15 to either side with a 10 finder."""
    card = milled(disc(20.0, 40.0, cross_holes=(CrossHole("eye", PLAIN, 12.0, 0.0, 1),))).cards[0]

    assert [(p.x, p.y) for p in card.places] == [(12.0, 0.0)]
    assert "X zero on face A, to the left" in said(card)
    assert "front is touched at Y -15.00, the back at Y +15.00" in said(card)


def test_an_inch_shop_has_an_inch_finder(milled, disc, shop):
    """Half an inch: 6.35 outside the edge."""
    shape = disc(20.0, 40.0, cross_holes=(CrossHole("eye", PLAIN, 12.0, 0.0, 1),))

    assert "at X -6.35" in said(milled(shape, replace(shop, unit="in")).cards[0])


def test_a_larger_land_hangs_beside_the_block_or_meets_the_table(milled, shop, numbers):
    """A flange of 60 beside a rod of 20 reaches 20 below it; in a vee 16.1 over the table that is too much."""

    def flanged(dia: float):
        return TurnedShape(
            Dim(80.0, "piece.length"),
            (
                Cylinder("rod", Dim(20.0, "piece.rod"), 0.0, 40.0),
                Cylinder("flange", Dim(dia, "piece.flange"), 40.0, 80.0),
            ),
            cross_holes=(CrossHole("eye", PLAIN, 12.0, 0.0, 1),),
        )

    assert "reaches 20.0 below the round" in said(milled(flanged(60.0)).cards[0])
    low = replace(shop, mill=replace(shop.mill, vice_height=0.0, vice_opening=39.0))
    assert 448 in numbers(milled(flanged(60.0), low))


def test_a_short_land_in_the_vee_is_told(milled, numbers):
    """8 of a 20 round in the vee, with a long body behind it."""
    shape = TurnedShape(
        Dim(68.0, "piece.length"),
        (
            Cylinder("neck", Dim(20.0, "piece.neck"), 0.0, 8.0),
            Cylinder("body", Dim(30.0, "piece.body"), 8.0, 68.0),
        ),
        cross_holes=(CrossHole("eye", PLAIN, 4.0, 0.0, 1),),
    )

    assert 449 in numbers(milled(shape), "caution")


def test_a_jobber_drill_does_not_cross_the_ring(milled, ring):
    """3.3 is 65 long (ISO 235), 20 in the chuck: 45 out; 56 + 1 + 0.99 = 57.99 to cross, 13.0 short: from both sides."""
    made = milled(ring)
    told = next(f for f in made.findings if f.number == 436 and f.feature == "screw")

    assert stands_out(3.3) == 45.0
    assert "stands out 45.0 mm and is 13.0 mm too short" in told.words
    assert "106 mm" in told.remedy
    assert [c.title for c in made.cards] == [
        "across: screw",
        "across: plain",
        "across from the other side: screw",
        "across from the other side: plain",
    ]


def test_a_long_drill_crosses_it_in_one_go_and_each_wall_is_tapped_from_its_side(milled, ring, shop):
    """106 long, 86 out: the near wall guides the drill to the far one; the tap does not reach."""
    made = milled(ring, replace(shop, long_drills=(3.0, 3.3)))
    first, second, back = made.cards

    assert not [f for f in made.findings if f.number == 436]
    assert "long series" in first.steps[1].do
    assert "tip 58.0 below the top of the round" in first.steps[1].dial[0]
    assert any("the first guides the second" in line for line in first.steps[1].dial)
    assert [s.tool_kind for s in first.steps] == ["centre drill", "drill", "tap"]
    assert second.title == "across: plain"
    assert (back.title, [s.tool_kind for s in back.steps]) == ("across from the other side: screw", ["tap"])


def test_a_tall_long_drill_asks_for_the_height_of_the_mill(milled, ring, shop):
    """65 chuck + 106 - 20 + 2 = 153 wanted; 150 nose to table less 60 vice and 56 of ring."""
    low = replace(shop, long_drills=(3.0, 3.3), mill=replace(shop.mill, nose_to_table=150.0))
    stops = [f for f in milled(ring, low).findings if f.number == 432 and f.severity == "stop"]

    assert vee_rise(56.0) - 28.0 == pytest.approx(11.598, abs=0.001)
    assert stops
    assert stops[0].figure == "153 mm for chuck and drill 3.3 mm"


def test_the_quill_is_too_short_for_the_ring(milled, ring, shop):
    """58.0 down and 2 above: 60 against 50 of quill. The dovetail head can follow, a round column cannot."""
    one = replace(shop, long_drills=(3.0, 3.3))
    round_column = replace(one, mill=replace(one.mill, column="round"))

    assert {f.severity for f in milled(ring, one).findings if f.number == 435} == {"caution"}
    assert {f.severity for f in milled(ring, round_column).findings if f.number == 435} == {"stop"}


def test_clocking_without_a_hold_in_a_device_is_by_a_pin(milled, disc, bare):
    """Between two cross holes at a right angle: a pin level with the table."""
    shape = disc(
        20.0,
        20.0,
        cross_holes=(CrossHole("first", PLAIN, 10.0, 0.0, 2), CrossHole("other", PLAIN, 10.0, 90.0, 2)),
    )
    with_pin = said(milled(shape, bare).cards[1])

    assert "Turned 90 deg from first" in with_pin
    assert "a pin 3 through it stands level with the table" in with_pin
    # 0.1 deg on a radius of 10: 10 x 0.001745 = 0.017
    assert "0.1 deg puts it 0.02 beside" in with_pin


def test_an_odd_angle_without_a_device_is_a_caution(milled, disc, bare, numbers):
    """37 deg cannot be levelled with a square."""
    shape = disc(
        20.0,
        20.0,
        cross_holes=(CrossHole("first", PLAIN, 10.0, 0.0, 2), CrossHole("other", PLAIN, 10.0, 37.0, 2)),
    )

    assert 437 in numbers(milled(shape, bare), "caution")


def test_the_drill_would_cut_the_vee(milled, disc):
    """12 round: root 0.207 x 12 = 2.49 below it; a 6 drill comes 1 + 1.80 = 2.80 out."""
    shape = disc(12.0, 20.0, cross_holes=(CrossHole("eye", Dim(6.0, "piece.eye"), 10.0, 0.0, 2),))
    told = next(f for f in milled(shape).findings if f.number == 438)

    assert told.figure == "2.8 mm, 6 mm wide"
    assert told.bound == "2.5 mm to the root of the vee"


def test_how_a_round_lies(shop, bare):
    """Vee block to 45 when owned; between the jaws while its middle is inside them; else clamped and told."""
    assert held_round(shop.mill, 30.0).device == "vee block in the vice"
    assert held_round(bare.mill, 30.0).device.startswith("vice, the round between the jaws")
    assert held_round(bare.mill, 60.0).owned is False


def test_a_wall_is_drilled_with_the_far_wall_in_mind(milled, disc):
    """26 round, bore 10: wall 8, and the far wall is met at 18."""
    shape = disc(
        26.0,
        20.0,
        bores=(Bore("bore", Dim(10.0, "piece.bore"), "A", 20.0, True),),
        cross_holes=(CrossHole("grub", Dim(4.0, "piece.grub"), 10.0, 0.0, 1, "M4", "bore"),),
    )
    drill = milled(shape).cards[0].steps[1]

    assert any("wall of 8.00; the far wall of the bore is met at 18.00" in line for line in drill.dial)


def test_the_first_cross_hole_is_clocked_to_the_circle(milled, disc):
    """Circle 32, hole 1 at 60 deg from the cross hole: 16 cos 60 = 8 above the axis, 16 sin 60 = 13.86 beside it."""
    shape = disc(
        44.0,
        20.0,
        circle_holes=(CircleHoles("pin", PLAIN, 2, 32.0, 60.0, 0.0, 20.0),),
        cross_holes=(CrossHole("eye", PLAIN, 10.0, 0.0, 1),),
    )

    assert "its middle stands 8.00 above the part's axis, 13.86 behind it" in said(milled(shape).cards[1])


def test_an_offset_hole_goes_to_the_front(milled, disc):
    """To the left looking along the hole, face A to the left of the table: towards the operator, so Y below 0."""
    shape = disc(30.0, 20.0, cross_holes=(CrossHole("off", PLAIN, 10.0, 0.0, 1, offset=4.0),))

    assert milled(shape).cards[0].places[0].y == -4.0


def test_what_a_cross_hole_gives_is_said(milled, disc):
    """A reamed cross hole names its mate."""
    dim = Dim(5.0, "piece.eye", "H7", 5.0, 5.012)
    made = milled(
        disc(20.0, 20.0, cross_holes=(CrossHole("eye", dim, 10.0, 0.0, 2),)),
        gives_to={"piece.eye": ("pin.dia",)},
    )

    assert [m.gives_to for s in made.cards[0].steps for m in s.measure] == [("pin.dia",)]


def test_a_flange_with_a_shaft_through_it_is_no_disc(milled):
    """20 across, 6 wide, a shaft of 8 on both sides: 6 of rim below it, and the jaws are 25 deep. It lies in the vee."""
    lands = (
        Cylinder("tail", Dim(8.0), 0.0, 20.0),
        Cylinder("flange", Dim(20.0), 20.0, 26.0),
        Cylinder("pin", Dim(8.0), 26.0, 56.0),
    )
    shape = TurnedShape(Dim(56.0), lands, cross_holes=(CrossHole("eye", PLAIN, 40.0, 0.0, 2),))
    card = milled(shape).cards[-1]

    assert "vee block" in card.hold.device
