"""Blank and finished part in the frame of a card: z = 0 at the finished free face, metal at z < 0."""

from __future__ import annotations

import math

from shapely import Polygon, box
from shapely.affinity import scale, translate
from shapely.geometry.base import BaseGeometry

from tommybar.making.cards import Blank
from tommybar.shapes.features import Face

FIRST_FACE = "face first end"  # the allowance that says how much stands over the first free face


def blank_section(blank: Blank) -> Polygon:
    """The blank in the frame of the first card: what is to be faced off stands at z > 0."""
    over = next((mm for words, mm in blank.allowances if words == FIRST_FACE), 0.0)
    inside = blank.width / 2 if blank.section == "tube" else 0.0
    return box(over - blank.length, inside, over, blank_radius(blank))


def blank_radius(blank: Blank) -> float:
    """Radius of the circle round a blank's section [mm]."""
    if blank.section == "hexagon":
        return blank.size / 2 / math.cos(math.pi / 6)
    if blank.section in ("square", "flat", "plate"):
        return math.hypot(blank.size, blank.width or blank.size) / 2
    return blank.size / 2


def in_card(section: BaseGeometry, free: Face, length: float) -> BaseGeometry:
    """A half-section in (z from face A, r) seen from the card with that face free."""
    if free == "A":
        return scale(section, -1.0, 1.0, origin=(0.0, 0.0))
    return translate(section, -length, 0.0)


def turned_round(work: BaseGeometry, length: float) -> BaseGeometry:
    """The same metal when the other face comes to the free end: z becomes -length - z."""
    return translate(scale(work, -1.0, 1.0, origin=(0.0, 0.0)), -length, 0.0)
