"""Grooves in bores, edges in valleys, form tools and holes across fits, at random: told with a figure, or cut clean."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st

from tommybar.design.model import Part
from tommybar.dryrun import run_part
from tommybar.making.as_machined import as_drilled
from tommybar.making.parts import route_part
from tommybar.making.route_check import route_faults
from tommybar.shapes.features import Arc, Bore, BoreGroove, Cone, CrossHole, Cylinder, Dim, TurnedShape
from tommybar.shop import load_shop
from tommybar.shop.model import Tool

SHOP = load_shop(Path(__file__).parents[2] / "examples" / "shops" / "shop-r.yaml")
FEW = settings(max_examples=12, deadline=None, suppress_health_check=[HealthCheck.too_slow], derandomize=True)


def part_of(*lands: object, **features: object) -> Part:
    """A brass part of those lands."""
    shape = TurnedShape(Dim(lands[-1].end, "p.length"), lands, **features)  # type: ignore[attr-defined]
    return Part("p", "turned", "free-cutting brass", 1, shape, ())


def told_or_clean(part: Part, shop: object) -> tuple[set[int], set[int]]:
    """Stops of the route and of its dry run; a route without a stop must replay."""
    making = route_part(part, {}, shop)
    stops = {f.number for f in making.findings if f.severity == "stop"}
    if not making.cards:
        return stops, set()
    if not stops:
        assert route_faults(part, making.cards, shop) == ()
    run = run_part(as_drilled(part, shop), making.blank, making.cards, shop)
    return stops, {f.number for f in run.findings if f.severity == "stop"}


@st.composite
def sleeves(draw):
    """A sleeve, its bore through or blind, one groove in it, and a tool that may or may not do it."""
    bore = draw(st.sampled_from([10.0, 12.0, 14.0, 20.0]))
    long = draw(st.integers(20, 50)) / 1.0
    through = draw(st.booleans())
    depth = long if through else draw(st.integers(10, int(long) - 6)) / 1.0
    wide, deep = draw(st.integers(8, 40)) / 10, draw(st.integers(2, 20)) / 10
    start = draw(st.integers(1, max(1, int(depth - wide) - 1))) / 1.0
    assume(start + wide <= depth)
    hole = Bore("bore", Dim(bore, "p.bore"), "A", depth, through, "flat")
    part = part_of(
        Cylinder("body", Dim(bore + 16.0, "p.body"), 0.0, long),
        bores=(hole,), bore_grooves=(BoreGroove("groove", "bore", start, start + wide, bore + 2 * deep),),
    )  # fmt: skip
    shank = draw(st.sampled_from([4.0, 6.0, 8.0]))
    cuts = draw(st.sampled_from([0.8, 1.5, 2.0]))
    tool = Tool(
        "P", "inside groove", "right", "HSS", width=draw(st.sampled_from([0.8, 1.0, 2.0])),
        reach=draw(st.sampled_from([15.0, 25.0, 60.0])), smallest_bore=shank + cuts + 0.6, shank=shank, cuts_deep=cuts,
    )  # fmt: skip
    return part, tool


@given(sleeves())
@FEW
def test_a_groove_in_a_bore_is_told_or_cut_clean(drawn):
    """A tool that fits by its four figures never meets metal on the half-section; one that does not is told."""
    part, tool = drawn
    bar = Tool("Q", "boring", "right", "HSS", 0.2, reach=60.0, smallest_bore=7.0, shank=6.0)
    shop = replace(SHOP, tools=(*SHOP.tools, tool, bar))
    stops, met = told_or_clean(part, shop)

    assert stops <= {429, 418}
    assert bool(stops) or met == set()


@given(st.integers(10, 120), st.integers(2, 60), st.integers(3, 15), st.booleans())
@FEW
def test_the_edges_of_a_valley_are_told_or_cut_clean(wide, deep, edge, falls):
    """Any width, depth and size of edge: no grip reaches it, or the point goes in without touching a flange."""
    high, low, at = 40.0, 40.0 - deep / 5, wide / 10
    size = edge / 10
    lands: tuple[object, ...] = (
        Cylinder("front", Dim(high, "p.front"), 0.0, 6.0, size, size),
        Cylinder("core", Dim(low), 6.0, 6.0 + at),
        Cylinder("back", Dim(high), 6.0 + at, 26.0 + at, size, size),
    )
    if falls and at > 2:
        lands = (lands[0], Cone("slope", 6.0, 6.0 + at / 3, high - 2 * size, low),
                 Cylinder("core", Dim(low), 6.0 + at / 3, 6.0 + at), lands[2])  # fmt: skip
    assume(low < high - 2 * size - 0.1)
    stops, met = told_or_clean(part_of(*lands), SHOP)

    assert stops <= {302, 427, 904}
    assert bool(stops) or met == set()


@given(st.integers(4, 30), st.integers(3, 12), st.sampled_from([0.0, 1.0, 2.0, 3.0]))
@FEW
def test_a_form_tool_of_the_drawn_radius_cuts_clean(wide, radius, rounded):
    """A cove across any width up to the round's own, and an edge with a tool of its radius."""
    across, at = wide / 2, float(radius)
    assume(across < 1.9 * at)
    cove = part_of(
        Cylinder("front", Dim(40.0, "p.front"), 0.0, 12.0, round_start=rounded),
        Arc("cove", 12.0, 12.0 + across, 40.0, 40.0, at, "in", "cove"),
        Cylinder("back", Dim(40.0), 12.0 + across, 40.0 + across),
    )
    tools = [Tool("X", "form", "both", "HSS", radius=at, leaves="hollow")]
    tools += [Tool("Y", "form", "both", "HSS", radius=rounded, leaves="round")] if rounded else []
    stops, met = told_or_clean(cove, replace(SHOP, tools=(*SHOP.tools, *tools)))

    assert stops <= {427} and (bool(stops) or met == set())


@given(st.integers(2, 6), st.integers(8, 16), st.integers(30, 50), st.sampled_from([1, 2]))
@FEW
def test_holes_across_a_fit_leave_cards_in_one_row(hole, pin, place, walls):
    """Wherever the hole comes, the cards are numbered through, their steps keyed to them, and the turning is clean."""
    assume(hole < pin / 2)
    shaft = part_of(
        Cylinder("tail", Dim(12.0, "p.tail"), 0.0, 20.0),
        Cylinder("collar", Dim(20.0), 20.0, 26.0),
        Cylinder("pin", Dim(float(pin), "p.pin", "f7", pin - 0.03, pin - 0.01), 26.0, 56.0),
        cross_holes=(CrossHole("eye", Dim(float(hole), "p.eye"), float(place), 0.0, walls),),
    )
    making = route_part(shaft, {}, SHOP)
    stops, met = told_or_clean(shaft, SHOP)

    assert [card.number for card in making.cards] == list(range(1, len(making.cards) + 1))
    assert all(step.key.startswith(f"p/{card.number}/") for card in making.cards for step in card.steps)
    assert sum("eye" in {step.feature for step in card.steps} for card in making.cards) >= 1
    assert stops or met == set()
