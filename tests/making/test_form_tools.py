"""Owned form tools: radius tools for rounded edges and coves, pointed tools for vees; the dry run has their true form."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest
from shapely import Point, Polygon
from shapely.ops import unary_union

from tommybar.dryrun.form_shapes import hollow_form, pointed_form, round_form
from tommybar.shapes.features import Arc, Cylinder, Dim, Groove
from tommybar.shop.model import Tool

from .turned import clean, routed, shape, steps

BAR = Cylinder("bar", Dim(30.0, "p.bar"), 0.0, 40.0)


def form(leaves: str, radius: float, **more: float) -> Tool:
    return Tool("R", "form", "both", "HSS", radius=radius, leaves=leaves, **more)


@pytest.fixture
def with_tool(shop_r):
    """Shop R with one more tool."""
    return lambda tool: replace(shop_r, tools=(*shop_r.tools, tool))


ENDS = shape(
    Cylinder("big", Dim(30.0, "p.big"), 0.0, 10.0, round_start=3.0), Cylinder("pin", Dim(20.0), 10.0, 30.0)
)


def test_an_edge_of_the_tools_radius_is_rounded_in_one_plunge(with_tool):
    making, run = clean(ENDS, with_tool(form("round", 3.0)))
    (step,) = [s for s in steps(making, "big") if s.tool_kind in ("form", "file")]

    assert step.tool_kind == "form" and step.big == "3" and step.tool_letter == "R"
    assert run.surplus_volume < 0.5


@pytest.mark.parametrize("tool", [form("round", 2.5), form("hollow", 3.0)])
def test_a_tool_of_another_radius_or_the_other_form_is_left_in_the_drawer(with_tool, tool):
    making, _ = clean(ENDS, with_tool(tool))

    assert [s.tool_kind for s in steps(making, "big")][-1] == "file"


COVE = shape(
    Cylinder("front", Dim(20.0), 0.0, 10.0),
    Arc("cove", 10.0, 16.0, 20.0, 20.0, 4.0, "in", "cove"),
    Cylinder("back", Dim(20.0), 16.0, 34.0),
)


def test_a_cove_of_the_tools_radius_is_one_plunge_to_its_floor(with_tool):
    """Radius 4 across 6: floor at 20 - 2 (4 - sqrt(16 - 9)) = 17.29, in (20 - 17.29) / 2 / 0.02 = 67.7 divisions."""
    making, run = clean(COVE, with_tool(form("hollow", 4.0)))
    (step,) = steps(making, "cove")

    assert step.tool_kind == "form"
    assert min(m.r for m in step.moves) == pytest.approx((20 - 2 * (4 - math.sqrt(7))) / 2)
    assert "67.5 div" in step.dial[1] and "to 17.29" in step.dial[1]
    assert run.surplus_volume < 0.5


def test_a_cove_against_a_wall_is_not_cut_with_a_wider_round(with_tool):
    """The round of 4 across 6 would go 1 into the wall of 26 behind it: the table and the file make it."""
    walled = replace(COVE, outside=(*COVE.outside[:2], Cylinder("back", Dim(26.0), 16.0, 34.0)))
    making, _ = clean(walled, with_tool(form("hollow", 4.0)))

    assert "form" not in {s.tool_kind for s in steps(making, "cove")}


@pytest.mark.parametrize(("reach", "kind"), [(0.0, "form"), (2.5, "form"), (2.2, "groove")])
def test_a_form_tool_goes_no_deeper_than_it_reaches(with_tool, reach, kind):
    """2 deep and 0.5 of daylight; where no reach is written, twice its radius of 2."""
    hollow = shape(
        Cylinder("front", Dim(20.0), 0.0, 10.0), Arc("cove", 10.0, 14.0, 20.0, 20.0, 2.0, "in", "cove"),
        Cylinder("back", Dim(20.0), 14.0, 34.0),
    )  # fmt: skip
    making, _ = clean(hollow, with_tool(form("hollow", 2.0, reach=reach)))

    assert steps(making, "cove")[0].tool_kind == kind


@pytest.mark.parametrize(
    ("wide", "deep", "letter"), [(2.0, 2.0 / 2 / math.tan(math.radians(30)), "N"), (2.0, 1.0, "K")]
)
def test_a_vee_groove_is_cut_with_the_pointed_tool_of_its_angle(shop_r, wide, deep, letter):
    """60 deg: the threading tool; 90 deg: the chamfering tool. Half the width over the depth is the tangent of half."""
    groove = Groove("vee", 12.0, 12.0 + wide, 30.0 - 2 * deep, 0.0, "vee")
    long = replace(BAR, end=60.0)
    making, run = clean(shape(long, grooves=(groove,)), shop_r)
    (step,) = steps(making, "vee")

    assert (step.tool_kind, step.tool_letter) == ("form", letter)
    assert run.surplus_volume < 0.5


def test_a_vee_of_another_angle_is_stepped_out_and_filed(shop_r):
    groove = Groove("vee", 12.0, 14.0, 26.0, 0.0, "vee")
    making, _ = clean(shape(replace(BAR, end=60.0), grooves=(groove,)), shop_r)

    assert [s.tool_kind for s in steps(making, "vee")] == ["groove", "file"]


def test_a_round_groove_is_cut_with_the_round_of_its_radius(with_tool):
    """4 wide and 1 deep is a round of (2 x 2 + 1) / 2 = 2.5."""
    groove = Groove("ring", 12.0, 16.0, 28.0, 0.0, "round")
    making, _ = clean(shape(replace(BAR, end=60.0), grooves=(groove,)), with_tool(form("hollow", 2.5)))

    assert [s.tool_kind for s in steps(making, "ring")] == ["form"]


def test_a_long_edge_in_the_cut_is_cautioned(with_tool):
    """6 wide at once; 4 wide is not."""
    making, _ = routed(COVE, with_tool(form("hollow", 4.0)))

    assert any("if it hums" in line for line in steps(making, "cove")[0].cautions)


def test_what_a_rounding_tool_leaves_is_a_quarter_of_a_circle():
    """Its slices and the circle fill the square to its lips, and share nothing; a chord of 48 is 0.0004 off at most."""
    cut, _, _ = round_form(3.0, 8.0, False)
    whole = unary_union([Polygon(one) for one in cut])
    circle = Point(0, 0).buffer(3.0, quad_segs=480)

    assert whole.intersection(circle).area < 2e-3
    assert whole.area == pytest.approx(3.4**2 - math.pi * 9 / 4, abs=3e-3)
    mirrored, _, _ = round_form(3.0, 8.0, True)
    assert max(float(z) for one in mirrored for z, _ in one) <= 1e-9


def test_the_reference_of_a_hollow_and_a_point_is_their_lowest_place():
    for cut, _, _ in (hollow_form(2.0, 8.0, 6.0, ()), pointed_form(60.0, 8.0, 20.0)):
        assert min(float(r) for one in cut for _, r in one) == pytest.approx(0.0)
    ((point,), _, _) = pointed_form(60.0, 8.0, 20.0)
    slope = [(float(z), float(r)) for z, r in point if r > 1.0]
    assert all(math.degrees(math.atan2(abs(z), r)) == pytest.approx(30.0) for z, r in slope)
