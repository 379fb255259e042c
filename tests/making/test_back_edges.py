"""Edges between two larger lands, and mouths of bores on the floor of wider ones: in the grip that opens them."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tommybar.making.jobs import jobs_of
from tommybar.making.valley_edges import point_fits, valley_beside
from tommybar.shapes.features import Bore, BoreTaper, Cone, Cylinder, Dim

from .turned import clean, routed, shape, steps

PIERCED = (Bore("bore", Dim(6.0, "p.bore"), "A", 20.0, True),)


def pulley(wide: float, core: float = 20.0):
    """Two flanges of 30 with all their edges broken 0.5, a core between them."""
    return shape(
        Cylinder("front", Dim(30.0, "p.front"), 0.0, 4.0, 0.5, 0.5),
        Cylinder("core", Dim(core), 4.0, 4.0 + wide),
        Cylinder("back", Dim(30.0), 4.0 + wide, 8.0 + wide, 0.5, 0.5),
        bores=(replace(PIERCED[0], depth=8.0 + wide),),
    )


def edge(turned, name):
    return next(job for job in jobs_of(turned) if job.name == name)


@pytest.mark.parametrize("wide", [4.0, 12.0])
def test_both_edges_of_a_valley_are_broken_in_the_grip_that_opens_it(shop_r, wide):
    """A 90-degree point: 0.5 + 0.2 of its flank is in the valley of 4; the dry run finds the edges as drawn."""
    making, run = clean(pulley(wide), shop_r)
    (card,) = [c for c in making.cards if any(s.feature == "core" for s in c.steps)]
    kinds = [(s.feature, s.tool_kind) for s in card.steps]
    opened = kinds.index(("core", "groove"))

    assert ("front", "chamfer") in kinds[opened:] and ("back", "chamfer") in kinds[opened:]
    assert run.surplus_volume < 1.0


def test_the_right_flank_passes_through_both_ends_of_the_chamfer(shop_r):
    """Corner at Z 4.00 on a radius of 15: the point at 4.20 and 14.3; its flank at 45 deg goes through 14.5 at 4.00."""
    making, _ = clean(pulley(12.0), shop_r)
    (step,) = [s for s in steps(making, "front") if "at its back" in s.do]
    point = min(step.moves, key=lambda m: m.r)

    assert (point.z, point.r) == pytest.approx((-4.2, 14.3))
    assert point.r + (-4.0 - point.z) == pytest.approx(14.5)


@pytest.mark.parametrize(
    ("wide", "core", "fits"),
    [(4.0, 20.0, True), (1.4, 20.0, True), (1.1, 20.0, False), (4.0, 28.2, False), (4.0, 27.9, True)],
)
def test_how_narrow_and_how_shallow_a_valley_may_be(wide, core, fits):
    """Width: 0.2 + the 0.7 that the flank rises to the flange across + 0.3 = 1.2. Depth: 15 - 0.5 - 0.2 - 0.3 = 14.0."""
    turned = pulley(wide, core)

    assert point_fits(turned, edge(turned, "front edge B"), "A", 4.0) is fits


def test_what_an_edge_looks_into():
    turned = pulley(4.0)

    assert valley_beside(turned, edge(turned, "front edge B"), "A") == (4.0, 10.0, 15.0, ("core",))
    assert valley_beside(turned, edge(turned, "back edge A"), "A") == (4.0, 10.0, 15.0, ("core",))
    assert valley_beside(turned, edge(turned, "back edge B"), "A") is None


def test_an_edge_of_a_valley_too_narrow_for_the_point_is_told(shop_r):
    """A core of 1.1, 1.5 deep, between the flanges: no grip reaches the edge, and it says which."""
    making, _ = routed(pulley(1.1, 27.0), shop_r)
    stops = [f for f in making.findings if f.severity == "stop"]

    assert stops and "front edge B" in " ".join(f.words for f in stops)


def test_the_mouth_of_a_bore_on_the_floor_of_a_wider_one_is_broken_there(shop_r):
    """Bore 12 below a counterbore of 20, 5 deep: the countersink of 16 goes in; its tip 5 + 13 / 2 = 11.5 deep."""
    body = Cylinder("body", Dim(30.0, "p.body"), 0.0, 20.0)
    stepped = shape(
        body, bores=(Bore("bore", Dim(12.0), "A", 20.0, True, edge=0.5), Bore("counter", Dim(20.0), "B", 5.0, False))
    )  # fmt: skip
    making, _ = clean(stepped, shop_r)
    sunk = [
        s for s in steps(making, "bore") if s.tool_kind == "countersink" and "floor 5.00" in " ".join(s.dial)
    ]

    assert [min(m.z for m in s.moves) for s in sunk] == [pytest.approx(-11.5)]


def test_a_mouth_where_no_countersink_goes_in_is_scraped(shop_r):
    """Below a taper that ends at 12 the mouth of 11 wants a countersink between 11 and 12; owned are 6, 10 and 16."""
    socket = shape(
        Cylinder("body", Dim(30.0, "p.body"), 0.0, 30.0),
        bores=(Bore("bore", Dim(10.0), "A", 30.0, True, edge=0.5),),
        bore_tapers=(BoreTaper("taper", "B", 0.0, 10.0, 14.0, 12.0),),
    )
    making, _ = clean(socket, shop_r)
    (scraped,) = [s for s in steps(making, "bore") if s.tool_kind == "hand"]

    assert "goes into the bore of 12 above it" in scraped.dial[0]


def top(**edges):
    """A disc of 28 with a point before it and a stem of 4 behind it, 14 long; nothing else of it is thick."""
    return shape(
        Cone("tip", 0.0, 6.0, 0.0, 4.0),
        Cylinder("disc", Dim(28.0, "p.disc"), 6.0, 14.0, **edges),
        Cylinder("stem", Dim(4.0), 14.0, 28.0),
    )


def test_a_slender_stem_is_made_last_in_the_grip_of_its_disc(shop_r):
    """Point, disc and the disc's rounded back come before the part is cut from its stub; the stem after the disc."""
    making, _ = clean(top(round_start=0.5, round_end=0.5), shop_r)
    card = making.cards[0]
    made = [(s.feature, s.tool_kind) for s in card.steps]

    assert card.free_end == "A"
    assert made.index(("disc", "knife")) < made.index(("tip", "knife")) < made.index(("stem", "groove"))
    assert [kind for feature, kind in made[made.index(("stem", "groove")) + 1 :] if feature == "disc"] == [
        "file"
    ]


