"""Grooves inside bores: the dial runs down on the way out, the tool's left side is at the far wall, the bar gets in."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from tommybar.design.model import Part
from tommybar.dryrun import run_part
from tommybar.making.as_machined import as_drilled
from tommybar.making.inside_grooves import front_relief, outward_reading
from tommybar.planning import NOT_MADE
from tommybar.refusals import Refusal
from tommybar.shapes.features import Bore, BoreGroove, Cylinder, Dim
from tommybar.shop.model import Dial, Tool

from .turned import clean, routed, shape, steps

HOOK = Tool(
    "P", "inside groove", "right", "HSS", width=1.0, reach=20.0, smallest_bore=9.0, shank=6.0, cuts_deep=1.5
)
BODY = Cylinder("body", Dim(30.0, "p.body"), 0.0, 20.0)
SEAT = Bore("bore", Dim(22.0, "p.bore", "H7", 22.0, 22.021), "A", 20.0, True)
RING = BoreGroove("ring", "bore", 4.0, 5.1, 23.0)
HOUSE = shape(BODY, bores=(SEAT,), bore_grooves=(RING,))


@pytest.fixture
def hooked(shop_r):
    """Shop R with an inside grooving tool in its drawer."""
    return replace(shop_r, tools=(*shop_r.tools, HOOK))


def stops(turned, shop, **changes):
    """Stops of a shape where the tool is another."""
    making, _ = routed(turned, replace(shop, tools=(*shop.tools, replace(HOOK, **changes))))
    return [f for f in making.findings if f.severity == "stop"]


def test_the_groove_is_cut_after_its_bore_in_the_same_grip_and_the_metal_comes_out(hooked):
    """Floor 23.00 in a bore of 22.0105: the dry run finds nothing left standing and nothing gouged."""
    making, _ = clean(HOUSE, hooked)
    (card,) = [c for c in making.cards if any(s.feature == "ring" for s in c.steps)]
    order = [s.feature for s in card.steps]
    (step,) = steps(making, "ring")

    assert order.index("ring") > max(n for n, name in enumerate(order) if name == "bore")
    assert (step.big, step.big_kind, step.tool_letter) == ("23.00", "DIA mm", "P")
    assert [m.size for m in step.measure] == ["p.ring.wide"]


def test_outwards_in_a_bore_the_dial_runs_down(hooked):
    """(23 - 22.0105) / 2 = 0.495: 24.7 divisions of 0.02, and the ring wants no less, so 25, which a RAD dial calls -0.50."""
    making, _ = clean(HOUSE, hooked)
    (step,) = steps(making, "ring")
    (words,) = [line for line in step.dial if "Touch the wall" in line]

    assert "out, towards you, 25 div: it runs down to -0.50" in words


def test_a_dial_numbered_in_diameter_reads_twice_the_travel(hooked):
    """The same travel of 0.50 is -1.00 where the dial is numbered in diameter."""
    lathe = replace(hooked.lathe, cross_slide=Dial(0.02, 2.0, reads="DIA", slack=3.0))
    making, _ = clean(HOUSE, replace(hooked, lathe=lathe))
    (words,) = [line for line in steps(making, "ring")[0].dial if "Touch the wall" in line]

    assert "25 div: it runs down to -1.00" in words


def test_the_reading_is_never_above_nought():
    assert outward_reading(Dial(0.02, 2.0, reads="RAD"), 1.25) == -1.25
    assert outward_reading(Dial(0.01, 1.0, reads="DIA"), 1.25) == -2.5


def test_both_walls_are_places_of_the_sides_of_the_tool(hooked):
    """1.1 wide with a tool of 1.0: its left side at 5.10, then at 5.00, where its right side is the near wall at 4.00."""
    making, _ = clean(HOUSE, hooked)
    (step,) = steps(making, "ring")
    plunged = sorted({round(m.z, 6) for m in step.moves if m.r > 11.2})

    assert plunged == [-5.1, -5.0]
    assert max(m.r for m in step.moves) == pytest.approx(11.5)
    assert "Left side at Z 5.10, the far wall" in step.dial[0]
    assert "the last with the left side at Z 5.00, its right side at 4.00, the near wall" in step.dial[0]


def test_a_wide_groove_is_plunged_side_by_side_and_swept(hooked):
    """3 wide with 1.0, each at most 0.8 further: (3 - 1) / 0.8 is 2.5, so 3 steps and 4 plunges, 0.1 left for the sweep."""
    wide = replace(HOUSE, bore_grooves=(BoreGroove("ring", "bore", 8.0, 11.0, 24.0),))
    making, _ = clean(wide, hooked)
    (step,) = steps(making, "ring")

    assert "4 plunges" in step.do
    assert len({round(m.z, 4) for m in step.moves if abs(m.r - 11.9) < 1e-6}) == 4


def test_from_face_b_places_are_taken_from_face_b(hooked):
    """60 long, the groove 50 to 53 from A: 7 to 10 below face B, the only side from which 20 of reach gets there."""
    long = shape(
        replace(BODY, end=60.0), bores=(replace(SEAT, dia=Dim(22.0), depth=60.0),),
        bore_grooves=(BoreGroove("ring", "bore", 50.0, 53.0, 24.0),),
    )  # fmt: skip
    bar = Tool("Q", "boring", "right", "HSS", 0.2, reach=70.0, smallest_bore=13.0, shank=10.0)
    making, _ = clean(long, replace(hooked, tools=(*hooked.tools, bar)))
    (card,) = [c for c in making.cards if any(s.feature == "ring" for s in c.steps)]
    (step,) = steps(making, "ring")

    assert card.free_end == "B"
    assert "Left side at Z 10.00" in step.dial[0] and "right side at 7.00, the near wall" in step.dial[0]


@pytest.mark.parametrize(
    ("change", "why"),
    [
        ({"width": 1.2}, "1.2 wide, the groove 1.1"),
        ({"smallest_bore": 23.0}, "needs a bore of 23, it goes in through 22.0105"),
        ({"cuts_deep": 0.4}, "cuts 0.4 deep, 0.49 is wanted"),
        ({"reach": 5.5}, "reaches 5.5, 5.6 is wanted"),
    ],
)
def test_a_tool_that_does_not_get_there_is_told_with_its_figure(shop_r, change, why):
    (found,) = stops(HOUSE, shop_r, **change)

    assert found.number == 429 and why in found.bound


def test_without_a_tool_the_stop_says_what_to_grind(shop_r):
    """A bit of 8, its heel 4 below centre in a bore of radius 11: atan((11 - sqrt(121 - 16)) / 4) = 10.7 deg."""
    making, _ = routed(HOUSE, shop_r)
    (found,) = [f for f in making.findings if f.number == 429]

    assert found.severity == "stop" and found.bound == "inside grooving tools owned: none"
    assert "bit of 8 mm" in found.remedy and "front clearance 11 deg" in found.remedy


def test_a_bar_too_thick_for_the_bore_is_found_on_geometry(shop_r):
    """A shank of 21 with its neck in a bore of 22: the dry run sees it in the far wall, whatever the file says it enters."""
    lying = replace(HOOK, shank=21.0)
    _, run = routed(HOUSE, replace(shop_r, tools=(*shop_r.tools, lying)))

    assert run is not None
    assert {f.number for f in run.findings if f.severity == "stop"} & {502, 503}


def test_a_holder_too_near_is_found_on_geometry(shop_r):
    """The card's own rule is taken away: 7 of reach for a groove 11 deep, and the dry run says that it is too short."""
    deep = replace(HOUSE, bore_grooves=(BoreGroove("ring", "bore", 10.0, 11.1, 23.0),))
    good = replace(shop_r, tools=(*shop_r.tools, HOOK))
    making, _ = routed(deep, good)
    short = replace(shop_r, tools=(*shop_r.tools, replace(HOOK, reach=7.0)))
    run = run_part(Part("p", "turned", "free-cutting brass", 1, deep), making.blank, making.cards, short)

    assert 504 in {f.number for f in run.findings}


