"""Turning between centres: when it is chosen, how it is driven, and what stands against it."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tommybar.design.model import Part, RunoutNeed
from tommybar.facts.materials import material
from tommybar.facts.tapers import tail_set_over
from tommybar.making.bench import Bench
from tommybar.making.between_centres import between_options
from tommybar.making.jobs import jobs_of
from tommybar.making.rigidity import give
from tommybar.making.route_check import route_faults
from tommybar.making.workpiece import Workpiece
from tommybar.mechanics.deflection import deflection
from tommybar.shapes.features import CentreHole, Cylinder, Dim, TurnedShape
from tommybar.shop.centre_equipment import Dog

from .turned import clean, routed, shape, steps

LEFT = Cylinder("left", Dim(8.0, "p.left", "h6", 7.991, 8.0), 0.0, 20.0, 0.5)
BODY = Cylinder("body", Dim(14.0, "p.body"), 20.0, 80.0)
RIGHT = Cylinder("right", Dim(8.0, "p.right", "h6", 7.991, 8.0), 80.0, 100.0, 0.0, 0.5)
CENTRES = (CentreHole("centre_a", "A", "A", 1.6), CentreHole("centre_b", "B", "A", 1.6))
TRUE = (RunoutNeed("left", "right", 0.01),)


def needing(turned: TurnedShape, shop, needs=TRUE):
    """The route of a part with run-out needs, held to the same as ``clean``."""
    making, run = routed(turned, shop, "mild steel", needs)
    assert run is not None
    assert [f.words for f in (*making.findings, *run.findings) if f.severity == "stop"] == []
    assert route_faults(Part("p", "turned", "mild steel", 1, turned, needs), making.cards, shop) == ()
    return making, run


def test_two_journals_that_must_run_true_are_turned_on_the_same_centres(shop_r):
    """0.01 is below every re-grip of this shop: faced and centred at both ends, then turned end for end."""
    making, _ = needing(shape(LEFT, BODY, RIGHT, centres=CENTRES), shop_r)
    devices = [card.hold.device for card in making.cards]
    first, second, third, fourth = making.cards

    assert [d.split(",")[0] for d in devices[2:]] == ["between centres", "between centres"]
    for card in (first, second):
        assert [s.tool_kind for s in card.steps] == ["knife", "centre drill"]
    assert {s.feature for s in third.steps if s.tool_kind == "knife"} == {"left"}
    assert {s.feature for s in fourth.steps if s.tool_kind == "knife"} == {"right"}
    (forecast,) = fourth.runout
    assert forecast.expected == 0.005  # of the same centres; common practice, no source


def test_the_second_end_is_faced_to_length_before_it_is_centred(shop_r):
    """The centre goes into a finished face."""
    making, _ = needing(shape(LEFT, BODY, RIGHT, centres=CENTRES), shop_r)
    knife, centre = making.cards[1].steps

    assert (knife.big, knife.big_kind) == ("100.00", "mm long")
    assert centre.tool_kind == "centre drill"


def test_the_dog_sits_on_the_blank_and_then_on_what_is_finished(shop_r):
    """12 wide for the blank of 14; nothing is cut within 2 mm of it."""
    making, _ = needing(shape(LEFT, BODY, RIGHT, centres=CENTRES), shop_r)
    third, fourth = making.cards[2:]

    assert (third.hold.surface, third.hold.drive.held, third.hold.drive.wide) == ("blank", 14.0, 12.0)
    assert fourth.hold.surface == "body"
    assert any("strip of brass or copper" in line for line in fourth.before_starting)
    for card in (third, fourth):
        cut = min(move.z for step in card.steps if step.tool_kind == "knife" for move in step.moves)
        assert cut >= card.hold.drive.front + 2.0 - 1e-6


def test_without_such_a_need_two_grips_do(shop_r):
    """Between centres takes four cards, so it is not chosen where chuck and collet hold the limit."""
    making, _ = clean(shape(LEFT, BODY, RIGHT, centres=CENTRES), shop_r, "mild steel")

    assert not any("between centres" in card.hold.device for card in making.cards)


@pytest.mark.parametrize(
    ("change", "words"),
    [
        ({"dogs": ()}, "the shop file lists no dogs"),
        ({"dogs": (Dog(20.0, 40.0, 16.0),)}, "no dog takes 14.00 mm: 20-40 mm owned"),
        ({"catch_plate": 0.0}, "no catch plate"),
        ({"can": frozenset({"arbor"})}, "does not say that work is turned between centres"),
    ],
    ids=["no dog", "dog too large", "no plate", "not among the ways of working"],
)
def test_what_is_lacking_is_told_with_the_run_out(shop_r, change, words):
    """The stop of the run-out says why it was not turned between centres."""
    making, _ = routed(
        shape(LEFT, BODY, RIGHT, centres=CENTRES), replace(shop_r, **change), "mild steel", TRUE
    )
    (found,) = [f for f in making.findings if f.number == 301]

    assert found.severity == "stop" and words in found.remedy


def test_without_centre_holes_the_stop_asks_for_them(shop_r):
    """No hole is drilled that the drawing does not have."""
    making, _ = routed(shape(LEFT, BODY, RIGHT), shop_r, "mild steel", TRUE)
    (found,) = [f for f in making.findings if f.number == 301]

    assert "Draw a centre hole in each face" in found.remedy


def test_work_longer_than_the_bed_is_refused_with_what_is_left(shop_r):
    """350 between the noses, less 25 for the head's centre, 24 for the tail's and 10 of barrel."""
    made = frozenset({"face A", "face B", "centre_a", "centre_b"})
    thick = TurnedShape(Dim(300.0), (Cylinder("rod", Dim(40.0), 0.0, 300.0),), centres=CENTRES)
    options, rejected = between_options(thick, made, jobs_of(thick), 42.0, shop_r)

    assert options == []
    assert {one.reason for one in rejected} == {
        "300 mm long, 291 mm are left between the points of the centres"
    }


def test_slender_work_wants_a_travelling_steady(shop_r):
    """200 of 8 is 25 diameters: none without one, none past 30 with one."""
    made = frozenset({"face A", "face B", "centre_a", "centre_b"})
    thin = TurnedShape(Dim(200.0), (Cylinder("rod", Dim(8.0), 0.0, 200.0),), centres=CENTRES)
    with_one, _ = between_options(thin, made, jobs_of(thin), 9.0, shop_r)
    without, why = between_options(thin, made, jobs_of(thin), 9.0, replace(shop_r, steadies=()))
    thinner = TurnedShape(Dim(200.0), (Cylinder("rod", Dim(6.0), 0.0, 200.0),), centres=CENTRES)
    none, too_thin = between_options(thinner, made, jobs_of(thinner), 7.0, shop_r)

    assert with_one and all("travelling steady" in one.device for one in with_one)
    assert without == [] and "25.0 diameters between the centres, 10 at most" in why[0].reason
    assert none == [] and "33.3 diameters between the centres, 30 at most" in too_thin[0].reason


def test_the_tailstock_is_moved_by_half_of_what_the_ends_differ(shop_r):
    """The set-over that would make that taper, over 60 less 0.2 at the shoulder and 2 at each end, on work 100 long."""
    long = replace(LEFT, end=60.0)
    body, right = replace(BODY, start=60.0), replace(RIGHT, start=80.0)
    making, _ = needing(shape(long, body, right, centres=CENTRES), shop_r)
    tried = [s for card in making.cards for s in card.steps if "parallel" in s.do]

    assert tried[0].dial[0].startswith("Micrometer") and "56 apart" in tried[0].dial[0]
    assert float(tried[0].big) == pytest.approx(tail_set_over(1.0 / 55.8, 100.0), abs=5e-3)


def test_a_short_land_is_tried_by_indicator_on_the_blank(shop_r):
    """64 between the readings: the axis leans by their difference, the tailstock moves by 100 / 64 of it."""
    making, _ = needing(shape(LEFT, BODY, RIGHT, centres=CENTRES), shop_r)
    (tried,) = [s for s in making.cards[2].steps if "parallel" in s.do]

    assert "64 apart" in tried.dial[0] and "half a turn apart" in tried.dial[0]
    assert float(tried.big) == pytest.approx(100 / 64, abs=5e-3)


def test_the_cut_is_held_to_what_the_work_springs_in_its_middle(shop_r):
    """By the closed beam between centres: a slender rod takes shallower cuts than a stout one."""
    rod = Cylinder("rod", Dim(14.0, "p.rod", "h7", 13.982, 14.0), 0.0, 110.0)
    end = Cylinder("end", Dim(16.0, "p.end"), 110.0, 140.0)
    making, _ = needing(shape(rod, end, centres=CENTRES), shop_r, (RunoutNeed("rod", "end", 0.01),))
    rough = next(s for s in steps(making, "rod") if s.do.startswith("Rough"))
    depth = max(one.infeed for one in rough.passes)
    push = 0.35 * 1350 * 0.15  # away_share, about kc of mild steel, feed: for one millimetre of depth

    assert deflection("centres", push * depth, 70.0, 140.0, 14.0, 205000.0) < 0.08


def test_screws_that_only_a_die_cuts_are_not_made_between_centres(shop_r):
    """The die's holder takes the tailstock's place; with a lead screw the single point does it."""
    made = frozenset({"face A", "face B", "centre_a", "centre_b"})
    screw = Cylinder("screw", Dim(8.0, "p.screw"), 0.0, 20.0, thread="M8")
    turned = shape(screw, replace(BODY, end=100.0), centres=CENTRES)
    able, _ = between_options(turned, made, jobs_of(turned), 14.0, shop_r)
    unable, _ = between_options(
        turned, made, jobs_of(turned), 14.0, replace(shop_r, can=shop_r.can - {"screw cutting"})
    )

    assert {one.leaves for one in unable} == {frozenset({"screw"})}
    has_point = any(tool.kind == "threading" for tool in shop_r.tools)
    assert {one.leaves for one in able} == {frozenset() if has_point else frozenset({"screw"})}


def test_the_taper_may_use_up_a_quarter_of_the_narrowest_limits(shop_r):
    """h6 at 8 is 0.009 wide: a quarter is 0.002, which an indicator just tells."""
    making, _ = needing(shape(LEFT, BODY, RIGHT, centres=CENTRES), shop_r)
    (tried,) = [s for s in making.cards[2].steps if "parallel" in s.do]

    assert "within 0.002" in tried.dial[2]


def test_work_between_centres_gives_like_the_beam_on_two_supports(shop_r):
    """A plain bar of 14, 100 long, its tool 30 from the tail: F a^2 b^2 / 3 E I L."""
    made = frozenset({"face A", "face B", "centre_a", "centre_b"})
    plain = TurnedShape(Dim(100.0), (Cylinder("rod", Dim(14.0), 0.0, 100.0),), centres=CENTRES)
    options, _ = between_options(plain, made, jobs_of(plain), 14.0, shop_r)
    option = next(one for one in options if one.free == "A")
    part = Part("p", "turned", "mild steel", 1, plain)
    bench = Bench(part, plain, plain, option, shop_r, Workpiece(((0.0, -100.0, 14.0),)), 1, {})

    assert give(bench, bench.work, -30.0) == pytest.approx(
        deflection("centres", 1.0, 70.0, 100.0, 14.0, material("mild steel").modulus), rel=1e-9
    )
    assert give(bench, bench.work, 0.0) == pytest.approx(0.0, abs=1e-15)
