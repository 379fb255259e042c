"""Cones by the swivelled top slide. Figures by hand from triangles stand beside each."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from tommybar.making.cones import longest_bite, set_over_between_centres
from tommybar.shapes.features import Bore, Cone, Cylinder, Dim

from .turned import clean, routed, shape, steps, travel

BOB = shape(Cone("cone", 0.0, 45.0, 5.0, 25.0), Cylinder("body", Dim(25.0, "p.body"), 45.0, 75.0))


def test_a_cone_says_half_angle_and_both_readings_of_the_scale(shop_r):
    """25 to 5 over 45: atan(10 / 45) = 12.53, included 25.06, and 90 - 12.53 = 77.47 where the scale counts across."""
    making, _ = clean(BOB, shop_r)
    (step,) = steps(making, "cone")

    assert step.big == "12.53"
    assert "12.53 deg from the axis (25.06 included)" in step.dial[0]
    assert "77.47 where it counts from the cross-slide" in step.dial[0]


def test_the_side_of_a_cone_is_told_as_travel_of_the_top_slide(shop_r):
    """45 / cos 12.53 = 46.10: 23 turns of 2.00 and 5 divisions of 0.02."""
    making, _ = clean(BOB, shop_r)
    (step,) = steps(making, "cone")

    assert "46.10 long: top slide 23 turns + 5 div" in step.dial[1]


def test_a_cone_is_checked_by_two_diameters(shop_r):
    """36 mm apart they differ by 2 x 36 x 10 / 45 = 16.00."""
    making, _ = clean(BOB, shop_r)
    (step,) = steps(making, "cone")

    assert step.dial[-1] == "Check: two diameters 36.0 apart along the axis differ by 16.00."


def test_a_side_longer_than_the_slide_is_two_bites_and_says_what_else_would_do(shop_r):
    """40 of travel: one bite 40 cos 12.53 = 39.05, to 25 - 2 x 39.05 x 10/45 = 7.65; drawn shorter sqrt(1600 - 100) = 38.7."""
    making, run = routed(BOB, travel(shop_r, 40.0))
    (found,) = [f for f in making.findings if f.number == 422]

    assert found.severity == "caution"
    assert "side is 46.1 mm long, the top slide travels 40 mm. One bite makes 39.05 mm" in found.words
    assert "down to 7.65 mm in diameter" in found.words
    assert "cone 38 mm long" in found.remedy
    assert f"tailstock over by {75 * math.sin(math.atan(10 / 45)):.1f} mm" in found.remedy
    assert any("Two bites" in line for line in steps(making, "cone")[0].dial)
    assert run is not None and run.missing_volume == 0


def test_a_cone_longer_than_two_bites_is_a_stop(shop_r):
    """20 of travel less 5 to spare, twice, is 30: the side is 46.1."""
    making, _ = routed(BOB, travel(shop_r, 20.0))

    assert [f.severity for f in making.findings if f.number == 422] == ["stop"]


def test_an_unknown_travel_is_asked_for(shop_r):
    """Nothing is taken for granted where the shop file does not say it."""
    making, _ = routed(BOB, travel(shop_r, 0.0))

    assert [f.bound for f in making.findings if f.number == 422] == ["lathe.top_slide.travel: not said"]


@pytest.mark.parametrize(("travel_", "angle", "length"), [(40.0, 12.53, 39.05), (60.0, 30.0, 51.96)])
def test_the_longest_bite(travel_, angle, length):
    """s cos(a), by a table of cosines: cos 12.53 = 0.97618, cos 30 = 0.86603."""
    assert longest_bite(travel_, angle) == pytest.approx(length, abs=0.005)


def test_the_set_over_of_the_tailstock():
    """100 sin 12.53 = 21.7."""
    assert set_over_between_centres(100.0, 12.53) == pytest.approx(21.7, abs=0.05)


def test_a_point_stops_when_the_flat_vanishes(shop_r):
    """60 deg included: 0.01 too deep shortens it by 0.01 / tan 30 = 0.017; the length is measured before."""
    pin = shape(
        Cone("tip", 0.0, 2.5 / math.tan(math.radians(30)), 0.0, 5.0),
        Cylinder("journal", Dim(5.0), 2.5 / math.tan(math.radians(30)), 14.0),
        Cylinder("body", Dim(8.0), 14.0, 40.0),
    )
    making, run = clean(pin, shop_r, "silver steel")
    (step,) = [s for s in steps(making, "tip") if "deg" in s.big_kind]

    assert step.big == "30.00"
    assert any("shortens it by 0.017" in line for line in step.dial)
    assert step.number == max(s.number for c in making.cards for s in c.steps if step in c.steps)
    assert run.surplus_volume < 0.1


def test_cones_of_one_angle_stand_together_after_every_length(shop_r):
    """The slide is swivelled once for both, and nothing is faced or turned straight after it."""
    part = shape(
        Cone("tip", 0.0, 5.0, 4.0, 8.0),
        Cylinder("neck", Dim(8.0), 5.0, 15.0),
        Cone("shoulder", 15.0, 20.0, 12.0, 16.0),
        Cylinder("body", Dim(20.0), 20.0, 50.0),
    )
    making, _ = clean(part, shop_r)
    (card,) = [c for c in making.cards if any(s.feature == "tip" and "deg" in s.big_kind for s in c.steps)]
    angles = [n for n, s in enumerate(card.steps) if "deg" in s.big_kind]

    assert [card.steps[n].feature for n in angles] == ["shoulder", "tip"]
    assert angles == list(range(angles[0], angles[0] + 2))
    assert not any("Z" in s.big_kind for s in card.steps[angles[0] :])


def test_a_cone_is_made_from_the_end_it_opens_from(shop_r):
    """Narrow at face B: its card has face B free, and the cylinder before it stops where the cone begins."""
    part = shape(
        Cylinder("head", Dim(20.0), 0.0, 10.0),
        Cone("cone", 10.0, 25.0, 20.0, 12.0),
        Cylinder("stem", Dim(12.0), 25.0, 40.0),
    )
    making, _ = clean(part, shop_r)
    (card,) = [c for c in making.cards if any(s.feature == "cone" and "deg" in s.big_kind for s in c.steps)]

    assert card.free_end == "B"


def test_a_standard_taper_is_checked_with_blue(shop_r):
    """Not by two diameters: it has a gauge."""
    part = shape(
        Cone("shank", 0.0, 40.0, 14.0, 16.0, "D d L", "Morse 2", Dim(16.0, "p.shank", "", 15.98, 16.02)),
        Cylinder("body", Dim(18.0), 40.0, 60.0),
    )
    making, _ = clean(part, shop_r, "mild steel")
    step = steps(making, "shank")[-1]

    assert "Morse 2: blue a gauge" in step.dial[-1]
    assert [m.size for m in step.measure] == ["p.shank"]


def test_a_slender_lead_is_no_chamfer(shop_r):
    """1 long at 15 deg is 0.27 deep: along the swivelled slide, not with the tool of 45 deg."""
    part = shape(Cylinder("body", Dim(20.0, "p.body"), 0.0, 30.0, edge_start=1.0, edge_angle=15.0))
    making, _ = clean(part, shop_r)
    (step,) = [s for s in steps(making, "body") if "lead" in s.do]

    assert step.tool_kind == "knife"
    assert "0.27 deep" in step.dial[1]


def test_a_tapered_bore_starts_from_its_hole(shop_r):
    """16 to 10 over 20: atan(3 / 20) = 8.53; without any hole or bar for its small end it is a stop."""
    from tommybar.shapes.features import BoreTaper

    body = Cylinder("body", Dim(30.0, "p.body"), 0.0, 30.0)
    socket = (BoreTaper("socket", "A", 0.0, 20.0, 16.0, 10.0),)
    making, _ = clean(
        shape(body, bores=(Bore("bore", Dim(10.0), "A", 30.0, True),), bore_tapers=socket), shop_r
    )
    (step,) = steps(making, "socket")
    short = replace(shop_r, tools=tuple(t for t in shop_r.tools if t.kind != "boring"))
    bare, _ = routed(shape(body, bore_tapers=socket), short)

    assert step.big == "8.53" and step.tool_kind == "boring"
    assert [f.severity for f in bare.findings if f.number == 425] == ["stop"]
