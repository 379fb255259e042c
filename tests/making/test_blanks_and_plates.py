"""Blanks with every allowance named, and plates by coordinates."""

from __future__ import annotations

from dataclasses import replace

import pytest


@pytest.mark.parametrize("name", ["wheel", "shaft", "bush", "crank", "handle", "pillar", "base"])
def test_a_blank_is_its_part_and_its_allowances(made, name):
    """Length = finished length + every allowance in the list, nothing hidden."""
    blank = made(name).blank

    along = [mm for words, mm in blank.allowances if words != "edges across"]
    assert blank.length == pytest.approx(blank.finished_length + sum(along), abs=0.01)


def test_the_bush_leaves_a_stub_to_hold_it_by(made):
    """13 long, face 1, 0.3 rest, 2 blade, 3 clear, and what the jaws hold."""
    allowances = dict(made("bush").blank.allowances)

    assert allowances["parting blade"] == 2.0
    assert allowances["left on the parted face"] == 0.3
    assert allowances["held in the jaws"] >= 20.0


def test_mass_of_the_wheel_blank(made):
    """Steel disc 92 x 27: pi/4 x 9.2^2 x 2.7 cm3 x 7.86 g/cm3 = 1411 g, by hand."""
    assert made("wheel").blank.mass == pytest.approx(1411, abs=2)


def test_without_the_bar_it_says_what_is_on_the_rack(made, shop_r):
    """No mild steel at all: a stop with the figure when it must be bought; asked for, a slice of 92."""
    bare = replace(
        shop_r,
        rack=tuple(b for b in shop_r.rack if b.material != "mild steel"),
        obtainable=tuple(b for b in shop_r.obtainable if b.material != "mild steel"),
    )
    making = made("wheel", bare, stock="buy")

    assert made("wheel", bare, stock="ask").blank.size == 92
    assert making.blank is None
    assert making.findings[0].number == 201
    assert making.findings[0].figure == "90 mm"


def test_the_pillar_is_drilled_in_one_setting_and_reamed_last(made):
    """All holes of a face on one card; the reamed bore after the plain holes."""
    cards = made("pillar").cards
    top = next(card for card in cards if card.title.startswith("top"))

    assert [step.tool_kind for step in top.steps][-1] == "reamer"
    assert {place.what.split(":")[0] for place in top.places} == {"bore", "foot_1", "foot_2"}
    assert any("centre to centre" in line for line in top.chord_checks)


def test_the_base_is_tapped_to_depth_with_the_lead_below(made):
    """M5 x 12 full thread: full diameter to 12 + 3 x 0.8 = 14.4, by hand."""
    front = next(card for card in made("base").cards if card.title.startswith("front"))
    drill = next(step for step in front.steps if step.tool_kind == "drill")

    assert "14.4 deep" in drill.dial[0]


def test_a_plate_without_a_mill_is_a_stop(made, shop_r):
    """The lathe without a mill says so instead of inventing a card."""
    making = made("pillar", replace(shop_r, mill=None))

    assert making.cards == ()
    assert [f.number for f in making.findings if f.severity == "stop"] == [903]
