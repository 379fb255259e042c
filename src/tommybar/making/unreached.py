"""Lands between larger ones that nothing in the drawer reaches, told with what it would take."""

from __future__ import annotations

from tommybar.design.model import Part
from tommybar.findings import Finding
from tommybar.making.contours import in_front, land_contour
from tommybar.making.grinding import grind_words
from tommybar.making.jobs import largest
from tommybar.making.lengths import Mm
from tommybar.making.reach import HOLDER_ROOM, blades_of, valleys
from tommybar.shapes.features import Cylinder, Face, TurnedShape
from tommybar.shop.model import Shop

FACES: tuple[Face, ...] = ("A", "B")
WIDEST = 3.0  # of a blade that a bench lathe carries; common practice, no source [mm]


def beyond_blades(shape: TurnedShape, missing: tuple[str, ...], shop: Shop) -> list[str]:
    """Which of the missing lands between larger ones no blade gets down to, whatever holds the part."""
    blades = blades_of(shop)
    found = []
    for name in valleys(shape):
        if name not in missing:
            continue
        land = next(one for one in shape.outside if one.name == name)
        deep = []
        for face in FACES:
            contour = land_contour(land, shape.length.value, face)
            deep.append(max(in_front(shape, land, face), contour.largest) - contour.least)
        special = isinstance(land, Cylinder) and (land.thread or land.knurl is not None)
        if special or not blades.reach_into(min(deep), land.end - land.start):
            found.append(name)
    return found


def valley_stop(part: Part, low: list[str], shop: Shop) -> Finding:
    """The stop of lands between larger diameters that no blade reaches, or no die passes."""
    assert isinstance(part.shape, TurnedShape)
    lands = {one.name: one for one in part.shape.outside}
    order = [one.name for one in part.shape.outside]
    first = lands[low[0]]
    place = order.index(first.name)
    ahead = max((largest(one) for one in part.shape.outside[:place]), default=0.0)
    after = max((largest(one) for one in part.shape.outside[place + 1 :]), default=0.0)
    over = min(ahead, after) if min(ahead, after) > largest(first) else largest(first)
    if isinstance(first, Cylinder) and (first.thread or first.knurl is not None):
        what = first.thread or "a knurl"
        tool = "no die passes over them" if first.thread else "no knurling wheel gets down to it"
        return Finding(
            904,
            "stop",
            f"{part.name}: {first.name}, {what}, lies between larger diameters; {tool}.",
            part=part.name,
            feature=first.name,
            figure=f"{over:g} mm beside {largest(first):g} mm",
            bound=f"{largest(first):g} mm, so that it is reached from one end",
            remedy="Make the part of two pieces, or let one of its neighbours be no larger than it.",
            source="geometry",
        )
    deep = max((over - min(first.start_dia, first.end_dia)) / 2, 0.0)
    wide = first.end - first.start
    blades = [t for t in shop.tools if t.kind in ("parting", "groove")]
    return Finding(
        904,
        "stop",
        f"{part.name}: {', '.join(low)} lies between larger diameters; no blade of the drawer reaches it in any grip.",
        part=part.name,
        feature=first.name,
        figure=f"{deep:.1f} mm deep, {wide:.1f} mm wide",
        bound="blades: " + ("; ".join(f"{t.width:g} wide, {t.reach:g} deep" for t in blades) or "none"),
        remedy=grind_words(
            "parting",
            part.material,
            f"a blade at most {Mm(min(wide, WIDEST)):.1f} wide, {Mm(deep + HOLDER_ROOM):.1f} or more from its holder to its edge",
        )
        + " Or a wider valley, or the part of two pieces.",
        source="geometry",
    )
