"""Curves by tables, valleys and stems by the blade, rounded edges, grooves of any form; the dry run has them exactly."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from tommybar.making.contours import Contour, land_contour
from tommybar.making.forms import SKIN, table
from tommybar.making.grips import Option
from tommybar.making.jobs import jobs_of
from tommybar.making.reach import blades_of, reached, valleys
from tommybar.shapes.features import Arc, Cone, Cylinder, Dim, FaceGroove, Groove, Recess

from .turned import clean, routed, shape, steps

BODY = Cylinder("body", Dim(20.0, "p.body"), 10.0, 30.0)
DOME = Arc("dome", 0.0, 10.0, 0.0, 20.0, 10.0, "out", "dome")
KNOB_LONG = 10 + math.sqrt(100 - 16)  # a ball of 20 on a neck of 8
KNOB = shape(
    Arc("ball", 0.0, KNOB_LONG, 0.0, 8.0, 10.0, "out", "ball"),
    Cylinder("neck", Dim(8.0), KNOB_LONG, KNOB_LONG + 8),
    Cylinder("shank", Dim(16.0), KNOB_LONG + 8, KNOB_LONG + 30),
)
TOP = shape(
    Cone("tip", 0.0, 6.0, 0.0, 4.0),
    Cylinder("disc", Dim(28.0), 6.0, 14.0),
    Cylinder("stem", Dim(4.0), 14.0, 28.0),
)


def test_no_row_of_a_table_lies_below_the_curve():
    """r^2 = 100 - (z + 10)^2 for a dome of 10: every cut stops over the curve, by no more than its skin."""
    over = [
        r - math.sqrt(100 - (stop + 10) ** 2)
        for r, stop in table(land_contour(DOME, 30.0, "A"), 10.0, 1.0)
        if stop > -9.9
    ]

    assert len(over) > 10
    assert min(over) > 0.01 and max(over) <= SKIN + 1e-6


def test_a_dome_is_stepped_out_filed_and_comes_out_as_drawn(shop_r):
    """Knife by the table, then the file with its cautions; what is left is within the limits of the dry run."""
    making, run = clean(shape(DOME, BODY), shop_r)
    stepped, filed = steps(making, "dome")

    assert stepped.tool_kind == "knife" and len(stepped.passes) >= 12
    assert all("stop at Z" in cut.dial for cut in stepped.passes)
    assert filed.tool_kind == "file"
    assert any("never wrapped round the work" in line for line in filed.cautions)
    assert run.surplus_volume < 0.5 and run.missing_volume == 0


def test_what_the_file_forgets_is_forgotten_metal(shop_r):
    """Without the file's step the steps of the table stand: the dry run says so."""
    from tommybar.design.model import Part
    from tommybar.dryrun import run_part

    making, _ = clean(shape(DOME, BODY), shop_r)
    cards = tuple(
        replace(card, steps=tuple(s for s in card.steps if s.tool_kind != "file")) for card in making.cards
    )
    run = run_part(
        Part("p", "turned", "free-cutting brass", 1, shape(DOME, BODY)), making.blank, cards, shop_r
    )

    assert 507 in {f.number for f in run.findings}


def test_a_ball_is_shared_by_knife_and_blade_and_its_neck_comes_last(shop_r):
    """The half towards the chuck falls: a blade takes it, and the neck when the ball is done."""
    making, _ = clean(KNOB, shop_r)
    kinds = [(s.feature, s.tool_kind) for c in making.cards for s in c.steps if s.feature in ("ball", "neck")]

    assert kinds[-5:] == [
        ("ball", "knife"),
        ("ball", "groove"),
        ("ball", "file"),
        ("neck", "knife"),
        ("neck", "groove"),
    ]


def test_a_cove_between_larger_lands(shop_r):
    """Hollow of radius 6 across 10: floor at 20 - 2 (6 - sqrt(36 - 25)) = 14.63."""
    cove = shape(
        Cylinder("front", Dim(20.0), 0.0, 10.0),
        Arc("cove", 10.0, 20.0, 20.0, 20.0, 6.0, "in", "cove"),
        Cylinder("back", Dim(20.0), 20.0, 40.0),
    )
    making, _ = clean(cove, shop_r)

    assert float(steps(making, "cove")[0].big) == pytest.approx(20 - 2 * (6 - math.sqrt(11)), abs=0.02)


VALLEY = shape(
    Cylinder("front", Dim(20.0), 0.0, 10.0),
    Cylinder("waist", Dim(12.0), 10.0, 20.0),
    Cylinder("back", Dim(20.0), 20.0, 40.0),
)


