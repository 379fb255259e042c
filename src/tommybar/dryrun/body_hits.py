"""Whether a tool's body meets metal on a straight move: exact, without time stepping.

Two terms. First, metal in the body's sweep that the edges never cut in this
move. Second, metal on the way of those parts of the body that run ahead of
the edges: whatever of the body does not lie behind a cutting piece, seen
along the move, meets the metal before an edge does.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass
from functools import cache

import numpy as np
import numpy.typing as npt
import shapely
from shapely import Polygon
from shapely.geometry.base import BaseGeometry
from shapely.ops import unary_union

from tommybar.dryrun.sweep import Corners, counter_clockwise, sweeps
from tommybar.dryrun.tool_shapes import ToolShape
from tommybar.dryrun.volumes import across_axis

FAR = 400.0  # how far back a cutting piece throws its shadow [mm]

Leading = Callable[[int, float], tuple[Corners, ...]]


@dataclass(frozen=True)
class Hit:
    """A move on which the body, or the holder beyond the tool's reach, met metal."""

    move: int
    holder: bool
    area: float  # [mm2]


def directions_shadowed(tool: ToolShape) -> Leading:
    """For a body piece and a direction: the convex parts that run ahead of the edges; remembered."""
    bodies = (*tool.body, *tool.holder)

    @cache
    def leading(piece: int, way: float) -> tuple[Corners, ...]:
        back = np.array([[-FAR * math.cos(way), -FAR * math.sin(way)]])
        start = np.zeros((1, 2))
        shadow = unary_union([sweeps(one, start, back)[0] for one in tool.cut])
        rest = Polygon(bodies[piece]).difference(shadow)
        if rest.area < 1e-9:
            return ()
        parts = shapely.get_parts(shapely.constrained_delaunay_triangles(rest))
        return tuple(counter_clockwise(list(part.exterior.coords[:-1])) for part in parts if part.area > 1e-9)

    return leading


def body_hit(
    work: BaseGeometry,
    swept_body: Polygon,
    piece: Corners,
    swept_cut: list[Polygon],
    start: npt.NDArray[np.float64],
    end: npt.NDArray[np.float64],
    tool: ToolShape,
    leading: Leading,
) -> float:
    """Area of metal that one body piece meets on one move, the start taken as clear [mm2]."""
    met = _metal(work, tool).intersection(swept_body)
    if met.area < 1e-6:
        return 0.0
    edges = swept_cut + ([across_axis(one) for one in swept_cut] if tool.enters_bore else [])
    first = met.difference(unary_union(edges))
    way = math.atan2(end[1] - start[1], end[0] - start[0])
    if start[0] == end[0] and start[1] == end[1]:
        return float(first.area)
    bodies = (*tool.body, *tool.holder)
    number = next(n for n, one in enumerate(bodies) if one is piece)
    ahead = [sweeps(part, start[None], end[None])[0] for part in leading(number, round(way, 12))]
    if not ahead:
        return float(first.area)
    second = unary_union(ahead).intersection(work)
    return float(unary_union([first, second]).area)


def _metal(work: BaseGeometry, tool: ToolShape) -> BaseGeometry:
    """The work, on both sides of the axis for a bar that may touch the far wall of a bore."""
    return unary_union([work, across_axis(work)]) if tool.enters_bore else work
