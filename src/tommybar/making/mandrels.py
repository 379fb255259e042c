"""A mandrel between centres in a finished bore, for an outside that must run true to it.

A plain mandrel is a few hundredths thinner at one end and is pressed home in
the bore; it turns on its own two centres, so that the outside runs true to
the bore within what the mandrel itself runs out.
"""

from __future__ import annotations

from tommybar.making.between_centres import HEAD, SKILL
from tommybar.making.cards import Rejected
from tommybar.making.grips import Option
from tommybar.making.jobs import largest_outside
from tommybar.making.lengths import Mm
from tommybar.making.practice import rule
from tommybar.shapes.features import Bore, Face, TurnedShape
from tommybar.shop.model import Shop

COST = 20.0  # of the search: pressed on and off, driven by its dog, light cuts
MADE_COST = 15.0  # the same for one that has to be turned first
THINNEST = 6.0  # below it a mandrel whips and bends; common practice, no source [mm]
LEVERAGE = 4.0  # largest outside over bore, since the taper alone turns it; common practice, no source
SHORTEST = 1.0  # length over bore, so that the work does not lean on it; common practice, no source
TAPER = 3000.0  # the mandrel grows by one in this; 2000 to 5000 is common practice, no source
HOLE = 0.4  # mouth of its own centre holes over its diameter; common practice, no source


def mandrel_options(
    shape: TurnedShape, made: frozenset[str], shop: Shop, free: Face, rejected: list[Rejected]
) -> list[Option]:
    """A mandrel between centres in each finished through bore with limits."""
    options = []
    for bore in shape.bores:
        if not bore.through or bore.name not in made or bore.after or bore.thread or not bore.dia.toleranced:
            continue
        words = f"mandrel between centres in {bore.name}, face {free} free"
        reason = _lacking(shape, bore, shop)
        if f"face {free}" not in made:
            reason = reason or "its free face is not finished, and a mandrel stands in the way of that"
        if reason:
            rejected.append(Rejected(words, reason))
            continue
        owned = any(abs(size - bore.dia.value) < 1e-6 for size in shop.mandrels)
        dia, length = bore.dia.target, shape.length.value
        dog = next(one for one in shop.dogs if one.smallest <= dia <= one.largest)
        deep = rule("tailstock", "mandrel_cut")
        note = f"press it on from its thin end, oiled, until just home; cut towards its thick end, {Mm(deep):g} deep at most"
        if not owned:
            note = (
                f"turn the mandrel first, between centres, of any sound bar: {Mm(dia - 0.01):.2f} at its thin end, growing "
                f"{Mm(length / TAPER):.3f} over the {Mm(length):g} of the bore; then " + note
            )
        options.append(
            Option(
                None,
                f"mandrel {Mm(bore.dia.value):g} between centres",
                bore.name,
                dia,
                length,
                free,
                -length,
                "",
                rule("tailstock", "runout"),
                COST + (0.0 if owned else MADE_COST),
                note=note,
                spigot=bore.dia.value,
                centre=round(HOLE * bore.dia.value, 2),
                dog=dog,
                mandrel=dia,
            )
        )
    return options


def _lacking(shape: TurnedShape, bore: Bore, shop: Shop) -> str:
    """Why shop and bore allow no mandrel; empty when they do."""
    dia, length = bore.dia.value, shape.length.value
    if SKILL not in shop.can:
        return "the shop file does not say that work is turned between centres"
    owned = any(abs(size - dia) < 1e-6 for size in shop.mandrels)
    if not owned and "arbor" not in shop.can:
        return f"no mandrel of {dia:g} mm, and the shop file does not say that arbors are made"
    if shop.catch_plate <= 0 or not any(one.smallest <= dia <= one.largest for one in shop.dogs):
        return f"no catch plate and dog for {dia:g} mm"
    if dia < THINNEST:
        return f"a mandrel of {dia:g} mm whips; {THINNEST:g} mm at least"
    if length < SHORTEST * dia:
        return f"{length:g} mm of bore is short for {dia:g} mm: it would lean"
    turns = largest_outside(shape) / dia
    if turns > LEVERAGE:
        return f"the part is {turns:.1f} x as large as its mandrel of {dia:g} mm; {LEVERAGE:g} x at most"
    ends = (
        rule("tailstock", "mandrel_gap")
        + rule("tailstock", "mandrel_end")
        + rule("tailstock", "mandrel_free")
    )
    barrel = max((one.long for one in shop.tail_centres), default=24.0) + rule("tailstock", "least_out")
    room = shop.lathe.between_centres - HEAD - barrel - ends - 12.0
    if length > room:
        return f"{length:g} mm long, {room:.0f} mm are left between the centres"
    return ""
