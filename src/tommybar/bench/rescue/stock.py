"""Realities 2 and 38: stock out of round or bent, and a blank sawn short."""

from __future__ import annotations

from collections.abc import Iterator

from tommybar.bench.rescue.situation import Mishap, Reality, Situation, Try, beware
from tommybar.bench.rescue.sizes import named_size, sizes_that_move
from tommybar.findings import Finding
from tommybar.making.cards import Blank
from tommybar.planning import PartPlan
from tommybar.refusals import Refusal, nearest
from tommybar.shapes.features import Cylinder, TurnedShape

GRID = 0.5  # sizes go down in such steps [mm]
CLEAN = 0.2  # taken off a bar that is turned clean, on diameter [mm]; common practice, no source
SPARE = 1.0  # a bar that is used up to less than this has nothing for a slip of the saw [mm]
SHARING = 15.0  # clocking a bar so that its error is shared [min]; common practice, no source


def _part(situation: Situation, name: str) -> tuple[PartPlan, Blank]:
    known = {one.part.name: one for one in situation.plan.parts if one.blank is not None}
    if name not in known:
        raise Refusal(
            f'No blank is sawn for "{name}".', nearest(name, known) or f"There are {', '.join(known)}."
        )
    blank = known[name].blank
    assert blank is not None
    return known[name], blank


def warn_of_stock(situation: Situation) -> Iterator[Finding]:
    """Sawn or cast pieces that leave little over the largest diameter."""
    skins = {bar.name: bar.skin for bar in situation.plan.shop.rack}
    for one in situation.plan.stock.bars:
        if skins.get(one.bar) not in ("sawn", "cast", "rolled") or one.section != "round":
            continue
        for cut in one.cuts:
            largest = _largest(situation.plan.part(cut.part))
            yield beware(
                2,
                f"{one.bar} for {cut.part}: {one.size - largest.dia.value:.1f} mm of skin to clean a diameter of"
                f" {largest.dia.value:g} mm.",
                about=f"{cut.part}.{largest.name}",
                figure=f"{one.size:g} mm",
                bound=f"{largest.dia.value + CLEAN:g} mm, clean and straight",
                remedy="Measure four diameters and the bow before it is gripped.",
                severity="note",
            )


def _largest(one: PartPlan) -> Cylinder:
    shape = one.part.shape
    if not isinstance(shape, TurnedShape):
        raise Refusal(f"{one.part.name} is not turned.", "Name a turned part.")
    return max(
        (body for body in shape.outside if isinstance(body, Cylinder)), key=lambda body: body.dia.value
    )


def tries_after_stock(situation: Situation, mishap: Mishap) -> Iterator[Try]:
    """What the bar cleans up to; the diameter down to that, or the error shared."""
    one, _ = _part(situation, mishap.about)
    largest = _largest(one)
    bow = mishap.more.get("bow", 0.0)
    cleans = mishap.value - 2 * bow - CLEAN
    size = f"{one.part.name}.{largest.name}"
    if cleans >= largest.dia.value - 1e-9:
        yield Try(f"It cleans up at {cleans:.2f} mm, over the {largest.dia.value:g} mm of {size}: go on.")
        return
    named = named_size(situation, size)
    down = int(cleans / GRID + 1e-9) * GRID
    if named is not None and down > 0:
        yield Try(
            f"Take {size} down to {down:g} mm, which it cleans up to.",
            pins={named.name: down},
            keep=(mishap.about,),
        )
    if mishap.value - CLEAN >= largest.dia.value:
        yield Try(f"Clock it in the four-jaw so that the bow is shared, and keep {size}.", by_hand=SHARING)


def warn_of_saw(situation: Situation) -> Iterator[Finding]:
    """Bars that are used up to the last millimetre."""
    for one in situation.plan.stock.bars:
        if one.cuts and one.left < SPARE:
            names = " and ".join(dict.fromkeys(cut.part for cut in one.cuts))
            yield beware(
                38,
                f"{one.bar} is used up to {one.left:.1f} mm: a slip of the saw leaves {names} short.",
                about=one.cuts[-1].part,
                figure=f"{one.left:.1f} mm left",
                bound=f"{SPARE:g} mm",
                remedy="Saw the longest blank first, on the waste side of the mark.",
                source="the saw marks of the plan",
            )


def tries_after_saw(situation: Situation, mishap: Mishap) -> Iterator[Try]:
    """The part shorter by what is missing, by each size that shortens it; or a new blank."""
    one, blank = _part(situation, mishap.about)
    short = blank.length - mishap.value
    if short <= 0:
        raise Refusal(
            f"The blank is {mishap.value:g} mm long; {blank.length:g} mm are wanted.",
            "It is long enough: go on.",
        )
    if mishap.value <= 0:
        raise Refusal(f"The blank is {mishap.value:g} mm long; it must be above 0.", "Measure it.")
    part = one.part.name
    for name, value, moves in sizes_that_move(situation, part):
        if moves <= 0:
            continue
        lower = int((value - short / moves) / GRID + 1e-9) * GRID
        if lower > 0:
            yield Try(
                f"Make {name} {lower:g} mm instead of {value:g} mm; {part} then comes out of it.",
                pins={name: lower},
                keep=(part,),
                out_of=(part, mishap.value),
            )
    yield Try(f"Saw a new blank for {part}.", forget=(part,), stock="ask", new_blank=(part,))


ROUND = Reality(
    2,
    "Stock out of round or bent",
    "about: the part; value: the least of four diameters [mm]; more: bow [mm]",
    warn_of_stock,
    tries_after_stock,
)
SHORT = Reality(
    38,
    "Blank sawn short",
    "about: the part; value: the length of the blank [mm]",
    warn_of_saw,
    tries_after_saw,
)
