"""Whatever turned part is drawn: it is refused with its figure, or its route replays and its dry run is clean."""

from __future__ import annotations

import math
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st

from tommybar.alternatives import other_ways
from tommybar.design.model import Part, RunoutNeed
from tommybar.dryrun import run_part
from tommybar.making.as_machined import as_drilled
from tommybar.making.parts import route_part
from tommybar.making.route_check import route_faults
from tommybar.refusals import Refusal
from tommybar.shapes.features import Arc, Bore, CentreHole, Cone, Cup, Cylinder, Dim, Groove, TurnedShape
from tommybar.shapes.profile import profile
from tommybar.shop import load_shop

SHOPS = Path(__file__).parents[2] / "examples" / "shops"
FEW = settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.too_slow], derandomize=True)


H7 = {3: 0.010, 5: 0.012, 6: 0.012, 8: 0.015, 10: 0.015, 14: 0.018, 20: 0.021}  # ISO 286-2, EI = 0 [mm]


@st.composite
def turned_parts(draw):
    """Stepped parts of one to four lands: slender to stout, with or without limits, screws, grooves, holes of any kind."""
    largest = draw(st.sampled_from([4, 8, 12, 20, 40, 80]))
    sizes = draw(
        st.lists(st.integers(largest, 2 * largest), min_size=1, max_size=4).map(lambda n: [d / 2 for d in n])
    )
    if draw(st.booleans()):
        sizes.sort()  # without a valley between two larger lands, which asks for a blade
    lengths = [draw(st.integers(4, min(100, 3 * largest))) / 2 for _ in sizes]
    lands, grooves, z = [], [], 0.0
    for n, (dia, long) in enumerate(zip(sizes, lengths, strict=True)):
        thread = draw(st.sampled_from(["", "", f"M{dia:g}"])) if dia in (4, 5, 6, 8, 10) else ""
        limits = (dia - 0.03, dia) if not thread and draw(st.booleans()) else (None, None)
        before = sizes[n - 1] if n else 0.0
        edge = 0.5 if dia - before >= 4 and long >= 3 and draw(st.booleans()) else 0.0
        zone = "h9" if limits[0] else ""
        lands.append(
            Cylinder(f"land_{n}", Dim(dia, f"p.land_{n}", zone, *limits), z, z + long, edge, thread=thread)
        )
        if long >= 6 and dia >= 6 and draw(st.booleans()):
            grooves.append(Groove(f"groove_{n}", z + long - 1.5, z + long, dia - 1.6))
        z += long
    bores = draw(holes(min(sizes), z))
    needs = ()
    if bores and draw(st.booleans()):
        needs = (RunoutNeed("land_0", "bore", draw(st.sampled_from([0.02, 0.05, 0.2]))),)
    shape = TurnedShape(Dim(z, "p.length"), tuple(lands), tuple(grooves), bores=bores)
    material = draw(st.sampled_from(["mild steel", "free-cutting brass", "silver steel"]))
    return Part("p", "turned", material, 1, shape, needs)


@st.composite
def holes(draw, thinnest, length):
    """No hole, or one through or blind, flat or as drilled, with limits or none, with a wider mouth or none."""
    size = draw(st.sampled_from([0, 1, 3, 5, 6, 8, 10, 14, 20]))
    if not 0 < size <= thinnest - 3:
        return ()
    limits = (size, size + H7[size]) if size in H7 and draw(st.booleans()) else (None, None)
    dim = Dim(size, "p.bore", "H7" if limits[0] else "", *limits)
    through = draw(st.booleans())
    depth = length if through else max(1.0, round(length * draw(st.sampled_from([0.2, 0.5, 0.8])), 1))
    face = "A" if through else draw(st.sampled_from(["A", "B"]))
    bores = (Bore("bore", dim, face, depth, through, draw(st.sampled_from(["flat", "drill"]))),)
    if size + 4 <= thinnest - 3 and depth > 6 and draw(st.booleans()):
        bores = (*bores, Bore("mouth", Dim(size + 4.0, "p.mouth"), face, 3.0, False, "flat"))
    return bores


