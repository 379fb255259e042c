"""A mandrel between centres: for an outside that must run truer to its bore than arbor and sleeve hold it."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from tommybar.design.model import Part, RunoutNeed
from tommybar.dryrun.keep_out import fixture
from tommybar.making.bench import Bench
from tommybar.making.cards import Hold
from tommybar.making.jobs import jobs_of
from tommybar.making.mandrels import expanding_options, mandrel_options
from tommybar.making.reach import blades_of, reached
from tommybar.making.rigidity import give
from tommybar.making.route_check import route_faults
from tommybar.making.workpiece import Workpiece
from tommybar.mechanics.deflection import deflection
from tommybar.shapes.features import Bore, Cylinder, Dim
from tommybar.shop import load_shop

from .turned import routed, shape, steps

SHOP = load_shop(Path(__file__).parents[2] / "examples" / "shops" / "shop-r.yaml")
ONE = Cylinder("one", Dim(16.0, "p.one", "h6", 15.989, 16.0), 0.0, 12.0, 0.5)
FLANGE = Cylinder("flange", Dim(24.0, "p.flange"), 12.0, 18.0)
OTHER = Cylinder("other", Dim(16.0, "p.other", "h6", 15.989, 16.0), 18.0, 30.0, 0.0, 0.5)
BORE = Bore("bore", Dim(10.0, "p.bore", "H7", 10.0, 10.015), "A", 30.0, True, "drill", edge=0.3)
TRUE = (RunoutNeed("one", "bore", 0.008), RunoutNeed("other", "bore", 0.008))
SPOOL = shape(ONE, FLANGE, OTHER, bores=(BORE,))


@pytest.fixture
def no_blades(shop_r):
    """The reference shop without blades, so that the valley behind the flange wants its own grip."""
    return replace(shop_r, tools=tuple(t for t in shop_r.tools if t.kind not in ("parting", "groove")))


def made_on(shop, needs=TRUE):
    """The spool's route, without a stop, replayed and dry run."""
    making, run = routed(SPOOL, shop, "phosphor bronze", needs)
    assert run is not None
    assert [f.words for f in (*making.findings, *run.findings) if f.severity == "stop"] == []
    assert route_faults(Part("p", "turned", "phosphor bronze", 1, SPOOL, needs), making.cards, shop) == ()
    return making


def test_the_second_land_is_turned_on_a_mandrel_once_its_face_is_finished(no_blades):
    """An arbor runs out 0.012, which is over 0.008; a mandrel 0.005 (common practice, no source)."""
    making = made_on(no_blades)
    last = making.cards[-1]

    assert last.hold.device == "mandrel 10 between centres"
    assert {s.feature for s in last.steps if s.tool_kind == "knife"} == {"one"}
    assert any(s.feature == "face A" for card in making.cards[:-1] for s in card.steps)
    assert [f.expected for f in last.runout if f.of == "one"] == [0.005]


def test_a_wider_need_is_content_with_another_holding(no_blades):
    """0.05 is held by sleeve, collet or arbor."""
    making = made_on(no_blades, (RunoutNeed("one", "bore", 0.05),))

    assert not any("mandrel" in card.hold.device for card in making.cards)


def test_its_cuts_are_light(no_blades):
    """The taper alone turns the work: 0.3 deep at most, common practice."""
    making = made_on(no_blades)
    rough = next(s for s in steps(making, "one") if s.do.startswith("Rough"))

    assert max(one.infeed for one in rough.passes) <= 0.3 + 1e-6


def test_one_that_is_not_owned_is_turned_first(no_blades):
    """10.0075 in the middle of the limits, 0.01 less at its thin end, 30 / 3000 more over the bore."""
    making = made_on(replace(no_blades, mandrels=()))
    (line,) = [one for one in making.cards[-1].before_starting if "Turn the mandrel first" in one]

    assert "10.00 at its thin end, growing 0.010 over the 30" in line


@pytest.mark.parametrize(
    ("turned", "change", "words"),
    [
        (SPOOL, {"can": frozenset()}, "does not say that work is turned between centres"),
        (SPOOL, {"dogs": ()}, "no catch plate and dog for 10 mm"),
        (SPOOL, {"mandrels": (), "can": frozenset({"between centres"})}, "no mandrel of 10 mm"),
        (shape(replace(ONE, dia=Dim(42.0), end=30.0), bores=(BORE,)), {}, "4.2 x as large as its mandrel"),
        (shape(replace(ONE, end=8.0), bores=(BORE,)), {}, "8 mm of bore is short for 10 mm"),
    ],
    ids=["not among the ways", "no dog", "none owned nor made", "too large for it", "too short on it"],
)
def test_what_speaks_against_it_is_told(shop_r, turned, change, words):
    """With the figure."""
    rejected = []
    made = frozenset(job.name for job in jobs_of(turned))

    assert mandrel_options(turned, made, replace(shop_r, **change), "A", rejected) == []
    assert words in rejected[0].reason


