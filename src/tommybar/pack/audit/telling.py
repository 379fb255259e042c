"""The audit in words: what is said of the sheets of a design to the one who is going to print them."""

from __future__ import annotations

from collections.abc import Iterable

from tommybar.design.model import Part, SizedDesign
from tommybar.findings import Finding
from tommybar.pack.audit.comparing import Audit, audited
from tommybar.pack.drawing import part_drawing
from tommybar.pack.imprint import Imprint
from tommybar.pack.sheet import Sheet
from tommybar.pack.units import Reader
from tommybar.refusals import Refusal
from tommybar.shapes.features import BoughtShape

REMEDY = {
    "missing": "Write it on the sheet by hand before you cut, from the design file.",
    "wrong": "Mend the figure on the sheet by hand, from the design file.",
    "not on the sheet": "Write it on the sheet by hand before you cut, from the design file.",
}


def audits_of(parts: Iterable[Part], sheets: Iterable[Sheet]) -> tuple[Audit, ...]:
    """The audit of every drawing among sheets, in their order."""
    made = {part.name: part for part in parts if part.shape is not None}
    return tuple(audited(made[one.name], one) for one in sheets if one.printed and one.name in made)


def audit_words(audits: tuple[Audit, ...]) -> str:
    """One line: how much the sheets say and whether a part can be built from each of them alone.

    Examples
    --------
    >>> audit_words((Audit("pin", 7, ()), Audit("disc", 12, ())))
    '2 drawings can be built from their 19 figures alone: each size and place is printed, none twice'
    """
    figures = sum(one.figures for one in audits)
    amiss = sum(bool(one.faults) for one in audits)
    many = "1 drawing" if len(audits) == 1 else f"{len(audits)} drawings"
    whose = "its" if len(audits) == 1 else "their"
    if amiss:
        return f"{amiss} of {many} cannot be built from the printed figures alone"
    return f"{many} can be built from {whose} {figures} figures alone: each size and place is printed, none twice"


def audit_findings(audits: tuple[Audit, ...]) -> list[Finding]:
    """What is amiss with the sheets, each as a finding."""
    return [
        Finding(
            920,
            "caution",
            f"On the sheet of {one.part}, {fault.feature.replace('_', ' ')} {fault.size.replace('_', ' ')} "
            f"{fault.words} ({fault.kind}).",
            one.part,
            fault.feature,
            remedy=REMEDY.get(fault.kind, "Take the other figures of that feature; they are enough."),
        )
        for one in audits
        for fault in one.faults
    ]


def drawn_and_audited(design: SizedDesign, title: str, reader: Reader) -> tuple[str, list[Finding]]:
    """Every part that is made, drawn as designed and held to its drawing; words and findings."""
    imprint = Imprint(title, "", "", 1.0, "", reader)
    sheets: list[Sheet] = []
    findings: list[Finding] = []
    for part in design.parts:
        if part.shape is None or isinstance(part.shape, BoughtShape):
            continue
        try:
            sheets.append(part_drawing(part, design, imprint))
        except Refusal as refusal:
            told = refusal.complaints[0]
            findings.append(
                Finding(
                    921,
                    "caution",
                    told.what,
                    part.name,
                    remedy=told.remedy or "Draw that feature by hand beside the sheet, or leave it out.",
                )
            )
    audits = audits_of(design.parts, sheets)
    return (audit_words(audits) if audits else ""), [*audit_findings(audits), *findings]
