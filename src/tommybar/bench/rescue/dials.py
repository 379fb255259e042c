"""Realities 11 and 12: a dial read as diameter or radius, and slack when the slide turns back."""

from __future__ import annotations

import itertools
from collections.abc import Iterator

from tommybar.bench.rescue.shop_edits import with_dial
from tommybar.bench.rescue.situation import Mishap, Reality, Situation, Try, beware
from tommybar.findings import Finding
from tommybar.refusals import Refusal
from tommybar.shop.model import Dial, Shop

NEAR = 0.15  # of the two answers of the test cut [-]
TESTED = 1.00  # what the dial is advanced by in the test, as it is numbered
SLIDES = ("lathe.cross_slide", "lathe.top_slide", "lathe.carriage", "lathe.tailstock", "mill.dial")


def warn_of_reading(situation: Situation) -> Iterator[Finding]:
    """A cross-slide of which nobody has said how it is numbered."""
    if set(situation.plan.shop.assumed) & {"lathe.cross_slide", "lathe.cross_slide.reads"}:
        yield beware(
            11,
            "Whether the cross-slide is numbered in diameter or in radius was never said; it was assumed.",
            figure="not said",
            bound="DIA or RAD",
            remedy="Touch, advance 1.00 on the dial, cut, measure: 1.00 less is DIA, 2.00 less is RAD.",
            source="the shop file",
        )


def tries_after_reading(situation: Situation, mishap: Mishap) -> Iterator[Try]:
    """The test cut settles the dial; a part that was cut twice as deep is made again or made smaller."""
    if mishap.about in ("", "lathe", "lathe.cross_slide"):
        yield _settled(situation, mishap.value)
        return
    dim = situation.dim(mishap.about)
    part = mishap.about.split(".")[0]
    if not 0 < mishap.value < dim.value:
        raise Refusal(
            f"{mishap.about} is {mishap.value:g} mm, drawn {dim.value:g} mm; it was not cut too small.",
            "Record it and go on.",
        )
    yield Try(f"Make {part} again from a new blank.", forget=(part,))
    scale = int(situation.plan.scale * mishap.value / dim.value * 100 + 1e-6) / 100
    yield Try(
        f"Make everything at scale {scale:g}, for which the {mishap.about} of {mishap.value:g} mm is large enough.",
        scale=scale,
        keep=(part,),
        forget=(mishap.about,),
    )


def _settled(situation: Situation, change: float) -> Try:
    for reads, expected in (("DIA", TESTED), ("RAD", 2 * TESTED)):
        if abs(change - expected) <= NEAR * expected:
            words = f"The cross-slide is numbered in {'diameter' if reads == 'DIA' else 'radius'}: write {reads} on it."
            return Try(words, shop=with_dial(situation.inputs.shop_text, "lathe.cross_slide", "reads", reads))
    raise Refusal(
        f"The diameter came down by {change:g} mm for 1.00 on the dial; 1.00 would be DIA and 2.00 RAD.",
        "Take up the slack first and do the test again.",
    )


def _dial(shop: Shop, slide: str) -> Dial:
    if slide not in SLIDES:
        raise Refusal(f'"{slide}" is no slide.', f"They are {', '.join(SLIDES)}.")
    machine, _, name = slide.partition(".")
    if machine == "mill" and shop.mill is None:
        raise Refusal("The shop has no mill.", "Name a slide of the lathe.")
    dial: Dial = getattr(getattr(shop, machine), name)
    return dial


def warn_of_slack(situation: Situation) -> Iterator[Finding]:
    """Coordinate lists that turn a slide back, with the slack in its own divisions."""
    mill = situation.plan.shop.mill
    for card in (card for part in situation.plan.parts for card in part.cards):
        if mill is None or not (
            _turns_back([p.x for p in card.places]) or _turns_back([p.y for p in card.places])
        ):
            continue
        dial = mill.dial
        yield beware(
            12,
            f"The places of {card.part}/{card.number} turn a slide back; its slack is "
            + (
                f"{dial.slack:g} divisions, {dial.slack * dial.per_division:.2f} mm."
                if dial.slack
                else "not known."
            ),
            about=f"{card.part}/{card.number}",
            figure=f"{dial.slack:g} div",
            bound="come from one side",
            remedy="Go a turn past and come up from the side that the list says.",
            severity="note" if dial.slack else "caution",
            source="the shop file",
        )


def _turns_back(along: list[float]) -> bool:
    steps = [b - a for a, b in itertools.pairwise(along) if abs(b - a) > 1e-6]
    return any(a * b < 0 for a, b in itertools.pairwise(steps))


def tries_after_slack(situation: Situation, mishap: Mishap) -> Iterator[Try]:
    """The slack as it was measured goes into the shop file, and every card speaks of it."""
    dial = _dial(situation.plan.shop, mishap.about)
    if not 0 <= mishap.value <= 5:
        raise Refusal(
            f"The slack is {mishap.value:g} mm; it must be from 0 to 5 mm.", "Measure it by an indicator."
        )
    divisions = round(mishap.value / dial.per_division * 2) / 2
    yield Try(
        f"Reckon with {divisions:g} divisions of slack in the {mishap.about.replace('.', ' ').replace('_', ' ')};"
        " find the zero again, then check a chord.",
        shop=with_dial(situation.inputs.shop_text, mishap.about, "slack", divisions),
    )


READING = Reality(
    11,
    "Dial in diameter or radius",
    "about: lathe.cross_slide and value: what the diameter came down by for 1.00 [mm]; or about: the size"
    " that was cut too small and value: what it measures [mm]",
    warn_of_reading,
    tries_after_reading,
)
SLACK = Reality(
    12,
    "Slack when a slide turns back",
    f"about: one of {', '.join(SLIDES)}; value: the slack measured [mm]",
    warn_of_slack,
    tries_after_slack,
)
