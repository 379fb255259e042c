"""What the measured sizes of a making change in its design."""

from __future__ import annotations

from dataclasses import replace

from tommybar.design.model import SizedDesign
from tommybar.findings import Finding
from tommybar.made.dims import dims_of, lengths_of, with_dims
from tommybar.made.loops import retarget_loops
from tommybar.made.mates import retarget_fits
from tommybar.made.record import Made, Measured
from tommybar.made.words import limits_words, size_words
from tommybar.refusals import nearest
from tommybar.shapes.features import Dim, PlateShape, TurnedShape

SLIPS = ((25.4, "inches and millimetres"), (2.0, "diameter and radius"), (0.5, "diameter and radius"))
FAR = 0.1  # from which share of the drawn size on a measured one is not joined any more
NEAR = 0.03  # how near to such a factor a slip is suspected


def retarget(design: SizedDesign, made: Made) -> tuple[SizedDesign, tuple[Finding, ...], dict[str, str]]:
    """The design with new limits for what is not made yet, findings 700 to 799, and for each part why.

    A measured figure keeps its drawn value and limits, with the measurement in
    ``because``: tools and bars are still looked up by the drawn value. Its
    mates get limits that keep the clearance of the fit round what was really
    measured; the length made last of a loop is solved for.
    """
    findings = _suspicions(design, made)
    fits = retarget_fits(design, made)
    marked = {name: _marked(dim, all_of, design) for name, dim, all_of in _measured_dims(design, made)}
    design = with_dims(design, {**fits.dims, **marked})
    design, more, why = retarget_loops(design, made)
    for part, reasons in fits.why.items():
        why.setdefault(part, [])[:0] = reasons
    return design, (*findings, *fits.findings, *more), {part: " ".join(why[part]) for part in sorted(why)}


def as_measured(design: SizedDesign, made: Made) -> SizedDesign:
    """The design for what is joined: a measured size has no limits any more but what its pieces are.

    The drawn value stays, as tools and bars are looked up by it. A figure that
    is a tenth or more off is a slip or scrap; what is joined is then reckoned as drawn.
    """
    real = {}
    for name, dim, all_of in _measured_dims(design, made):
        values = [one.value for one in all_of if abs(one.value - dim.value) < FAR * dim.value]
        if dim.toleranced and values:
            real[name] = replace(dim, smallest=min(values), largest=max(values))
    return with_dims(design, real)


def _measured_dims(design: SizedDesign, made: Made) -> list[tuple[str, Dim, tuple[Measured, ...]]]:
    return [(name, dim, all_of) for name, dim in dims_of(design).items() if (all_of := made.pieces(name))]


def _marked(dim: Dim, all_of: tuple[Measured, ...], design: SizedDesign) -> Dim:
    told = [
        size_words(one.value, design.units)
        + (f" on piece {one.piece}" if one.piece > 1 else "")
        + "".join(f", {word}" for word in (one.instrument, one.on) if word)
        for one in all_of
    ]
    return replace(dim, because=f"measured {'; '.join(told)}")


def _suspicions(design: SizedDesign, made: Made) -> list[Finding]:
    """Names that are not in the design, slips of the pen, and sizes outside their limits."""
    dims, lengths = dims_of(design), lengths_of(design)
    known = {*dims, *lengths, *(term.name for loop in design.loops for term in loop.terms)}
    findings = []
    names = dict.fromkeys(one.size for one in made.measured)
    for one in (each for name in names for each in made.pieces(name)):
        name = one.size
        part, _, feature = name.partition(".")
        shown = size_words(one.value, design.units)
        if name not in known:
            findings.append(
                Finding(
                    710,
                    "caution",
                    f'The made file has a measured size "{name}" that is not in the design.',
                    part=part,
                    feature=feature,
                    figure=shown,
                    bound="sizes of the design",
                    remedy=nearest(name, known) or "Check the name against the cards.",
                    source="the made file",
                )
            )
            continue
        dim = dims.get(name)
        drawn = dim.value if dim else lengths.get(name, 0.0)
        if slip := _slip(one.value, drawn):
            findings.append(
                Finding(
                    711,
                    "caution",
                    f"{name} measured {shown}, drawn {size_words(drawn, design.units)}: {slip} mixed up?",
                    part=part,
                    feature=feature,
                    figure=shown,
                    bound=f"{size_words(drawn, design.units)} as drawn",
                    remedy="Measure again and record the size once more; the later entry counts.",
                    source="the made file",
                )
            )
        elif dim is not None and dim.smallest is not None and dim.largest is not None:
            findings.extend(_outside(name, one.value, dim.smallest, dim.largest, design))
    return findings


def _slip(value: float, drawn: float) -> str:
    """Which two things may have been mixed up, or an empty string."""
    if drawn <= 0:
        return ""
    ratio = value / drawn
    for factor, words in (*SLIPS, (1 / 25.4, SLIPS[0][1])):
        if abs(ratio / factor - 1) < NEAR:
            return words
    return ""


def _is_hole(name: str, design: SizedDesign) -> bool:
    """Whether a size is of a hole or bore: too small is then metal left."""
    part, _, feature = name.partition(".")
    shape = design.part(part).shape
    if isinstance(shape, TurnedShape):
        holes = {one.name for one in shape.bores} | {one.name for one in shape.circle_holes}
        return feature in holes or feature in {one.name for one in shape.cross_holes}
    return isinstance(shape, PlateShape) and feature in {one.name for one in shape.holes}


def _outside(name: str, value: float, smallest: float, largest: float, design: SizedDesign) -> list[Finding]:
    """A finding when a measured size is outside its own limits."""
    if smallest - 1e-9 <= value <= largest + 1e-9:
        return []
    over = value - largest if value > largest else value - smallest
    part, _, feature = name.partition(".")
    mates = [
        fit.shaft if fit.hole == name else fit.hole for fit in design.fits if name in (fit.hole, fit.shaft)
    ]
    word = "over" if over > 0 else "under"
    metal_left = (over > 0) is not _is_hole(name, design)  # a shaft still over, a hole still under
    if metal_left:
        unmade = "There is metal left: take off what is over, or open the hole, and measure again."
    elif mates:
        unmade = f"Make {' and '.join(mates)} to suit: see the new limits."
    else:
        unmade = "Make it again."
    return [
        Finding(
            701,
            "caution",
            f"{name} is {size_words(abs(over), design.units)} {word} its limit.",
            part=part,
            feature=feature,
            figure=size_words(value, design.units),
            bound=limits_words(smallest, largest, design.units),
            remedy=unmade,
            source="the limits as drawn",
        )
    ]
