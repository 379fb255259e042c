"""Realities 3, 4, 5 and 43: no reamer; between, beyond or untrue in the jaws."""

import pytest

from tommybar.refusals import Refusal

from ..conftest import DESIGN, SHOP, Hand
from .conftest import limits, named, stands, warned

NO_TEN = SHOP.replace("  - {size: 10, zone: H7, cuts: 10.006}\n", "")


def test_a_missing_reamer_is_told_with_its_neighbours():
    """The design held at 10 in a shop with 8 and 12."""
    fixed = DESIGN.replace(
        "axle:         {is: 10, follows: reamer,", "axle:         {is: 10, follows: nothing,"
    )

    (one,) = warned(3, stands(shop=NO_TEN, design=fixed))

    assert one.words == "There is no reamer of 10 mm for wheel.bore; the nearest are 8 and 12."


def test_without_the_reamer_the_size_is_bored_or_moved(rescued):
    """Bored to a plug nothing else changes; with 12 the shaft follows; both are planned."""
    found = rescued(3, "wheel.bore")

    bored, twelve = named(found, "bore wheel.bore to a plug"), named(found, "Take 12 mm")
    kinds = [s.tool_kind for c in bored.plan.part("wheel").cards for s in c.steps if s.feature == "bore"]
    assert "reamer" not in kinds
    assert limits(bored, "wheel.bore") == (10.0, 10.015)
    assert limits(twelve, "shaft.seat") == (11.973, 12.0)
    assert all(r.size != 10 for r in twelve.plan.shop.reamers)


def test_a_begun_wheel_bores_in_place_of_reaming_too(rescued):
    """The face is done; the steps that are not done yet change over to the boring tool."""
    found = rescued(3, "wheel.bore", stand=stands(Hand()("tick", "wheel/1/1")))

    bored = named(found, "bore wheel.bore to a plug")

    assert named(found, "Take 12 mm").lost == ("wheel",)  # it is begun with a bore of 10 in it
    assert {s.tool_kind for c in bored.plan.part("wheel").cards for s in c.steps} & {"reamer"} == set()
    assert "wheel/1" in {card.key for card in bored.changes.cards}


def test_the_gap_between_two_jaw_sets_is_a_figure():
    """With jaws of 3 to 20 and 40 to 95 nothing grips the boss of 26."""
    shop = (
        SHOP.replace("ranges: [{from: 3, to: 36, depth: 25}]", "ranges: [{from: 3, to: 20, depth: 25}]")
        .replace("ranges: [{from: 32, to: 95, depth: 8}]", "ranges: [{from: 40, to: 95, depth: 8}]")
        .replace("ranges: [{from: 4, to: 90, depth: 20}]", "ranges: [{from: 4, to: 18, depth: 20}]")
    )

    found = [one for one in warned(4, stands(shop=shop)) if one.part == "wheel"]

    assert [one.words for one in found] == ["wheel.boss is 26 mm: 20 to 40 has no jaws."]


def test_what_is_too_large_for_all_jaws_is_told():
    """With jaws to 88 the rim of the wheel is over."""
    shop = SHOP.replace("{from: 32, to: 95, depth: 8}", "{from: 32, to: 88, depth: 8}").replace(
        "{from: 4, to: 90, depth: 20}", "{from: 4, to: 60, depth: 20}"
    )

    assert [one.words for one in warned(5, stands(shop=shop))] == ["wheel.rim is 90 mm: over 88 has no jaws."]


def test_without_the_collets_everything_is_held_otherwise(rescued):
    """The plan is another, without a collet in it, and no smaller size is pressed on anyone."""
    (one,) = rescued(4, "collets")

    held = {card.hold.device for part in one.plan.parts for card in part.cards}
    assert not any("collet" in device for device in held)
    assert {card.key for card in one.changes.cards} >= {"shaft/1", "shaft/2"}
    assert one.stops == ()


def test_without_the_outside_jaws_it_has_to_be_smaller(rescued):
    """At full size nothing holds the wheel; a scale is found at which the four-jaw does."""
    found = rescued(5, "outside jaws")

    assert "smaller" in found[0].words
    assert found[0].plan.scale < 1
    assert found[0].stops == ()
    assert any("no holding of this shop" in words for words in found[-1].stops)


def test_a_run_out_that_may_come_over_its_need_is_told():
    """Held to 0.005 where 0.01 and more is to be expected."""
    design = DESIGN.replace(
        "{runout: journal_b, to: seat, within: 0.03}", "{runout: journal_b, to: seat, within: 0.012}"
    )

    found = warned(43, stands(design=design))

    assert found
    assert all("may run out by" in one.words and one.part == "shaft" for one in found)


def test_a_measured_run_out_is_planned_with(rescued):
    """0.05 in the collets is over the 0.03 that the journals need: going on stops, trueing does not."""
    found = rescued(43, "shaft/2", 0.05)

    go_on, true = named(found, "reckoning with 0.050 mm"), named(found, "Clock it true")
    assert go_on.plan.shop.jaw_set("collets").runout == 0.05
    assert true.plan.shop.jaw_set("collets").runout == 0.01
    assert true.stops == ()
    assert go_on.plan.part("shaft").cards != true.plan.part("shaft").cards


@pytest.mark.parametrize(
    ("number", "about", "value", "words"),
    [
        (4, "soft jaws", 0, 'no jaws "soft jaws"'),
        (43, "wheel/9", 0.1, 'no card "wheel/9"'),
        (43, "wheel/2", -1, "must be 0 or more"),
        (43, "pillar/1", 0.1, "not in jaws"),
        (3, "wheel.nothing", 0, 'no size "wheel.nothing"'),
        (99, "wheel", 0, "Reality 99 is not among those"),
    ],
)
def test_what_does_not_fit_is_refused(rescued, number, about, value, words):
    """A slip of the name is told, not guessed at."""
    with pytest.raises(Refusal, match=words):
        rescued(number, about, value)