def test_it_gives_as_a_bar_between_its_own_centres(shop_r):
    """10.0075 thick and 10 + 8 + 4 + 30 + 20 = 72 long; the work's middle lies 37 from the driven end."""
    made = frozenset(job.name for job in jobs_of(SPOOL))
    (option,) = mandrel_options(SPOOL, made, shop_r, "A", [])
    part = Part("p", "turned", "phosphor bronze", 1, SPOOL)
    bench = Bench(part, SPOOL, SPOOL, option, shop_r, Workpiece(((0.0, -30.0, 16.0),)), 1, {})

    expected = deflection("centres", 1.0, 37.0, 72.0, 10.0075, 205000.0)
    assert give(bench, bench.work, -15.0) == pytest.approx(expected, rel=1e-6)


RING = shape(
    Cylinder("rim", Dim(30.0, "p.rim", "h7", 29.979, 30.0), 0.0, 16.0, 0.5, 0.5),
    bores=(Bore("bore", Dim(12.0, "p.bore", "H7", 12.0, 12.018), "A", 16.0, True, "drill"),),
)


def test_an_expanding_mandrel_leaves_the_face_free(shop_r):
    """A slit plug 1 mm short of the bore: rim and second face in one grip on it."""
    shop = replace(shop_r, can=frozenset({"expanding mandrel"}))
    made = frozenset({"face A", "bore"})
    (option, other) = (one for free in ("A", "B") for one in expanding_options(RING, made, shop, free, []))

    assert {option.free, other.free} == {"A", "B"}
    assert {"face B", "rim", "rim edge B"} <= reached(other, RING, jobs_of(RING), made, blades_of(shop))


def test_the_second_end_is_faced_and_turned_on_a_plug(no_blades):
    """0.02 is below a re-grip in jaws of 0.1 and above the plug's 0.015: face and land in one card."""
    coarse = replace(
        no_blades,
        can=frozenset({"expanding mandrel"}),
        jaws=tuple(replace(j, runout=0.1) for j in no_blades.jaws),
    )
    making = made_on(coarse, (RunoutNeed("one", "bore", 0.02), RunoutNeed("other", "bore", 0.02)))
    on_plug = next(card for card in making.cards if card.hold.device == "expanding mandrel 10")

    assert {"face A", "one"} <= {s.feature for s in on_plug.steps}
    assert "bore" not in {s.feature for s in on_plug.steps}  # its mouth is countersunk off the plug


def test_the_dry_run_knows_where_an_expanding_mandrel_stands():
    """Its shoulder 6 larger than the bore behind the work; nothing in front."""
    held = fixture(Hold("expanding mandrel 12", "", "bore", 12.0, 16.0, 16.0, 0.015, ""), 0.0, SHOP)

    assert held.known
    assert {name: box.bounds for name, box in held.keep_out} == {"mandrel shoulder": (-36.0, 0.0, -16.0, 9.0)}


@pytest.mark.parametrize(
    ("bore", "outside", "words"),
    [
        (6.0, 20.0, "a plug of 6 mm has no room for its screw"),
        (40.0, 60.0, "16 mm of bore is short for 40 mm"),
        (25.0, 28.0, "a wall of 1.5 mm round 25 mm spreads with it"),
        (8.0, 48.0, "the part is 6.0 x as large as its plug"),
    ],
)
def test_what_speaks_against_a_plug_is_told(shop_r, bore, outside, words):
    """With the figure; where it is not among the ways of working nothing is said."""
    ring = shape(
        Cylinder("rim", Dim(outside), 0.0, 16.0), bores=(Bore("bore", Dim(bore), "A", 16.0, True, "drill"),)
    )
    rejected = []
    made = frozenset({"face A", "bore"})

    assert expanding_options(ring, made, shop_r, "B", []) == []
    assert (
        expanding_options(ring, made, replace(shop_r, can=frozenset({"expanding mandrel"})), "B", rejected)
        == []
    )
    assert words in rejected[0].reason
