"""How much metal a toleranced figure leaves: what is aimed at, or the most or least that is allowed."""

from __future__ import annotations

import math
from typing import Literal

from tommybar.facts.threads import thread
from tommybar.shapes.features import Cylinder, Dim

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