def test_a_valley_is_plunged_by_a_blade_that_reaches(shop_r):
    """4 mm deep: the groove tool reaches 2.5, the parting blade 14."""
    making, _ = clean(VALLEY, shop_r)
    (step,) = steps(making, "waist")

    assert step.tool_letter == "G"
    assert step.tool_kind == "groove"  # a plunge, no parting


def test_without_a_blade_a_valley_is_refused_with_what_there_is(shop_r):
    """The groove tool alone reaches 2.5 of the 4 mm."""
    poor = replace(shop_r, tools=tuple(t for t in shop_r.tools if t.kind != "parting"))
    making, _ = routed(VALLEY, poor)
    (found,) = [f for f in making.findings if f.number == 904]

    assert found.severity == "stop" and "1 wide, 2.5 deep" in found.bound


@pytest.mark.parametrize(
    ("lands", "low"),
    [
        ((20.0, 12.0, 20.0), ("land_1",)),
        ((12.0, 20.0, 12.0), ()),
        ((20.0, 12.0, 10.0, 16.0), ("land_1", "land_2")),
    ],
)
def test_which_lands_lie_between_larger_ones(lands, low):
    """By eye."""
    made = [Cylinder(f"land_{n}", Dim(dia), 10.0 * n, 10.0 * n + 10) for n, dia in enumerate(lands)]

    assert valleys(shape(*made)) == low


def test_a_waist_of_two_cones_is_a_valley():
    """Neither end shows either of them rising in the open."""
    waist = shape(
        Cylinder("front", Dim(20.0), 0.0, 10.0),
        Cone("down", 10.0, 20.0, 20.0, 12.0),
        Cone("up", 20.0, 30.0, 12.0, 20.0),
        Cylinder("back", Dim(20.0), 30.0, 50.0),
    )

    assert valleys(waist) == ("down", "up")


def test_a_finger_top_has_its_stem_last_in_the_grip_of_its_disc(shop_r):
    """Bar 30, tip outwards, 28 + 1 + a saw cut and room stand out; the blade reaches (28 - 4) / 2 = 12 of its 14."""
    making, _ = clean(TOP, shop_r)
    first = making.cards[0]
    order = [s.feature for s in first.steps]

    assert making.blank is not None and making.blank.size == 30
    assert first.free_end == "A" and 32 <= first.hold.sticks_out <= 36
    assert max(n for n, f in enumerate(order) if f in ("disc", "tip")) < order.index("stem")
    assert set(order[order.index("stem") :]) == {"stem", "sawing"}  # only the cut from the stub follows
    assert any(s.do.startswith("Rough the bar over stem") for s in first.steps)
    assert "12.2 below what stands beside it" in steps(making, "stem")[-1].dial[1]


def test_a_blade_too_short_for_the_stem_is_not_used(shop_r):
    """11 of reach for 12 mm: the stem is turned from the other end."""
    short = replace(
        shop_r, tools=tuple(replace(t, reach=11.0) if t.kind == "parting" else t for t in shop_r.tools)
    )
    making, _ = routed(TOP, short)

    assert all(s.tool_kind != "groove" for s in steps(making, "stem"))


def test_rounded_edges_are_filed_and_large_ones_stepped_first(shop_r):
    """3 mm by table and file, 1 mm by file alone."""
    part = shape(Cylinder("body", Dim(20.0, "p.body"), 0.0, 30.0, round_start=3.0, round_end=1.0))
    making, _ = clean(part, shop_r)
    kinds = [(s.tool_kind, s.big) for s in steps(making, "body")]

    assert kinds == [("knife", "3"), ("file", "3"), ("file", "1")]


@pytest.mark.parametrize("form", ["square", "round", "vee"])
def test_grooves_of_any_form(shop_r, form):
    """6 wide to 34 in a rim of 40."""
    part = shape(
        Cylinder("rim", Dim(40.0, "p.rim"), 0.0, 20.0), grooves=(Groove("rope", 7.0, 13.0, 37.0, 0.0, form),)
    )
    making, _ = clean(part, shop_r)

    assert ("file" in {s.tool_kind for s in steps(making, "rope")}) == (form != "square")


