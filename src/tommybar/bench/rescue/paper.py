"""Reality 39: the sheet was printed to another scale, or in another unit than the dials."""

from __future__ import annotations

from collections.abc import Iterator

from tommybar.bench.rescue.situation import Mishap, Reality, Situation, Try, beware
from tommybar.findings import Finding
from tommybar.refusals import Refusal

BAR = 50.0  # the check bar on every sheet [mm]
TRUE = 0.005  # a bar that is off by less than this share is true


def warn(situation: Situation) -> Iterator[Finding]:
    """A design in one unit, dials in another."""
    lathe, unit = situation.plan.shop.lathe, situation.plan.design.units
    others = [
        name
        for name in ("cross_slide", "top_slide", "carriage", "tailstock")
        if getattr(lathe, name).unit != unit
    ]
    if others:
        yield beware(
            39,
            f"The design is in {unit}; {', '.join(name.replace('_', ' ') for name in others)} read otherwise.",
            figure=unit,
            bound="one unit on the bench",
            remedy="Work to the dial words of the cards; the written figures rule, never a rule laid on the sheet.",
            source="the design and the shop file",
        )


def tries(situation: Situation, mishap: Mishap) -> Iterator[Try]:
    """The true factor from the check bar; a size that was taken off the sheet is frozen as it was cut."""
    if mishap.value <= 0:
        raise Refusal(f"The check bar measures {mishap.value:g} mm; it must be above 0.", "Lay a rule on it.")
    factor = mishap.value / BAR
    if abs(factor - 1) < TRUE:
        raise Refusal(
            f"The bar measures {mishap.value:g} mm of {BAR:g} mm: the sheet is true.", "Work to the figures."
        )
    off = f"Lengths taken off this sheet are {factor:.3f} of the true ones"
    inch = (
        "; inches and millimetres were mixed"
        if abs(factor - 25.4) < 0.3 or abs(factor * 25.4 - 1) < 0.02
        else ""
    )
    if not mishap.about:
        yield Try(f"{off}{inch}: print it again at 100 %; the written figures are right.")
        return
    dim = situation.dim(mishap.about)
    cut = round(dim.value * factor, 3)
    part = mishap.about.split(".")[0]
    yield Try(f"{off}: keep {mishap.about} as it was cut, {cut:g} mm.", readings=((mishap.about, cut),))
    yield Try(f"{off}: make {part} again.", forget=(part,))


REALITY = Reality(
    39,
    "Sheet printed to another scale",
    "value: what the 50 mm check bar measures [mm]; about: a size that was taken off the sheet, or nothing",
    warn,
    tries,
)
