"""Which piece stands in the way of which when it is drawn out along a straight line.

A point of a piece strikes another piece that has metal ahead of it on the same
line. Two pieces turned about one line along the direction are compared by
their half-sections, exactly; any others by how high they stand over a grid of
lines, so that shoulders lower than about three of its cells are not seen.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import TYPE_CHECKING, Any

import numpy as np

from tommybar.assembly.bodies import own_body
from tommybar.assembly.links import Link, Piece
from tommybar.assembly.placing import Placement
from tommybar.design.model import SizedDesign
from tommybar.shapes.features import TurnedShape
from tommybar.shapes.profile import profile
from tommybar.shapes.solids.frames import Frame, Vector, back, frame, within

if TYPE_CHECKING:
    from numpy.typing import NDArray

FACETS = 48
CELL = 0.25  # of the grid of lines [mm]
THIN = 0.02  # what fits, press joints and chords may share [mm]
FAR = 1e5  # [mm]
WIDE = 400  # lines of the grid in the box of a triangle from which on it is looked at by itself
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
        heads = [link for link in links if link.kind == "screw head"]
        self.screws = {head.second for head in heads}
        for head in heads:  # a screw is turned out of whatever it is screwed into
            for link in links:
                if link.kind == "screw" and head.first in (link.first, link.second):
                    self.threads[frozenset((link.second, head.second))] = ""
        self._meshes: dict[str, tuple[NDArray[np.float64], NDArray[np.int64]]] = {}
        self._turned: dict[tuple[Piece, Vector], NDArray[np.float64]] = {}
        self._reliefs: dict[tuple[Piece, Vector], Relief] = {}
        self._answers: dict[tuple[Piece, Piece, Vector], bool] = {}

    def blocks(self, other: Piece, piece: Piece, way: Vector) -> bool:
        """Whether ``other`` stands in the way of ``piece`` drawn out along ``way``."""
        key = (other, piece, way)
        if key not in self._answers:
            self._answers[key] = self._blocks(other, piece, way)
        return self._answers[key]

    def _blocks(self, other: Piece, piece: Piece, way: Vector) -> bool:
        along = _canonical(way)
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
        shape = self.design.part(piece[0]).shape
        if not isinstance(shape, TurnedShape):
            return None
        told = within(back(_looking(along)), self.frames[piece])
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
            told = within(back(_looking(along)), self.frames[piece])
            turn = np.array(told).reshape(3, 4)
            self._turned[key] = self._mesh(piece)[0] @ turn[:, :3].T + turn[:, 3]
        return self._turned[key]

    def _mesh(self, piece: Piece) -> tuple[NDArray[np.float64], NDArray[np.int64]]:
        """Corners and triangles of a part in its own frame; the same for all pieces of it."""
        name = piece[0]
        if name not in self._meshes:
            part = self.design.part(name)
            shape = part.shape or part.envelope
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


def _canonical(way: Vector) -> Vector:
    return way if way > (0.0, 0.0, 0.0) else (-way[0] + 0.0, -way[1] + 0.0, -way[2] + 0.0)


def _looking(along: Vector) -> Frame:
    """A frame whose z is a direction."""
    z = np.array(along) / np.linalg.norm(along)
    x = np.cross((0.0, 0.0, 1.0) if abs(z[2]) < 0.9 else (0.0, 1.0, 0.0), z)
    x /= np.linalg.norm(x)
    return frame(tuple(x), tuple(np.cross(z, x)), tuple(z))


def _relief_of(points: NDArray[np.float64], triangles: NDArray[np.int64]) -> Relief:
    """Lowest and highest metal on each line of the grid; infinite where there is none."""
    plane = points[:, :2] / CELL - 0.137  # off the figures that designs are made of
    low = np.floor(plane.min(axis=0)).astype(int)
    size = np.ceil(plane.max(axis=0)).astype(int) - low + 1
    lowest = np.full(tuple(size), np.inf)
    highest = np.full(tuple(size), -np.inf)
    corners, heights = plane[triangles] - low, points[:, 2][triangles]
    edges = corners[:, 1:] - corners[:, :1]
    twice = edges[:, 0, 0] * edges[:, 1, 1] - edges[:, 0, 1] * edges[:, 1, 0]
    start = np.maximum(np.ceil(corners.min(axis=1)), 0).astype(np.int64)
    room = np.floor(corners.max(axis=1)).astype(np.int64) + 1 - start
    seen = np.flatnonzero((np.abs(twice) > 1e-12) & (room > 0).all(axis=1))
    wide = room[seen].prod(axis=1) > WIDE
    for n in seen[wide]:  # each over its own piece of the grid
        here = np.s_[start[n, 0] : start[n, 0] + room[n, 0], start[n, 1] : start[n, 1] + room[n, 1]]
        u = np.arange(room[n, 0])[:, None] + (start[n, 0] - corners[n, 0, 0])
        v = np.arange(room[n, 1])[None, :] + (start[n, 1] - corners[n, 0, 1])
        (a, b), (c, d) = edges[n]
        s, t = (u * d - v * c) / twice[n], (v * a - u * b) / twice[n]
        inside = (s >= 0) & (t >= 0) & (s + t <= 1)
        height = heights[n, 0] + s * (heights[n, 1] - heights[n, 0]) + t * (heights[n, 2] - heights[n, 0])
        lowest[here] = np.where(inside, np.minimum(lowest[here], height), lowest[here])
        highest[here] = np.where(inside, np.maximum(highest[here], height), highest[here])
    small = seen[~wide]
    counts = room[small].prod(axis=1)
    n = np.repeat(small, counts)  # each line of the grid in the box of each small triangle, all in one go
    place = np.arange(counts.sum()) - np.repeat(np.cumsum(counts) - counts, counts)
    i, j = start[n, 0] + place // room[n, 1], start[n, 1] + place % room[n, 1]
    u, v = i - corners[n, 0, 0], j - corners[n, 0, 1]
    a, b, c, d = edges[n, 0, 0], edges[n, 0, 1], edges[n, 1, 0], edges[n, 1, 1]
    s, t = (u * d - v * c) / twice[n], (v * a - u * b) / twice[n]
    inside = (s >= 0) & (t >= 0) & (s + t <= 1)
    n, s, t, at = n[inside], s[inside], t[inside], (i[inside], j[inside])
    height = heights[n, 0] + s * (heights[n, 1] - heights[n, 0]) + t * (heights[n, 2] - heights[n, 0])
    np.minimum.at(lowest, at, height)
    np.maximum.at(highest, at, height)
    return int(low[0]), int(low[1]), lowest, highest


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
