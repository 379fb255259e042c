"""Holes across a fit come before its last cuts where its grip comes later; else the burr is stoned off and the fit gauged."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tommybar.alternatives import _set_up
from tommybar.design.model import Part
from tommybar.making.fit_holes import as_on_card
from tommybar.shapes.features import CircleHoles, CrossHole, Cylinder, Dim, TurnedShape

from .turned import clean, routed, shape, steps

TAIL = Cylinder("tail", Dim(10.0, "p.tail"), 0.0, 20.0)
FLANGE = Cylinder("flange", Dim(20.0, "p.flange"), 20.0, 26.0)
PIN = Cylinder("pin", Dim(8.0, "p.pin", "f7", 7.972, 7.987), 26.0, 56.0, edge_end=0.5)
EYE = CrossHole("eye", Dim(4.0, "p.eye"), 40.0, 0.0, 2)
TWO_ENDS = shape(TAIL, FLANGE, PIN, cross_holes=(EYE,))


def order(making):
    """What each card is for: the machine, and the land whose last cuts are on it."""
    return [(c.number, c.machine, [s.feature for s in c.steps if "last cuts" in s.do]) for c in making.cards]


def test_a_fit_that_is_finished_later_is_drilled_first(shop_r):
    """Tail in the first grip, pin in the second: the eye comes between, and nothing has to be stoned."""
    making, _ = clean(TWO_ENDS, shop_r, "mild steel")

    assert order(making) == [(1, "lathe", []), (2, "mill", []), (3, "lathe", ["pin"])]
    assert [c.of for c in making.cards] == [3, 3, 3]
    assert all(s.key.startswith("p/3/") for s in making.cards[2].steps)
    assert "before the last cuts on pin" in making.cards[1].why
    assert "20.00" in making.cards[1].before_starting[0]
    assert not any("Stone" in s.do for c in making.cards for s in c.steps)


def test_the_last_cuts_over_the_hole_say_so(shop_r):
    making, _ = clean(TWO_ENDS, shop_r, "mild steel")
    (last,) = [s for s in steps(making, "pin") if "last cuts" in s.do]

    assert any("broken over eye" in line for line in last.cautions)


def test_findings_stand_at_the_card_as_it_is_counted(shop_r):
    """The pin springs on the card that turns it, which is the third now."""
    making, _ = routed(TWO_ENDS, shop_r, "mild steel")
    turned_on = next(c.number for c in making.cards if any("last cuts on pin" in s.do for s in c.steps))

    assert {f.card for f in making.findings if f.feature == "pin" and f.number == 404} == {turned_on} == {3}


def test_a_blind_hole_is_deeper_by_what_is_turned_away_over_it(shop_r):
    """3 deep in a pin of 8: 3 + (20 - 8) / 2 = 9 from the blank of 20."""
    making, _ = clean(
        replace(TWO_ENDS, cross_holes=(replace(EYE, walls=1, depth=3.0),)), shop_r, "mild steel"
    )
    (drill,) = [s for s in steps(making, "eye") if s.tool_kind == "drill"]

    assert "full diameter 9.0 deep" in drill.dial[0]


@pytest.mark.parametrize(
    ("change", "why"),
    [
        ({"cross_holes": (replace(EYE, dia=Dim(2.0, "p.eye")),)}, "10.0 of its diameters deep and wanders"),
        (
            {"circle_holes": (CircleHoles("bolts", Dim(2.0), 3, 15.0, 0.0, 20.0, 26.0),)},
            "clocked from the holes on the circle",
        ),
    ],
)
def test_where_it_would_do_harm_the_hole_comes_last_and_says_why(shop_r, change, why):
    """2 across a blank of 20 is 10 diameters; holes on a circle have the angle nought."""
    making, _ = routed(replace(TWO_ENDS, **change), shop_r, "mild steel")
    (stoned,) = [s for c in making.cards for s in c.steps if s.do.startswith("Stone")]

    assert [c.machine for c in making.cards[:2]] == ["lathe", "lathe"]
    assert why in stoned.why


def test_a_fit_of_the_first_grip_has_its_burr_stoned_and_is_gauged_again(shop_r):
    """Head last: the pin is finished with the blank in the chuck, so the hole comes after, with the limits on the card."""
    bolt = shape(
        replace(PIN, start=0.0, end=20.0, edge_end=0.0), Cylinder("head", Dim(20.0, "p.head"), 20.0, 30.0),
        cross_holes=(replace(EYE, z=5.0),),
    )  # fmt: skip
    making, _ = clean(bolt, shop_r, "mild steel")
    last = making.cards[-1]

    assert last.machine == "mill" and last.steps[-1].do == "Stone the mouth of eye flush, then gauge pin"
    assert "7.972 to 7.987" in last.steps[-1].dial[1]
    assert "a grip more" in last.steps[-1].why
    assert last.steps[-1].key.startswith(f"p/{last.number}/")


def test_a_land_without_limits_is_left_as_it_was(shop_r):
    plain = replace(TWO_ENDS, outside=(TAIL, FLANGE, replace(PIN, dia=Dim(8.0, "p.pin"))))
    making, _ = clean(plain, shop_r, "mild steel")

    assert [c.machine for c in making.cards] == ["lathe", "lathe", "mill"]
    assert not any("Stone" in s.do for c in making.cards for s in c.steps)


def test_the_mill_card_between_shows_the_land_as_it_stands_then(shop_r):
    """The pin is 20 round on card 2, the tail is 10; on the last card of another part nothing is to come."""
    making, _ = clean(TWO_ENDS, shop_r, "mild steel")
    part = Part("p", "turned", "mild steel", 1, TWO_ENDS)
    now = as_on_card(part, making.cards, making.cards[1], making.blank)
    assert isinstance(now.shape, TurnedShape)

    assert [land.start_dia for land in now.shape.outside] == [10.0, 20.0, 20.0]
    assert as_on_card(part, making.cards[:2], making.cards[1], making.blank) == part


def test_the_grip_of_a_card_is_counted_over_lathe_cards_alone(shop_r):
    """The third card is the second grip: that is what the search is asked to do without."""
    making, _ = clean(TWO_ENDS, shop_r, "mild steel")

    assert [_set_up(c, making.cards) for c in making.cards if c.machine == "lathe"] == [1, 2]
