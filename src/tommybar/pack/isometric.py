"""An isometric of a part in what room its sheet has left, hidden lines taken out."""

from __future__ import annotations

import math
from collections.abc import Iterable
from functools import lru_cache
from itertools import pairwise

from tommybar.pack.boxes import Box, box_of
from tommybar.pack.marks import plain_marks
from tommybar.pack.projected.directions import body, coil_sharp, lies, looked_at, mesh_in
from tommybar.pack.projected.hidden import seen
from tommybar.pack.projected.lines import scaled, view_marks
from tommybar.pack.sheet import Line, Mark
from tommybar.pack.turned.layout import block
from tommybar.shapes.bought import BoughtShape
from tommybar.shapes.features import Shape

SIZES = (75.0, 55.0, 40.0, 30.0)  # of its longer side on paper, the first that has room [mm]
SPECK = 0.7  # a stretch shorter than this is left out of an isometric [mm on paper]


@lru_cache(maxsize=64)
def isometric_marks(shape: Shape | BoughtShape) -> tuple[tuple[Mark, ...], float]:
    """An isometric, upright, whose longer side is ``SIZES[0]`` on paper; and its scale."""
    at = looked_at("isometric", lies(shape))
    mesh = mesh_in(body(shape), at)
    low, high = mesh.points.min(axis=0), mesh.points.max(axis=0)
    scale = SIZES[0] / max(float(high[0] - low[0]), float(high[1] - low[1]), 1e-6)
    marks = view_marks(seen(mesh, 0.6 / scale, coil_sharp(shape)), scale, (), False, "rule")
    return tuple(one for one in marks if not isinstance(one, Line) or _length(one) > SPECK), scale


def _length(one: Line) -> float:
    return sum(math.dist(a, b) for a, b in pairwise(one.points))


def with_isometric(shape: Shape | BoughtShape, marks: list[Mark], area: Box, scale: float) -> list[Mark]:
    """The marks of a sheet at a scale and, where there is room, an isometric of the part, no larger than that."""
    drawn, own = isometric_marks(shape)
    wide, high = block(list(drawn)).size
    for across in SIZES:
        share = across / SIZES[0]
        if own * share > scale and across > SIZES[-1]:
            continue
        spot = free_place((wide * share, high * share), marks, area, 5.0)
        if spot is not None:
            one = block(scaled(drawn, share))
            return [*marks, *one.at(spot[0], spot[1])]
    return marks


def free_place(size: tuple[float, float], marks: Iterable[Mark], area: Box, spare: float = 4.0) -> Box | None:
    """A box of a size in an area that meets no mark: as far to the upper right as there is one."""
    import numpy as np

    width, height = size
    if width > area[2] - area[0] or height > area[3] - area[1]:
        return None
    taken = np.array([box_of([one]) for one in plain_marks(marks)]).reshape(-1, 4)
    rows = int((area[3] - area[1] - height) / 4.0)
    columns = int((area[2] - area[0] - width) / 4.0)
    for column in range(columns + 1):
        x = area[2] - width - 4.0 * column
        near = taken[(taken[:, 0] < x + width + spare) & (x < taken[:, 2] + spare)]
        for row in range(rows + 1):
            y = area[1] + 4.0 * row
            if not ((near[:, 1] < y + height + spare) & (y < near[:, 3] + spare)).any():
                return (x, y, x + width, y + height)
    return None
