"""Where things drawn on a face of a plate lie in the plate's frame, and the bodies that prisms on a face make.

On a face: u and v from its lower left corner seen from outside, w into the
plate. In the plate: x along the length, y along the width, z the depth below
the top face [mm].
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from tommybar.shapes.features import PlateFace, PlateShape
from tommybar.shapes.outlines import Arc, Line, Loop, Piece
from tommybar.shapes.plate_cuts import Cut, Lying, Upright

Vector = tuple[float, float, float]


@dataclass(frozen=True)
class FaceFrame:
    """A face's lower left corner and its u, v, w directions, in the plate's frame."""

    origin: Vector
    u: Vector
    v: Vector
    w: Vector

    def point(self, u: float, v: float, w: float = 0.0) -> Vector:
        """A point of the face in the plate's frame [mm]."""
        x, y, z = (
            o + u * a + v * b + w * c for o, a, b, c in zip(self.origin, self.u, self.v, self.w, strict=True)
        )
        return x, y, z

    def direction(self, u: float, v: float, w: float) -> Vector:
        """A direction of the face in the plate's frame."""
        x, y, z = (u * a + v * b + w * c for a, b, c in zip(self.u, self.v, self.w, strict=True))
        return x, y, z


def face_frame(shape: PlateShape, face: PlateFace) -> FaceFrame:
    """The frame of one face of a plate.

    Examples
    --------
    >>> from tommybar.shapes.features import Dim
    >>> face_frame(PlateShape(Dim(30.0), Dim(20.0), Dim(5.0)), "back").point(1.0, 2.0, 3.0)
    (29.0, 17.0, 3.0)
    """
    x, y, z = shape.length.value, shape.width.value, shape.thickness.value
    return {
        "top": FaceFrame((0, 0, 0), (1, 0, 0), (0, 1, 0), (0, 0, 1)),
        "bottom": FaceFrame((x, 0, z), (-1, 0, 0), (0, 1, 0), (0, 0, -1)),
        "front": FaceFrame((0, 0, z), (1, 0, 0), (0, 0, -1), (0, 1, 0)),
        "back": FaceFrame((x, y, z), (-1, 0, 0), (0, 0, -1), (0, -1, 0)),
        "left": FaceFrame((0, y, z), (0, -1, 0), (0, 0, -1), (1, 0, 0)),
        "right": FaceFrame((x, 0, z), (0, 1, 0), (0, 0, -1), (-1, 0, 0)),
    }[face]


def sunk_prism(shape: PlateShape, face: PlateFace, loop: Loop, start: float, end: float) -> Cut:
    """What a loop on a face takes away between two depths below that face."""
    at = face_frame(shape, face)
    if face in ("top", "bottom"):
        low, high = sorted((at.point(0, 0, start)[2], at.point(0, 0, end)[2]))
        return Upright(_flipped(loop, at.origin[0], at.u[0], 0.0, 1.0), low, high)
    if face in ("front", "back"):
        low, high = sorted((at.point(0, 0, start)[1], at.point(0, 0, end)[1]))
        return Lying("y", _flipped(loop, at.origin[0], at.u[0], at.origin[2], -1.0), low, high)
    low, high = sorted((at.point(0, 0, start)[0], at.point(0, 0, end)[0]))
    return Lying("x", _flipped(loop, at.origin[1], at.u[1], at.origin[2], -1.0), low, high)


def run_across(shape: PlateShape, face: PlateFace, along: str, section: list[tuple[float, float]]) -> Cut:
    """What a section (across, depth) takes away right along a face, along its x or its y."""
    at = face_frame(shape, face)
    spots = [at.point(0.0, s, w) if along == "x" else at.point(s, 0.0, w) for s, w in section]
    run = at.u if along == "x" else at.v
    if run[0]:
        return Lying("x", _polygon([(y, z) for _, y, z in spots]), 0.0, shape.length.value)
    if run[1]:
        return Lying("y", _polygon([(x, z) for x, _, z in spots]), 0.0, shape.width.value)
    return Upright(_polygon([(x, y) for x, y, _ in spots]), 0.0, shape.thickness.value)


def _polygon(corners: list[tuple[float, float]]) -> Loop:
    return tuple(Line(*a, *b) for a, b in zip(corners, [*corners[1:], corners[0]], strict=True))


def _flipped(loop: Loop, x: float, right: float, y: float, up: float) -> Loop:
    """A loop with its axes begun at (x, y) and turned about where ``right`` or ``up`` is -1."""

    def one_of(one: Piece) -> Piece:
        if isinstance(one, Line):
            return Line(x + right * one.x1, y + up * one.y1, x + right * one.x2, y + up * one.y2)
        start, turn = one.start, one.turn
        if right < 0:
            start, turn = math.pi - start, -turn
        if up < 0:
            start, turn = -start, -turn
        return Arc(x + right * one.x, y + up * one.y, one.radius, start, turn)

    return tuple(one_of(one) for one in loop)
