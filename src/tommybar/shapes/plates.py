"""Plates and blocks: their faces, how deep holes go in them, and the area of their outline."""

from __future__ import annotations

from dataclasses import dataclass

from tommybar.facts.threads import tap_depths, thread
from tommybar.refusals import Refusal
from tommybar.shapes.features import PlateFace, PlateHole, PlateShape
from tommybar.shapes.outlines import area_moments, plate_loop


@dataclass(frozen=True)
class FaceSize:
    """A face as it is seen from outside: its width, its height, and how deep the plate is behind it [mm]."""

    width: float
    height: float
    depth: float


def face_size(shape: PlateShape, face: PlateFace) -> FaceSize:
    """Width, height and depth of one face of a plate [mm]."""
    x, y, z = shape.length.value, shape.width.value, shape.thickness.value
    return {
        "top": FaceSize(x, y, z),
        "bottom": FaceSize(x, y, z),
        "front": FaceSize(x, z, y),
        "back": FaceSize(x, z, y),
        "left": FaceSize(y, z, x),
        "right": FaceSize(y, z, x),
    }[face]


def drilled_depth(hole: PlateHole, shape: PlateShape) -> float:
    """How deep the full diameter of a hole goes [mm]: through, or to its depth with the tap's lead."""
    deep = face_size(shape, hole.face).depth
    if hole.depth is None:
        return deep
    full = tap_depths(thread(hole.thread), hole.depth).full_diameter_depth if hole.thread else hole.depth
    if not 0 < hole.depth < deep:
        raise Refusal(
            f"{hole.name} is {hole.depth:g} mm deep; the plate is {deep:g} mm there, "
            "and a blind hole must stay inside.",
            "Say that it runs through, or make it shallower.",
        )
    return min(full, deep)


def outline_area(shape: PlateShape) -> float:
    """Area of a plate's outline in plan [mm2].

    Examples
    --------
    >>> from tommybar.shapes.features import Dim
    >>> outline_area(PlateShape(Dim(30.0), Dim(20.0), Dim(5.0)))
    600.0
    """
    return area_moments(plate_loop(shape)).area
