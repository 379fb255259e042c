"""Speeds from the plate, passes, dials: figures by hand beside each."""

from __future__ import annotations

import itertools
import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tommybar.making.cuts import finishing_passes, roughing_passes, spindle
from tommybar.making.dials import travel_words, turns_and_divisions
from tommybar.making.reaming import hole_plan, reaming_drill_owned
from tommybar.making.visiting import Spot, hole_places
from tommybar.making.workpiece import Workpiece
from tommybar.shop.model import Dial

RAD = Dial(per_division=0.02, per_turn=2.0, reads="RAD")


def test_the_speed_is_the_next_lower_one_on_the_plate(shop_r):
    """Brass of 62 mm at 70 m/min wants 359 rev/min (1000 v / pi d): the plate has 250 below it."""
    assert round(1000 * 70 / (math.pi * 62)) == 359
    found = spindle(shop_r.lathe.speeds, "free-cutting brass", "HSS", "turning", 62.0)

    assert found.rpm in shop_r.lathe.speeds
    assert found.reached == pytest.approx(math.pi * 62 * found.rpm / 1000)
    assert found.reached <= found.wanted[1]


def test_a_plate_without_a_slow_enough_speed_is_told():
    """A disc of 142 mm at 150 rev/min runs at 67 m/min, too fast for HSS in mild steel."""
    found = spindle((150.0, 250.0), "mild steel", "HSS", "turning", 142.0)

    assert found.too_fast
    assert found.reached == pytest.approx(66.9, abs=0.1)


def test_roughing_cuts_are_equal_and_end_at_the_size():
    """92 down to 90.5 at most 1 mm deep: one cut of 0.75; 92 to 90.8 at most 0.3: two of 0.3, 15 divisions of 0.02."""
    assert [p.to for p in roughing_passes(92.0, 90.5, 1.0, RAD)] == [90.5]
    assert [p.infeed for p in roughing_passes(92.0, 90.8, 0.3, RAD)] == [0.3, 0.3]


def test_the_two_last_cuts_are_equal():
    """8.48 to 8.0 by two cuts of 0.12 on radius, 6 divisions each."""
    cuts = finishing_passes(8.48, 8.0, RAD)

    assert [c.infeed for c in cuts] == [0.12, 0.12]
    assert [c.dial for c in cuts] == ["6 div", "12 div"]
    assert cuts[-1].to == pytest.approx(8.0)
    assert all(c.last for c in cuts)


def test_a_cut_says_where_the_marks_really_land():
    """8.48 to 7.9895: 0.24525 is 12.26 divisions; the nearest half is 12.5, 0.25, which lands on 7.98."""
    (cut,) = finishing_passes(8.48, 7.9895, RAD, two=False)

    assert (cut.dial, cut.to, cut.infeed) == ("12.5 div", 7.98, 0.25)


@given(st.floats(2.0, 50.0), st.floats(0.05, 1.5), st.sampled_from([0.02, 0.025, 0.05, 0.0254]))
def test_every_cut_stands_on_half_a_division(start, deepest, division):
    """Whatever is cut, what is printed as reached is a whole number of half divisions from where it was touched."""
    dial = Dial(per_division=division, per_turn=100 * division)
    for cut in roughing_passes(start, 0.6 * start, deepest, dial):
        halves = (start - cut.to) / division
        assert halves == pytest.approx(round(halves), abs=2e-2)


def test_a_dial_coarser_than_the_limits_is_told(made):
    """Half of 0.02 RAD is 0.02 on diameter; 8 f7 is 0.015 wide (ISO 286-2)."""
    cards = made("shaft").cards
    step = next(
        s for c in cards for s in c.steps if s.feature == "journal_a" and s.do.startswith("Two equal")
    )

    assert any("0.020 on diameter, the limits are 0.015 wide" in line for line in step.cautions)
    assert any("Measure" in line for line in step.cautions)


@given(
    travel=st.floats(0, 60),
    division=st.sampled_from([0.02, 0.025, 0.05, 0.0254]),
    turns=st.sampled_from([50, 80, 100]),
)
def test_turns_and_divisions_add_up_to_the_travel(travel, division, turns):
    """What the dial says is the travel, to a quarter of a division."""
    dial = Dial(per_division=division, per_turn=division * turns)
    whole, rest = turns_and_divisions(dial, travel)

    assert 0 <= rest < turns
    assert whole * dial.per_turn + rest * division == pytest.approx(travel, abs=division / 4 + 1e-9)


def test_travel_in_words():
    """2.48 mm on a dial of 2 mm a turn and 0.02 a division is 1 turn and 24 divisions."""
    assert travel_words(RAD, 2.48) == "1 turn + 24 div"


def test_drills_before_the_reamer_are_the_shops_own(shop_r):
    """9.8 before 10, 7.8 before 8; for 12 nothing is owned between 11.65 and 11.85, so it is bored first."""
    assert reaming_drill_owned(10.0, shop_r) == 9.8
    assert reaming_drill_owned(8.0, shop_r) == 7.8
    plan = hole_plan(12.0, shop_r, limits=True)
    assert plan is not None
    assert plan.finish == "bore and ream"
    assert 11.6 < plan.bore_to < 11.9


def test_a_slide_that_goes_back_passes_and_comes_up_again(shop_r):
    """Five holes on a circle: every place is reached from the left and from the front."""
    spots = [
        Spot(24 * math.cos(math.radians(90 + 72 * n)), 24 * math.sin(math.radians(90 + 72 * n)), "h")
        for n in range(5)
    ]
    places = hole_places(shop_r.mill, spots)

    xs = [p.x for p in places]
    assert xs == sorted(xs)
    for before, after in itertools.pairwise(places):
        assert ("Y: past it" in after.overshoot) == (after.y < before.y - 1e-6)


def test_workpiece_turned_faced_and_reversed():
    """Metal taken off shows in the outline, and turning it end for end mirrors it."""
    work = Workpiece(((1.0, -20.0, 30.0),)).faced(0.0).turned(0.0, -5.0, 20.0)

    assert work.spans == ((0.0, -5.0, 20.0), (-5.0, -20.0, 30.0))
    assert work.reversed(20.0).spans == ((0.0, -15.0, 30.0), (-15.0, -20.0, 20.0))
    assert work.reversed(20.0).reversed(20.0) == work
    assert work.ended(-10.0).bottom == -10.0
