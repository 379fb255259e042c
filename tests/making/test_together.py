"""Cards of parts made alike, and of holes that are spotted through from one part to the other."""

from __future__ import annotations

from functools import cache
from pathlib import Path

from tommybar.design import load_design
from tommybar.making.cards import Card
from tommybar.planning import Plan, plan
from tommybar.shop import load_shop

EXAMPLES = Path(__file__).resolve().parents[2] / "examples"


@cache
def clamp() -> Plan:
    """The clamp in the reference shop: two jaws alike, the lower spotted through the upper."""
    shop = load_shop(EXAMPLES / "shops" / "shop-r.yaml")
    return plan(load_design(EXAMPLES / "toolmakers-clamp" / "design.yaml"), shop)


def lines(part: str, words: str) -> list[Card]:
    """The cards of a part that say these words before starting."""
    return [card for card in clamp().part(part).cards if any(words in one for one in card.before_starting)]


def test_every_card_of_both_jaws_says_that_they_are_made_in_one_setting():
    """Each names the other jaw and the 0.05 within which they are alike."""
    for part, other in (("upper", "lower"), ("lower", "upper")):
        cards = lines(part, f"Alike with the {other} within 0.05: clamp them together")
        assert len(cards) == len(clamp().part(part).cards) >= 2


def test_holes_are_spotted_through_and_those_that_guide_come_first():
    """Dimple and middle of the lower jaw through back and easy of the upper, on the card of these holes alone."""
    (low,) = lines("lower", "Spot dimple and middle through back and easy of the upper")
    assert {"dimple", "middle"} <= {step.feature for step in low.steps}
    (high,) = lines("upper", "Back and easy guide the drill that spots dimple and middle of the lower")
    assert {"back", "easy"} <= {step.feature for step in high.steps}
    order = [one.part.name for one in clamp().parts]
    assert order.index("upper") < order.index("lower")


def test_other_parts_are_left_alone():
    """Nothing is said on the cards of the screws."""
    assert lines("middle_screw", "Alike") == lines("back_screw", "Spot") == []
