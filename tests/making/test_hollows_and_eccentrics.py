"""Centre holes, cups and countersinks; eccentric lands set over in the four-jaw."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from tommybar.making.eccentrics import packing
from tommybar.making.hollows import centre_depth
from tommybar.shapes.features import Bore, BoreTaper, CentreHole, Cup, Cylinder, Dim, Eccentric

from .turned import clean, routed, shape, steps

ROD = Cylinder("rod", Dim(10.0, "p.rod"), 0.0, 30.0)


def test_a_cup_has_its_relief_before_its_cone(shop_r):
    """Mouth 4, relief 1 going 1 deeper: the hole is (4 - 1) / 2 + 1 = 2.5 deep, its tip 0.3 more; the cone's point 2.0."""
    making, _ = clean(shape(ROD, cups=(Cup("seat", "A", 4.0, 90.0, 1.0, 1.0),)), shop_r)
    made = [(s.tool_kind, s.big) for s in steps(making, "seat")]

    assert made == [("centre drill", "1.3"), ("drill", "2.8"), ("countersink", "4.00")]


def test_a_cup_of_an_angle_that_is_not_owned_is_refused(shop_r):
    """Countersinks are of 90 deg; no bar enters a hole of 1."""
    making, _ = routed(shape(ROD, cups=(Cup("seat", "A", 4.0, 75.0, 1.0, 1.0),)), shop_r)
    (found,) = [f for f in making.findings if f.number == 424]

    assert found.severity == "stop" and found.figure == "75 deg, 4 mm"


@pytest.mark.parametrize(
    ("pilot", "mouth"), [(1.0, 2.12), (2.5, 5.3), (4.0, 8.5)]
)  # ISO 866 form A, from memory
def test_a_centre_hole_is_as_deep_as_its_triangle(pilot, mouth):
    """(D - d) / 2 over tan 30, the pilot once more, and a 118-deg tip."""
    tip = pilot / 2 / math.tan(math.radians(59))

    assert centre_depth(pilot, mouth) == pytest.approx(
        (mouth - pilot) / 2 * math.sqrt(3) + pilot + tip, abs=0.005
    )


def test_a_centre_hole_is_drilled_to_its_mouth(shop_r):
    """A 2.5 opens to 5.3."""
    making, _ = clean(shape(ROD, centres=(CentreHole("centre", "B", "A", 2.5),)), shop_r)
    (step,) = steps(making, "centre")

    assert step.big == "5.30"


def test_a_centre_drill_that_is_not_owned_is_refused(shop_r):
    """Form B, and form A of 4."""
    for form, pilot in (("B", 2.5), ("A", 4.0)):
        making, _ = routed(shape(ROD, centres=(CentreHole("centre", "B", form, pilot),)), shop_r)
        assert [f.severity for f in making.findings if f.number == 424] == ["stop"]


CRANK = shape(
    Eccentric("pin", Dim(8.0, "p.pin", "h6", 7.991, 8.0), 0.0, 12.0, 3.0),
    Cylinder("body", Dim(20.0), 12.0, 50.0),
)


def test_an_eccentric_land_is_set_over_by_twice_its_throw_on_the_indicator(shop_r):
    """Throw 3: TIR 6.00. The round left swings 8 + 2 x 3 = 14 before, 8 + 4 x 3 = 20 about its own axis after."""
    making, _ = clean(CRANK, shop_r, "mild steel")
    last = [c for c in making.cards if c.hold.device == "four-jaw"][-1]
    over, cut = last.steps

    assert over.big == "6.00" and over.big_kind == "TIR mm"
    assert "20.00 DIA" in cut.dial[0]
    assert cut.speed <= 400
    assert any("Unbalanced" in line for line in cut.cautions)
    assert cut.passes[-1].to == pytest.approx(7.9955, abs=0.021)
    assert [m.size for m in cut.measure] == ["p.pin"]


def test_without_a_four_jaw_an_eccentric_land_is_refused(shop_r):
    """And the stop says how far off it is."""
    poor = replace(shop_r, jaws=tuple(j for j in shop_r.jaws if j.device != "four-jaw"))
    making, _ = routed(CRANK, poor, "mild steel")
    (found,) = [f for f in making.findings if f.number == 426]

    assert found.severity == "stop" and found.figure == "3 mm throw"


