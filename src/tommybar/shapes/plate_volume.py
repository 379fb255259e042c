"""What is taken from a plate, slice by slice: exact in each slice, and where cuts meet.

Cuts that run into one another or over the outline are taken together; each
slice is put together from lines and arcs, and the slices are added up over
the depth: in closed form where a slice does not change, else by 20-point
Gauss-Legendre quadrature, halved until it agrees with itself to 1 part in
10^10 of what is cut. Points are spread as a sine, so that round cuts, whose
slices begin as a square root, are as exact as flat ones.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from functools import cache
from itertools import pairwise

import numpy as np

from tommybar.shapes.moments import Moments
from tommybar.shapes.outlines import AreaMoments, Loop, area_moments
from tommybar.shapes.plan_regions import boundary, encloses
from tommybar.shapes.plate_cuts import Box, Cut

POINTS = 20
AGREES = 1e-10  # of what is cut, at which a stretch is not halved again
HALVINGS = 6


def drawn_out(area: AreaMoments, top: float, bottom: float) -> Moments:
    """A slice drawn out between two depths.

    Examples
    --------
    >>> drawn_out(AreaMoments(6.0, 0.0, 0.0, 0.0, 0.0), 0.0, 2.0).volume
    12.0
    """
    high = bottom - top
    return Moments(
        area.area * high,
        area.x * high,
        area.y * high,
        area.area * (bottom**2 - top**2) / 2,
        area.xx * high,
        area.yy * high,
        area.area * (bottom**3 - top**3) / 3,
    )


def removed(cuts: Sequence[Cut], outline: Loop, thickness: float) -> Moments:
    """Moments of all that ``cuts`` take from a plate of this outline, nothing taken twice."""
    total = Moments()
    for group in together(cuts):
        total += _of_group(group, outline, thickness)
    return total


def together(cuts: Sequence[Cut]) -> list[list[Cut]]:
    """The cuts in groups that may run into one another; groups keep clear of each other."""
    groups: list[list[Cut]] = []
    for one in cuts:
        touching = [group for group in groups if any(overlap(one.box, other.box) for other in group)]
        groups = [group for group in groups if group not in touching]
        groups.append([*(other for group in touching for other in group), one])
    return groups


def overlap(one: Box, other: Box) -> bool:
    """Whether two boxes share more than a face."""
    return all(one[i] < other[i + 3] - 1e-9 and other[i] < one[i + 3] - 1e-9 for i in range(3))


def _of_group(cuts: list[Cut], outline: Loop, thickness: float) -> Moments:
    depths = sorted({min(max(z, 0.0), thickness) for one in cuts for z in one.breaks})
    total = Moments()
    for top, bottom in pairwise(depths):
        middle = (top + bottom) / 2
        here = [one for one in cuts if one.breaks[0] < middle < one.breaks[-1]]
        if not here or bottom - top < 1e-12:
            continue

        def slice_at(z: float, here: list[Cut] = here) -> AreaMoments:
            return _slice(here, outline, z)

        if all(one.steady for one in here):
            total += drawn_out(slice_at(middle), top, bottom)
        else:
            total += _added_up(slice_at, top, bottom)
    return total


def _slice(cuts: list[Cut], outline: Loop, z: float) -> AreaMoments:
    pieces = [piece for one in cuts for piece in one.pieces(z)]
    if not pieces:
        return AreaMoments()

    def cut_away(x: float, y: float) -> bool:
        return encloses(outline, x, y) and any(one.holds(x, y, z) for one in cuts)

    return area_moments(boundary([*pieces, *outline], cut_away))


def _added_up(slice_at: Callable[[float], AreaMoments], top: float, bottom: float) -> Moments:
    def halved(low: float, high: float, whole: Moments, left: int) -> Moments:
        middle = (low + high) / 2
        one, other = _stretch(slice_at, low, middle), _stretch(slice_at, middle, high)
        both = one + other
        if left == 0 or abs(both.volume - whole.volume) <= AGREES * max(abs(both.volume), 1e-3):
            return both
        return halved(low, middle, one, left - 1) + halved(middle, high, other, left - 1)

    return halved(top, bottom, _stretch(slice_at, top, bottom), HALVINGS)


def _stretch(slice_at: Callable[[float], AreaMoments], top: float, bottom: float) -> Moments:
    middle, half = (top + bottom) / 2, (bottom - top) / 2
    sums = [0.0] * 7
    for angle, weight in _nodes():
        z = middle + half * math.sin(angle)
        area, share = slice_at(z), weight * half * math.cos(angle)
        found = (area.area, area.x, area.y, area.area * z, area.xx, area.yy, area.area * z * z)
        for index, one in enumerate(found):
            sums[index] += share * one
    return Moments(*sums)


@cache
def _nodes() -> tuple[tuple[float, float], ...]:
    spots, weights = np.polynomial.legendre.leggauss(POINTS)
    quarter = math.pi / 2
    return tuple((quarter * float(t), quarter * float(w)) for t, w in zip(spots, weights, strict=True))
