"""From where a part is looked at: the frame of each view, and the body of a part brought into it."""

from __future__ import annotations

import math
from functools import lru_cache
from typing import Any, Literal

from tommybar.pack.projected.edges import SHARP
from tommybar.shapes.bought import BoughtShape
from tommybar.shapes.features import Shape, SpringShape, TurnedShape
from tommybar.shapes.mesh import Mesh, as_mesh, body_of
from tommybar.shapes.solids.construction import construction
from tommybar.shapes.solids.frames import HERE, Frame, back, frame, within

Looked = Literal["top", "bottom", "front", "back", "left", "right", "isometric"]
Corner = tuple[int, int, int]  # each 1 or -1: to the right, to the back, up
_R2, _R3, _R6 = math.sqrt(2), math.sqrt(3), math.sqrt(6)

# axes of the view in the part's frame: to the right, up, and towards the eye
AXES: dict[Looked, Frame] = {
    "top": HERE,
    "bottom": frame((-1, 0, 0), (0, 1, 0), (0, 0, -1)),
    "front": frame((1, 0, 0), (0, 0, 1), (0, -1, 0)),
    "back": frame((-1, 0, 0), (0, 0, 1), (0, 1, 0)),
    "left": frame((0, -1, 0), (0, 0, 1), (-1, 0, 0)),
    "right": frame((0, 1, 0), (0, 0, 1), (1, 0, 0)),
    "isometric": frame(
        (1 / _R2, 1 / _R2, 0), (-1 / _R6, 1 / _R6, 2 / _R6), (1 / _R3, -1 / _R3, 1 / _R3)
    ),
}  # fmt: skip
LYING = frame((0, 1, 0), (0, 0, 1), (1, 0, 0))  # a turned part with its axis along x, face A at the left


def looked_at(looked: Looked, lying: bool = False) -> Frame:
    """The frame that carries a part into a view: u to the right, v up, w towards the eye."""
    turned = back(AXES[looked])
    return within(turned, LYING) if lying else turned


def seen_from_corner(eye: Corner, lying: bool = False) -> Frame:
    """The frame of an isometric view from one corner of a cube; (1, -1, 1) is that of "isometric"."""
    x, y, z = eye
    towards = (x / _R3, y / _R3, z / _R3)
    up = (-x * z / _R6, -y * z / _R6, 2 / _R6)
    right = (
        up[1] * towards[2] - up[2] * towards[1],
        up[2] * towards[0] - up[0] * towards[2],
        up[0] * towards[1] - up[1] * towards[0],
    )
    turned = back(frame(right, up, towards))
    return within(turned, LYING) if lying else turned


def lies(shape: Shape | BoughtShape) -> bool:
    """Whether a shape is drawn lying down, its axis to the right."""
    return isinstance(shape, TurnedShape | SpringShape | BoughtShape)


def body_in(body: Any, at: Frame) -> Any:
    """A body of the mesh kernel carried into a frame."""
    import numpy as np

    return body.transform(np.array(at, dtype=np.float64).reshape(3, 4))


@lru_cache(maxsize=32)
def body(shape: Shape | BoughtShape, facets: int = 96) -> Any:
    """A shape as a body of the mesh kernel, its circles in chords with their ends on the circle."""
    return body_of(construction(shape), facets, False)


def mesh_in(solid: Any, at: Frame) -> Mesh:
    """The mesh of a body as it stands in a view."""
    return as_mesh(body_in(solid, at))


def coil_sharp(shape: Shape | BoughtShape) -> float:
    """From which angle on edges of a mesh are drawn: the tube of a coil is coarse and has none [deg]."""
    return 40.0 if isinstance(shape, SpringShape) else SHARP
