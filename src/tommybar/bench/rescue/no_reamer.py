"""Reality 3: there is no reamer of that size, or it is blunt."""

from __future__ import annotations

from collections.abc import Iterator

from tommybar.bench.rescue.shop_edits import without_reamer
from tommybar.bench.rescue.situation import Mishap, Reality, Situation, Try, beware
from tommybar.bench.rescue.sizes import named_size
from tommybar.findings import Finding
from tommybar.shapes.features import TurnedShape
from tommybar.shop.questions import reamer_for


def _reamed_sizes(situation: Situation) -> Iterator[tuple[str, float]]:
    for part in situation.plan.design.parts:
        if isinstance(part.shape, TurnedShape):
            yield from (
                (one.dia.name, one.dia.value) for one in part.shape.bores if one.dia.zone.startswith("H")
            )


def warn(situation: Situation) -> Iterator[Finding]:
    """Bores with a reamed zone whose size no reamer of the shop has."""
    shop = situation.plan.shop
    for size, value in _reamed_sizes(situation):
        if reamer_for(shop, value) is None:
            owned = sorted(shop.reamers, key=lambda one: abs(one.size - value))[:2]
            near = " and ".join(f"{one.size:g}" for one in sorted(owned, key=lambda one: one.size))
            yield beware(
                3,
                f"There is no reamer of {value:g} mm for {size}; the nearest are {near or 'none'}.",
                about=size,
                figure=f"{value:g} mm",
                bound=near,
                remedy="Bore it to a plug, change the size, or borrow one.",
                source="the shop file",
            )


def tries(situation: Situation, mishap: Mishap) -> Iterator[Try]:
    """Another size that is owned; the same size bored to a plug."""
    dim = situation.dim(mishap.about)
    shop = situation.inputs.shop_text
    if reamer_for(situation.plan.shop, dim.value) is not None:
        shop = without_reamer(shop, dim.value)
    named = named_size(situation, mishap.about)
    pin = {named.name: dim.value} if named else {}
    yield Try(f"Keep {dim.value:g} mm and bore {mishap.about} to a plug.", shop=shop, pins=pin)
    if named is None:
        return
    others = sorted(
        (one.size for one in situation.plan.shop.reamers if abs(one.size - dim.value) > 1e-6),
        key=lambda size: abs(size - dim.value),
    )
    for size in others[:2]:
        yield Try(
            f"Take {size:g} mm, for which there is a reamer, wherever {named.name} stands.",
            shop=shop,
            pins={named.name: size},
        )


REALITY = Reality(3, "No reamer of that size", "about: the size of the bore", warn, tries)
