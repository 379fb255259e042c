"""Angles as the drawing counts them, and as they stand in the frame of a turned part.

A drawing counts clocking counter-clockwise as seen from face A. The part's
frame has its z from face A into the metal, away from who looks at face A, and
is right-handed: seen from there it turns the other way. So x is x, what is up
on the drawing is minus y, and an angle changes its sign.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from tommybar.shapes.features import Eccentric, TurnedShape

CLOCKED = ("cross_holes", "flats", "head_slots", "cross_slots", "keyways", "bore_keyways", "slits")


def in_frame(shape: TurnedShape) -> TurnedShape:
    """The shape with every clocking angle as it stands in the part's frame [deg].

    Examples
    --------
    >>> from tommybar.shapes.features import CrossHole, Cylinder, Dim
    >>> hole = CrossHole("oil", Dim(2.0), 5.0, angle=30.0)
    >>> rod = TurnedShape(Dim(10.0), (Cylinder("rod", Dim(8.0), 0.0, 10.0),), cross_holes=(hole,))
    >>> in_frame(rod).cross_holes[0].angle
    -30.0
    """
    told: dict[str, Any] = {
        name: tuple(replace(one, angle=-one.angle) for one in getattr(shape, name)) for name in CLOCKED
    }
    circles = tuple(replace(one, start_angle=-one.start_angle) for one in shape.circle_holes)
    lands = tuple(
        replace(one, angle=-one.angle) if isinstance(one, Eccentric) else one for one in shape.outside
    )
    return replace(shape, outside=lands, circle_holes=circles, **told)
