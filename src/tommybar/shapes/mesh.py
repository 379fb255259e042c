"""Parts as meshes of triangles: for the view in three dimensions, for GLB files, and for what touches what.

A turned part has its axis along z and face A at z = 0; a plate has x along
its length, y along its width and z up from its bottom face [mm].
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import lru_cache
from typing import TYPE_CHECKING, Any

import numpy as np

from tommybar.refusals import OwnFault, Refusal
from tommybar.shapes.bought import BoughtShape
from tommybar.shapes.features import Shape
from tommybar.shapes.solids.construction import construction
from tommybar.shapes.solids.frames import Frame
from tommybar.shapes.solids.nodes import Coil, Common, Join, Less, Node, Placed, Prism, Turn
from tommybar.shapes.solids.rings import Ring, chorded

if TYPE_CHECKING:
    from numpy.typing import NDArray

FACETS = 96  # sides to a whole turn


@dataclass(frozen=True)
class Mesh:
    """Closed surface of a solid, its triangles counter-clockwise seen from outside.

    ``points`` has shape ``(n, 3)`` [mm], ``triangles`` shape ``(m, 3)``: the
    numbers of three points each.
    """

    points: NDArray[np.float64]
    triangles: NDArray[np.int64]

    @property
    def volume(self) -> float:
        """Volume within the triangles [mm3]."""
        a, b, c = (self.points[self.triangles[:, n]] for n in range(3))
        return float(np.einsum("ij,ij->i", a, np.cross(b, c)).sum() / 6)


@lru_cache(maxsize=64)
def mesh_of(shape: Shape | BoughtShape, facets: int = FACETS, keep_volume: bool = True) -> Mesh:
    """A part as a mesh with all its features cut.

    Parameters
    ----------
    shape : Shape or BoughtShape
        The part's features with their figures [mm]
    facets : int, optional
        Sides to a whole turn, at least 8
    keep_volume : bool, optional
        Whether corners stand a little outside their circle, so that the
        polygon has the circle's area; False puts them on the circle, which is
        what a test for contact wants

    Returns
    -------
    Mesh
        Closed surface [mm]

    Raises
    ------
    Refusal
        If there are too few facets, or nothing is left of the part.

    Examples
    --------
    A disc 50 in diameter and 10 thick has 19 634.954 mm3.

    >>> from tommybar.shapes.features import Cylinder, Dim, TurnedShape
    >>> disc = TurnedShape(Dim(10.0), (Cylinder("rim", Dim(50.0), 0.0, 10.0),))
    >>> round(mesh_of(disc).volume, 3)
    19634.954
    """
    if facets < 8:
        raise Refusal(f"The mesh has {facets} facets to a turn; it must have at least 8.")
    return as_mesh(body_of(construction(shape), facets, keep_volume))


def as_mesh(body: Any) -> Mesh:
    """The triangles of a body of the mesh kernel, in an order that is always the same."""
    raw = body.to_mesh64()
    points = np.asarray(raw.vert_properties, dtype=np.float64)[:, :3] + 0.0  # no minus nought
    triangles = np.asarray(raw.tri_verts, dtype=np.int64)
    if len(triangles) == 0:
        raise Refusal("Nothing is left of the part; it must be a body of metal.")
    order = np.lexsort((points[:, 2], points[:, 1], points[:, 0]))
    place = np.empty_like(order)
    place[order] = np.arange(len(order))
    triangles = place[triangles]
    first = np.argmin(triangles, axis=1)
    triangles = np.stack([triangles[np.arange(len(first)), (first + n) % 3] for n in range(3)], axis=1)
    triangles = triangles[np.lexsort((triangles[:, 2], triangles[:, 1], triangles[:, 0]))]
    return Mesh(points[order], triangles)


def body_of(node: Node, facets: int, keep_volume: bool) -> Any:
    """A construction as a body of the mesh kernel."""
    from manifold3d import Manifold, OpType

    def made(one: Node) -> Any:
        return body_of(one, facets, keep_volume)

    if isinstance(node, Less):
        return _good(Manifold.batch_boolean([made(one) for one in (node.body, *node.cuts)], OpType.Subtract))
    if isinstance(node, Join):
        return _good(Manifold.batch_boolean([made(one) for one in node.members], OpType.Add))
    if isinstance(node, Common):
        return _good(made(node.first) ^ made(node.second))
    if isinstance(node, Placed):
        return _placed(made(node.body), node.at)
    if isinstance(node, Turn):
        return _placed(_turned(node, facets, keep_volume), node.at)
    if isinstance(node, Prism):
        return _placed(_drawn_out(node, facets, keep_volume), node.at)
    return _placed(_coiled(node, facets, keep_volume), node.at)


def _placed(body: Any, at: Frame) -> Any:
    return body.transform(np.array(at, dtype=np.float64).reshape(3, 4))


def _good(body: Any) -> Any:
    """The body, or a fault of ours when the mesh kernel could not make it."""
    from manifold3d import Error

    if body.status() != Error.NoError:
        raise OwnFault(f"The mesh kernel says {body.status().name} of a body.")
    return body


def _section(ring: Ring, facets: int, keep_volume: bool) -> Any:
    from manifold3d import CrossSection, FillRule

    return CrossSection([np.array(chorded(ring, facets, keep_volume))], FillRule.NonZero)


def _turned(node: Turn, facets: int, keep_volume: bool) -> Any:
    """A body of revolution: every ring of facets has the area of its circle when the volume is kept."""
    sides = max(3, math.ceil(facets * node.angle / 360 - 1e-9))
    step = math.radians(node.angle) / sides
    out = math.sqrt(step / math.sin(step)) if keep_volume else 1.0
    section = _section(node.ring, facets, keep_volume).scale((out, 1.0))
    return _good(section.revolve(sides, node.angle))


def _drawn_out(node: Prism, facets: int, keep_volume: bool) -> Any:
    return _good(_section(node.ring, facets, keep_volume).extrude(node.height))


def _coiled(node: Coil, facets: int, keep_volume: bool) -> Any:
    """A tube of round section along a helix, as a closed mesh."""
    from manifold3d import Manifold, Mesh64

    sides = 2 * max(6, facets // 8)
    places = node.path(facets)
    points, along, out = (np.array([place[n] for place in places]) for n in range(3))
    turn = math.tau / facets
    points += node.radius * (turn / math.sin(turn) - 1 if keep_volume else 0.0) * out
    binormals = np.cross(along, out)
    around = np.arange(sides) * math.tau / sides
    step = math.tau / sides
    radius = node.wire / 2 * (math.sqrt(step / math.sin(step)) if keep_volume else 1.0)
    circle = radius * np.stack([np.cos(around), np.sin(around)], axis=1)
    rings = (
        points[:, None, :] + circle[None, :, :1] * out[:, None, :] + circle[None, :, 1:] * binormals[:, None]
    )
    count = len(points)
    vertices = np.concatenate([rings.reshape(-1, 3), points[:1], points[-1:]])
    faces: list[tuple[int, int, int]] = []
    for n in range(count - 1):
        for k in range(sides):
            a, b = n * sides + k, n * sides + (k + 1) % sides
            if (n + k) % 2:  # the other diagonal on every second field: what one adds the next takes away
                faces += [(a, b, a + sides), (b, b + sides, a + sides)]
            else:
                faces += [(a, b, b + sides), (a, b + sides, a + sides)]
    for k in range(sides):
        near, far = (k, (k + 1) % sides), ((count - 1) * sides + k, (count - 1) * sides + (k + 1) % sides)
        faces += [(count * sides, near[1], near[0]), (count * sides + 1, far[0], far[1])]
    return _good(Manifold(Mesh64(vertices, np.array(faces, dtype=np.uint64))))
