"""The flywheel demonstrator in the three example shops."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from pathlib import Path

import pytest

from tommybar.design import load_design
from tommybar.resize import Resized, resize
from tommybar.shop import example_shops, load_shop

DESIGN = Path(__file__).parents[2] / "examples" / "demonstrator" / "design.yaml"


@cache
def in_shop(name: str, stock: str = "ask") -> Resized:
    """The demonstrator resized for an example shop."""
    return resize(load_design(DESIGN), load_shop(example_shops()[name]), stock=stock)


@pytest.mark.parametrize("stock", ["ask", "buy", "rack"])
def test_shop_r_makes_it_as_drawn(stock):
    """Full size, no size changed, no stop."""
    found = in_shop("shop-r", stock)

    assert found.scale == 1.0
    assert all(row.new == row.old for row in found.rows)
    assert not [one for one in found.findings if one.severity == "stop"]


def test_the_small_bench_is_held_by_its_swing():
    """72 over the cross-slide, 2 of daylight and 0.5 of skin leave 69.5 of the 90 wheel: 0.7722."""
    found = in_shop("small-bench")
    binding = [one for one in found.limits if one.binds]

    assert found.scale == 0.77
    assert [(one.what, one.part) for one in binding] == [("swing over the cross-slide", "wheel")]
    assert binding[0].scale == pytest.approx((72 - 2 - 0.5) / 90, abs=1e-6)


def test_a_limit_far_off_is_told_at_the_scale_that_meets_it():
    """The 20 flange with 0.5 of drawn skin fills jaws of 95 at 4.725, and 110 less 2 of daylight at 5.375.

    At such scales other parts cannot be drawn any more; the flange can.
    """
    met = {one.what: one.scale for one in in_shop("shop-r").limits if one.part == "bush"}

    assert met["largest jaws"] == pytest.approx((95 - 0.5) / 20, abs=1e-6)
    assert met["swing over the cross-slide"] == pytest.approx((110 - 2 - 0.5) / 20, abs=1e-6)
    assert met["swing over the bed"] == pytest.approx((180 - 2 - 0.5) / 20, abs=1e-6)


def test_the_small_bench_keeps_what_the_design_asks():
    """Every must-line holds, the fits share one nominal size, and the handle keeps the thread its neck needs."""
    design = load_design(DESIGN)
    found = in_shop("small-bench")
    new = {row.name: row.new for row in found.rows}
    free = {size.name: new[size.name] for size in design.named if not size.expression}

    assert all(slack >= -1e-6 for _, _, slack in design.must(free))
    assert found.design == design.sized(free)
    assert new["handle_thread"] == "M4"
    assert new["axle"] in (4, 5, 6, 8) and new["journal"] in (4, 5, 6, 8)
    assert (new["grip_dia"], new["grip_long"], new["float"]) == (12, 18, 0.1)
    assert new["boss_long"] == 8.0
    assert not [one for one in found.findings if one.severity == "stop"]


def test_beyond_what_binds_the_swing_is_a_stop():
    """At 0.79 the 71 wheel turns 73.5 over a swing of 72; at 0.77 nothing is stopped."""
    design, shop = load_design(DESIGN), load_shop(example_shops()["small-bench"])
    stops = [one for one in resize(design, shop, 0.79).findings if one.severity == "stop"]

    assert [one.words.split(":")[0] for one in stops] == ["Swing over the cross-slide of wheel"]
    assert not [one for one in resize(design, shop, 0.77).findings if one.severity == "stop"]


def test_a_clearance_hole_clears_its_screw():
    """The hole for the M4 screw is 4.5, the medium series, though 4.2 is nearer to the scaled 4.24."""
    new = {row.name: row for row in in_shop("small-bench").rows}

    assert (new["screw"].new, new["screw_hole"].new) == ("M4", 4.5)
    assert "4.2 mm would break: fine clearance of pillar.foot_1" in new["screw_hole"].why


def test_the_inch_bench_makes_it_with_its_own_drawers():
    """Scale 1: tools that are lacking are snapped to the nearest owned, each with its reason."""
    found = in_shop("inch-bench")
    rows = {row.name: row for row in found.rows}

    assert found.scale == 1.0
    assert rows["bush_body"].new == pytest.approx(12.7)
    assert "the shop has no reamer 12" in rows["bush_body"].why
    assert rows["base_thick"].new == pytest.approx(15.875)
    assert rows["wheel_dia"].new == 90


def test_a_reamer_taken_away_raises_its_finding():
    """Without the 10 reamer shop R reams the axle to 12 and says so; 8 is as near but weaker."""
    shop = load_shop(example_shops()["shop-r"])
    without = replace(shop, reamers=tuple(one for one in shop.reamers if one.size != 10))
    found = resize(load_design(DESIGN), without)
    told = [one for one in found.findings if one.number == 115]

    assert found.scale == 1.0
    assert [(one.severity, one.feature, one.figure, one.bound) for one in told] == [
        ("caution", "axle", "12 mm", "10 mm")
    ]
    assert "the shop has no reamer 10" in told[0].words


def test_the_outside_jaws_taken_away_raise_their_finding():
    """The four-jaw holds 90: the blank of the wheel, 2 over it, must come down to 0.97."""
    shop = load_shop(example_shops()["shop-r"])
    without = replace(shop, jaws=tuple(one for one in shop.jaws if one.name != "outside jaws"))
    found = resize(load_design(DESIGN), without, stock="rack")

    assert found.scale == 0.97
    assert [one.words for one in found.findings if one.number == 116] == [
        "It is made at scale 0.97: largest jaws of wheel allows no more."
    ]
