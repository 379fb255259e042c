"""Reality 1: a bore over its limit."""

import pytest

from tommybar.bench.rescue import taking
from tommybar.design import design_from_text
from tommybar.refusals import Refusal

from ..conftest import SHOP, Hand
from .conftest import limits, named, stands, warned


def test_what_the_reamer_cuts_is_expected_beforehand():
    """A reamer that cuts 0.020 over will leave 10 H7 (to 10.015) over its limit; within, it is a note."""
    shop = SHOP.replace("{size: 10, zone: H7, cuts: 10.006}", "{size: 10, zone: H7, cuts: 10.020}")

    found = {one.feature + one.part: one for one in warned(1, stands(shop=shop))}

    assert found["borewheel"].severity == "caution"
    assert "expect wheel.bore at 10.020 mm, over its limit" in found["borewheel"].words
    assert (found["borewheel"].figure, found["borewheel"].bound) == ("10.020 mm", "10.015 mm")
    assert "before shaft.seat is made" in found["borewheel"].remedy
    assert found["borepillar"].severity == "note"


def test_the_shaft_is_made_to_suit(rescued):
    """Bore 10.021, H7/h8 with 0 to 0.037 clearance: the seat becomes 9.984 to 10.021.

    A ground bar of 10 h8 may be 9.978 and nothing turns a seat so long from a larger one: a bar is picked by
    measuring, at no further cost, and the plan says between which readings.
    """
    offer = named(rescued(1, "wheel.bore", 10.021), "Make shaft.seat to suit the bore of 10.021 mm")

    assert limits(offer, "shaft.seat") == (9.984, 10.021)
    assert (offer.minutes, offer.lost, offer.stops) == (0.0, (), ())
    caution = next(f for f in offer.plan.findings if f.number == 206)
    assert "reads 9.984 to 10.000 mm" in caution.remedy


def test_a_shaft_that_is_made_has_to_be_made_again(rescued):
    """The offer names it, prices its metal, and its sizes count no more."""
    hand = Hand()
    stand = stands(
        hand("size", "wheel.bore", value=10.021),
        hand("tick", "shaft/1"),
        hand("size", "shaft.seat", value=9.985),
    )

    offer = named(rescued(1, "wheel.bore", 10.021, stand=stand), "which has to be made again (shaft)")

    assert offer.lost == ("shaft",)
    assert offer.metal > 40
    assert offer.minutes > 0
    assert offer.change["forget"] == ["shaft"]
    assert limits(offer, "shaft.seat") == (9.984, 10.021)


def test_the_next_reamer_takes_everything_that_follows_along(rescued):
    """The next reamer in the drawer is 12: bore, seat and bar become 12; the wheel itself is kept."""
    stand = stands(Hand()("tick", "wheel/1/1"))

    offer = named(rescued(1, "wheel.bore", 10.3, stand=stand), "with the next reamer")

    assert limits(offer, "wheel.bore") == (12.0, 12.018)
    assert offer.plan.part("shaft").blank.size >= 12
    assert offer.lost == ()
    assert offer.change["pins"] == {"axle": 12.0}


def test_over_a_fifth_of_a_millimetre_no_shaft_is_made_to_suit(rescued):
    """Then the next reamer or a bush are what is left."""
    found = rescued(1, "wheel.bore", 10.3)

    assert [one.words.split()[0] for one in found] == ["Open", "Bore"]


def test_a_bush_is_a_part_of_its_own_with_cards_and_fits(rescued):
    """Bored to 13.5, the wheel gets a bush of 10 H7 that turns with it; it is planned like any part."""
    offer = named(rescued(1, "wheel.bore", 10.3), "press in a bush")

    assert limits(offer, "wheel.bore") == (13.5, 13.518)
    assert limits(offer, "wheel_bush.bore") == (10.0, 10.015)
    assert len(offer.plan.part("wheel_bush").cards) >= 2
    assert offer.stops == ()
    design = design_from_text(offer.change["design"])
    assert "# what a figure without unit means" in design.file_text
    assert [(one.hole, one.shaft) for one in design.sized().fits if "wheel" in one.hole] == [
        ("wheel_bush.bore", "shaft.seat"),
        ("wheel.bore", "wheel_bush.body"),
    ]


def test_taking_an_offer_gives_the_plan_that_was_offered(rescued, after, hand):
    """The entries of the offer, recorded, lead to the very plan that it showed."""
    from tommybar.bench.card_text import card_marks
    from tommybar.bench.replan import plan_of

    bore = hand("size", "wheel.bore", value=10.3)
    offer = named(rescued(1, "wheel.bore", 10.3, stand=stands(bore)), "with the next reamer")

    build = after(bore, *taking(offer, device=hand.device, number=5, at="2026-05-03T10:00:00Z"))

    assert card_marks(plan_of(build)) == card_marks(offer.plan)


@pytest.mark.parametrize(
    ("size", "value", "words"),
    [
        ("wheel.bore", 10.01, "It is not oversize"),
        ("wheel.boer", 10.1, 'Did you mean "wheel.bore"'),
        ("wheel.rim", 90.5, "is the hole of no fit"),
    ],
)
def test_what_is_no_oversize_bore_is_refused(rescued, size, value, words):
    """Within its limit, unknown, or no bore of a fit: told so."""
    with pytest.raises(Refusal, match=words):
        rescued(1, size, value)
