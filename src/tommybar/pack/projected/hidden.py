"""Hidden lines taken out of a view: each edge in stretches that are seen and stretches behind metal.

Own method on the mesh of a part: a place of an edge is hidden when metal lies
nearer to the eye on both sides of it. Round faces are as fine as the mesh.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from tommybar.pack.projected.edges import SHARP, Faces, drawn_edges, faces_of
from tommybar.shapes.mesh import Mesh

if TYPE_CHECKING:
    from numpy.typing import NDArray

    Points = NDArray[np.float64]

ASIDE = 0.004  # how far beside an edge it is asked whether metal hides it [mm]
BEHIND = 0.02  # metal must be nearer than an edge by this much to hide it [mm]
HALVINGS = 7  # of a stretch in which an edge goes behind metal


@dataclass(frozen=True)
class Seen:
    """Stretches of a view in its own plane, as ends ``(n, 2, 2)`` [mm], u to the right and v up."""

    visible: Points
    hidden: Points


def seen(mesh: Mesh, step: float = 0.5, sharp: float = SHARP) -> Seen:
    """What is seen of a mesh from the end of its z axis, and what is hidden.

    ``step`` is how far apart places on an edge are asked about [mm]; faces
    that turn by more than ``sharp`` [deg] meet in an edge that is drawn.
    """
    faces = faces_of(mesh)
    edges = drawn_edges(mesh, faces, sharp)
    flat = np.linalg.norm(edges[:, 1, :2] - edges[:, 0, :2], axis=1)
    edges, flat = edges[flat > 1e-4], flat[flat > 1e-4]
    if len(edges) == 0:
        return Seen(np.zeros((0, 2, 2)), np.zeros((0, 2, 2)))
    behind = Behind(faces)
    counts = np.clip(np.ceil(flat / step).astype(int), 1, 60)
    edge = np.repeat(np.arange(len(edges)), counts)
    number = np.concatenate([np.arange(n) for n in counts])
    middle = (number + 0.5) / counts[edge]
    hides = behind(edges, edge, middle)
    changes = np.flatnonzero((edge[1:] == edge[:-1]) & (hides[1:] != hides[:-1]))
    low, high = middle[changes], middle[changes + 1]
    for _ in range(HALVINGS):
        if len(changes) == 0:
            break
        half = (low + high) / 2
        same = behind(edges, edge[changes], half) == hides[changes]
        low, high = np.where(same, half, low), np.where(same, high, half)
    stretches: list[tuple[int, float, float, bool]] = []
    cut = dict(zip(changes.tolist(), ((low + high) / 2).tolist(), strict=True))
    start, last = 0.0, -1
    for n, (one, hid) in enumerate(zip(edge.tolist(), hides.tolist(), strict=True)):
        if one != last:
            start, last = 0.0, one
        if n in cut:
            stretches.append((one, start, cut[n], hid))
            start = cut[n]
        elif n + 1 == len(edge) or edge[n + 1] != one:
            stretches.append((one, start, 1.0, hid))
    which = np.array([one[0] for one in stretches])
    shares = np.array([[one[1], one[2]] for one in stretches])
    a, b = edges[which, 0, :2], edges[which, 1, :2]
    ends = a[:, None, :] + shares[:, :, None] * (b - a)[:, None, :]
    hid = np.array([one[3] for one in stretches])
    return Seen(ends[~hid], ends[hid])


class Behind:
    """Asks whether places on edges lie behind metal."""

    def __init__(self, faces: Faces) -> None:
        import shapely

        front = faces.normals[:, 2] > 1e-4
        self.corners = faces.corners[front]
        self.normals = faces.normals[front]
        self.tree = shapely.STRtree(shapely.polygons(self.corners[:, [0, 1, 2, 0], :2]))

    def __call__(self, edges: Points, which: NDArray[np.int64], share: Points) -> NDArray[np.bool_]:
        """For each place, whether metal is nearer to the eye on both sides of it."""
        a, b = edges[which, 0], edges[which, 1]
        places = a + share[:, None] * (b - a)
        run = (b - a)[:, :2]
        aside = np.stack([-run[:, 1], run[:, 0]], axis=1)
        aside *= (ASIDE / np.linalg.norm(run, axis=1))[:, None]
        found = np.ones(len(places), dtype=bool)
        for side in (1.0, -1.0):
            found &= self.covered(places[:, :2] + side * aside, places[:, 2])
        return found

    def covered(self, spots: Points, depths: Points) -> NDArray[np.bool_]:
        """For each spot of the view, whether metal stands nearer to the eye than its depth."""
        import shapely

        found = np.zeros(len(spots), dtype=bool)
        spot, face = self.tree.query(shapely.points(spots), predicate="intersects")
        normal, corner = self.normals[face], self.corners[face, 0]
        fall = ((spots[spot] - corner[:, :2]) * normal[:, :2]).sum(axis=1) / normal[:, 2]
        found[spot[corner[:, 2] - fall > depths[spot] + BEHIND]] = True
        return found
