"""Where an exact half-section has metal: radii at one place along the axis, lengths at one radius."""

from __future__ import annotations

import math
from itertools import pairwise

from tommybar.shapes.curves import ON, ArcPiece, Ring

Span = tuple[float, float]


def radii_at(ring: Ring, z: float) -> list[Span]:
    """Rings of metal (inner, outer radius) at one z that is no corner's [mm]."""
    places: list[float] = []
    for piece in ring:
        if isinstance(piece, ArcPiece):
            places += _on_arc(piece, z, across=True)
        elif (piece.start[0] <= z) != (piece.end[0] <= z):
            share = (z - piece.start[0]) / (piece.end[0] - piece.start[0])
            places.append(piece.start[1] + share * (piece.end[1] - piece.start[1]))
    return _paired(places)


def lengths_at(ring: Ring, r: float, start: float, end: float) -> list[Span]:
    """Stretches of metal (from z, to z) at one radius that is no corner's, between two places [mm]."""
    places: list[float] = []
    for piece in ring:
        if isinstance(piece, ArcPiece):
            places += _on_arc(piece, r, across=False)
        elif (piece.start[1] <= r) != (piece.end[1] <= r):
            share = (r - piece.start[1]) / (piece.end[1] - piece.start[1])
            places.append(piece.start[0] + share * (piece.end[0] - piece.start[0]))
    clipped = [(max(a, start), min(b, end)) for a, b in _paired(places)]
    return [(a, b) for a, b in clipped if b > a]


def _on_arc(arc: ArcPiece, at: float, across: bool) -> list[float]:
    """Where an arc crosses a line z = at, as radii, or r = at, as places along the axis."""
    off = at - arc.centre[0 if across else 1]
    radius = arc.radius
    if abs(off) >= radius:
        return []
    root = math.sqrt((radius - off) * (radius + off))
    middle = arc.centre[1 if across else 0]
    found = []
    for other in (middle - root, middle + root):
        point = (at, other) if across else (other, at)
        if 0 <= arc.share_of(point) < 1:
            found.append(other)
    return found


def _paired(places: list[float]) -> list[Span]:
    places.sort()
    return [(a, b) for (n, (a, b)) in enumerate(pairwise(places)) if n % 2 == 0]


def corners_along(ring: Ring) -> list[float]:
    """Every z at which the half-section may change its law: corners, and where an arc turns back [mm]."""
    found = {piece.start[0] for piece in ring}
    for piece in ring:
        if isinstance(piece, ArcPiece):
            for z in (piece.centre[0] - piece.radius, piece.centre[0] + piece.radius):
                if 0 < piece.share_of((z, piece.centre[1])) < 1:
                    found.add(z)
    return sorted(found)


def corners_across(ring: Ring) -> list[float]:
    """Every radius at which the half-section may change its law [mm]."""
    found = {piece.start[1] for piece in ring}
    for piece in ring:
        if isinstance(piece, ArcPiece):
            for r in (piece.centre[1] - piece.radius, piece.centre[1] + piece.radius):
                if 0 < piece.share_of((piece.centre[0], r)) < 1:
                    found.add(r)
    return sorted(found)


def bounds_of(ring: Ring) -> tuple[float, float, float]:
    """Least and greatest z, and the greatest radius [mm]."""
    zs, rs = corners_along(ring), corners_across(ring)
    return zs[0], zs[-1], rs[-1]


def covers(ring: Ring, z_from: float, z_to: float, r_from: float, r_to: float) -> bool:
    """Whether a rectangle of the half-section is metal throughout."""
    zs = sorted({z_from, z_to, *(z for z in corners_along(ring) if z_from < z < z_to)})
    for a, b in pairwise(zs):
        if b - a < ON:
            continue
        for z in (a + (b - a) * 1e-9, (a + b) / 2, b - (b - a) * 1e-9):
            if not any(low <= r_from + ON and high >= r_to - ON for low, high in radii_at(ring, z)):
                return False
    rs = [r for r in corners_across(ring) if r_from + ON < r < r_to - ON]
    return all(
        any(a <= z_from + ON and b >= z_to - ON for a, b in lengths_at(ring, r + 1e-9, z_from, z_to))
        for r in rs
    )