def test_the_limits_of_a_circlips_groove_are_on_the_card(hooked):
    """DIN 472, bore 22: groove 23.0 +0.13/0, 1.1 H13 wide (from memory; IT13 up to 3 mm is 0.14 in ISO 286-1)."""
    making, _ = clean(HOUSE, hooked)
    other, _ = clean(replace(HOUSE, bore_grooves=(replace(RING, floor=23.6),)), hooked)

    width = steps(making, "ring")[0].measure[0].dim

    assert (width.smallest, width.largest) == pytest.approx((1.1, 1.24))
    assert not steps(other, "ring")[0].measure[0].dim.toleranced
    assert any("DIN 472 22: floor 23.00 to 23.13" in line for line in steps(making, "ring")[0].dial)
    assert not any("DIN 472" in line for line in steps(other, "ring")[0].dial)


def test_a_groove_in_a_thread_comes_before_the_tap_and_ends_it(hooked):
    """Tapping drill 8.5 for M10; the thread is 15.0 long, up to the groove."""
    hole = Bore("hole", Dim(10.0, "p.hole"), "A", 18.0, False, "drill", "M10")
    nut = shape(
        replace(BODY, end=30.0), bores=(hole,), bore_grooves=(BoreGroove("out", "hole", 15.0, 18.0, 10.5),)
    )
    making, _ = clean(
        nut, replace(hooked, tools=(*hooked.tools[:-1], replace(HOOK, smallest_bore=8.0))), "mild steel"
    )
    kinds = [s.tool_kind for c in making.cards for s in c.steps]
    (tapped,) = [s for s in steps(making, "hole") if s.tool_kind == "tap"]

    assert kinds.index("inside groove") < kinds.index("tap")
    assert tapped.big_kind == "15.0 of full thread, its lead out into the groove"


@pytest.mark.parametrize(("bore", "below"), [(48.0, 8.0), (22.0, 4.0), (10.0, 2.5)])
def test_the_heel_clears_the_wall_at_its_angle(bore, below):
    """At the angle the heel's corner lies on the wall's circle; R 24 with 8 below is 9.7 deg."""
    angle = math.radians(front_relief(bore, below))
    across = bore / 2 - below * math.tan(angle)

    assert math.hypot(across, below) == pytest.approx(bore / 2)


def test_a_heel_below_the_bore_is_refused():
    with pytest.raises(Refusal, match="5 mm below centre in a bore of 10 mm"):
        front_relief(10.0, 5.0)


def test_a_groove_that_is_told_as_not_made_is_not_told_again_by_the_dry_run(shop_r):
    """Without the tool the metal stands in the groove: 38 mm3 forgotten, unless the run is told that the stop is said."""
    making, run = routed(HOUSE, shop_r)
    part = Part("p", "turned", "free-cutting brass", 1, HOUSE)
    told = run_part(as_drilled(part, shop_r), making.blank, making.cards, shop_r, frozenset({"ring"}))

    assert run is not None and 507 in {f.number for f in run.findings}
    assert [f.words for f in told.findings if f.severity == "stop"] == []
    assert 429 in NOT_MADE
