"""The steps of a card between centres: setting it up, and trying whether it turns parallel."""

from __future__ import annotations

from tommybar.making.bench import Bench
from tommybar.making.cards import Drive, Step
from tommybar.making.grips import Option
from tommybar.making.lengths import Mm
from tommybar.making.practice import rule
from tommybar.making.tail_centre import CENTRE
from tommybar.mechanics.between_centres import tail_shift
from tommybar.shapes.features import Cylinder, Land
from tommybar.shop.model import Shop

TOLD = 0.002  # micrometer and indicator at home tell no less; common practice, no source [mm]
LEAST_TRACK = 20.0  # between two measurements of a taper; common practice, no source [mm]


def drive_of(option: Option, shop: Shop, length: float) -> Drive | None:
    """The dog and its plate in the card's frame; None for other holdings."""
    if option.dog is None:
        return None
    swing = rule("tailstock", "dog") * option.dog.largest + rule("tailstock", "dog_more")
    front = option.jaw_front - rule("tailstock", "clear") + 1.0
    end = -length
    if option.mandrel > 0:
        front = -length - rule("tailstock", "mandrel_gap")
        end = front - option.dog.wide - rule("tailstock", "mandrel_end")
    return Drive(front, option.dog.wide, option.dia, swing, shop.catch_plate, end, option.mandrel)


def set_between(bench: Bench) -> None:
    """Put the work between the centres with its dog on; from here on both centres carry it."""
    option = bench.option
    assert option.dog is not None
    on = "the blank" if option.surface == "blank" else option.surface
    turned = option.surface != "blank" and option.mandrel == 0
    do = f"Set it between centres, dog on {on}"
    big = bench.length
    where = f"the last {Mm(option.dog.wide):g}"
    if option.mandrel > 0:
        do, where = f"Press the mandrel into {on}, set it between centres", "the mandrel's thick end"
        big += rule("tailstock", "mandrel_gap") + option.dog.wide
        big += rule("tailstock", "mandrel_end") + rule("tailstock", "mandrel_free")
    bench.add(
        Step(
            0,
            do,
            option.surface,
            CENTRE,
            "hand",
            0.0,
            0.0,
            0.0,
            f"{big:.1f}",
            "mm long",
            (
                "Head's centre clean in a clean taper; try it by indicator: unless it runs true, the two ends do not.",
                f"Dog {Mm(option.dog.smallest):g}-{Mm(option.dog.largest):g} on {where}, its tail in the plate without binding.",
                *(
                    ("Turned end for end on the same centres; wipe both holes, grease the tail's.",)
                    if turned
                    else ()
                ),
            ),
            minutes=4.0,
            why="Both centre holes carry every cut, so that what is turned from either end runs true to the same axis.",
            cautions=(
                "The dog and its tail swing: guard over them, sleeves and rag away, hand on no handle to the left of it.",
                "Ease the tail's centre now and then: warm work grows against it.",
            ),
        )
    )
    bench.centred = option.centre


def why_between(option: Option) -> str:
    """Why work is turned so."""
    if option.mandrel > 0:
        return f"On a mandrel in its finished {option.surface}, so that the outside runs true to it."
    return "What is turned from either end on the same two centres runs true to one axis."


def try_taper(bench: Bench, lands: list[Land]) -> None:
    """After roughing: how far the axis leans, and what the tailstock is moved by.

    On the longest land turned here the two diameters tell; where none is long
    enough, an indicator along the blank beside the dog, read at two places each
    half a turn apart, so that its own run-out drops out. What may be left is a
    quarter of the narrowest limits of the ``lands`` turned here.
    """
    agree = rule("tailstock", "taper")
    for land in lands:
        drawn = next(f for f in bench.drawn.outside if f.name == land.name)
        if isinstance(drawn, Cylinder) and drawn.dia.smallest is not None and drawn.dia.largest is not None:
            agree = min(agree, rule("cut", "taper_share") * (drawn.dia.largest - drawn.dia.smallest))
    agree = max(agree, TOLD)
    dog_front = bench.option.jaw_front - rule("tailstock", "clear") + 1.0
    turned = [(near - max(far, dog_front), dia) for near, far, dia in bench.work.spans]
    fresh = [(long, dia) for long, dia in turned if dia < bench.option.dia - 1e-6]
    blank = [(long, dia) for long, dia in turned if abs(dia - bench.option.dia) < 1e-6]
    long, dia = max(fresh, default=(0.0, 0.0))
    if long - 4.0 >= LEAST_TRACK:
        apart = long - 4.0
        share = tail_shift(1.0, apart, bench.length)
        larger = "Larger at the tail"
        how = f"Micrometer on {Mm(dia):.2f} at two places {Mm(apart):.0f} apart, 2 from each end of that cut."
        then = f"Then a light cut and measure again, until they agree within {Mm(agree):.3f}."
    elif bench.option.surface == "blank" and max(blank, default=(0.0, 0.0))[0] - 4.0 >= LEAST_TRACK:
        apart = max(blank)[0] - 4.0
        share = 2 * tail_shift(1.0, apart, bench.length)
        larger = "Further from the tool at the tail, where it then reads less"
        how = (
            f"Indicator on the carriage, on the tool's side against the blank, at two places {Mm(apart):.0f} apart; "
            "at each the middle of two readings "
            "half a turn apart."
        )
        then = f"Again, until the two middles agree within {Mm(max(agree / 2, TOLD)):.3f}."
    else:
        return
    bench.add(
        Step(
            0,
            "Try whether it turns parallel, move the tailstock until it does",
            bench.option.surface,
            "micrometer, indicator on the tailstock's barrel",
            "hand",
            0.0,
            0.0,
            0.0,
            f"{share:.2f}",
            "x the difference",
            (
                how,
                f"{larger}: tailstock towards the tool by {share:.2f} of the difference; "
                "the other way round: away from it.",
                then,
            ),
            minutes=6.0,
            why="The line of the centres leans by the tailstock's error over its whole length, the diameter by twice that.",
            cautions=("Spindle stopped and tailstock clamped again before every reading.",),
        )
    )
