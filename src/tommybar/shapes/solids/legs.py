"""The straight legs of bent sheet and wire, where each of them stands."""

from __future__ import annotations

import math
from dataclasses import dataclass

from tommybar.shapes.bent import SheetShape, WireShape
from tommybar.shapes.solids.frames import HERE, Frame, cosine, frame, shifted, sine, within


@dataclass(frozen=True)
class Stretch:
    """A straight stretch: from where to where on the flat blank or along the wire [mm], and where it begins."""

    start: float
    end: float
    at: Frame


def sheet_stretches(shape: SheetShape) -> tuple[Stretch, ...]:
    """The flat legs of a bent strip: x runs along each of them, z through its thickness."""
    at: Frame = HERE
    start, found = 0.0, []
    for bend in sorted(shape.bends, key=lambda one: one.at):
        found.append(Stretch(start, bend.at, at))
        t = shape.thickness.value
        at = within(within(at, shifted(bend.at - start)), _after(bend.angle, bend.radius, t))
        start = bend.at + math.radians(abs(bend.angle)) * (bend.radius + shape.neutral * t)
    return (*found, Stretch(start, shape.length.value, at))


def wire_stretches(shape: WireShape) -> tuple[Stretch, ...]:
    """The straight legs of bent wire, in the plane of x and y: x runs along each of them."""
    found: list[Stretch] = []
    at: Frame = HERE
    start = 0.0
    for n, leg in enumerate(shape.legs):
        found.append(Stretch(start, start + leg, at))
        if n < len(shape.bends):
            inside, angle = shape.bends[n]
            radius, left = inside + shape.dia.target / 2, 1.0 if angle > 0 else -1.0
            c, s = cosine(angle), sine(angle)
            spot = (radius * s * left, left * radius * (1 - c), 0.0)
            at = within(within(at, shifted(leg)), frame((c, s, 0), (-s, c, 0), (0, 0, 1), spot))
            start += leg + math.radians(abs(angle)) * radius
    return tuple(found)


def _after(angle: float, radius: float, t: float) -> Frame:
    """Where the flat after a bend begins, told from the end of the flat before it."""
    c, s = cosine(angle), sine(angle)
    up = t + radius if angle > 0 else -radius
    return frame((c, 0, s), (0, 1, 0), (-s, 0, c), (up * s, 0, up - up * c))
