"""What is done at the mill on a turned part: holes on circles, holes across, flats, squares and slots."""

from __future__ import annotations

from tommybar.design.model import Part
from tommybar.findings import Finding
from tommybar.making.cards import Card
from tommybar.making.milling.circle_card import circle_cards
from tommybar.making.milling.cross_card import cross_cards
from tommybar.making.milling.round_cards import round_cards
from tommybar.shapes.features import TurnedShape
from tommybar.shop.model import Shop


def hole_cards(
    part: Part,
    shape: TurnedShape,
    shop: Shop,
    cards_before: int,
    gives_to: dict[str, tuple[str, ...]] | None = None,
) -> tuple[list[Card], list[Finding]]:
    """The mill cards of a turned part; ``gives_to`` names the mates that are made to suit a reading."""
    names = [
        *(one.name for one in shape.circle_holes),
        *(one.name for one in shape.cross_holes),
        *(one.name for one in shape.flats),
        *(one.name for one in shape.head_slots),
        *(one.name for one in shape.cross_slots),
        *(one.name for one in shape.keyways),
    ]
    if not names:
        return [], []
    if shop.mill is None:
        told = ", ".join(names)
        return [], [
            Finding(
                903,
                "stop",
                f"{part.name}: {told} want a mill or a drilling machine, and the shop file has none.",
                part.name,
                told,
                remedy="Mark out with the coordinates of the drawing and drill on a pillar drill; add it to the shop file.",
            )
        ]
    cards: list[Card] = []
    findings: list[Finding] = []
    for make in (circle_cards, cross_cards, round_cards):
        found, said = make(part, shape, shop, shop.mill, cards_before + len(cards), gives_to or {})
        cards += found
        findings += said
    return cards, findings
