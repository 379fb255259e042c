"""Realities 4, 5 and 43: work that falls between the jaws, beyond them, or that runs out in them."""

from __future__ import annotations

from collections.abc import Iterator

from tommybar.bench.rescue.shop_edits import with_jaws_runout, without_jaws
from tommybar.bench.rescue.situation import Mishap, Reality, Situation, Try, beware
from tommybar.findings import Finding
from tommybar.making.cards import Card
from tommybar.refusals import Refusal, nearest
from tommybar.shapes.features import Cylinder, TurnedShape
from tommybar.shop.questions import nearest_grip_words

TRUEING = 10.0  # work clocked true in a four-jaw chuck [min]; common practice, no source


def _gripped(situation: Situation) -> Iterator[tuple[str, float]]:
    """Everything round that might be gripped: blanks and outside cylinders."""
    for part in situation.plan.parts:
        if part.blank is not None and part.blank.section == "round":
            yield f"{part.part.name}.blank", part.blank.size
        if isinstance(part.part.shape, TurnedShape):
            for one in part.part.shape.outside:
                if isinstance(one, Cylinder) and not one.thread:
                    yield f"{part.part.name}.{one.name}", one.dia.value


def _warn(situation: Situation, number: int, beyond: bool) -> Iterator[Finding]:
    for name, dia in _gripped(situation):
        words = nearest_grip_words(situation.plan.shop, dia)
        if words and words.startswith("over") == beyond:
            yield beware(
                number,
                f"{name} is {dia:g} mm: {words}.",
                about=name,
                figure=f"{dia:g} mm",
                bound=words,
                remedy="Hold it by another surface, on an arbor, or take another blank.",
                source="the jaws of the shop file",
            )


def warn_of_gaps(situation: Situation) -> Iterator[Finding]:
    """Diameters that lie between two jaw sets, or below all."""
    return _warn(situation, 4, beyond=False)


def warn_of_reach(situation: Situation) -> Iterator[Finding]:
    """Diameters over the largest opening."""
    return _warn(situation, 5, beyond=True)


def tries_without(situation: Situation, mishap: Mishap) -> Iterator[Try]:
    """The jaws do not hold it: another way of holding, then a size at which one does."""
    shop = without_jaws(situation.inputs.shop_text, mishap.about)
    yield Try(f"Hold everything without the {mishap.about}.", shop=shop)
    yield Try(f"Make it smaller, so that it can be held without the {mishap.about}.", shop=shop, smaller=True)


def warn_of_runout(situation: Situation) -> Iterator[Finding]:
    """Run-outs that are expected to come over what is needed."""
    for card in (card for part in situation.plan.parts for card in part.cards):
        for one in card.runout:
            if one.worst > one.within:
                yield beware(
                    43,
                    f"{one.of} to {one.to} may run out by {one.worst:.3f} mm after gripping again"
                    f" (95 of 100: {one.expected:.3f}).",
                    about=f"{card.part}.{one.of}",
                    figure=f"{one.worst:.3f} mm",
                    bound=f"{one.within:g} mm",
                    remedy="Measure it before the first cut; true it up in the four-jaw.",
                    severity="caution" if one.expected > one.within else "note",
                    source="run-out of each grip of the shop, added as vectors",
                )


def tries_after_gripping(situation: Situation, mishap: Mishap) -> Iterator[Try]:
    """So much run-out was measured: go on, hold it otherwise, or true it up."""
    card = _card(situation, mishap.about)
    jaws, text = card.hold.jaws, situation.inputs.shop_text
    if not jaws:
        raise Refusal(
            f"{mishap.about} is held in {card.hold.device}, not in jaws.", "Name a card held in jaws."
        )
    if mishap.value < 0:
        raise Refusal(
            f"The run-out is {mishap.value:g} mm; it must be 0 or more.", "Read the indicator again."
        )
    true = with_jaws_runout(text, jaws, mishap.value)
    yield Try(f"Go on in the {jaws}, reckoning with {mishap.value:.3f} mm.", shop=true)
    yield Try(
        f"Clock it true to 0.01 mm in the {jaws}, with packing or a soft hammer.",
        shop=with_jaws_runout(text, jaws, 0.01),
        by_hand=TRUEING,
    )
    yield Try(f"Hold it without the {jaws}.", shop=without_jaws(text, jaws), by_hand=TRUEING)


def _card(situation: Situation, key: str) -> Card:
    known = {f"{card.part}/{card.number}": card for part in situation.plan.parts for card in part.cards}
    if key not in known:
        raise Refusal(f'There is no card "{key}".', nearest(key, known) or "Write it like wheel/2.")
    return known[key]


GAP = Reality(
    4, "Diameter between two jaw sets", "about: the jaws that do not hold it", warn_of_gaps, tries_without
)
REACH = Reality(5, "Jaws opened too far", "about: the jaws that do not reach", warn_of_reach, tries_without)
REGRIP = Reality(
    43,
    "Run-out after gripping again",
    "about: the card, part/number; value: the run-out measured, TIR [mm]",
    warn_of_runout,
    tries_after_gripping,
)
