"""In which order the bends of a strip are made, so that the bending bars hold it and reach every bend."""

from __future__ import annotations

import itertools
import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from tommybar.making.handwork.rules import hand_rule
from tommybar.shapes.developed import bend_allowance
from tommybar.shapes.features import Bend, SheetShape

MOST_TRIED = 6  # bends of which every order is tried
STEP = 0.5  # the bent strip is looked at every so much of its length [mm]
TOUCH = 0.05
Clamp = Literal["left", "right"]


@dataclass(frozen=True)
class Made:
    """One bend in its turn: the side that the bars hold, and how much flat they hold there [mm]."""

    bend: Bend
    held: Clamp
    grip: float


def bend_order(shape: SheetShape) -> tuple[Made, ...] | None:
    """The first order in which every bend can be held and swung; None when there is none.

    The bars hold the flat beside the bend line, a block ``bar_deep`` deep and
    ``bar_high`` high on its inner side; what is bent already must stand clear
    of it, before the bend and after.
    """
    orders = (
        itertools.permutations(range(len(shape.bends)))
        if len(shape.bends) <= MOST_TRIED
        else [tuple(range(len(shape.bends)))]
    )
    for order in orders:
        made = _tried(shape, order)
        if made is not None:
            return made
    return None


def _tried(shape: SheetShape, order: Sequence[int]) -> tuple[Made, ...] | None:
    done: list[int] = []
    found: list[Made] = []
    for index in order:
        sides: tuple[Clamp, Clamp] = ("left", "right")
        grips = [(_held(shape, done, index, side), side) for side in sides]
        grip, side = max(grips, key=lambda one: (one[0], one[1] == "left"))
        if grip <= 0:
            return None
        found.append(Made(shape.bends[index], side, grip))
        done.append(index)
    return tuple(found)


def _held(shape: SheetShape, done: Sequence[int], index: int, side: Clamp) -> float:
    """Flat that the bars can hold on that side; 0 when it is too short or something strikes the bar [mm]."""
    thick, whole = shape.thickness.target, shape.length.target
    bend = shape.bends[index]
    spans = sorted((shape.bends[n].at, shape.bends[n].at + _long(shape, n), n) for n in done)
    near, far = bend.at, bend.at + _long(shape, index)
    if side == "left":
        flat = near - max((end for _, end, _ in spans if end <= near + TOUCH), default=0.0)
    else:
        flat = min((start for start, _, _ in spans if start >= far - TOUCH), default=whole) - far
    least = max(hand_rule("grip_least") * thick, hand_rule("grip_short"))
    if flat < least - 1e-9:
        return 0.0
    deep = min(flat, hand_rule("bar_deep"))
    return 0.0 if _strikes(shape, [*done, index], index, side, deep) else flat


def _long(shape: SheetShape, n: int) -> float:
    one = shape.bends[n]
    return bend_allowance(one.angle, one.radius, shape.thickness.target, shape.neutral)


def _strikes(shape: SheetShape, done: Sequence[int], index: int, side: Clamp, deep: float) -> bool:
    """Whether the strip, this bend made, reaches into the bar on its inner side."""
    bend, thick = shape.bends[index], shape.thickness.target
    up = math.copysign(1.0, bend.angle)
    start = bend.at if side == "left" else bend.at + _long(shape, index)
    for way in (-1.0, 1.0):  # from the bend line into the held side, and through the bend
        x, y, heading = 0.0, 0.0, 0.0 if way > 0 else math.pi
        for s, ahead in itertools.pairwise(_stations(shape, start, way if side == "left" else -way)):
            step = abs(ahead - s)
            curl = _curve(shape, done, index, (s + ahead) / 2) * step * way * up
            x += step * math.cos(heading + curl / 2)
            y += step * math.sin(heading + curl / 2)
            heading += curl
            if -deep + TOUCH < x < -TOUCH and thick < y < hand_rule("bar_high"):
                return True
    return False


def _stations(shape: SheetShape, start: float, forward: float) -> list[float]:
    """Places along the strip from a bend line to its end, with every bend's beginning and end among them [mm]."""
    end = shape.length.target if forward > 0 else 0.0
    steps = math.ceil(abs(end - start) / STEP)
    edges = [edge for n, one in enumerate(shape.bends) for edge in (one.at, one.at + _long(shape, n))]
    places = [start + (end - start) * n / max(steps, 1) for n in range(steps + 1)]
    return sorted(
        {*places, *(edge for edge in edges if min(start, end) < edge < max(start, end))}, reverse=forward < 0
    )


def _curve(shape: SheetShape, done: Sequence[int], index: int, s: float) -> float:
    """Curvature of the strip at a place, positive towards the top face [rad/mm].

    In the bars a bend goes to a right angle at most; what it lacks is closed by hand, out of them.
    """
    for n in done:
        one = shape.bends[n]
        long = _long(shape, n)
        if one.at < s < one.at + long:
            angle = max(min(one.angle, 90.0), -90.0) if n == index else one.angle
            return math.radians(angle) / long
    return 0.0
