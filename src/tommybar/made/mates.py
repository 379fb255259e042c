"""Mates of measured sizes: new limits that keep the clearance of the fit, or a word on whether it holds."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from typing import Literal

from tommybar.design.model import FitRelation, SizedDesign
from tommybar.findings import Finding
from tommybar.made.dims import dims_of
from tommybar.made.record import Made, Measured
from tommybar.made.words import Unit, limits_words, size_words
from tommybar.refusals import Refusal
from tommybar.shapes.features import Dim
from tommybar.sizes.fits import Fit, fit_of
from tommybar.sizes.retarget import mate_limits

Member = Literal["hole", "shaft"]
ROUND = 4  # decimals of a limit [mm]


@dataclass
class Retargeted:
    """What comes of the fits: changed figures by name, findings, and for each part why."""

    dims: dict[str, Dim] = field(default_factory=dict)
    findings: list[Finding] = field(default_factory=list)
    why: dict[str, list[str]] = field(default_factory=dict)


def retarget_fits(design: SizedDesign, made: Made) -> Retargeted:
    """New limits for every mate that is not measured yet, from those that are."""
    known, out = dims_of(design), Retargeted()
    wishes: dict[str, list[tuple[float, float, Measured, FitRelation]]] = {}
    for relation in design.fits:
        holes, shafts = made.pieces(relation.hole), made.pieces(relation.shaft)
        if relation.hole not in known or relation.shaft not in known or not (holes or shafts):
            continue
        try:
            fit = fit_of(known[relation.hole].value, relation.zones)
            if holes and shafts:
                out.findings += _verdicts(relation, fit, holes, shafts, design.units)
                continue
            for hole in holes:
                band = mate_limits(hole.value, fit, "hole")
                wishes.setdefault(relation.shaft, []).append((*band, hole, relation))
            for shaft in shafts:
                band = mate_limits(shaft.value, fit, "shaft")
                wishes.setdefault(relation.hole, []).append((*band, shaft, relation))
        except Refusal as told:
            out.findings.append(_cannot(relation, told))
    for name in sorted(wishes):
        _give(out, name, known, wishes[name], design.units)
    return out


def _give(
    out: Retargeted,
    name: str,
    known: Mapping[str, Dim],
    wishes: list[tuple[float, float, Measured, FitRelation]],
    unit: Unit,
) -> None:
    """Put new limits on one mate, or say that no size suits everything it meets."""
    part, _, feature = name.partition(".")
    smallest = round(max(wish[0] for wish in wishes), ROUND)
    largest = round(min(wish[1] for wish in wishes), ROUND)
    reasons = list(
        dict.fromkeys(f"{_called(wish[2])} measured {size_words(wish[2].value, unit)}" for wish in wishes)
    )
    because = f"{' and '.join(reasons)}; keeps the fit {wishes[0][3].zones}"
    if smallest > largest:
        out.findings.append(
            Finding(
                704,
                "stop",
                f"No size of {name} suits everything it meets: {' and '.join(reasons)}.",
                part=part,
                feature=feature,
                figure=f"{size_words(smallest, unit)} at least for one",
                bound=f"{size_words(largest, unit)} at most for another",
                remedy="Make one of the measured parts again, or make a pair to suit each.",
                source="ISO 286-1, definition of clearance",
            )
        )
        return
    dim = known[name]
    drawn = limits_words(dim.smallest, dim.largest, unit) if dim.toleranced else dim.zone  # type: ignore[arg-type]
    value = dim.value if smallest <= dim.value <= largest else round((smallest + largest) / 2, ROUND)
    out.dims[name] = replace(dim, value=value, smallest=smallest, largest=largest, because=because)
    new = limits_words(smallest, largest, unit)
    out.why.setdefault(part, []).append(f"{feature} is now {new} (drawn {drawn}): {because}.")
    out.findings.append(
        Finding(
            700,
            "note",
            f"{name} has new limits: {because}.",
            part=part,
            feature=feature,
            figure=new,
            bound=f"{drawn} as drawn",
            remedy="Work to the new limits.",
            source="ISO 286-1, definition of clearance, solved for the mate",
        )
    )


def _called(one: Measured) -> str:
    """A measured size by its name, and the piece where it is not the first."""
    return f"{one.size} of piece {one.piece}" if one.piece > 1 else one.size


def _verdicts(
    relation: FitRelation, fit: Fit, holes: tuple[Measured, ...], shafts: tuple[Measured, ...], unit: Unit
) -> list[Finding]:
    """Each piece with each: where one pairing holds, another that does not asks only to be kept apart."""
    found = [_verdict(relation, fit, hole, shaft, unit) for hole in holes for shaft in shafts]
    if all(one.severity == "stop" for one in found):
        return found
    apart = "Pair each with the one that it fits, and mark the pairs."
    return [
        replace(one, severity="caution", remedy=apart) if one.severity == "stop" else one for one in found
    ]


def _verdict(relation: FitRelation, fit: Fit, one: Measured, other: Measured, unit: Unit) -> Finding:
    """Whether two members that are both made still make the fit."""
    hole, shaft = one.value, other.value
    clearance = round((hole - shaft) * 1000, 3)
    least, greatest = fit.min_clearance_um, fit.max_clearance_um
    part, _, feature = relation.shaft.partition(".")
    holds = least - 1e-6 <= clearance <= greatest + 1e-6
    figure, bound = _gap_words(clearance, unit), f"{_gap_words(least, unit)} to {_gap_words(greatest, unit)}"
    pair = f"{_called(one)} {size_words(hole, unit)} and {_called(other)} {size_words(shaft, unit)}"
    if holds:
        words, remedy = f"{pair} make the fit {relation.zones}.", ""
    elif clearance < least:
        words = f"{pair} are too tight for {relation.zones}."
        remedy = "Ease the shaft or the hole by the difference, and measure again."
    else:
        words = f"{pair} are too loose for {relation.zones}."
        remedy = "Make the cheaper of the two again to suit the other."
    return Finding(
        702 if holds else 703,
        "note" if holds else "stop",
        words,
        part=part,
        feature=feature,
        figure=f"{figure} between them",
        bound=bound,
        remedy=remedy,
        source="ISO 286-1, definition of clearance",
    )


def _gap_words(clearance_um: float, unit: Unit) -> str:
    return size_words(clearance_um / 1000, unit)


def _cannot(relation: FitRelation, told: Refusal) -> Finding:
    part, _, feature = relation.shaft.partition(".")
    one = told.complaints[0]
    return Finding(
        709,
        "caution",
        f"The mate of {relation.hole} and {relation.shaft} cannot be given new limits: {one.what}",
        part=part,
        feature=feature,
        figure=relation.zones,
        bound="ISO 286 zones",
        remedy=one.remedy,
        source="sizes/retarget",
    )
