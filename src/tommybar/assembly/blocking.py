"""Which piece stands in the way of which when it is drawn out along a straight line.

A point of a piece strikes another piece that has metal ahead of it on the same
line. Two pieces turned about one line along the direction are compared by
their half-sections, exactly; any others by how high they stand over a grid of
lines, so that shoulders lower than about three of its cells are not seen.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from functools import lru_cache
from typing import TYPE_CHECKING, Any

import numpy as np

from tommybar.assembly.bodies import own_body
from tommybar.assembly.links import Link, Piece
from tommybar.assembly.placing import Placement
from tommybar.design.model import SizedDesign
from tommybar.shapes.features import TurnedShape
from tommybar.shapes.profile import profile
from tommybar.shapes.solids.frames import Frame, Vector, back, direction, frame, within

if TYPE_CHECKING:
    from numpy.typing import NDArray

FACETS = 48
CELL = 0.25  # of the grid of lines [mm]
THIN = 0.02  # what fits, press joints and chords may share [mm]
FAR = 1e5  # [mm]
SQUARE = 1e-6  # one minus the cosine by which a way may lean from a thread's axis
Relief = tuple[int, int, "NDArray[np.float64]", "NDArray[np.float64]"]  # corner in cells, lowest, highest


class Blocking:
    """Answers of one assembly, worked out when they are first asked for."""

    def __init__(self, design: SizedDesign, placements: Sequence[Placement], links: Sequence[Link]) -> None:
        self.design = design
        self.frames = {(one.part, one.instance): one.frame for one in placements}
        self.threads = {
            frozenset((link.first, link.second)): link.pairs[0].words.rpartition(" on ")[2]
            for link in links
            if link.kind == "thread"
        }
        self.axes = {
            frozenset((link.first, link.second)): self._axis(link) for link in links if link.kind == "thread"
        }
        heads = [link for link in links if link.kind == "screw head"]
        self.screws = {head.second for head in heads}
        self.held = {head.second: _held_by(head, links) for head in heads}
        for head in heads:  # a screw is turned out of whatever it is screwed into
            for link in links:
                if link.kind == "screw" and head.first in (link.first, link.second):
                    self.threads[frozenset((link.second, head.second))] = ""
                    self.axes[frozenset((link.second, head.second))] = self._axis(head)
        self._meshes: dict[str, tuple[NDArray[np.float64], NDArray[np.int64]]] = {}
        self._turned: dict[tuple[Piece, Vector], NDArray[np.float64]] = {}
        self._reliefs: dict[tuple[Piece, Vector], Relief] = {}
        self._sections: dict[tuple[Piece, Vector], tuple[tuple[float, float], Any] | None] = {}
        self._answers: dict[tuple[Piece, Piece, Vector], bool] = {}

    def _axis(self, link: Link) -> Vector:
        return direction(within(self.frames[link.first], link.pairs[0].hole.at), (0.0, 0.0, 1.0))

    def blocks(self, other: Piece, piece: Piece, way: Vector) -> bool:
        """Whether ``other`` stands in the way of ``piece`` drawn out along ``way``."""
        key = (other, piece, way)
        if key not in self._answers:
            self._answers[key] = self._blocks(other, piece, way)
        return self._answers[key]

    def _blocks(self, other: Piece, piece: Piece, way: Vector) -> bool:
        along = _canonical(way)
        axis = self.axes.get(frozenset((piece, other)))
        if axis is not None and abs(sum(a * b for a, b in zip(axis, way, strict=True))) < 1 - SQUARE:
            return True  # a thread lets nothing go across it
        sign = 1.0 if along == way else -1.0
        first, second = self._section(piece, along), self._section(other, along)
        if first and second and math.dist(first[0], second[0]) < 1e-6:
            return self._in_section(piece, other, first[1], second[1], sign)
        if frozenset((piece, other)) in self.threads:
            return False  # it is screwed out along its own thread
        if self._clear_of(piece, other, along, sign):
            return False
        return _over_grid(self._relief(piece, along), self._relief(other, along), sign)

    def _section(self, piece: Piece, along: Vector) -> tuple[tuple[float, float], Any] | None:
        """Where a turned piece's axis passes, and its half-section, when it lies along the direction."""
        key = (piece, along)
        if key not in self._sections:
            self._sections[key] = self._section_of(piece, along)
        return self._sections[key]

    def _section_of(self, piece: Piece, along: Vector) -> tuple[tuple[float, float], Any] | None:
        shape = self.design.part(piece[0]).shape
        if not isinstance(shape, TurnedShape):
            return None
        told = within(_seen_along(along), self.frames[piece])
        if abs(told[10]) < 1 - 1e-9:
            return None
        up = math.copysign(1.0, told[10])
        ring = [point for part in profile(shape) for point in part.chords()]
        return (told[3], told[7]), [(told[11] + up * z, r) for z, r in ring]

    def _in_section(
        self,
        piece: Piece,
        other: Piece,
        one: list[tuple[float, float]],
        two: list[tuple[float, float]],
        sign: float,
    ) -> bool:
        from shapely import Polygon, box, union_all

        shadow = []
        for (z1, r1), (z2, r2) in zip(one, [*one[1:], one[0]], strict=True):
            if abs(r1 - r2) > 1e-9:
                shadow.append(Polygon([(z1, r1), (z2, r2), (sign * FAR, r2), (sign * FAR, r1)]))
        struck = union_all(shadow).intersection(Polygon(two))
        thread = self.threads.get(frozenset((piece, other)))
        if thread:
            struck = struck.difference(box(-2 * FAR, 0.0, 2 * FAR, self._major(thread) / 2 + 0.05))
        lumps = [lump for lump in getattr(struck, "geoms", [struck]) if lump.area > 0]
        return any(2 * lump.area / lump.length > THIN for lump in lumps)

    def _major(self, name: str) -> float:
        part, _, land = name.partition(".")
        lands = getattr(self.design.part(part).shape, "outside", ())
        return max((max(one.start_dia, one.end_dia) for one in lands if one.name == land), default=0.0)

    def _clear_of(self, piece: Piece, other: Piece, along: Vector, sign: float) -> bool:
        """Whether the boxes round two pieces say already that the other is beside or behind."""
        one, two = self._points(piece, along), self._points(other, along)
        low, high = np.maximum(one.min(0), two.min(0)), np.minimum(one.max(0), two.max(0))
        if (high - low)[:2].min() < 2 * CELL:
            return True
        ahead = two[:, 2].max() - one[:, 2].min() if sign > 0 else one[:, 2].max() - two[:, 2].min()
        return bool(ahead <= THIN)

    def _points(self, piece: Piece, along: Vector) -> NDArray[np.float64]:
        """Corners of a piece's mesh, z along the direction [mm]."""
        key = (piece, along)
        if key not in self._turned:
            told = within(_seen_along(along), self.frames[piece])
            turn = np.array(told).reshape(3, 4)
            self._turned[key] = self._mesh(piece)[0] @ turn[:, :3].T + turn[:, 3]
        return self._turned[key]

    def _mesh(self, piece: Piece) -> tuple[NDArray[np.float64], NDArray[np.int64]]:
        """Corners and triangles of a part in its own frame; the same for all pieces of it."""
        name = piece[0]
        if name not in self._meshes:
            part = self.design.part(name)
            shape = part.standing
            assert shape is not None
            raw = own_body(shape, FACETS).to_mesh64()
            self._meshes[name] = (
                np.asarray(raw.vert_properties)[:, :3],
                np.asarray(raw.tri_verts, dtype=np.int64),
            )
        return self._meshes[name]

    def _relief(self, piece: Piece, along: Vector) -> Relief:
        key = (piece, along)
        if key not in self._reliefs:
            self._reliefs[key] = _relief_of(self._points(piece, along), self._mesh(piece)[1])
        return self._reliefs[key]


