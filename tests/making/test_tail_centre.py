"""Slender work: refused without a centre hole, carried by the tailstock with one; and blades that ask for torque."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tommybar.making.between_centres import end_options
from tommybar.making.jobs import jobs_of
from tommybar.making.reach import blades_of, reached
from tommybar.making.surface_holding import surface_options
from tommybar.shapes.features import Bore, CentreHole, Cylinder, Dim
from tommybar.shop.centre_equipment import Steady

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
    """200 of 8 is beyond 12 diameters: it wants a steady, and the stop says so."""
    long = replace(SHANK, end=212.0)
    making, _ = routed(shape(HEAD, long, centres=CENTRE), replace(shop_r, steadies=()), "mild steel")

    (found,) = [f for f in making.findings if f.number == 302]
    assert found.severity == "stop"
    assert "12 at most with a centre, 30 with a travelling steady" in found.remedy


def test_a_travelling_steady_carries_it_further(shop_r):
    """Beside the tool from a track at the tail on; sawn off, since a parted rod of that length whips."""
    long = replace(SHANK, end=160.0)
    making, _ = clean(shape(HEAD, long, centres=CENTRE), shop_r, "mild steel")
    first = making.cards[0]
    tools = [s.tool for s in first.steps]

    assert "travelling steady" in first.hold.device
    assert tools.index("travelling steady") == tools.index("tailstock centre") + 1
    assert [s.feature for s in first.steps][-1] == "sawing"
    assert not any(f.number in (403, 404) for f in making.findings)


def test_a_steady_that_does_not_close_on_it_carries_nothing(shop_r):
    """8 against fingers that close from 10 on."""
    wide = replace(shop_r, steadies=(Steady("travelling", 10.0, 25.0),))
    making, _ = routed(shape(HEAD, replace(SHANK, end=160.0), centres=CENTRE), wide, "mild steel")

    assert [f.severity for f in making.findings if f.number == 302] == ["stop"]


def test_a_thick_long_bar_is_faced_and_centred_in_a_fixed_steady(shop_r):
    """25 does not go into a spindle of 20, and 200 of it is 8 diameters: a fixed steady behind the face."""
    thick = shape(
        Cylinder("one", Dim(22.0, "p.one", "h7", 21.979, 22.0), 0.0, 100.0),
        Cylinder("other", Dim(20.0, "p.other", "h7", 19.979, 20.0), 100.0, 200.0),
        centres=(CentreHole("a", "A", "A", 2.5), CentreHole("b", "B", "A", 2.5)),
    )
    made = frozenset()
    with_one, _ = end_options(thick, made, jobs_of(thick), 25.0, 1.0, shop_r)
    without, why = end_options(thick, made, jobs_of(thick), 25.0, 1.0, replace(shop_r, steadies=()))

    assert with_one and all("fixed steady" in one.device for one in with_one)
    assert without == [] and any("without a fixed steady" in one.reason for one in why)


def test_a_centre_that_lets_the_tools_by_is_chosen(shop_r):
    """8 mm past a dead point of 18: at 9 from the face it is 6.9 high, the knife's heel 5. At 16 mm it passes."""
    making, _ = clean(shape(HEAD, SHANK, centres=CENTRE), shop_r, "mild steel")
    dead = replace(shop_r, tail_centres=tuple(c for c in shop_r.tail_centres if c.kind == "dead"))
    _, run = routed(shape(HEAD, SHANK, centres=CENTRE), dead, "mild steel")
    stout = shape(
        Cylinder("head", Dim(20.0), 0.0, 12.0), Cylinder("rod", Dim(16.0), 12.0, 120.0), centres=CENTRE
    )
    thick, _ = clean(stout, dead, "mild steel")

    assert making.cards[0].hold.tail.kind == "half"
    assert any(f.number == 515 and f.severity == "stop" for f in run.findings)
    assert thick.cards[0].hold.tail.kind == "dead"


def test_a_half_centre_that_no_file_names_is_told(shop_r):
    """Where the file lists no tail centre, the usual ones are taken, and the one that must be ground is told."""
    making, _ = routed(shape(HEAD, SHANK, centres=CENTRE), replace(shop_r, tail_centres=()), "mild steel")

    assert [f.severity for f in making.findings if f.number == 480] == ["caution"]


def test_a_barrel_that_cannot_stand_out_so_far_is_told(shop_r):
    """0.75 of a centre height of 90 less the 21.1 of the centre: 46 mm, and a barrel that travels 30."""
    lathe = replace(shop_r.lathe, tailstock=replace(shop_r.lathe.tailstock, travel=30.0))
    making, _ = routed(shape(HEAD, SHANK, centres=CENTRE), replace(shop_r, lathe=lathe), "mild steel")
    (found,) = [f for f in making.findings if f.number == 481]

    assert (found.figure, found.bound) == ("46.4 mm", "30 mm, travel of the barrel")


