"""Blind bores: the drill's tip and the tap's lead need depth below what is drawn, and metal behind them."""

from __future__ import annotations

from tommybar.checks.checked import PRACTICE, Checked, at_least
from tommybar.checks.walls import LEAST_WALL
from tommybar.design.model import Part, SizedDesign
from tommybar.facts.drills import point_length
from tommybar.facts.threads import thread
from tommybar.findings import Finding
from tommybar.shapes.features import Bore, TurnedShape
from tommybar.shapes.holes import drawn_hole
from tommybar.shop.model import Shop

LEAD = 3.0  # pitches of a tap that cut no full thread
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
    dia = drawn_hole(bore.dia, bore.thread)
    lead = 0.0
    if bore.thread:
        full = bore.full or bore.depth
        lead = max(0.0, full + LEAD * thread(bore.thread).pitch - bore.depth)
    tip = point_length(dia) if bore.bottom == "drill" or bore.thread else 0.0
    reaches = bore.depth + lead + tip
    others = [
        one.depth for one in shape.bores if one is not bore and not one.through and one.face != bore.face
    ]
    left = shape.length.value - reaches - max(others, default=0.0)
    if any(one.through for one in shape.bores if one is not bore):
        return []
    deep = f"{bore.depth:g}" + (f" + {lead:.2f} lead" if lead else "") + (f" + {tip:.2f} tip" if tip else "")
    words = f"The drill for {bore.name} goes {reaches:.2f} mm in ({deep}); metal left behind it"
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