def test_a_ring_groove_in_a_face_and_a_recess_with_leaning_walls(shop_r):
    """Groove 20 to 26 is 3 wide, just the tool; its outer wall of radius 13 asks for 13 - sqrt(169 - 64) = 2.75 of relief."""
    part = shape(
        Cylinder("rim", Dim(40.0, "p.rim"), 0.0, 20.0),
        face_grooves=(FaceGroove("seal", "A", 20.0, 26.0, 4.0),),
        recesses=(Recess("dish", "B", 12.0, 34.0, 5.0, 0.5, 3.0, 3.0),),
    )
    making, _ = clean(part, shop_r)

    assert any("relieved by 2.75 mm" in f.words for f in making.findings if f.number == 421)
    assert any("Walls lean" in line for line in steps(making, "dish")[0].dial)


def test_a_contour_between_its_points():
    """Straight between (0, 5) and (-10, 10): at -5 it is 7.5, and the most over a blade is at its left corner."""
    line = Contour(((0.0, 5.0), (-10.0, 10.0)))

    assert line.at(-5.0) == pytest.approx(7.5)
    assert line.most(-2.0, -4.0) == pytest.approx(7.0)


def test_a_valley_waits_for_what_stands_in_front_of_it(shop_r):
    """The screw in front cannot be made in this grip, so neither is the valley behind it: a blade would weaken both."""
    part = shape(
        Cylinder("head", Dim(20.0), 0.0, 10.0),
        Cylinder("screw", Dim(8.0), 10.0, 20.0, thread="M8"),
        Cylinder("waist", Dim(7.0), 20.0, 30.0),
        Cylinder("body", Dim(20.0), 30.0, 60.0),
    )
    jaws = next(j for j in shop_r.jaws if j.name == "inside jaws")
    grip = Option(jaws, "three-jaw", "blank", 22.0, 25.0, "A", -65.0, "", 0.08, 0.0)
    plain = replace(
        part, outside=(part.outside[0], Cylinder("screw", Dim(8.0), 10.0, 20.0), *part.outside[2:])
    )

    assert "waist" not in reached(grip, part, jobs_of(part), frozenset(), blades_of(shop_r))
    assert {"screw", "waist"} <= reached(grip, plain, jobs_of(plain), frozenset(), blades_of(shop_r))


def test_a_hollow_that_is_lowest_between_its_ends_is_cut_by_the_blade(shop_r):
    """Two arcs of 4.6 over 4 by 2: the first dips by its sagitta below the line, 12 at its end, and rises to 16."""
    dipping = shape(
        Cylinder("rod", Dim(12.0), 0.0, 10.0),
        Arc("low", 10.0, 14.0, 12.0, 16.0, 4.6, "in", "ogee"),
        Arc("high", 14.0, 18.0, 16.0, 20.0, 4.6, "out", "ogee"),
        Cylinder("back", Dim(20.0), 18.0, 35.0),
    )
    making, _ = clean(dipping, shop_r)

    assert [s.tool_kind for s in steps(making, "low")][-2:] == ["groove", "file"]


def test_a_groove_too_deep_for_the_groove_tool_is_cut_with_the_parting_blade(shop_r):
    """2 wide and 8 deep: the groove tool reaches 2.5, the blade of 2.0 reaches 14; 2 deep stays with the groove tool."""
    for floor, letter in ((24.0, "G"), (36.0, "J")):
        bar = shape(Cylinder("bar", Dim(40.0), 0.0, 30.0), grooves=(Groove("ring", 12.0, 14.0, floor),))
        making, _ = clean(bar, shop_r)
        (step,) = steps(making, "ring")
        assert step.tool_letter == letter


def test_leaning_walls_of_a_recess_keep_nothing_of_the_tools_nose(shop_r):
    """A nose of 0.2 on a wall that leans 5 deg stands 0.2 (sin 5 + cos 5 - 1) = 0.017 off it; a skin of 0.012 is told."""
    dish = shape(
        Cylinder("rim", Dim(80.0), 0.0, 12.0), recesses=(Recess("dish", "A", 36.0, 64.0, 3.0, 0.3, 5.0, 5.0),)
    )
    _, run = clean(dish, shop_r)

    assert run.surplus_volume < 3.0


def test_a_rounded_edge_stays_clear_of_the_jaws_that_hold_its_land(shop_r):
    """A land of 10 with a round of 3: jaws 8 deep would lie under the round."""
    ends = shape(
        Cylinder("big", Dim(30.0), 0.0, 10.0, round_start=3.0),
        Cylinder("pin", Dim(20.0), 10.0, 30.0, round_end=1.5),
    )
    making, _ = clean(ends, shop_r)

    assert [c.hold.surface for c in making.cards][-1] != "big"
