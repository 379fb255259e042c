"""The exact shape that a convex polygon sweeps along a straight move."""

from __future__ import annotations

import numpy as np
import numpy.typing as npt
import shapely

Corners = npt.NDArray[np.float64]  # shape (n, 2), counter-clockwise, (z, r) [mm]
Pieces = tuple[tuple[Corners, ...], tuple[Corners, ...], tuple[Corners, ...]]  # what cuts, body, holder


def sweeps(piece: Corners, starts: Corners, ends: Corners) -> npt.NDArray[np.object_]:
    """Swept polygons of one convex piece for many moves at once.

    The sum of a convex polygon and a straight line: from the corner that lies
    farthest to the right of the move to the one farthest to its left the
    corners stand at the end of the move, the others at its start, and both of
    those corners stand at both places. Always n + 2 corners, no hull needed.

    Parameters
    ----------
    piece : array
        Corners relative to the reference point, counter-clockwise, shape (n, 2) [mm]
    starts, ends : array
        Reference points before and after each move, shape (m, 2) [mm]

    Returns
    -------
    array of shapely.Polygon
        One for each move; a move of no length gives the piece itself
    """
    count, corners = len(starts), len(piece)
    way = ends - starts
    side = way[:, :1] * piece[:, 1] - way[:, 1:] * piece[:, 0]  # (m, n): how far left of the move
    right = np.argmin(side, axis=1)
    left = np.argmax(side, axis=1)
    steps = np.arange(corners + 2)
    ahead = (left - right) % corners + 1  # corners that stand at the end of the move
    at_end = steps[None, :] < ahead[:, None]
    index = np.where(at_end, right[:, None] + steps, right[:, None] + steps - 1) % corners
    placed = piece[index] + np.where(at_end[:, :, None], ends[:, None, :], starts[:, None, :])
    still = np.all(way == 0, axis=1)
    if still.any():
        around = np.concatenate([piece, piece[:1], piece[:1]])
        placed[still] = around[None] + starts[still][:, None, :]
    return np.asarray(shapely.polygons(placed.reshape(count, corners + 2, 2)))


def counter_clockwise(corners: list[tuple[float, float]]) -> Corners:
    """Corners as an array, turned round if they run clockwise."""
    ring = np.asarray(corners, dtype=float)
    z, r = ring[:, 0], ring[:, 1]
    area = float(np.dot(z, np.roll(r, -1)) - np.dot(np.roll(z, -1), r))
    return ring if area > 0 else ring[::-1].copy()