def test_the_file_at_the_back_follows_the_round_from_the_land_down(shop_r):
    """Round 0.5 at the back of a 28 disc that ends 14 from the tip: from radius 14 at Z -13.5 to 13.5 at Z -14."""
    making, _ = clean(top(round_end=0.5), shop_r)
    filed = steps(making, "disc")[-1]
    cut = [m for m in filed.moves if m.r < 14.001]

    assert (cut[0].z, cut[0].r) == pytest.approx((-13.5 + 0.2, 14.0), abs=0.25)
    assert (cut[-1].z, cut[-1].r) == pytest.approx((-14.0, 13.5), abs=1e-6)
    assert "at the back" in filed.dial[0]


def test_a_chamfer_at_the_back_of_a_disc_is_cut_in_front_of_the_stub(shop_r):
    """The stub of the bar closes the gap: 14 of stem are wide enough for the point."""
    making, _ = clean(top(edge_end=0.5), shop_r)
    made = [(s.feature, s.tool_kind) for s in making.cards[0].steps]

    assert made.index(("disc", "chamfer")) > made.index(("stem", "groove"))


def test_a_stem_too_short_for_the_file_leaves_the_round_to_another_grip(shop_r):
    """A neck of 6 behind the disc: a file of 8 does not get in."""
    short = shape(
        Cylinder("disc", Dim(28.0, "p.disc"), 0.0, 14.0, round_end=0.5),
        Cylinder("neck", Dim(10.0), 14.0, 20.0),
    )
    job = next(job for job in jobs_of(short) if job.name == "disc round B")

    assert valley_beside(short, job, "A", 15.0) == (6.0, 5.0, 15.0, ("neck",))
    making, _ = clean(short, shop_r)
    assert "disc" not in [
        s.feature for s in making.cards[0].steps if s.tool_kind == "file" and making.cards[0].free_end == "A"
    ]


@pytest.mark.parametrize("low", [19.4, 19.2, 18.0])
def test_an_edge_over_a_low_step_is_broken_without_marking_the_step(shop_r, low):
    """0.3 x 45 on 20: steps to 19.4, 19.2 and 18 leave 0.0, 0.1 and 0.7 below it; the point goes 0.2 beyond at most."""
    stepped = shape(
        Cylinder("front", Dim(low), 0.0, 10.0), Cylinder("back", Dim(20.0, "p.back"), 10.0, 40.0, 0.3)
    )
    making, _ = clean(stepped, shop_r)
    (chamfered,) = [s for s in steps(making, "back") if s.tool_kind == "chamfer"]

    assert min(m.r for m in chamfered.moves) >= low / 2 - 1e-6
