"""Blind bores: the drill's tip and the tap's lead need depth below what is drawn, and metal behind them."""

from __future__ import annotations

from tommybar.checks.checked import PRACTICE, Checked, at_least
from tommybar.checks.walls import LEAST_WALL
from tommybar.design.model import Part, SizedDesign
from tommybar.findings import Finding
from tommybar.shapes.blind_holes import drilled_in, left_behind
from tommybar.shapes.features import Bore, TurnedShape
from tommybar.shop.model import Shop

REMEDY = "Make it shallower, give it a flat bottom, or leave more metal behind it."


def look(design: SizedDesign, shop: Shop) -> Checked:
    """Every blind bore of a turned part that is drilled or tapped."""
    found: list[Finding | None] = []
    for part in design.parts:
        if isinstance(part.shape, TurnedShape):
            for bore in part.shape.bores:
                if not bore.through:
                    found += _behind(part, part.shape, bore)
    return Checked(tuple(one for one in found if one is not None))


def _behind(part: Part, shape: TurnedShape, bore: Bore) -> list[Finding | None]:
    drilled, left = drilled_in(bore), left_behind(shape, bore)
    if left is None:
        return []
    lead, tip = drilled.lead, drilled.tip
    deep = f"{bore.depth:g}" + (f" + {lead:.2f} lead" if lead else "") + (f" + {tip:.2f} tip" if tip else "")
    words = f"The drill for {bore.name} goes {drilled.reaches:.2f} mm in ({deep}); metal left behind it"
    place = {"part": part.name, "feature": bore.name, "remedy": REMEDY}
    short = at_least(684, words, left, LEAST_WALL, source=PRACTICE, **place)
    if short is not None and left < 0:
        return [
            Finding(
                685,
                "stop",
                f"{words}: none, it comes out {-left:.2f} mm beyond.",
                part.name,
                bore.name,
                figure=f"{left:.2f} mm",
                bound=f"{LEAST_WALL:.2f} mm",
                remedy=REMEDY,
                source="geometry of the part",
            )
        ]
    return [short]
