"""A cut is as deep as motor, grip and work stand; figures by hand beside each."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tommybar.design.model import Part, RunoutNeed
from tommybar.making import rigidity
from tommybar.making.bench import Bench
from tommybar.making.cuts import Speed
from tommybar.making.grips import Option
from tommybar.making.jobs import jobs_of
from tommybar.making.lengths import spoken
from tommybar.making.parts import route_part
from tommybar.making.rigidity import allowed_cut, drilling_feed_held, give
from tommybar.making.turning import finish, rough
from tommybar.making.workpiece import Workpiece
from tommybar.planning import routed
from tommybar.shapes.features import Cylinder, Dim, TurnedShape


def bar(*lands, material="mild steel"):
    """A turned part of lands (diameter, length, limits or none) from face A."""
    outside, z = [], 0.0
    for n, (dia, long, *limits) in enumerate(lands):
        dim = Dim(dia, f"p.land_{n}", "limits" if limits else "", *(limits or (None, None)))
        outside.append(Cylinder(f"land_{n}", dim, z, z + long))
        z += long
    return Part("p", "turned", material, 1, TurnedShape(Dim(z, "p.length"), tuple(outside)))


@pytest.fixture
def at_the_lathe(shop_r):
    """A bench with a bar of a diameter standing out of a jaw set."""

    def of(part, dia, out, jaws="inside jaws", grip=20.0, shop=None):
        shop = shop or shop_r
        held = shop.jaw_set(jaws)
        option = Option(held, held.name, "blank", dia, grip, "A", -out, "", held.runout, 0.0)
        work = Workpiece(((0.0, -out - grip, dia),))
        return Bench(part, part.shape, part.shape, option, shop, work, 1, {})

    return of


def depth(bench, dia, speed, z=0.0):
    """How deep a cut the card may ask for."""
    tool = next(t for t in bench.shop.tools if t.letter == "A")
    return allowed_cut(bench, tool, bench.work, z, dia, speed)


def test_the_motor_bounds_the_depth(at_the_lathe, shop_r):
    """50 W x 0.75 = 37.5 W at 31.4 m/min: 71.6 N at the edge. kc of mild steel at h = 0.145: 1350 h^-0.21 = 2025 MPa;
    0.15 mm/rev: 304 N a millimetre, so 0.236 mm."""
    weak = replace(shop_r, lathe=replace(shop_r.lathe, power=50.0))
    bench = at_the_lathe(bar((24.0, 20.0)), 25.0, 25.0, shop=weak)

    cut = depth(bench, 25.0, Speed(400.0, 31.4, (20.0, 30.0), False))
    assert cut.depth == pytest.approx(0.236, abs=0.004)
    assert "motor" in cut.bound


def test_a_slender_bar_gets_lighter_cuts(at_the_lathe):
    """6 x 24: give = 64 L^3 / 3 pi E d^4 = 3.53e-4 mm/N; 0.35 x 304 N a mm: 0.0376 a mm, so 0.05 of spring lets 1.3.
    6 x 36: 1.19e-3 mm/N, 0.127 a mm, 0.39 mm deep."""
    bench = at_the_lathe(bar((5.0, 30.0)), 6.0, 36.0)

    assert give(bench, bench.work, 0.0) == pytest.approx(64 * 36**3 / (3 * 3.14159 * 205000 * 6**4), rel=1e-4)
    cut = depth(bench, 6.0, Speed(950.0, 17.9, (20.0, 30.0), False))
    assert cut.depth == pytest.approx(0.39, abs=0.01)
    assert "springs" in cut.bound


def test_a_short_grip_bounds_the_depth(at_the_lathe):
    """Grip 4 on 20: M_u = 6000 x min(4/3 + 0.15 x 20/4, 0.2887 (4 + 3)) = 6000 x 2.02 = 12.1 N m; half of it at 40 mm
    is 152 N; a millimetre asks hypot(304, 106) = 322 N: 0.47 mm."""
    bench = at_the_lathe(bar((18.0, 30.0)), 20.0, 40.0, grip=4.0)

    cut = depth(bench, 20.0, Speed(400.0, 25.0, (20.0, 30.0), False))
    assert cut.depth == pytest.approx(0.47, abs=0.01)
    assert "tilt" in cut.bound


def test_what_cannot_be_cut_at_all_is_a_stop_with_figure_and_remedy(at_the_lathe, shop_r):
    """5 W gives 0.02 mm: no floor is put under it."""
    dead = replace(shop_r, lathe=replace(shop_r.lathe, power=5.0))
    bench = at_the_lathe(bar((24.0, 20.0)), 25.0, 25.0, shop=dead)
    depth(bench, 25.0, Speed(400.0, 31.4, (20.0, 30.0), False))

    (stop,) = bench.findings
    assert (stop.number, stop.severity) == (403, "stop")
    assert "mm deep" in stop.figure and "0.1 mm" in stop.bound and stop.remedy


def test_the_thin_end_counts_and_not_the_bar_in_the_jaws(at_the_lathe):
    """A bar of 20 turned to 5 for 30: the card judges the 5."""
    part = bar((5.0, 30.0), (20.0, 10.0))
    bench = at_the_lathe(part, 20.0, 43.0)
    rough(bench, jobs_of(part.shape)[2])

    deepest = max(p.infeed for step in bench.steps for p in step.passes)
    assert deepest < 0.5  # 5 x 30 alone gives 64 x 27000 / (3 pi 205000 x 625) = 1.43e-3 mm/N: 0.33 mm


def test_spring_is_run_out_or_told(at_the_lathe):
    """A 5 h6 journal 40 long (8 um wide) on its own springs more than a quarter of it: spring passes or a finding."""
    part = bar((5.0, 40.0, 4.992, 5.0), (8.0, 10.0))
    bench = at_the_lathe(part, 8.0, 53.0)
    job = jobs_of(part.shape)[2]
    rough(bench, job)
    finish(bench, job)

    told = [f for f in bench.findings if f.number == 404]
    assert any("without infeed" in line for line in bench.steps[-1].dial)
    assert told and told[0].figure and told[0].bound and told[0].remedy


def test_a_stout_land_springs_no_word(at_the_lathe):
    """20 h9 x 20 springs under a micrometre: nothing is said."""
    part = bar((20.0, 20.0, 19.948, 20.0), (25.0, 10.0))
    bench = at_the_lathe(part, 25.0, 33.0)
    job = jobs_of(part.shape)[2]
    rough(bench, job)
    finish(bench, job)

    assert bench.findings == []
    assert not any("infeed" in line for line in bench.steps[-1].dial)


def test_a_holding_is_refused_by_what_is_left_of_the_bar(shop_r):
    """4 x 40 on a head of 20: at most 3 + 10 x 20^-4 more than 40^3/4^4, so it gives like 4.6 to 5: over 8 diameters."""
    making = route_part(bar((4.0, 40.0), (20.0, 10.0)), {}, shop_r)

    stop = next(f for f in making.findings if f.severity == "stop")
    assert stop.number == 302
    assert "6 at most without a centre" in stop.remedy


def test_the_card_says_how_light_its_cuts_are(shop_r):
    """6 x 30 on 12 stands out more than three of its diameters: the caution names the depth that the steps ask for."""
    making = route_part(bar((6.0, 30.0), (12.0, 8.0)), {}, shop_r)
    card = next(c for c in making.cards if "land_0" in {s.feature for s in c.steps})
    deepest = max(p.infeed for s in card.steps if s.tool_kind == "knife" for p in s.passes)

    line = next(one for one in card.before_starting if "thinned" in one)
    assert f"{deepest:.2f}" in spoken(line, "mm")


def test_a_grip_that_no_cut_suits_is_left_for_another(shop_r, monkeypatch):
    """Collets that hold with 20 N: the plan takes a chuck instead of printing the stop."""
    part = bar((8.0, 10.0), (10.0, 12.0))
    held = routed(part, (), (), (), shop_r, "ask")[0]
    assert held.cards[0].hold.jaws == "collets"

    monkeypatch.setattr(
        rigidity, "jaw_force", lambda o: 20.0 if o.jaws and o.jaws.device == "collets" else 6000.0
    )
    other = routed(part, (), (), (), shop_r, "ask")[0]
    assert [c.hold.jaws for c in other.cards if c.hold.jaws == "collets"] == []
    assert not [f for f in other.findings if f.severity == "stop"]


def test_a_long_shaft_does_not_hang_on_its_short_thread(made, shop_r):
    """75 mm of shaft out of a sleeve on an M6 screw of 14: no route hangs more than six diameters on one."""
    tight = (RunoutNeed("journal_b", "seat", 0.012),)

    for card in made("shaft", needs=tight).cards:
        assert "sleeve" not in card.hold.device or card.hold.sticks_out <= 6 * card.hold.dia + 1.0


def test_a_drill_is_fed_as_motor_and_grip_allow(at_the_lathe, shop_r):
    """12 in mild steel at 0.125: h = 0.0536, kc = 1350 h^-0.21 = 2498 MPa; lips 2498 x 0.125 x 144 / 8000 = 5.62 N m,
    half more 8.43. 200 W x 0.75 at 400 rev/min: 3.58 N m. Opened from 6 first: 3/4 of it."""
    weak = replace(shop_r, lathe=replace(shop_r.lathe, power=200.0))
    bench = at_the_lathe(bar((24.0, 20.0)), 25.0, 25.0, shop=weak)
    speed = Speed(400.0, 15.0, (10.0, 20.0), False)

    whole = drilling_feed_held(bench, 12.0, 0.0, speed, 0.125, "bore")
    opened = drilling_feed_held(bench, 12.0, 6.0, speed, 0.125, "bore")
    assert whole.feed == pytest.approx(0.125 * (3.58 / 8.43) ** (1 / 0.79), rel=0.01)
    assert opened.feed == pytest.approx(0.125 * (3.58 / 6.32) ** (1 / 0.79), rel=0.01)
    assert "the motor" in whole.bound

    strong = at_the_lathe(bar((24.0, 20.0)), 25.0, 25.0)
    assert drilling_feed_held(strong, 6.0, 0.0, speed, 0.1, "bore").feed == 0.1


def test_a_drill_that_stalls_is_told_with_its_torque(at_the_lathe, shop_r):
    """20 W give 0.36 N m of the 8.4 that are asked for: a caution with both figures."""
    dead = replace(shop_r, lathe=replace(shop_r.lathe, power=20.0))
    bench = at_the_lathe(bar((24.0, 20.0)), 25.0, 25.0, shop=dead)
    drilling_feed_held(bench, 12.0, 0.0, Speed(400.0, 15.0, (10.0, 20.0), False), 0.125, "bore")

    (told,) = bench.findings
    assert (told.number, told.severity, told.bound) == (405, "caution", "0.4 N m")
    assert told.figure.startswith("8.4 N m")
