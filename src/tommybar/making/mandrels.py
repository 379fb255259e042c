"""Mandrels in a finished bore: between centres for an outside that must run true to it, or expanding in the chuck.

A plain mandrel is a few hundredths thinner at one end and is pressed home in
the bore; it turns on its own two centres, so that the outside runs true to
the bore within what the mandrel itself runs out.
"""

from __future__ import annotations

from tommybar.making.between_centres import HEAD, NO_SKILL, SKILL
from tommybar.making.cards import Rejected
from tommybar.making.grips import Option
from tommybar.making.jobs import largest, largest_outside
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
EXPANDS = "expanding mandrel"  # among the ways of working
EXPANDING_COST = 16.0  # of the search: turned in place, slit and tapped for its taper screw
EXPANDING_RUNOUT = 0.015  # TIR, 0.01 to 0.02 is common practice, no source [mm]
EXPANDING_LEAST = 8.0  # bore that a slit plug with a taper screw goes into; common practice, no source [mm]
EXPANDING_SHORT = 0.5  # length over bore; common practice, no source
SPREADS = 0.1  # wall over bore under which the plug spreads it; common practice, no source
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
        return NO_SKILL
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


def expanding_options(
    shape: TurnedShape, made: frozenset[str], shop: Shop, free: Face, rejected: list[Rejected]
) -> list[Option]:
    """A slit plug, turned in place and spread by a taper screw, in each finished through bore.

    It stands out of nothing, so that the free face can be cut as well.
    """
    options: list[Option] = []
    if EXPANDS not in shop.can:
        return options
    for bore in shape.bores:
        if not bore.through or bore.name not in made or bore.after or bore.thread:
            continue
        dia, length = bore.dia.value, shape.length.value
        wall = (min(largest(land) for land in shape.outside) - dia) / 2
        turns = largest_outside(shape) / dia
        reasons = (
            (
                dia < EXPANDING_LEAST,
                f"a plug of {dia:g} mm has no room for its screw; {EXPANDING_LEAST:g} mm at least",
            ),
            (length < EXPANDING_SHORT * dia, f"{length:g} mm of bore is short for {dia:g} mm: it would lean"),
            (length > 6 * dia, "too long for it"),
            (wall < SPREADS * dia, f"a wall of {wall:.1f} mm round {dia:g} mm spreads with it"),
            (turns > 5.0, f"the part is {turns:.1f} x as large as its plug of {dia:g} mm; 5 x at most"),
        )
        told = next((words for true, words in reasons if true), "")
        if told:
            rejected.append(Rejected(f"{EXPANDS} in {bore.name}, face {free} free", told))
            continue
        options.append(
            Option(
                None,
                f"{EXPANDS} {Mm(dia):g}",
                bore.name,
                bore.dia.target,
                length,
                free,
                -length,
                "",
                EXPANDING_RUNOUT,
                EXPANDING_COST,
                note="turn the plug in place to a close fit, 1 mm shorter than the bore, drill and tap it for its taper "
                "screw, slit it, and leave it in the chuck; ease the screw before the last cuts",
                spigot=dia,
                plug=True,
            )
        )
    return options
