"""Between half-sections and volumes: exact for straight sides."""

from __future__ import annotations

from shapely import Polygon
from shapely.affinity import scale
from shapely.geometry.base import BaseGeometry

from tommybar.dryrun.runs import Ring
from tommybar.shapes.moments import ring_of_revolution

THIN = 1e-3  # what is thinner than this is no metal: twice area over perimeter [mm]


def pieces(shape: BaseGeometry) -> list[Polygon]:
    """The polygons of any overlay result, largest first; points and lines are dropped."""
    parts = [
        part for part in getattr(shape, "geoms", [shape]) if part.geom_type == "Polygon" and part.area > 0
    ]
    return sorted(parts, key=lambda part: -part.area)


def thickness(piece: Polygon) -> float:
    """Mean thickness of a piece: twice its area over its perimeter [mm]."""
    return 2 * piece.area / piece.length if piece.length else 0.0


def without_slivers(shape: BaseGeometry) -> list[Polygon]:
    """The pieces that are thicker than a sliver."""
    return [piece for piece in pieces(shape) if thickness(piece) >= THIN]


def turned_volume(shape: BaseGeometry) -> float:
    """Volume that a half-section sweeps about the axis [mm3]."""
    total = 0.0
    for piece in pieces(shape):
        total += _ring_volume(piece.exterior.coords[:-1])
        total -= sum(_ring_volume(hole.coords[:-1]) for hole in piece.interiors)
    return total


def _ring_volume(corners: list[tuple[float, ...]]) -> float:
    return ring_of_revolution([(z, r) for z, r in corners]).volume


def rings(shape: BaseGeometry) -> tuple[Ring, ...]:
    """Exterior rings as plain data, slivers left out."""
    return tuple(
        tuple((float(z), float(r)) for z, r in piece.exterior.coords) for piece in without_slivers(shape)
    )


def across_axis(shape: BaseGeometry) -> BaseGeometry:
    """The other half of a section, below the axis."""
    return scale(shape, 1.0, -1.0, origin=(0.0, 0.0))
