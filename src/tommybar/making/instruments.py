"""Which instrument a size is measured with, and whether it can judge its limits."""

from __future__ import annotations

from collections.abc import Iterable

from tommybar.findings import Finding
from tommybar.making.cards import Card
from tommybar.shapes.features import Dim
from tommybar.shop.model import Shop
from tommybar.sizes.acceptance import instrument_verdict

TELLS_NOTHING = (
    1.0  # uncertainty over the limits from which a reading proves nothing; common practice, no source
)


def instrument_name(shop: Shop, dim: Dim, how: str) -> str:
    """The finest instrument that reads that size; the coarsest where no limits are given; "" when none reads it."""
    can = [
        one for one in shop.instruments if how in one.measures and one.smallest <= dim.value <= one.largest
    ]
    if not can:
        return ""
    choose = min if dim.toleranced else max
    return choose(can, key=lambda one: (one.uncertainty, one.name)).name


def too_coarse(part: str, cards: Iterable[Card], shop: Shop) -> tuple[Finding, ...]:
    """Sizes of which the finest instrument of the shop tells nothing: it is no surer than the limits are wide.

    One that is too coarse but not hopeless is told of when it is read, at the
    machine.
    """
    known = {one.name: one for one in shop.instruments}
    found: list[Finding] = []
    for card in cards:
        for step in card.steps:
            for one in step.measure:
                dim = one.dim
                if dim.smallest is None or dim.largest is None or not dim.toleranced:
                    continue
                width, gauge = dim.largest - dim.smallest, known.get(one.instrument)
                if gauge is None or width <= 0:
                    continue
                verdict = instrument_verdict(width, gauge.uncertainty)
                if verdict.ratio < TELLS_NOTHING - 1e-9:
                    continue
                words = f"{gauge.name} tells nothing of {one.size}: it is sure to {2 * gauge.uncertainty:.3f} mm, the limits"
                found.append(
                    Finding(
                        483,
                        "caution",
                        f"{words} lie {width:.3f} mm apart.",
                        part,
                        one.size.partition(".")[2],
                        card=card.number,
                        step=step.number,
                        figure=f"{verdict.ratio:.2f} of the limits",
                        bound="less than the whole of them",
                        remedy="Borrow a finer one or a plug or ring made to the limits; or make the mate to suit it.",
                        source="uncertainty against tolerance: common practice, the ratio as in ISO 14253-1 (from memory)",
                    )
                )
    return tuple(found)
