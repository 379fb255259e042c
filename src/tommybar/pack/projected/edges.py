"""The edges of a mesh that a drawing shows: sharp ones, and the outline of round faces."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from tommybar.shapes.mesh import Mesh

if TYPE_CHECKING:
    from numpy.typing import NDArray

SHARP = 21.0  # two faces that turn by more than this meet in an edge that is drawn [deg]
FLAT = 0.5  # and by less than this they are one face [deg]
LEVEL = 1e-6  # a face this near to edge-on counts as turned away [-]


@dataclass(frozen=True)
class Faces:
    """The triangles of a mesh in the frame of a view: corners ``(m, 3, 3)`` [mm], normals ``(m, 3)`` [-]."""

    corners: NDArray[np.float64]
    normals: NDArray[np.float64]


def faces_of(mesh: Mesh) -> Faces:
    """Corners and unit normals of all triangles; of one without an area the normal is nought."""
    corners = mesh.points[mesh.triangles]
    across = np.cross(corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0])
    long = np.linalg.norm(across, axis=1)
    return Faces(corners, across / np.where(long > 1e-12, long, 1.0)[:, None])


def drawn_edges(mesh: Mesh, faces: Faces, sharp: float = SHARP) -> NDArray[np.float64]:
    """Edges that a view along z shows, as ends of shape ``(n, 2, 3)`` [mm], hidden ones among them."""
    sides = np.concatenate([mesh.triangles[:, [0, 1]], mesh.triangles[:, [1, 2]], mesh.triangles[:, [2, 0]]])
    owner = np.tile(np.arange(len(mesh.triangles)), 3)
    ends = np.sort(sides, axis=1)
    order = np.lexsort((ends[:, 1], ends[:, 0]))
    ends, owner = ends[order], owner[order]
    pairs = np.flatnonzero((ends[:-1] == ends[1:]).all(axis=1))
    ends, first, second = ends[pairs], faces.normals[owner[pairs]], faces.normals[owner[pairs + 1]]
    turn = np.degrees(np.arccos(np.clip((first * second).sum(axis=1), -1.0, 1.0)))
    outline = ((first[:, 2] > LEVEL) != (second[:, 2] > LEVEL)) & (turn > FLAT)
    whole = np.linalg.norm(first, axis=1) * np.linalg.norm(second, axis=1) > 0.5
    drawn: NDArray[np.float64] = mesh.points[ends[((turn > sharp) | outline) & whole]]
    return drawn