@st.composite
def shaped_parts(draw):
    """Parts of cylinders, cones and curves in any order, with rounded edges, grooves of any form, cups and centres."""
    sizes = [draw(st.integers(8, 40)) / 1.0 for _ in range(draw(st.integers(2, 5)))]
    lands, z = [], 0.0
    for n, dia in enumerate(sizes):
        long = draw(st.integers(4, 24)) / 1.0
        kind = draw(st.sampled_from(["cylinder", "cylinder", "cone", "point", "dome", "cove", "ball"]))
        before = sizes[n - 1] if n else dia / 2
        if kind == "cone" and abs(before - dia) > 1 and abs(before - dia) < 6 * long:
            lands.append(Cone(f"land_{n}", z, z + long, before, dia))
        elif kind == "point" and n == 0:
            lands.append(Cone("land_0", z, z + long, 0.0, dia))
        elif kind in ("dome", "cove") and abs(before - dia) > 1:
            radius = (before - dia) ** 2 / 8 / long + long / 2 + draw(st.integers(8, 40))
            shift = math.hypot(long, (before - dia) / 2)
            lands.append(_curve(f"land_{n}", z, long, before, dia, max(radius, shift), kind))
        elif kind == "ball" and n == 0:
            neck = dia / 3
            long = dia / 2 + math.sqrt(dia**2 - neck**2) / 2
            lands.append(Arc("land_0", z, z + long, 0.0, neck, dia / 2, "out", "ball"))
        else:
            rounded = 1.0 if n == 0 and draw(st.booleans()) else 0.0
            lands.append(Cylinder(f"land_{n}", Dim(dia, f"p.land_{n}"), z, z + long, round_start=rounded))
        z += long
    last = lands[-1]
    flat = isinstance(last, Cylinder) and last.dia.value >= 8
    cups = (Cup("cup", "B", 4.0, 90.0, 1.0, 0.5),) if flat and draw(st.booleans()) else ()
    centres = (CentreHole("centre", "B", "A", 1.6),) if flat and not cups and draw(st.booleans()) else ()
    grooves = []
    if flat and last.end - last.start >= 8:
        form = draw(st.sampled_from(["square", "round", "vee"]))
        grooves = [Groove("groove", last.start + 3, last.start + 6, last.dia.value - 2, 0.0, form)]
    shape = TurnedShape(Dim(z, "p.length"), tuple(lands), tuple(grooves), cups=cups, centres=centres)
    try:
        profile(shape)
    except Refusal:
        assume(False)
    return Part("p", "turned", draw(st.sampled_from(["mild steel", "free-cutting brass"])), 1, shape, ())


def _curve(name, z, long, start, end, radius, kind):
    return Arc(name, z, z + long, start, end, radius, "out" if kind == "dome" else "in", kind)


@pytest.fixture(scope="module")
def shops():
    """The example shops by name."""
    return {path.stem: load_shop(path) for path in SHOPS.glob("*.yaml")}


@FEW
@given(part=turned_parts(), name=st.sampled_from(["shop-r", "small-bench"]))
def test_refused_with_a_figure_or_made_cleanly(shops, part, name):
    """What is stopped carries a whole finding; what is not replays, and its dry run is clean but for a drill too short.

    Metal is kept in either case: what is removed, what falls off and what is left make up the blank.
    """
    shop = shops[name]
    making = route_part(part, {}, shop)
    stops = [f for f in making.findings if f.severity == "stop"]
    for stop in stops:
        assert stop.part == "p"
        assert stop.number and stop.words and stop.remedy
        assert stop.figure or stop.bound or stop.feature
    if not making.cards:
        assert stops
        return
    run = run_part(as_drilled(part, shop), making.blank, making.cards, shop)
    away = sum(card.separated_volume for card in run.cards)
    assert run.removed_volume + away + run.left_volume == pytest.approx(run.blank_volume, rel=1e-6)
    if stops:
        return
    assert route_faults(part, making.cards, shop) == ()
    assert {f.number for f in run.findings if f.severity == "stop"} <= {504}


@settings(FEW, max_examples=40)
@given(part=shaped_parts())
def test_cones_and_curves_are_refused_with_a_figure_or_made_cleanly(shops, part):
    """The same for cones, points, domes, coves, balls, rounded edges, formed grooves, cups and centre holes."""
    test_refused_with_a_figure_or_made_cleanly.hypothesis.inner_test(shops, part, "shop-r")


@FEW
@given(part=turned_parts())
def test_a_further_device_never_takes_a_route_away(shops, part):
    """What can be made without the collets can be made with them."""
    rich = shops["shop-r"]
    poor = replace(rich, jaws=tuple(j for j in rich.jaws if j.device != "collets"))

    if route_part(part, {}, poor).cards:
        assert route_part(part, {}, rich).cards


@FEW
@given(part=turned_parts())
def test_a_looser_need_never_takes_a_route_away(shops, part):
    """With every run-out need ten times as wide there is still a route, and no more stops."""
    loose = replace(part, needs=tuple(replace(n, within=10 * n.within) for n in part.needs))
    tight, wide = (route_part(one, {}, shops["shop-r"]) for one in (part, loose))

    if tight.cards:
        assert wide.cards
        assert sum(f.severity == "stop" for f in wide.findings) <= sum(
            f.severity == "stop" for f in tight.findings
        )


@settings(FEW, max_examples=25)
@given(part=turned_parts(), within=st.sampled_from([0.03, 0.2]))
def test_no_route_that_does_without_a_holding_weighs_less(shops, part, within):
    """Taking a holding away never makes it better; what is found replays, and does not hold so."""
    lands = [one.name for one in part.shape.outside]
    if len(lands) > 1:
        part = replace(part, needs=(*part.needs, RunoutNeed(lands[0], lands[-1], within)))
    for asked in other_ways(part, shops["shop-r"]):
        for way in asked.ways:
            assert way.weight >= 0 or not asked.proven
            assert way.holding != asked.holding
            if not any(f.severity == "stop" for f in route_part(part, {}, shops["shop-r"]).findings):
                assert route_faults(part, way.cards, shops["shop-r"]) == ()
