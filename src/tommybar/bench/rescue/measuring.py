"""Realities 29 and 30: a size measured warm, and an instrument too coarse for its limits."""

from __future__ import annotations

from collections.abc import Iterator

from tommybar.bench.rescue.situation import Mishap, Reality, Situation, Try, beware
from tommybar.facts.materials import material
from tommybar.findings import Finding
from tommybar.refusals import Refusal, nearest
from tommybar.shop.model import Instrument
from tommybar.sizes.acceptance import acceptance_zone, instrument_verdict
from tommybar.sizes.temperature import size_when_cool, thermal_growth

WARM = 20.0  # how much warmer work comes out of the lathe [K]; common practice, no source
LARGE = 30.0  # below this diameter it cools while it is measured [mm]; common practice, no source
SHARE = 0.25  # a warm reading that is off by more than this of the tolerance is worth a word
COOLING = 30.0  # [min]; common practice, no source
MEASURING = 5.0  # a size measured again, three times at two angles [min]; common practice, no source


def _held(situation: Situation) -> Iterator[tuple[str, float, float, str, str]]:
    """Every hold point: size, figure, width of its limits or 0, instrument, card."""
    for card in (card for part in situation.plan.parts for card in part.cards):
        for one in (one for step in card.steps for one in step.measure):
            low, high = one.dim.smallest, one.dim.largest
            width = high - low if low is not None and high is not None else 0.0
            yield one.size, one.dim.value, width, one.instrument, f"{card.part}/{card.number}"


def warn_of_warmth(situation: Situation) -> Iterator[Finding]:
    """What 20 K add to what is measured as it comes out of the machine."""
    for size, value, width, _, _ in _held(situation):
        part = situation.plan.part(size.split(".")[0]).part
        over = thermal_growth(value, material(part.material).expansion, WARM) / 1000
        body = max((one.size for one in [situation.plan.part(part.name).blank] if one), default=value)
        if body > LARGE and width and over > SHARE * width:
            yield beware(
                29,
                f"Measured {WARM:g} K warm, {size} reads {over:.3f} mm over; its limits are {width:.3f} mm apart.",
                about=size,
                figure=f"{over:.3f} mm",
                bound=f"{SHARE * width:.3f} mm, a quarter of its limits",
                remedy="Let it cool to the instrument's temperature, or reckon with the cool size.",
                source="linear expansion of the stuff",
            )


def tries_after_warmth(situation: Situation, mishap: Mishap) -> Iterator[Try]:
    """The reading taken back to 20 C; or cooled and measured again."""
    situation.dim(mishap.about)
    warmer = mishap.more.get("warmer", WARM)
    if not -30 <= warmer <= 200:
        raise Refusal(f"The part is {warmer:g} K warmer; -30 to 200 K can be reckoned with.", "Let it cool.")
    part = situation.plan.part(mishap.about.split(".")[0]).part
    cool = round(size_when_cool(mishap.value, material(part.material).expansion, warmer), 4)
    yield Try(
        f"Reckon with {cool:.3f} mm, which is {mishap.value:.3f} mm at {warmer:g} K warmer.",
        readings=((mishap.about, cool),),
    )
    yield Try(
        "Let it cool and measure again; until then nothing counts.", forget=(mishap.about,), by_hand=COOLING
    )


def _instrument(situation: Situation, name: str) -> Instrument:
    known = {one.name: one for one in situation.plan.shop.instruments}
    if name not in known:
        raise Refusal(
            f'The shop has no instrument "{name}".', nearest(name, known) or f"It has {', '.join(known)}."
        )
    return known[name]


def warn_of_coarseness(situation: Situation) -> Iterator[Finding]:
    """Hold points whose instrument cannot judge their limits."""
    known = {one.name: one for one in situation.plan.shop.instruments}
    for size, _, width, name, card in _held(situation):
        if width <= 0 or name not in known:
            continue
        verdict = instrument_verdict(width, known[name].uncertainty)
        if not verdict.can_judge:
            yield beware(
                30,
                f"{name} is {verdict.word} for {size}: limits {width:.3f} mm apart, uncertainty"
                f" {2 * known[name].uncertainty:.3f} mm.",
                about=size,
                figure=f"{verdict.ratio:.2f} of the limits",
                bound="0.33 of the limits",
                remedy=f"Measure three times at two angles, or borrow a finer one ({card}).",
                source="uncertainty against tolerance, common practice",
            )


def tries_after_coarseness(situation: Situation, mishap: Mishap) -> Iterator[Try]:
    """Accept it where the guard band lets one; measure with what can judge; else reckon with the worst."""
    dim, used = situation.dim(mishap.about), _instrument(situation, mishap.said)
    if dim.smallest is None or dim.largest is None:
        raise Refusal(f"{mishap.about} has no limits of its own.", "Any instrument will do.")
    zone = acceptance_zone(dim.smallest, dim.largest, used.uncertainty)
    if zone.accepts(mishap.value):
        yield Try(
            f"Take {mishap.value:.3f} mm: it lies {zone.guard_mm:.3f} mm inside its limits, as the {used.name} asks.",
            readings=((mishap.about, mishap.value),),
        )
    width = dim.largest - dim.smallest
    finer = [
        one
        for one in situation.plan.shop.instruments
        if set(one.measures) & set(used.measures)
        and one.smallest <= mishap.value <= one.largest
        and instrument_verdict(width, one.uncertainty).can_judge
    ]
    for one in sorted(finer, key=lambda one: one.uncertainty)[:1]:
        yield Try(
            f"Measure {mishap.about} again with the {one.name}.", forget=(mishap.about,), by_hand=MEASURING
        )
    for sign, word in ((1, "largest"), (-1, "smallest")):
        worst = round(mishap.value + sign * 2 * used.uncertainty, 4)
        yield Try(
            f"Reckon with {worst:.3f} mm, the {word} that the {used.name} cannot rule out.",
            readings=((mishap.about, worst),),
        )


WARMTH = Reality(
    29,
    "Measured warm",
    "about: the size; value: the reading [mm]; more: warmer, how much warmer than the instrument [K]",
    warn_of_warmth,
    tries_after_warmth,
)
COARSE = Reality(
    30,
    "Instrument too coarse",
    "about: the size; value: the reading [mm]; said: the instrument",
    warn_of_coarseness,
    tries_after_coarseness,
)
