"""Slender work: refused without a centre hole, carried by the tailstock with one; and blades that ask for torque."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tommybar.shapes.features import Bore, CentreHole, Cylinder, Dim

from .turned import clean, routed, shape, steps

HEAD = Cylinder("head", Dim(12.0), 0.0, 12.0)
SHANK = Cylinder("shank", Dim(8.0, "p.shank", "h7", 7.985, 8.0), 12.0, 80.0)
CENTRE = (CentreHole("centre", "B", "A", 1.6),)


def test_a_slender_shank_with_a_centre_hole_is_carried_by_the_tailstock(shop_r):
    """80 of 8: faced and centred short, then drawn out; the part is cut from its stub with the tailstock away."""
    making, _ = clean(shape(HEAD, SHANK, centres=CENTRE), shop_r, "mild steel")
    first = making.cards[0]
    kinds = [(s.feature, s.tool_kind) for s in first.steps]

    assert kinds[:3] == [("face B", "knife"), ("centre", "centre drill"), ("blank", "hand")]
    assert "with 18 sticking out" in first.steps[2].dial[0]  # 1.5 times the bar of 12
    assert any("Carried by the tailstock centre" in line for line in first.before_starting)
    assert kinds[-1][1] == "parting"


def test_without_a_centre_hole_it_is_refused_and_told_of_one(shop_r):
    """The drawing decides: no hole is drilled that it does not have."""
    making, _ = routed(shape(HEAD, SHANK), shop_r, "mild steel")
    (found,) = [f for f in making.findings if f.number == 302]

    assert found.severity == "stop" and "centre hole drawn in the free face" in found.remedy


def test_a_shank_too_slender_for_chuck_and_centre_stays_refused(shop_r):
    """200 of 8 is beyond 12 diameters: it wants a steady."""
    long = replace(SHANK, end=212.0)
    making, _ = routed(shape(HEAD, long, centres=CENTRE), shop_r, "mild steel")

    assert [f.severity for f in making.findings if f.number == 302] == ["stop"]


def test_a_bar_too_thick_for_the_spindle_is_not_drawn_out(shop_r):
    """It cannot be pushed back to be centred."""
    narrow = replace(shop_r, lathe=replace(shop_r.lathe, spindle_bore=10.0))
    making, _ = routed(shape(HEAD, SHANK, centres=CENTRE), narrow, "mild steel")

    assert all(s.tool != "tailstock centre" for c in making.cards for s in c.steps)


def test_nothing_is_bored_past_the_centre(shop_r):
    """A bore from that face and a centre there exclude each other."""
    bored = shape(HEAD, SHANK, centres=CENTRE, bores=(Bore("bore", Dim(4.0), "B", 20.0, False, "drill"),))
    making, _ = routed(bored, shop_r, "mild steel")

    assert all(s.tool != "tailstock centre" for c in making.cards for s in c.steps)


@pytest.mark.parametrize(("power", "kept"), [(370.0, False), (20.0, True)])
def test_a_parting_cut_is_fed_as_the_motor_can_turn_it(shop_r, power, kept):
    """20 W at the slow speed of a parting cut of 40 mm gives less than the blade asks for."""
    rod = shape(Cylinder("rod", Dim(18.0), 0.0, 20.0), Cylinder("rim", Dim(20.0, "p.rim"), 20.0, 30.0))
    weak = replace(shop_r, lathe=replace(shop_r.lathe, power=power))
    making, _ = routed(rod, weak, "mild steel")
    parted = [s for s in steps(making, "parting") if s.tool_kind == "parting"]

    assert parted
    assert all(any("Feed kept" in line for line in s.cautions) == kept for s in parted)
