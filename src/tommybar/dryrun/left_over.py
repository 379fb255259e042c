"""What stands over the finished part at the end, and what is missing from it.

Thin skins that lie within the tolerance of the dry run are nothing. A piece in
an inside corner that is no larger than the nose radius of the tools is a
corner radius; a piece at an edge that is broken by hand is an edge. Anything
else is forgotten metal.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Literal

from shapely import Point, Polygon
from shapely.geometry.base import BaseGeometry

from tommybar.dryrun.volumes import pieces, thickness, turned_volume
from tommybar.making.jobs import mouth_level
from tommybar.shapes.features import Cylinder, TurnedShape

NOISE = 1e-6  # rounding of coordinates: what is no thicker hangs on a piece as a spike [mm]
SKIN = 0.012  # mean thickness up to which a skin counts as nothing [mm]
Kind = Literal["corner radius", "edge", "forgotten", "missing"]


@dataclass(frozen=True)
class Piece:
    """A piece of metal that stands or is missing where it should not."""

    kind: Kind
    volume: float  # [mm3]
    thick: float  # mean thickness [mm]
    z: tuple[float, float]  # from, to [mm from face A]
    r: tuple[float, float]


def left_standing(
    work: BaseGeometry, most: Polygon, shape: TurnedShape, nose: float, by_hand: bool
) -> tuple[Piece, ...]:
    """Pieces of the work that stand over the finished part, all in the part's own frame.

    ``most`` is the half-section with most metal within its limits, ``nose``
    the largest nose radius used [mm], ``by_hand`` whether edges are broken
    with a file or scraper on a bench step.
    """
    corners = _inside_corners(most)
    edges = _edges(shape)
    found = []
    for piece in pieces(work.difference(most.buffer(NOISE, join_style="mitre"))):
        if thickness(piece) < SKIN:
            continue
        kind: Kind = "forgotten"
        if nose > 0 and _in_corner(piece, corners, nose):
            kind = "corner radius"
        elif by_hand and any(_at_edge(piece, place, size) for place, size in edges):
            kind = "edge"
        found.append(_piece(kind, piece))
    return tuple(found)


def missing_metal(work: BaseGeometry, least: Polygon) -> tuple[Piece, ...]:
    """Pieces that should stand even with least metal within the limits, and do not."""
    return tuple(_piece("missing", one) for one in pieces(least.difference(work)) if thickness(one) >= SKIN)


def _piece(kind: Kind, piece: Polygon) -> Piece:
    low_z, low_r, high_z, high_r = piece.bounds
    return Piece(kind, turned_volume(piece), thickness(piece), (low_z, high_z), (low_r, high_r))


def _inside_corners(section: Polygon) -> list[Point]:
    """Corners of a counter-clockwise outline where it turns to the right."""
    ring = list(section.exterior.coords[:-1])
    found = []
    for n, (z, r) in enumerate(ring):
        before, after = ring[n - 1], ring[(n + 1) % len(ring)]
        turn = (z - before[0]) * (after[1] - r) - (r - before[1]) * (after[0] - z)
        if turn < -1e-9:
            found.append(Point(z, r))
    return found


def _in_corner(piece: Polygon, corners: list[Point], nose: float) -> bool:
    """Touching an inside corner, within the nose radius of it, and no more metal than a fillet."""
    low_z, low_r, high_z, high_r = piece.bounds
    within = max(high_z - low_z, high_r - low_r) <= 1.2 * nose + 0.05
    return within and piece.area <= 0.25 * nose**2 + 0.01 and any(piece.distance(at) < 0.02 for at in corners)


def _edges(shape: TurnedShape) -> list[tuple[Point, float]]:
    """Where edges are broken: the place of the sharp corner, and the size of the edge."""
    found = []
    for body in shape.outside:
        if isinstance(body, Cylinder):
            r = body.dia.value / 2
            if body.edge_start > 0:
                found.append((Point(body.start, r), body.edge_start))
            if body.edge_end > 0:
                found.append((Point(body.end, r), body.edge_end))
    for bore in shape.bores:
        if bore.edge > 0:
            places = (mouth_level(shape, bore, "A"), shape.length.value - mouth_level(shape, bore, "B"))
            found += [(Point(z, bore.dia.value / 2), bore.edge) for z in places]
    return found


def _at_edge(piece: Polygon, place: Point, size: float) -> bool:
    low_z, low_r, high_z, high_r = piece.bounds
    small = max(high_z - low_z, high_r - low_r) <= math.sqrt(2) * size + 0.1
    return bool(small and piece.distance(place) < 0.1 * size + 0.05)