def test_a_bar_too_thick_for_the_spindle_is_not_drawn_out(shop_r):
    """It cannot be pushed back to be centred; a fixed steady carries its end while it is, in a grip of its own."""
    long = replace(SHANK, end=106.0)  # the blank stands out by 83, 6.9 of its diameters
    narrow = replace(shop_r, lathe=replace(shop_r.lathe, spindle_bore=10.0))
    without, _ = routed(shape(HEAD, long, centres=CENTRE), replace(narrow, steadies=()), "mild steel")
    making, _ = clean(shape(HEAD, long, centres=CENTRE), narrow, "mild steel")

    assert all(s.tool != "tailstock centre" for c in without.cards for s in c.steps)
    first = making.cards[0]
    (carried,) = [card for card in making.cards if card.hold.tail is not None]
    assert [s.tool_kind for s in first.steps] == ["hand", "knife", "centre drill"]
    assert "fixed steady" in first.hold.device
    assert carried.steps[0].tool == "tailstock centre" and "stand out of the jaws" in carried.steps[0].dial[0]


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


def test_a_hole_that_must_not_stay_is_a_stop(shop_r):
    """A 1.6: (3.35 - 1.6) / 2 / tan 30 + 1.6 + 0.3 x 1.6 = 3.6 deep; no card takes it away."""
    hole = replace(CENTRE[0], keep="must not")
    making, _ = routed(shape(HEAD, SHANK, centres=(hole,)), shop_r, "mild steel")
    (found,) = [f for f in making.findings if f.number == 482]

    assert (found.severity, found.figure) == ("stop", "3.6 mm deep, 3.35 mm wide")


ROD = Cylinder("rod", Dim(30.0), 0.0, 120.0)
ENDS = (
    Bore("a", Dim(10.0), "A", 20.0, False, "drill"),
    Bore("b", Dim(12.0), "B", 20.0, False, "drill"),
)


def test_a_bar_thicker_than_the_spindle_stands_out_to_its_end(shop_r):
    """30 mm bar, spindle 20: of 120 mm the jaws hold 25, so that 95 and the facing stand out of either grip."""
    making, _ = clean(shape(ROD, bores=ENDS), shop_r, "mild steel")

    assert [card.hold.sticks_out for card in making.cards] == [97.0, 96.0]


def test_work_in_the_face_of_a_long_thick_bar_is_done_in_a_fixed_steady(shop_r):
    """220 mm is 6.5 diameters out of the jaws: a steady behind the face, and nothing turned outside."""
    long = replace(ROD, end=220.0)
    making, run = clean(shape(long, bores=ENDS), shop_r, "mild steel")
    without, _ = routed(shape(long, bores=ENDS), replace(shop_r, steadies=()), "mild steel")

    assert all(card.hold.device.endswith("fixed steady") for card in making.cards)
    assert all(card.steps[0].tool == "fixed steady" for card in making.cards)
    assert all(
        any("runs in the fixed steady" in line for line in card.before_starting) for card in making.cards
    )
    assert all("fixed steady" in dict(card.keep_out) for card in run.cards)
    assert [f.severity for f in without.findings if f.number == 302] == ["stop"]


def test_a_stout_bar_too_thick_for_the_spindle_is_centred_where_it_stands(shop_r):
    """12 mm bar, spindle 10: 57 out are 4.8 of its diameters before it is turned to 6, and 9 after."""
    narrow = replace(shop_r, lathe=replace(shop_r.lathe, spindle_bore=10.0))
    thin = Cylinder("shank", Dim(6.0, "p.shank", "h9", 5.97, 6.0), 10.0, 50.0)
    making, _ = clean(shape(replace(HEAD, end=10.0), thin, centres=CENTRE), narrow, "mild steel")
    first = making.cards[0]
    up = next(step for step in first.steps if step.tool == "tailstock centre")

    assert first.hold.surface == "blank" and "stand out of the jaws" in up.dial[0]
    assert not any("draw it out" in line for step in first.steps for line in step.dial)


def test_nothing_is_turned_outside_while_the_end_runs_in_a_steady(shop_r):
    """A spigot of 4 before the steady waits for another grip, though no jaw is near it."""
    rod, spigot = replace(ROD, end=216.0), Cylinder("spigot", Dim(24.0), 216.0, 220.0)
    turned = shape(rod, spigot, bores=ENDS[1:])
    jobs, made = jobs_of(turned, 30.0), frozenset({"rod", "face A"})
    options, _ = surface_options(turned, made, shop_r, jobs)
    ringed = [one for one in options if one.steady is not None and one.free == "B"]

    assert ringed
    for option in ringed:
        assert reached(option, turned, jobs, made, blades_of(shop_r)) == {"face B", "b"}
