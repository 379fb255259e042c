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
from tommybar.shapes.features import Bore, Cone, Cylinder, Dim, Eccentric, Land, TurnedShape
from tommybar.shapes.metal import land_figures
from tommybar.shop.model import Shop


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
    for cup in part.shape.cups:
        if cup.relief > 0:  # a drill leaves its tip at the bottom of the small hole
            lean = math.tan(math.radians(cup.included / 2))
            deep = max(cup.relief_depth, 0.0) + (cup.mouth - cup.relief) / 2 / lean
            bores.append(Bore(f"{cup.name}, relief", Dim(cup.relief), cup.face, deep, False, "drill"))
    return replace(part, shape=replace(part.shape, bores=tuple(bores), bore_tapers=tuple(tapers)))


def as_machined(shape: TurnedShape, shop: Shop) -> TurnedShape:
    """The shape as it leaves the lathe, every diameter at the figure aimed at."""
    return replace(
        shape,
        length=_aimed(shape.length),
        outside=tuple(_outside(feature) for feature in shape.outside),
        bores=tuple(_bore(bore, shop) for bore in shape.bores),
    )
