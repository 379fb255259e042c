"""The lines printed where they bite: before starting, and what goes wrong at this card."""

from __future__ import annotations

from tommybar.design.model import Part
from tommybar.making.cards import Step
from tommybar.making.grips import Option
from tommybar.making.lengths import Mm
from tommybar.making.practice import rule
from tommybar.shop.model import Shop


def before_starting(
    option: Option, shop: Shop, sticks_out: float, slender: float, steps: list[Step]
) -> tuple[str, ...]:
    """Cautions of every start of this grip. Common practice; the machine's manual goes first.

    ``slender`` is how many of its diameters the work stands out once it is
    cut; the depths named are those that the steps really ask for.
    """
    depths = [one.infeed for step in steps if step.tool_kind == "knife" for one in step.passes]
    light = f"cuts of {Mm(max(depths)):.2f} at most" if depths else "no side load"
    lines = [*dial_trial(shop)]
    if option.dog is not None:
        lines += between_lines(option, sticks_out, light, slender)
    else:
        lines += _in_the_chuck(option, shop, sticks_out, light, slender)
    if option.protects:
        where = "in the jaws" if option.dog is None else "under the dog"
        lines.append(f"Finished surface {where}: {option.protects}.")
    if option.note:
        lines.append(option.note[0].upper() + option.note[1:] + ".")
    lines.append("Eye protection. Measure only with the spindle stopped. No gloves, rings, sleeves.")
    return tuple(lines)


def between_lines(option: Option, sticks_out: float, light: str, slender: float) -> list[str]:
    """Cautions of a start between centres. Common practice, no source."""
    assert option.dog is not None
    carried = "mandrel" if option.mandrel > 0 else "work"
    lines = [
        f"Chuck off, catch plate on. Turn the {carried} one whole turn by hand: dog and tail clear of bed and tool.",
        f"The dog's front lies {Mm(sticks_out):.1f} from the free face; carriage stop set so that the tool stays clear of it."
        if option.mandrel == 0
        else f"Work to be cut ends {Mm(sticks_out):.1f} from the free face, the dog sits right behind: set the carriage stop.",
        "Slow first start; tailstock and barrel clamped, no play between the centres.",
    ]
    if slender > rule("grip", "overhang"):
        lines.append(f"{slender:.1f} diameters between the centres: {light}, sharp tool.")
    return lines


def _in_the_chuck(option: Option, shop: Shop, sticks_out: float, light: str, slender: float) -> list[str]:
    lines = [
        "Key out of the chuck. Turn it one whole turn by hand with the carriage at its leftmost place.",
        f"Sticks out {Mm(sticks_out):.1f} from the jaws; carriage stop set so that the tool stays clear of them.",
    ]
    if option.dia > shop.lathe.swing_cross_slide - 2.0:
        lines.append("The work does not pass over the cross-slide: keep the saddle to the right of it.")
    if option.centre > 0:
        lines.append(
            f"Carried by the tailstock centre, {slender:.1f} diameters out of the jaws: {light}, sharp tool."
        )
    elif option.steady is not None:
        lines.append(
            f"Its end runs in the fixed steady, {slender:.1f} diameters out of the jaws: work in the face only."
        )
    elif slender > rule("grip", "overhang"):
        lines.append(
            f"Stands out {slender:.1f} x what it is thinned to, without a centre: {light}, sharp tool, watch for spring."
        )
    if option.grip <= 10 and option.dia > 30:
        lines.append(f"Short grip: stand out of the plane of the disc for the first start; {light}.")
    if option.jaws is not None and option.jaws.device == "collets":
        lines.append("Close the collet first, then touch off Z: it draws the work in as it closes.")
    return lines


def dial_trial(shop: Shop) -> tuple[str, ...]:
    """The trial of a cross-slide dial that the shop file does not tell of; nothing when it does."""
    if not any(
        place == "lathe.cross_slide" or place.startswith("lathe.cross_slide.r") for place in shop.assumed
    ):
        return ()
    step = Mm(1.0)
    return (
        f"ASSUMED: the cross-slide dial reads {shop.lathe.cross_slide.reads or 'RAD'}. Try it first: touch, go in "
        f"{step:.2f} by the dial, turn, measure. {step:.2f} off the diameter: DIA; twice that: RAD. Write it in the shop file.",
    )


def goes_wrong(steps: list[Step], option: Option, part: Part) -> tuple[str, ...]:
    """Up to six things that go wrong at this card. Common practice, no source."""
    kinds = {step.tool_kind for step in steps}
    lines = []
    if option.surface not in ("blank",) and option.jaws and option.jaws.device == "three-jaw":
        lines.append("A chip under a jaw or behind the face: the part leans. Clean, seat, feel all round.")
    if option.dog is not None:
        lines.append(
            "A dry or rough centre hole scores, and the work runs out: clean, grease, no play, no push."
        )
        lines.append("The dog's tail binds in the plate and lifts the work off its centre: leave it play.")
    if "reamer" in kinds:
        lines.append(
            "Reamed too large or bell-mouthed: tailstock off centre. Measure, then make the mate to suit."
        )
    if "drill" in kinds:
        lines.append("Drill wanders: start from the centre drill, clear chips, no side load.")
    if "inside groove" in kinds:
        lines.append(
            "Chips pack in an inside groove and hold the tool off its depth: spindle stopped, hook them out, go on."
        )
    if "recess" in kinds:
        lines.append("The heel of the recess tool rubs the outer wall: relieve it below the edge.")
    if "parting" in kinds:
        lines.append("Parting tool jams: too high, not square, or the carriage not locked.")
    if "die" in kinds:
        lines.append("Die starts tilted and cuts a drunken thread: start it in the tailstock holder.")
    if "knurling" in kinds:
        lines.append("Double-tracked knurl: the diameter is off; take 0.1 off and press harder at once.")
    if "knife" in kinds:
        lines.append("RAD and DIA mixed up: measure after the first cut before believing the dial.")
    if part.material in ("phosphor bronze",) or "stainless" in part.material:
        lines.append("Work hardens where the tool rubs: keep it cutting, keep it sharp.")
    return tuple(lines[:6])
