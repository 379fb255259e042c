"""An isometric of a part in what room its sheet has left, hidden lines taken out."""

from __future__ import annotations

import math
from collections.abc import Iterable
from functools import lru_cache
from itertools import pairwise

from tommybar.pack.boxes import Box, box_of
from tommybar.pack.marks import plain_marks
from tommybar.pack.projected.directions import Corner, body, coil_sharp, lies, mesh_in, seen_from_corner
from tommybar.pack.projected.hidden import seen
from tommybar.pack.projected.lines import scaled, view_marks
from tommybar.pack.sheet import Line, Mark
from tommybar.pack.turned.layout import block
from tommybar.shapes.bought import BoughtShape
from tommybar.shapes.clocking import CLOCKED
from tommybar.shapes.features import Eccentric, Shape, TurnedShape

SIZES = (75.0, 55.0, 40.0, 30.0)  # of its longer side on paper, the first that has room [mm]
CORNERS: tuple[Corner, ...] = (
    (1, -1, 1), (-1, -1, 1), (1, 1, 1), (-1, 1, 1), (1, -1, -1), (-1, -1, -1), (1, 1, -1), (-1, 1, -1),
)  # fmt: skip
COARSE = 24  # chords of a circle when it is asked what is seen from a corner
MORE = 1.02  # another corner must show so many times as much
SPECK = 0.7  # a stretch shorter than this is left out of an isometric [mm on paper]


@lru_cache(maxsize=64)
def isometric_marks(shape: Shape | BoughtShape) -> tuple[tuple[Mark, ...], float]:
    """An isometric, upright, whose longer side is ``SIZES[0]`` on paper; and its scale."""
    at = seen_from_corner(telling_corner(shape), lies(shape))
    mesh = mesh_in(body(shape), at)
    low, high = mesh.points.min(axis=0), mesh.points.max(axis=0)
    scale = SIZES[0] / max(float(high[0] - low[0]), float(high[1] - low[1]), 1e-6)
    marks = view_marks(seen(mesh, 0.6 / scale, coil_sharp(shape)), scale, (), False, "rule")
    return tuple(one for one in marks if not isinstance(one, Line) or _length(one) > SPECK), scale


@lru_cache(maxsize=64)
def telling_corner(shape: Shape | BoughtShape) -> Corner:
    """The corner from which most is seen of a turned part: the longest edges that nothing hides.

    Other parts are seen from the usual one. Of corners that show nearly the
    same the first is taken.
    """
    import numpy as np

    if not isinstance(shape, TurnedShape):
        return CORNERS[0]
    round_about = not any(getattr(shape, name) for name in ("circle_holes", *CLOCKED)) and not any(
        isinstance(one, Eccentric) for one in shape.outside
    )
    best, most = CORNERS[0], 0.0
    for corner in CORNERS[:2] if round_about else CORNERS:
        shown = seen(mesh_in(body(shape, COARSE), seen_from_corner(corner, True)), math.inf).visible
        long = float(np.linalg.norm(shown[:, 1] - shown[:, 0], axis=1).sum())
        if long > MORE * most:
            best, most = corner, long
    return best


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
