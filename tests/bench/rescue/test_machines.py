"""Realities 11, 12, 24 and 44: dials, slack, speeds, cutters."""

import pytest

from tommybar.refusals import Refusal

from ..conftest import SHOP, Hand
from .conftest import named, stands, warned


def test_a_dial_of_which_nothing_was_said_is_told():
    """A shop file without reads has it assumed; shop R says RAD."""
    silent = SHOP.replace(
        "{division: 0.02, turn: 2.0, reads: RAD, slack: 8,", "{division: 0.02, turn: 2.0, slack: 8,"
    )

    (one,) = warned(11, stands(shop=silent))

    assert "1.00 less is DIA, 2.00 less is RAD" in one.remedy
    assert warned(11, stands()) == []


@pytest.mark.parametrize(("change", "reads"), [(1.02, "DIA"), (1.96, "RAD")])
def test_the_test_cut_settles_the_dial(rescued, change, reads):
    """1.00 on the dial, 1.02 off the diameter: DIA; 1.96: RAD. Every dial word is worked out again."""
    (one,) = rescued(11, "lathe.cross_slide", change)

    assert one.plan.shop.lathe.cross_slide.reads == reads
    assert bool(one.changes.cards) == (reads == "DIA")


def test_a_rim_that_was_cut_twice_is_made_again_or_everything_smaller(rescued):
    """88 where 90 was meant: a new wheel, or all at scale 0.97, the wheel kept."""
    stand = stands(Hand()("tick", "wheel/1/1"))

    found = rescued(11, "wheel.rim", 88.0, stand=stand)

    smaller, again = named(found, "at scale 0.97"), named(found, "Make wheel again")
    assert smaller.plan.scale == 0.97
    assert smaller.lost == ()
    assert again.lost == ("wheel",)
    assert again.metal > 1000  # of steel 92 across and some 27 long, 7.85 g/cm3


def test_lists_that_turn_a_slide_back_name_the_slack():
    """Five holes on a circle: 10 divisions of 0.02 are 0.2 mm; a mill of unknown slack is a caution."""
    unknown = SHOP.replace(
        "dial: {division: 0.02, turn: 2.0, slack: 10}", "dial: {division: 0.02, turn: 2.0, slack: 0}"
    )

    known = {(one.part, one.card): one for one in warned(12, stands())}
    assert "10 divisions, 0.20 mm" in known["wheel", 3].words
    assert {one.severity for one in known.values()} == {"note"}
    assert {one.severity for one in warned(12, stands(shop=unknown))} == {"caution"}


def test_the_measured_slack_goes_into_the_shop(rescued):
    """0.15 mm on a dial of 0.02 is 7.5 divisions; in the cross-slide the cards say so."""
    (mill,) = rescued(12, "mill.dial", 0.15)
    (cross,) = rescued(12, "lathe.cross_slide", 0.30)

    assert mill.plan.shop.mill.dial.slack == 7.5
    assert cross.plan.shop.lathe.cross_slide.slack == 15.0
    assert any("15 div" in line for card in cross.changes.cards for line in card.lines)


def test_a_lowest_speed_that_is_too_fast_is_told():
    """A lathe that turns no slower than 600 is too fast for a rim of 90."""
    fast = SHOP.replace("speeds: [150, 250, 400, 600, 950, 1500, 2200] ", "speeds: [600, 950, 1500, 2200] ")

    found = warned(24, stands(shop=fast))

    assert any(one.part == "wheel" and "slowest speed, 600 rev/min" in one.words for one in found)
    assert not any("600 rev/min" in one.words for one in warned(24, stands()))


def test_a_lost_speed_is_planned_without(rescued):
    """No step uses 400 any more; what ran at it runs at the next below."""
    before = {s.speed for p in stands().plan.parts for c in p.cards for s in c.steps if c.machine == "lathe"}
    (one,) = rescued(24, "lathe", 400)

    after = {s.speed for p in one.plan.parts for c in p.cards for s in c.steps if c.machine == "lathe"}
    assert 400 in before
    assert 400 not in after
    assert one.minutes > 0


def test_cutters_that_bring_to_size_are_worth_a_test_slot():
    """The end mill that mills the base to length is named once."""
    (one,) = warned(44, stands())

    assert "end mill 16" in one.words
    assert "base.length" in one.words


def test_a_cutter_is_planned_as_what_it_cuts(rescued):
    """15.9 in place of 16: the cards are written anew for it."""
    (one,) = rescued(44, "end mill 16", 15.9)

    assert 15.9 in one.plan.shop.cutters
    assert 16 not in one.plan.shop.cutters
    assert {card.key for card in one.changes.cards} == {"pillar/1", "base/1"}


@pytest.mark.parametrize(
    ("number", "about", "value", "words"),
    [
        (11, "lathe.cross_slide", 1.5, "1.00 would be DIA and 2.00 RAD"),
        (11, "wheel.rim", 91, "not cut too small"),
        (12, "mill.table", 0.1, "is no slide"),
        (12, "mill.dial", 9, "from 0 to 5 mm"),
        (24, "saw", 100, "Say lathe or mill"),
        (24, "lathe", 123, "no speed of 123"),
        (44, "file", 3, "is no cutter"),
        (44, "end mill 16", 10, "may be off by up to 1 mm"),
    ],
)
def test_what_cannot_be_is_refused(rescued, number, about, value, words):
    """A test cut that says neither, a slide or speed that is not there."""
    with pytest.raises(Refusal, match=words):
        rescued(number, about, value)
