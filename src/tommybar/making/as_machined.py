"""A shape with the figures that the tools of the route really aim at.

The dry run compares the metal with this shape: a screw is turned to its blank
diameter before the die, a bore that is finished after pressing is left at its
drill, and toleranced sizes stand at the middle of their limits.
"""

from __future__ import annotations

import math
from dataclasses import replace

from tommybar.design.model import Part
from tommybar.facts.threads import die_blank_diameter, thread
from tommybar.making.blind_bores import as_bored, tapped_depth
from tommybar.making.reaming import drilled_size, predrill_for
from tommybar.shapes.features import Bore, Cone, Cup, Cylinder, Dim, Eccentric, Land, TurnedShape
from tommybar.shapes.metal import land_figures
from tommybar.shop.model import Shop

RELIEF_OFF = 0.051  # how far a drill may be off a relief hole's figure; common practice, no source [mm]


def _aimed(dim: Dim) -> Dim:
    return replace(dim, value=dim.target)


def knurl_blank(feature: Cylinder) -> float:
    """Diameter before knurling: the largest that takes a whole number of teeth [mm]."""
    if feature.knurl is None:
        return feature.dia.target
    teeth = math.floor(math.pi * feature.dia.value / feature.knurl.pitch + 1e-9)
    return round(teeth * feature.knurl.pitch / math.pi, 3)


def _outside(feature: Land) -> Land:
    if isinstance(
        feature, Eccentric
    ):  # the lathe leaves the round that it swings in; the four-jaw does the rest
        return Cylinder(feature.name, Dim(feature.start_dia), feature.start, feature.end)
    if isinstance(feature, Cone) and feature.limits is not None:
        start, end = land_figures(feature, "target")
        return replace(feature, start_dia=start, end_dia=end, limits=None)
    if not isinstance(feature, Cylinder):
        return feature
    if feature.thread:
        blank = die_blank_diameter(thread(feature.thread))
        return replace(feature, dia=replace(feature.dia, value=blank, smallest=None, largest=None), thread="")
    if feature.knurl is not None:
        turned = knurl_blank(feature)
        return replace(feature, dia=replace(feature.dia, value=turned, smallest=None, largest=None))
    return replace(feature, dia=_aimed(feature.dia))


def _bore(bore: Bore, shop: Shop) -> Bore:
    if bore.thread:
        drill = thread(bore.thread).tapping_drill
        return replace(bore, dia=replace(bore.dia, value=drill, smallest=None, largest=None), thread="")
    if bore.after:
        drill = predrill_for(bore.dia.value, shop)
        return replace(bore, dia=replace(bore.dia, value=drill, smallest=None, largest=None))
    plain = None if bore.dia.toleranced else drilled_size(bore.dia.value, shop)
    if plain is not None:
        return replace(bore, dia=replace(bore.dia, value=plain))
    return replace(bore, dia=_aimed(bore.dia))


def as_drilled(part: Part, shop: Shop) -> Part:
    """The part with its holes on the axis as the drawer's drills leave them: plain ones, and below a reamer's end."""
    if not isinstance(part.shape, TurnedShape):
        return part
    bores: list[Bore] = []
    tapers = list(part.shape.bore_tapers)
    for bore in part.shape.bores:
        if bore.thread and not bore.through:  # the tapping drill goes deeper than the thread
            bore = replace(bore, depth=tapped_depth(bore), bottom="drill", full=0.0)
        plain = not (bore.thread or bore.after or bore.dia.toleranced)
        made, lead = as_bored(_bore(bore, shop) if plain else bore, shop, part.shape.length.value)
        bores += made
        tapers += lead
    cups = []
    for cup in part.shape.cups:
        drill = relief_drill(cup, shop)
        if drill > 0:  # a drill leaves its own size, and its tip at the bottom of the small hole
            deep = relief_deep(cup)
            bores.append(Bore(f"{cup.name}, relief", Dim(drill), cup.face, deep, False, "drill"))
            cup = replace(cup, relief=0.0, relief_depth=0.0)
        cups.append(cup)
    shape = replace(part.shape, bores=tuple(bores), bore_tapers=tuple(tapers), cups=tuple(cups))
    return replace(part, shape=shape)


def relief_drill(cup: Cup, shop: Shop) -> float:
    """The owned drill for the small hole at a cup's bottom; 0 where it has none or none is owned [mm]."""
    owned = [size for size in shop.drills if abs(size - cup.relief) < RELIEF_OFF]
    return min(owned, key=lambda size: (abs(size - cup.relief), size)) if cup.relief > 0 and owned else 0.0


def relief_deep(cup: Cup) -> float:
    """How deep that hole's full diameter goes below where the cup opens [mm]."""
    lean = math.tan(math.radians(cup.included / 2))
    return max(cup.relief_depth, 0.0) + (cup.mouth - cup.relief) / 2 / lean


def as_machined(shape: TurnedShape, shop: Shop) -> TurnedShape:
    """The shape as it leaves the lathe, every diameter at the figure aimed at."""
    return replace(
        shape,
        length=_aimed(shape.length),
        outside=tuple(_outside(feature) for feature in shape.outside),
        bores=tuple(_bore(bore, shop) for bore in shape.bores),
    )
