"""The troubles that can be worked out, listed by hand, by the number under which the page offers them."""

from __future__ import annotations

from tommybar.bench.rescue import (
    alloy,
    bore_oversize,
    dials,
    faces,
    jaws,
    measuring,
    no_reamer,
    paper,
    pressed,
    speeds,
    stock,
    threads,
)
from tommybar.bench.rescue.offers import Offer, tried
from tommybar.bench.rescue.situation import Mishap, Reality, Situation
from tommybar.findings import Finding, in_order
from tommybar.refusals import Complaint, Refusal

REALITIES: tuple[Reality, ...] = (
    bore_oversize.REALITY,  # 1
    stock.ROUND,  # 2
    no_reamer.REALITY,  # 3
    jaws.GAP,  # 4
    jaws.REACH,  # 5
    threads.LEADS,  # 10
    dials.READING,  # 11
    dials.SLACK,  # 12
    threads.BREAKS_OUT,  # 15
    threads.TAP_BREAKS,  # 16
    threads.SHALLOW,  # 17
    speeds.SPEED,  # 24
    pressed.REALITY,  # 28
    measuring.WARMTH,  # 29
    measuring.COARSE,  # 30
    faces.FACES,  # 31
    stock.SHORT,  # 38
    paper.REALITY,  # 39
    alloy.REALITY,  # 40
    jaws.REGRIP,  # 43
    speeds.CUTTER,  # 44
    faces.SEAT,  # 45
)


def reality(number: int) -> Reality:
    """The reality of a number; a refusal for one that is not computed yet."""
    for one in REALITIES:
        if one.number == number:
            return one
    known = ", ".join(str(one.number) for one in REALITIES)
    raise Refusal(f"Reality {number} is not among those that can be worked out.", f"They are {known}.")


def warnings(situation: Situation) -> tuple[Finding, ...]:
    """What can be foreseen to go wrong, from the plan and the shop: findings 751 to 795."""
    return in_order([found for one in REALITIES for found in one.warn(situation)])


def offers(situation: Situation, mishap: Mishap) -> tuple[Offer, ...]:
    """The ways out, cheapest first, each planned with the bad size frozen.

    Raises :class:`Refusal` when what is told does not fit the reality, or when
    no way can be planned; the words then say why each fell out.
    """
    found: list[Offer] = []
    why: list[Complaint] = []
    seen = False
    for one in reality(mishap.number).tries(situation, mishap):
        seen = True
        try:
            offer = tried(situation, one)
            if (
                not one.smaller or offer.plan.scale < situation.plan.scale
            ):  # the same size again is no way out
                found.append(offer)
        except Refusal as refusal:
            first = refusal.complaints[0]
            why.append(Complaint(f"{one.words} Not possible: {first.what}", first.remedy))
    if not found:
        words = "No way out can be planned." if seen else "There is nothing to try for this."
        raise Refusal([Complaint(words, "Make the part again."), *why])
    return tuple(sorted(found, key=lambda offer: offer.price))
