"""Cones between larger lands: a knife from the valley, left-hand where they fall towards the chuck, else blade and file."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tommybar.shapes.features import Cone, Cylinder, Dim

from .turned import clean, routed, shape, steps


def falling(floor: float = 12.0, small: float = 14.0):
    """Flange 30, a cone from 30 down to the floor over 6, the floor, and a body of 30."""
    return shape(
        Cylinder("flange", Dim(30.0, "p.flange"), 0.0, 6.0),
        Cone("slope", 6.0, 12.0, 30.0, small),
        Cylinder("floor", Dim(small), 12.0, 12.0 + floor),
        Cylinder("body", Dim(30.0), 12.0 + floor, 28.0 + floor),
    )


def rising():
    """The same with floor and cone changed about."""
    return shape(
        Cylinder("flange", Dim(30.0, "p.flange"), 0.0, 6.0),
        Cylinder("floor", Dim(14.0), 6.0, 18.0),
        Cone("slope", 18.0, 24.0, 14.0, 30.0),
        Cylinder("body", Dim(30.0), 24.0, 40.0),
    )


def card_of(making):
    """The card that turns the slope, with what each step is for."""
    (card,) = [c for c in making.cards if any(s.feature == "slope" for s in c.steps)]
    return card, [(s.feature, s.tool_letter) for s in card.steps]


def test_a_cone_that_falls_towards_the_chuck_is_turned_left_handed_once_its_floor_is_open(shop_r):
    """atan(8 / 6) = 53.13 deg. The left-hand knife C stands over the floor, which the blade G opens first."""
    making, run = clean(falling(), shop_r)
    card, kinds = card_of(making)
    (step,) = steps(making, "slope")

    assert card.free_end == "A" and kinds[-2:] == [("floor", "G"), ("slope", "C")]
    assert step.big == "53.13" and "left-hand knife fed towards the tailstock" in step.dial[0]
    assert "14.00 DIA at Z 12.00, 30.00 at 6.00" in step.dial[2]
    assert run.surplus_volume < 0.5


def test_its_cuts_run_from_the_small_end_towards_the_tailstock(shop_r):
    """Every feed along the side grows in z and in r."""
    making, _ = clean(falling(), shop_r)
    (step,) = steps(making, "slope")
    pairs = list(zip(step.moves, step.moves[1:], strict=False))
    cuts = [(a, b) for a, b in pairs if not b.rapid and abs(a.z - b.z) > 1e-6 and abs(a.r - b.r) > 1e-6]

    assert len(cuts) == len(step.passes)
    assert all(b.z > a.z and b.r > a.r for a, b in cuts)


def test_a_cone_that_rises_is_turned_right_handed_from_its_valley(shop_r):
    """A blade of 2.0 would leave 2.7 mm of it to the file; the knife turns it, swivelled as usual."""
    making, run = clean(rising(), shop_r)
    (step,) = steps(making, "slope")

    assert step.tool_kind == "knife" and step.tool_letter == "B"
    assert run.surplus_volume < 0.5


@pytest.mark.parametrize("floor", [9.0, 9.6])
def test_the_floor_must_be_as_wide_as_the_shank_and_its_room(shop_r, floor):
    """8 of shank and 1.5 of room: a floor of 9.0 leaves it to blade and file, one of 9.6 does not."""
    making, _ = routed(falling(floor), shop_r)
    kinds = [s.tool_kind for s in steps(making, "slope")]

    assert ("knife" in kinds) is (floor > 9.5)


def test_without_a_left_hand_knife_the_blade_does_it(shop_r):
    poor = replace(shop_r, tools=tuple(t for t in shop_r.tools if t.hand != "left"))
    making, _ = clean(falling(), poor)

    assert [s.tool_kind for s in steps(making, "slope")] == ["groove", "file"]


def test_a_knife_stands_out_no_further_than_its_reach(shop_r):
    """Reach 7 where the floor lies 8 below the lands: not with this knife."""
    short = tuple(replace(t, reach=7.0) if t.kind == "knife" else t for t in shop_r.tools)
    making, _ = routed(falling(), replace(shop_r, tools=short))

    assert [s.tool_kind for s in steps(making, "slope")] == ["groove", "file"]
