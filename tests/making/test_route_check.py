"""The independent checker passes every route of the examples and catches planted faults."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tommybar.design.model import Part
from tommybar.making.route_check import route_faults
from tommybar.shapes.features import Cylinder, Dim

from .turned import clean, shape

TURNED = ("wheel", "shaft", "bush", "crank", "handle")


@pytest.mark.parametrize("name", TURNED)
def test_every_route_in_shop_r_replays(made, demonstrator, shop_r, name):
    """What the search wrote can be done as written."""
    assert route_faults(demonstrator.part(name), made(name).cards, shop_r) == ()


def planted(cards, number, **hold):
    """The cards with something changed in how one of them is held."""
    return tuple(replace(c, hold=replace(c.hold, **hold)) if c.number == number else c for c in cards)


@pytest.mark.parametrize(
    ("name", "number", "hold", "words"),
    [
        ("wheel", 1, {"dia": 131.0}, "131 mm is outside the ranges of outside jaws"),
        ("wheel", 1, {"length": 20.0}, "grips 20 mm, outside jaws are 8 deep there"),
        ("wheel", 2, {"surface": "blank"}, "grips the blank after it has been cut"),
        (
            "wheel",
            2,
            {"surface": "boss", "dia": 26.0, "jaws": "inside jaws"},
            "grips boss before it is turned",
        ),
        ("handle", 2, {"device": "collet 4", "jaws": "collets", "dia": 4.0}, "bare jaws on the thread"),
        ("shaft", 1, {"jaws": "magnets"}, "no jaws called 'magnets' in the shop"),
    ],
)
def test_a_planted_fault_of_holding_is_found(made, demonstrator, shop_r, name, number, hold, words):
    """Each kind of impossible grip is named."""
    faults = route_faults(demonstrator.part(name), planted(made(name).cards, number, **hold), shop_r)

    assert any(words in fault for fault in faults), faults


def test_a_speed_that_the_machine_has_not_is_found(made, demonstrator, shop_r):
    """720 rev/min is on no plate of shop R."""
    first, *rest = made("wheel").cards
    steps = (replace(first.steps[0], speed=720.0), *first.steps[1:])

    faults = route_faults(demonstrator.part("wheel"), (replace(first, steps=steps), *rest), shop_r)
    assert faults == ("wheel card 1 step 1: 720 rev/min is not on the machine's plate",)


def test_a_missing_step_is_found(made, demonstrator, shop_r):
    """Leave out the dish and the checker says that nothing makes it."""
    first, *rest = made("wheel").cards
    steps = tuple(step for step in first.steps if step.feature != "dish")

    assert "nothing makes dish" in route_faults(
        demonstrator.part("wheel"), (replace(first, steps=steps), *rest), shop_r
    )


def test_a_step_after_parting_is_found(made, demonstrator, shop_r):
    """Nothing can follow the part-off in the same grip."""
    first, *rest = made("bush").cards
    steps = (first.steps[-1], *first.steps[:-1])

    faults = route_faults(demonstrator.part("bush"), (replace(first, steps=steps), *rest), shop_r)
    assert any("parts it off and steps follow" in fault for fault in faults)


def test_the_bars_own_surface_may_be_gripped_before_its_lead_is_turned(shop_r):
    """A bar of 20 stays as it is but for a lead of 15 deg at A: held by it first for face B, and only then for the lead."""
    bar = shape(Cylinder("bar", Dim(20.0, "p.bar"), 0.0, 60.0, 2.0, 0.0, edge_angle=15.0))
    making, _ = clean(bar, shop_r)
    lead, other = making.cards
    turned = (replace(other, number=1, hold=lead.hold), replace(lead, number=2, hold=other.hold))
    part = Part("p", "turned", "free-cutting brass", 1, bar)

    assert other.hold.surface == "bar"
    assert [fault for fault in route_faults(part, turned, shop_r) if "before it is turned" in fault] == []
