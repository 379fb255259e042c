"""Whether two metals that run on each other may do so."""

from __future__ import annotations

from tommybar.checks.checked import Checked
from tommybar.design.model import FitRelation, SizedDesign
from tommybar.facts.materials import may_run_together
from tommybar.findings import Finding
from tommybar.shop.model import Shop


def look(design: SizedDesign, shop: Shop) -> Checked:
    """Every fit of which one side turns and the other does not."""
    turning = {name for purpose in design.purposes for name in purpose.turns}
    found: list[Finding] = []
    for fit in design.fits:
        hole, shaft = (name.split(".")[0] for name in (fit.hole, fit.shaft))
        if not fit.joint and (hole in turning) != (shaft in turning):
            one = _pair(design, fit, hole, shaft)
            if one is not None:
                found.append(one)
    return Checked(tuple(dict.fromkeys(found)))


def _pair(design: SizedDesign, fit: FitRelation, hole: str, shaft: str) -> Finding | None:
    pair = may_run_together(design.part(hole).material, design.part(shaft).material)
    if pair.verdict == "good":
        return None
    return Finding(
        640,
        "caution" if pair.verdict == "no" else "note",
        f"{fit.shaft} ({design.part(shaft).material}) runs in {fit.hole} ({design.part(hole).material}): {pair.reason}.",
        hole,
        fit.hole.split(".", 1)[1],
        figure=f"{design.part(shaft).material} on {design.part(hole).material}",
        bound="two metals that are unlike",
        remedy="Put a bronze bush between them, or take another metal for one side.",
        source=pair.source,
    )
