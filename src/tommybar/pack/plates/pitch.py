"""Holes of a plate that stand equally spaced on a circle."""

from __future__ import annotations

import math
from dataclasses import dataclass

from tommybar.pack.plates.holes import groups_of, in_plate
from tommybar.shapes.features import PlateHole, PlateShape

SAME = 1e-6  # radii and angles that differ by less are one [mm, deg]


@dataclass(frozen=True)
class PitchCircle:
    """Alike holes on a circle about (x, y); ``first`` is the angle of the first from the length [deg]."""

    names: tuple[str, ...]  # in their order round the circle
    x: float
    y: float
    radius: float
    first: float


def circles_of(shape: PlateShape) -> tuple[PitchCircle, ...]:
    """Every such circle of holes square to the top or the underside."""
    found = (_circle(shape, group) for group in groups_of(shape))
    return tuple(one for one in found if one is not None)


def _circle(shape: PlateShape, group: list[PlateHole]) -> PitchCircle | None:
    """The circle of alike holes; none for fewer than three, and none for the four corners of a square.

    Four holes at the corners of a square along the edges are measured along these.
    """
    count = len(group)
    if count < 3 or group[0].face not in ("top", "bottom") or group[0].tilt:
        return None
    spots = {one.name: in_plate(shape, one) for one in group}
    x, y = (sum(spot[n] for spot in spots.values()) / count for n in range(2))
    radii = [math.hypot(sx - x, sy - y) for sx, sy, _ in spots.values()]
    if radii[0] < SAME or max(radii) - min(radii) > SAME:
        return None
    turns = sorted(
        ((math.degrees(math.atan2(sy - y, sx - x)) + SAME) % 360.0 - SAME, name)
        for name, (sx, sy, _) in spots.items()
    )
    first, step = turns[0][0], 360.0 / count
    if any(abs(angle - first - n * step) > 1e-5 for n, (angle, _) in enumerate(turns)):
        return None
    if count == 4 and abs(first - 45.0) < 1e-5:
        return None
    return PitchCircle(
        tuple(name for _, name in turns), round(x, 9), round(y, 9), radii[0], round(max(first, 0.0), 6)
    )