def test_packing_under_one_jaw_sets_the_work_over_by_the_throw():
    """Three points 120 deg apart at equal distance, the first moved in by the packing: the circle through them sits off by e."""
    for throw, radius in ((0.5, 10.0), (2.0, 10.0), (5.0, 12.0)):
        reach = radius + throw - packing(throw, radius)  # of the jaws that have none
        for turn in (120, 240):
            x, y = reach * math.cos(math.radians(turn)), reach * math.sin(math.radians(turn))
            assert math.hypot(x - throw, y) == pytest.approx(radius, abs=1e-9)


def test_a_round_bottom_is_told_at_once(shop_r):
    """No card is written for it yet, and it says what would do."""

    hollow = (Bore("hollow", Dim(8.0), "A", 5.0, False, "ball"),)
    making, _ = routed(shape(Cylinder("rod", Dim(14.0, "p.rod"), 0.0, 30.0), bores=hollow), shop_r)

    assert [(f.severity, f.figure) for f in making.findings if f.number == 428] == [
        ("stop", "4 mm radius, 9 mm deep")
    ]


def test_a_relief_hole_is_as_the_owned_drill_leaves_it(shop_r):
    """1.02 drawn, 1.0 owned: the dry run compares with the drill's own hole."""
    making, _ = clean(shape(ROD, cups=(Cup("seat", "A", 4.0, 90.0, 1.02, 1.0),)), shop_r)

    assert [s.tool_size for s in steps(making, "seat") if s.tool_kind == "drill"] == [1.0]


def test_a_taper_bored_down_to_a_shoulder_reaches_it(shop_r):
    """14 to 11 over 20 above a bore of 10: the bar's nose of 0.2 goes down to the shoulder, and 0.2 mm3 of corner is left."""

    socket = shape(
        Cylinder("body", Dim(30.0, "p.body"), 0.0, 30.0),
        bores=(Bore("bore", Dim(10.0), "A", 30.0, True),),
        bore_tapers=(BoreTaper("taper", "A", 0.0, 20.0, 14.0, 11.0),),
    )
    making, _ = clean(socket, shop_r)
    (step,) = steps(making, "taper")

    assert min(m.z for m in step.moves) == pytest.approx(-20.0, abs=1e-6)


def test_a_blind_taper_gets_a_hole_with_a_flat_floor_to_start_in(shop_r):
    """14 to 11, 25 deep: bar E enters 10 and reaches 32, so drill to 9.5, slot drill 10 to 25.00, then along the side."""
    socket = shape(
        Cylinder("body", Dim(30.0, "p.body"), 0.0, 50.0),
        bore_tapers=(BoreTaper("taper", "A", 0.0, 25.0, 14.0, 11.0),),
    )
    making, _ = clean(socket, shop_r)
    made = [(s.tool_kind, s.big) for s in steps(making, "taper") if s.tool_kind != "centre drill"]

    assert made == [("drill", "24.8"), ("drill", "24.8"), ("slot drill", "25.00"), ("boring", "3.43")]
    assert min(m.z for m in steps(making, "taper")[-1].moves) == pytest.approx(-25.0, abs=1e-6)


def test_a_blind_taper_that_ends_at_its_slot_drill_stops_at_the_floor(shop_r):
    """14 to 10 and the slot drill is 10: nothing stands round it at the floor, and the bar goes no deeper than 25.00."""
    socket = shape(
        Cylinder("body", Dim(30.0, "p.body"), 0.0, 50.0),
        bore_tapers=(BoreTaper("taper", "A", 0.0, 25.0, 14.0, 10.0),),
    )
    making, _ = clean(socket, shop_r)

    assert min(m.z for m in steps(making, "taper")[-1].moves) == pytest.approx(-25.0, abs=1e-6)


def test_a_blind_taper_deeper_than_the_bars_that_enter_is_refused_with_them(shop_r):
    """Morse 2 is 16.0 at its small end: the chuck takes 13 at most, and bar E, which enters that, reaches 32 of the 40."""
    socket = shape(
        Cylinder("body", Dim(30.0, "p.body"), 0.0, 60.0),
        bore_tapers=(BoreTaper("taper", "A", 0.0, 40.0, 18.0, 16.0),),
    )
    making, _ = routed(socket, shop_r)
    (found,) = [f for f in making.findings if f.number == 425]

    assert found.severity == "stop" and "E from 9.5, 32 deep" in found.bound
