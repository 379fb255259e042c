"""One step on geometry: subtract what the cutting edges sweep, move by move.

Plain float overlays, never a precision grid: a grid made corners multiply
without end. Slivers and corners that are only noise are dropped once a step;
a ceiling on corners stops a step that goes wrong.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, field
from itertools import pairwise

import numpy as np
import numpy.typing as npt
import shapely
from shapely import MultiPolygon
from shapely.errors import GEOSException
from shapely.geometry.base import BaseGeometry

from tommybar.dryrun.body_hits import Hit, body_hit, directions_shadowed
from tommybar.dryrun.sweep import sweeps
from tommybar.dryrun.tool_shapes import ToolShape
from tommybar.dryrun.volumes import without_slivers
from tommybar.making.cards import Move
from tommybar.refusals import OwnFault

VERDICT = 1e-3  # areas below this are touching, not cutting [mm2]
MOST_CORNERS = 5000
SMOOTH = 1e-6  # corners nearer than this to a straight side are noise of repeated cuts [mm]


class TooManyCorners(OwnFault):
    """A step whose section grows corners without end; the run of its card stops there."""


@dataclass
class Cut:
    """What one step did to the work."""

    work: BaseGeometry
    removed_area: float = 0.0
    rapid: list[tuple[int, float]] = field(default_factory=list)  # move, area it went through [mm2]
    hits: list[Hit] = field(default_factory=list)
    starts_in_metal: float = 0.0  # area of the tool inside the work before the first move [mm2]
    retried: int = 0  # overlays that only worked on a grid of a nanometre
    swept: tuple[npt.NDArray[np.object_], ...] = ()  # every piece's sweep for every move


def feed_directions(moves: tuple[Move, ...]) -> tuple[float, ...]:
    """The different ways along which a step is fed [rad]."""
    ways = set()
    for one, other in pairwise(moves):
        if not other.rapid and (one.z, one.r) != (other.z, other.r):
            ways.add(round(math.atan2(other.r - one.r, other.z - one.z), 12))
    return tuple(sorted(ways))


def path(moves: tuple[Move, ...]) -> tuple[npt.NDArray[np.float64], npt.NDArray[np.float64]]:
    """Reference points before and after each move, shape (m, 2) [mm]."""
    places = np.array([(move.z, move.r) for move in moves], dtype=float)
    return places[:-1], places[1:]


def cut_step(work: BaseGeometry, tool: ToolShape, moves: tuple[Move, ...]) -> Cut:
    """Run a step's moves through the work, and say what the tool met that it should not.

    Parameters
    ----------
    work : shapely geometry
        The metal before the step, (z, r) in the card frame [mm]
    tool : ToolShape
        Convex pieces about the reference point [mm]
    moves : tuple of Move
        The first one is the start

    Returns
    -------
    Cut
        The work after the step with slivers dropped, areas [mm2] and hits
    """
    done = Cut(work)
    if len(moves) < 2:
        return done
    starts, ends = path(moves)
    cutting = [sweeps(piece, starts, ends) for piece in tool.cut]
    body = [(sweeps(piece, starts, ends), piece, False) for piece in tool.body]
    body += [(sweeps(piece, starts, ends), piece, True) for piece in tool.holder]
    done.swept = (*cutting, *(row for row, _, _ in body))
    start = starts[0]
    whole = (*tool.cut, *tool.body, *tool.holder)
    at_start = sum(shapely.Polygon(piece + start).intersection(work).area for piece in whole)
    done.starts_in_metal = at_start if at_start > VERDICT else 0.0
    shapely.prepare(work)
    near_cut = np.array([shapely.intersects(work, row) for row in cutting])
    near_body = np.array([shapely.intersects(work, row) for row, _, _ in body]).reshape(
        len(body), len(starts)
    )
    if tool.enters_bore:
        lower = shapely.transform(work, lambda p: p * [1.0, -1.0])
        near_body |= np.array([shapely.intersects(lower, row) for row, _, _ in body])
    shadows = directions_shadowed(tool)
    now: BaseGeometry = work
    for n in range(len(starts)):
        if near_body.size and near_body[:, n].any():
            swept = [row[n] for row in cutting]
            for (row, piece, holder), near in zip(body, near_body[:, n], strict=True):
                if near:
                    area = body_hit(now, row[n], piece, swept, starts[n], ends[n], tool, shadows)
                    if area > VERDICT:
                        done.hits.append(Hit(n + 1, holder, area))
        if not near_cut[:, n].any():
            continue
        before = now.area
        for row, near in zip(cutting, near_cut[:, n], strict=True):
            if near:
                now = _without(now, row[n], done)
        lost = before - now.area
        done.removed_area += lost
        if moves[n + 1].rapid and lost > VERDICT:
            done.rapid.append((n + 1, lost))
        if shapely.get_num_coordinates(now) > MOST_CORNERS:
            raise TooManyCorners(f"more than {MOST_CORNERS} corners after move {n + 1}")
    parts = without_slivers(now.simplify(SMOOTH) if done.removed_area else now)
    done.work = parts[0] if len(parts) == 1 else MultiPolygon(parts)
    return done


def _without(work: BaseGeometry, swept: BaseGeometry, done: Cut) -> BaseGeometry:
    """Subtract in plain float; where that fails, once on a grid of a nanometre, and say so."""
    try:
        return work.difference(swept)
    except GEOSException:
        done.retried += 1
        return work.difference(swept, grid_size=1e-6)