def _held_by(head: Link, links: Sequence[Link]) -> frozenset[Piece]:
    """The pieces that a screw clamps: the one under its head and the next that its hole lies on."""
    hole = head.pairs[0].words.rpartition(" in ")[2]
    found = [
        link.second
        for link in links
        if link.kind == "screw"
        and link.first == head.first
        and any(pair.words.partition(" on ")[0] == hole for pair in link.pairs)
    ]
    return frozenset((head.first, *found))


def _canonical(way: Vector) -> Vector:
    return way if way > (0.0, 0.0, 0.0) else (-way[0] + 0.0, -way[1] + 0.0, -way[2] + 0.0)


@lru_cache(maxsize=256)
def _seen_along(along: Vector) -> Frame:
    """What turns places so that z lies along a direction."""
    z = np.array(along) / np.linalg.norm(along)
    x = np.cross((0.0, 0.0, 1.0) if abs(z[2]) < 0.9 else (0.0, 1.0, 0.0), z)
    x /= np.linalg.norm(x)
    return back(frame(tuple(x), tuple(np.cross(z, x)), tuple(z)))


def _relief_of(points: NDArray[np.float64], triangles: NDArray[np.int64]) -> Relief:
    """Lowest and highest metal on each line of the grid; infinite where there is none."""
    plane = points[:, :2] / CELL - 0.137  # off the figures that designs are made of
    low = np.floor(plane.min(axis=0)).astype(int)
    size = np.ceil(plane.max(axis=0)).astype(int) - low + 1
    lowest = np.full(size[0] * size[1], np.inf)
    highest = np.full(size[0] * size[1], -np.inf)
    corners, heights = plane[triangles] - low, points[:, 2][triangles]
    (a, b), (c, d) = np.moveaxis(corners[:, 1:] - corners[:, :1], 0, -1)
    twice = a * d - b * c
    seen = np.abs(twice) > 1e-12
    corners, heights, twice = corners[seen], heights[seen], twice[seen]
    rise, rise_too = heights[:, 1] - heights[:, 0], heights[:, 2] - heights[:, 0]
    slope_x = (rise * d[seen] - rise_too * b[seen]) / twice
    slope_y = (rise_too * a[seen] - rise * c[seen]) / twice
    x = corners[:, :, 0]
    n, i = _counted(x.min(axis=1), x.max(axis=1))  # each triangle in each row of the grid that it crosses
    start, end = corners[n], corners[n][:, [1, 2, 0]]
    with np.errstate(divide="ignore", invalid="ignore"):
        share = (i[:, None] - start[:, :, 0]) / (end - start)[:, :, 0]
        cut = start[:, :, 1] + share * (end - start)[:, :, 1]
    crossed = (share >= 0) & (share <= 1)
    row, j = _counted(np.where(crossed, cut, np.inf).min(axis=1), np.where(crossed, cut, -np.inf).max(axis=1))
    n, i = n[row], i[row]
    height = heights[n, 0] + slope_x[n] * (i - corners[n, 0, 0]) + slope_y[n] * (j - corners[n, 0, 1])
    height = np.clip(height, heights.min(axis=1)[n], heights.max(axis=1)[n])
    place, up = i * size[1] + j, twice[n] > 0  # what looks up is never the lowest metal on a line
    np.minimum.at(lowest, place[~up], height[~up])
    np.maximum.at(highest, place[up], height[up])
    return int(low[0]), int(low[1]), lowest.reshape(size), highest.reshape(size)


