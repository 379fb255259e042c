"""How much metal a toleranced figure leaves: what is aimed at, or the most or least that is allowed."""

from __future__ import annotations

import math
from typing import Literal

from tommybar.facts.threads import thread
from tommybar.shapes.features import Cone, Cylinder, Dim, Eccentric, Land

Metal = Literal["target", "most", "least"]


def outside_figure(dim: Dim, metal: Metal) -> float:
    """An outside diameter or length [mm] with the stated amount of metal."""
    if metal == "most" and dim.largest is not None:
        return dim.largest
    if metal == "least" and dim.smallest is not None:
        return dim.smallest
    return dim.target


def inside_figure(dim: Dim, metal: Metal) -> float:
    """A bore's diameter [mm] with the stated amount of metal round it."""
    if metal == "most" and dim.smallest is not None:
        return dim.smallest
    if metal == "least" and dim.largest is not None:
        return dim.largest
    return dim.target


def cylinder_figure(body: Cylinder, metal: Metal) -> float:
    """An outside cylinder's diameter [mm] with the stated amount of metal.

    A thread stands at its major diameter; the least that may stand is the
    blank turned for a die, with 0.05 P to spare. A knurled band may be turned
    down by up to pitch/pi, so that a whole number of teeth fits round it.
    """
    if body.thread:
        screw = thread(body.thread)
        return screw.major - 0.15 * screw.pitch if metal == "least" else screw.major
    if body.knurl and metal == "least":
        return outside_figure(body.dia, metal) - body.knurl.pitch / math.pi
    return outside_figure(body.dia, metal)


def land_figures(body: Land, metal: Metal) -> tuple[float, float]:
    """Diameters of a land at its A and B end [mm] with the stated amount of metal.

    A taper with limits keeps its angle: both ends move as its large diameter
    does. An eccentric land counts as the circle that it swings in.
    """
    if isinstance(body, Cylinder):
        figure = cylinder_figure(body, metal)
        return figure, figure
    if isinstance(body, Eccentric):
        swing = outside_figure(body.dia, metal) + 2 * body.throw
        return swing, swing
    if isinstance(body, Cone) and body.limits is not None:
        by = outside_figure(body.limits, metal) - max(body.start_dia, body.end_dia)
        return max(0.0, body.start_dia + by), max(0.0, body.end_dia + by)
    return body.start_dia, body.end_dia
