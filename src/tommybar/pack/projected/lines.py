"""What is seen of a solid as marks: straight lines put together, circles as true arcs, dashes where hidden."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import replace
from itertools import pairwise
from typing import TYPE_CHECKING, Any

import numpy as np

from tommybar.pack.projected.hidden import Seen
from tommybar.pack.sheet import Arc, Kind, Line, Mark

if TYPE_CHECKING:
    from numpy.typing import NDArray

ON = 0.03  # a chord whose ends lie this near to a circle is part of it [mm]
JOINED = 0.3  # gaps in a circle smaller than this are closed [deg]
NOTHING = 0.001  # an arc shorter than this is none; other programs would draw the whole circle [mm]
SHORT = 0.05  # of hidden lines, what is shorter is left out [mm]
Circle = tuple[float, float, float]  # u, v, radius [mm]


def view_marks(
    found: Seen, scale: float, circles: Iterable[Circle] = (), hidden: bool = True, kind: Kind = "thick"
) -> list[Mark]:
    """Marks of a view at a scale, its origin at (0, 0) and v upwards."""
    round_ones = sorted({(round(u, 6), round(v, 6), round(r, 6)) for u, v, r in circles})
    marks, left = _arcs(found.visible, round_ones, scale, kind)
    import shapely

    shown = shapely.union_all(shapely.linestrings(found.visible)) if len(found.visible) else None
    marks += [Line(_paper(points, scale), kind) for points in _chained(left)]
    if hidden and len(found.hidden):
        behind = shapely.union_all(shapely.linestrings(found.hidden))
        if shown is not None:
            near = shapely.simplify(shapely.line_merge(shown), 0.004)
            behind = behind.difference(shapely.buffer(near, 0.02, quad_segs=1))
        rest = np.array(
            [
                piece
                for one in _parts(behind)
                for piece in zip(one.coords[:-1], one.coords[1:], strict=True)
                if math.dist(*piece) > 1e-3
            ]
        ).reshape(-1, 2, 2)
        arcs, left = _arcs(rest, round_ones, scale, "dashed")
        marks += [
            *arcs,
            *(Line(_paper(points, scale), "dashed") for points in _chained(left) if _long(points) > SHORT),
        ]
    return marks


def _long(points: Sequence[tuple[float, float]]) -> float:
    return sum(math.dist(a, b) for a, b in pairwise(points))


def _paper(points: Sequence[tuple[float, float]], scale: float) -> tuple[tuple[float, float], ...]:
    return tuple((round(u * scale, 5), round(-v * scale, 5)) for u, v in points)


def _parts(one: Any) -> list[Any]:
    if one.is_empty:
        return []
    return list(one.geoms) if hasattr(one, "geoms") else [one]


def _chained(ends: NDArray[np.float64]) -> list[list[tuple[float, float]]]:
    """Stretches put end to end, and points in the middle of a straight line left out."""
    import shapely

    if len(ends) == 0:
        return []
    merged = shapely.line_merge(shapely.union_all(shapely.linestrings(np.round(ends, 4))))
    found = [[(x, y) for x, y in shapely.simplify(one, 0.001).coords] for one in _parts(merged)]
    return sorted(found)


def _arcs(
    ends: NDArray[np.float64], circles: Sequence[Circle], scale: float, kind: Kind
) -> tuple[list[Mark], NDArray[np.float64]]:
    """Arcs for the chords that lie on one of the circles, and the stretches that lie on none."""
    marks: list[Mark] = []
    for u, v, r in circles:
        if len(ends) == 0:
            break
        away = np.hypot(ends[:, :, 0] - u, ends[:, :, 1] - v)
        long = np.linalg.norm(ends[:, 1] - ends[:, 0], axis=1)
        on = (np.abs(away - r) < ON).all(axis=1) & (long < max(0.2 * r, 0.02))
        if not on.any():
            continue
        for start, end in _runs(ends[on], u, v):
            if math.radians(end - start) * r > (SHORT if kind == "dashed" else NOTHING):
                marks.append(Arc((u * scale, -v * scale), r * scale, kind, start, end))
        ends = ends[~on]
    return marks, ends


def _runs(chords: NDArray[np.float64], u: float, v: float) -> list[tuple[float, float]]:
    """Angles from and to which chords about a middle run together [deg]."""
    spans = []
    for (x1, y1), (x2, y2) in chords.tolist():
        first, last = (math.degrees(math.atan2(y - v, x - u)) for x, y in ((x1, y1), (x2, y2)))
        turn = (last - first + 180.0) % 360.0 - 180.0
        low = first if turn > 0 else last
        spans.append((low % 360.0, low % 360.0 + abs(turn)))
    spans.sort()
    runs: list[list[float]] = []
    for low, high in spans:
        if runs and low <= runs[-1][1] + JOINED:
            runs[-1][1] = max(runs[-1][1], high)
        else:
            runs.append([low, high])
    if len(runs) > 1 and runs[-1][1] - 360.0 >= runs[0][0] - JOINED:
        runs[0][0] = runs.pop()[0] - 360.0
    if len(runs) == 1 and runs[0][1] - runs[0][0] >= 360.0 - JOINED:
        return [(0.0, 360.0)]
    return [(round(a, 4), round(b, 4)) for a, b in runs]


def scaled(marks: Iterable[Mark], scale: float) -> list[Mark]:
    """Lines and arcs of a view drawn at 1:1, at another scale."""
    found: list[Mark] = []
    for one in marks:
        if isinstance(one, Line):
            found.append(replace(one, points=tuple((x * scale, y * scale) for x, y in one.points)))
        elif isinstance(one, Arc):
            x, y = one.centre
            found.append(replace(one, centre=(x * scale, y * scale), radius=one.radius * scale))
    return found