def _counted(
    least: NDArray[np.float64], most: NDArray[np.float64]
) -> tuple[NDArray[np.int64], NDArray[np.int64]]:
    """Every whole number within each of some spans, and which span it lies in."""
    empty = ~(most >= least)
    first = np.ceil(np.where(empty, 1.0, least)).astype(np.int64)
    counts = np.maximum(np.floor(np.where(empty, 0.0, most)).astype(np.int64) + 1 - first, 0)
    which = np.repeat(np.arange(len(first)), counts)
    return which, first[which] + np.arange(len(which)) - np.repeat(np.cumsum(counts) - counts, counts)


def _over_grid(one: Relief, other: Relief, sign: float) -> bool:
    """Whether the second has metal ahead of the first on lines that lie side by side."""
    start = max(one[0], other[0]), max(one[1], other[1])
    end = (
        min(one[0] + one[2].shape[0], other[0] + other[2].shape[0]),
        min(one[1] + one[2].shape[1], other[1] + other[2].shape[1]),
    )
    if end[0] - start[0] < 3 or end[1] - start[1] < 3:
        return False

    def window(relief: Relief, which: int) -> NDArray[np.float64]:
        field: NDArray[np.float64] = relief[2 + which]  # type: ignore[assignment]
        return field[start[0] - relief[0] : end[0] - relief[0], start[1] - relief[1] : end[1] - relief[1]]

    if sign > 0:
        struck = window(other, 1) > window(one, 0) + THIN
    else:
        struck = window(other, 0) < window(one, 1) - THIN
    struck &= np.isfinite(window(one, 0)) & np.isfinite(window(other, 0))
    middle = struck[1:-1, 1:-1]
    ringed = middle & struck[:-2, 1:-1] & struck[2:, 1:-1] & struck[1:-1, :-2] & struck[1:-1, 2:]
    return bool(ringed.any())
