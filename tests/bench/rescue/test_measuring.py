"""Realities 28, 29 and 30: closed by the press, measured warm, measured coarsely."""

import pytest

from tommybar.refusals import Refusal

from ..conftest import DESIGN, SHOP, Hand
from .conftest import limits, named, stands, warned


def test_a_bore_that_will_close_is_foreseen():
    """Without the word that it is finished after pressing, the bush's bore closes; with it nothing is told."""
    design = DESIGN.replace(", after: press}", "}")

    (one,) = warned(28, stands(design=design))

    assert one.part == "bush"
    assert warned(28, stands()) == []


def test_a_closed_bore_gets_a_shaft_to_suit_or_is_finished_in_place(rescued):
    """7.985 in H7/f7 (0.013 to 0.043 clearance): journals 7.942 to 7.972; reaming in place costs time."""
    found = rescued(28, "bush.bore", 7.985)

    suit, ream = named(found, "to suit"), named(found, "Ream or lap")
    assert limits(suit, "shaft.journal_a") == limits(suit, "shaft.journal_b") == (7.942, 7.972)
    assert suit.readings == (("bush.bore", 7.985),)
    assert limits(ream, "shaft.journal_a") == (7.972, 7.987)
    assert ream.minutes > suit.minutes


def test_what_warmth_adds_is_told():
    """Bores of a wheel 90 across, 20 K warm, 12e-6: 10 mm reads 0.002 over, too little to tell; a rim with limits
    of 0.02 reads 0.022 over and is told."""
    design = DESIGN.replace(
        "{name: rim, dia: wheel_dia, long: rim_wide, edges",
        "{name: rim, dia: wheel_dia, limits: +0.01/-0.01, long: rim_wide, edges",
    )

    found = warned(29, stands(design=design))

    assert [(one.part, one.feature) for one in found] == [("wheel", "rim")]
    assert 0.018 < float(found[0].figure.split()[0]) < 0.025
    assert warned(29, stands()) == []


def test_a_warm_reading_is_taken_back_to_its_cool_size(rescued):
    """10.020 at 25 K in steel of about 12e-6: 10.020 / (1 + 0.0003) = 10.017; the seat follows that."""
    found = rescued(29, "wheel.bore", 10.02, warmer=25)

    cool, again = named(found, "Reckon with 10.017 mm"), named(found, "Let it cool")
    assert limits(cool, "shaft.seat")[1] == pytest.approx(10.017, abs=5e-4)
    assert limits(again, "shaft.seat") == (9.978, 10.0)
    assert again.minutes == 30


def test_an_instrument_that_cannot_judge_is_told():
    """Without a micrometer the caliper (0.02) is asked to judge 0.015 of a journal."""
    shop = "\n".join(line for line in SHOP.split("\n") if "name: micrometer" not in line)

    words = [one.words for one in warned(30, stands(shop=shop))]

    assert any("caliper 150 is no use for shaft.journal_a" in one for one in words)


def test_a_coarse_reading_is_measured_again_or_reckoned_at_its_worst(rescued):
    """The caliper leaves no guard band in 0.015; the micrometer judges; the worst is planned on both sides."""
    found = rescued(30, "shaft.seat", 9.99, "caliper 150")

    again, large = named(found, "again with the micrometer 0-25"), named(found, "Reckon with 10.030 mm")
    assert again.readings == ()
    assert limits(large, "wheel.bore") == (10.03, 10.067)
    assert not any(one.words.startswith("Take") for one in found)


def test_a_reading_inside_its_guard_band_is_taken(rescued):
    """9.992 by micrometer (u 0.002, guard 1.645 u = 0.003) lies inside 9.978 to 10.000 by enough."""
    taken = named(rescued(30, "shaft.seat", 9.992, "micrometer 0-25"), "Take 9.992 mm")

    assert "0.003 mm inside" in taken.words
    assert limits(taken, "wheel.bore") == (9.992, 10.029)


@pytest.mark.parametrize(
    ("number", "about", "value", "said", "words"),
    [
        (28, "bush.bore", 8.01, "", "has not closed below"),
        (30, "shaft.seat", 9.99, "calliper 150", 'Did you mean "caliper 150"'),
        (30, "wheel.rim", 90, "caliper 150", "no limits of its own"),
        (29, "wheel.boer", 10, "", 'Did you mean "wheel.bore"'),
    ],
)
def test_what_is_not_so_is_refused(rescued, number, about, value, said, words):
    """No closing, no such instrument, no limits."""
    with pytest.raises(Refusal, match=words):
        rescued(number, about, value, said)


def test_warmer_than_can_be_reckoned_with_is_refused(rescued):
    """Red heat is not measured."""
    with pytest.raises(Refusal, match="-30 to 200 K"):
        rescued(29, "wheel.bore", 10.0, stand=stands(Hand()("tick", "wheel/1/1")), warmer=700)
