"""Loops of lengths: the member made last is solved from those that are measured."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from statistics import fmean

from tommybar.design.model import LoopRelation, LoopTerm, SizedDesign
from tommybar.findings import Finding
from tommybar.made.dims import dims_of, lengths_of, with_dims
from tommybar.made.lengths import lengthened
from tommybar.made.record import Made
from tommybar.made.words import limits_words, size_words
from tommybar.refusals import Refusal
from tommybar.shapes.features import TurnedShape
from tommybar.sizes.loop import Link, last_made_limits

SOURCE = "float loop in the worst case, solved for the length made last"


def retarget_loops(
    design: SizedDesign, made: Made
) -> tuple[SizedDesign, list[Finding], dict[str, list[str]]]:
    """The design with the last member of each loop that is begun solved, and what is to be said."""
    findings: list[Finding] = []
    why: dict[str, list[str]] = {}
    for loop in design.loops:
        measured = {
            term.name: fmean(
                one.value for one in all_of
            )  # pieces alike stand in the loop as often as they are
            for term in loop.terms
            if (all_of := made.pieces(term.name))
        }
        if not measured:
            continue
        last = _last_term(loop)
        if len(measured) == len(loop.terms):
            findings.append(_verdict(loop, measured, design))
        elif last is None or last.name in measured:
            findings.append(_others_first(loop, measured))
        else:
            design, told, reason = _solve(design, loop, last, measured)
            findings.append(told)
            if reason:
                why.setdefault(last.name.split(".")[0], []).append(reason)
    return design, findings, why


def _last_term(loop: LoopRelation) -> LoopTerm | None:
    """The member made last: named as a size, or by its part."""
    for term in loop.terms:
        if loop.made_last in (term.name, term.name.split(".")[0]):
            return term
    return None


def _solve(
    design: SizedDesign, loop: LoopRelation, last: LoopTerm, measured: Mapping[str, float]
) -> tuple[SizedDesign, Finding, str]:
    others = [term for term in loop.terms if term is not last]
    links = [
        Link(term.name, term.factor, figure, figure)
        for term in others
        for figure in [measured.get(term.name, term.value)]
    ]
    part, _, feature = last.name.partition(".")
    waiting = [term.name for term in others if term.name not in measured]
    try:
        least, most = last_made_limits(links, last.factor, (loop.least, loop.most))
    except Refusal as told:
        one = told.complaints[0]
        stop = Finding(
            707,
            "stop",
            f"The loop {loop.name} cannot be closed: {one.what}",
            part=part,
            feature=feature,
            figure=", ".join(f"{name} {size_words(value, design.units)}" for name, value in measured.items()),
            bound=f"float {limits_words(loop.least, loop.most, design.units)}",
            remedy=one.remedy,
            source=SOURCE,
        )
        return design, stop, ""
    least, most = round(least, 4), round(most, 4)
    new = limits_words(least, most, design.units)
    known = " and ".join(f"{name} measured {size_words(measured[name], design.units)}" for name in measured)
    because = f"{known}; keeps the float of {loop.name}"
    design = _with_length(design, loop, last, (least, most), because)
    found = Finding(
        706 if waiting else 705,
        "caution" if waiting else "note",
        f"{last.name} is solved from the loop {loop.name}: {because}."
        + (f" Not measured yet: {', '.join(waiting)}; taken as drawn." if waiting else ""),
        part=part,
        feature=feature,
        figure=new,
        bound=f"{size_words(last.value, design.units)} as drawn",
        remedy=f"Measure {' and '.join(waiting)} before {last.name} is cut."
        if waiting
        else "Work to the new limits.",
        source=SOURCE,
    )
    drawn = size_words(last.value, design.units)
    return design, found, f"{feature} is now {new} (drawn {drawn}): {because}."


def _with_length(
    design: SizedDesign, loop: LoopRelation, last: LoopTerm, limits: tuple[float, float], because: str
) -> SizedDesign:
    """The design with the solved length in the part and in the loop."""
    middle = round(sum(limits) / 2, 3)
    dim = dims_of(design).get(last.name)
    part = next((one for one in design.parts if one.name == last.name.split(".")[0]), None)
    shape = part.shape if part else None
    if isinstance(shape, TurnedShape) and (last.name in lengths_of(design) or dim is shape.length):
        feature = shape.outside[-1].name if dim is shape.length else last.name.split(".")[1]
        grown = lengthened(shape, feature, middle - last.value)
        design = replace(
            design, parts=tuple(replace(one, shape=grown) if one is part else one for one in design.parts)
        )
    if dim is not None:
        solved = replace(dim, value=middle, smallest=limits[0], largest=limits[1], because=because)
        design = with_dims(design, {last.name: solved})
    terms = tuple(replace(term, value=middle) if term is last else term for term in loop.terms)
    loops = tuple(replace(one, terms=terms) if one is loop else one for one in design.loops)
    return replace(design, loops=loops)


def _verdict(loop: LoopRelation, measured: Mapping[str, float], design: SizedDesign) -> Finding:
    gap = round(sum(term.factor * measured[term.name] for term in loop.terms), 4)
    holds = loop.least - 1e-9 <= gap <= loop.most + 1e-9
    last = _last_term(loop) or loop.terms[-1]
    part, _, feature = last.name.partition(".")
    remedy = ""
    if not holds:
        remedy = "Shorten what fills the gap." if gap < loop.least else "Make a part that fills it again."
    return Finding(
        708 if holds else 707,
        "note" if holds else "stop",
        f"All lengths of the loop {loop.name} are measured; the float "
        + ("is right." if holds else "is wrong."),
        part=part,
        feature=feature,
        figure=size_words(gap, design.units),
        bound=limits_words(loop.least, loop.most, design.units),
        remedy=remedy,
        source="sum of the measured lengths",
    )


def _others_first(loop: LoopRelation, measured: Mapping[str, float]) -> Finding:
    waiting = [term.name for term in loop.terms if term.name not in measured]
    part, _, feature = waiting[0].partition(".")
    return Finding(
        706,
        "caution",
        f"The length of the loop {loop.name} that is made last is measured already; "
        f"{' and '.join(waiting)} must now suit it.",
        part=part,
        feature=feature,
        figure=", ".join(measured),
        bound=loop.made_last,
        remedy=f"Measure {' and '.join(waiting)} and see that the float comes right.",
        source=SOURCE,
    )
