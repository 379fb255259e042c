"""A part that asks for tube keeps the bore that the tube brings, and the jaws stand on a plug."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from tommybar.design.model import Part
from tommybar.dryrun import run_part
from tommybar.facts.materials import material
from tommybar.making.as_machined import as_drilled
from tommybar.making.lengths import spoken
from tommybar.making.parts import route_part
from tommybar.making.route_check import route_faults
from tommybar.nest.rack import serves
from tommybar.resize.limits import serving_tubes
from tommybar.shapes.features import Bore, Cylinder, Dim, TurnedShape
from tommybar.shop.model import Bar


def bell(bore=23.0, seat=23.4, **changes):
    """A tube 25 x 100 with a seat bored into face B."""
    shape = TurnedShape(
        Dim(100.0, "bell.length"),
        (Cylinder("tube", Dim(25.0, "bell.tube"), 0.0, 100.0),),
        bores=(
            Bore("inside", Dim(bore, "bell.inside"), "A", 0.0, True, "drill"),
            Bore("seat", Dim(seat, "bell.seat", "H8", seat, seat + 0.033), "B", 5.0, False, "flat"),
        ),
    )
    return Part("bell", "turned", "free-cutting brass", 1, shape, blank_from="tube", **changes)


def steps_of(making):
    return [step for card in making.cards for step in card.steps]


def test_the_bore_of_the_tube_stays_and_no_drill_is_asked_for(shop_r):
    making = route_part(bell(), {}, shop_r)

    assert (making.blank.section, making.blank.size, making.blank.width) == ("tube", 25.0, 23.0)
    assert [one for one in making.findings if one.severity == "stop"] == []
    assert not [step for step in steps_of(making) if step.feature == "inside"]
    assert not [step for step in steps_of(making) if "drill" in step.tool_kind]
    bored = next(step for step in steps_of(making) if step.feature == "seat")
    assert bored.tool_kind == "boring"
    assert bored.dial[0].startswith("Touch in the ")
    assert spoken(bored.dial, "mm")[0].startswith("Touch in the 23.00 hole")
    assert "until it runs out into the bore" in spoken(bored.dial, "mm")[1]


def test_the_blank_is_weighed_and_cut_as_a_tube(shop_r):
    part = bell()
    making = route_part(part, {}, shop_r)
    blank = making.blank
    # pi / 4 (25^2 - 23^2) x length x 8.47 g/cm3
    grams = math.pi / 4 * (625 - 529) * blank.length * 8.47e-3
    assert blank.mass == pytest.approx(grams, rel=5e-3)

    run = run_part(as_drilled(part, shop_r), blank, making.cards, shop_r)
    assert run.blank_volume == pytest.approx(math.pi / 4 * (625 - 529) * blank.length, rel=1e-6)
    assert [one for one in run.findings if one.severity == "stop"] == []
    assert route_faults(part, making.cards, shop_r) == ()


def test_the_jaws_stand_on_a_plug_and_the_figure_says_why(shop_r):
    making = route_part(bell(), {}, shop_r)
    hold = making.cards[0].hold
    words = " ".join(spoken(making.cards[0].before_starting, "mm"))
    # three jaws on a thin ring: 0.0159 + 0.0143 of W R^3 / (E I), the usual ring table
    jaw, radius = 2000.0, 12.0
    stiff = material("free-cutting brass").modulus * hold.length * 1.0**3 / 12
    lobes = (0.0159 + 0.0143) * jaw * radius**3 / stiff
    assert f"press the 1.0 wall {lobes:.2f} out of round" in words
    assert "plug" in words


@pytest.mark.parametrize(("bore", "serve"), [(23.0, True), (22.0, False), (23.5, False)])
def test_only_a_tube_of_just_that_bore_serves(shop_r, bore, serve):
    """A tube with another bore would have to be bored through, or has no metal there."""
    part = bell(bore, 24.0)
    found = serving_tubes(part.material, part.shape, shop_r, "ask")
    assert bool(found) is serve
    if not serve:
        making = route_part(part, {}, shop_r)
        stop = next(one for one in making.findings if one.number == 201)
        assert stop.severity == "stop"
        assert f"a bore of {bore:g} mm" in stop.words
        assert "25 x 23" in stop.bound


def test_a_bar_of_the_rack_never_stands_in_for_a_tube(shop_r):
    blank = route_part(bell(), {}, shop_r).blank
    tube = Bar("t", "free-cutting brass", "tube", 25.0, 300.0, width=23.0)
    assert serves(tube, blank)
    assert not serves(replace(tube, width=22.0), blank)
    assert not serves(replace(tube, section="round", width=0.0), blank)
