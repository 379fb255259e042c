"""Plain holes that are not on the axis: what each takes away from a turned part, as moments.

These are the quick sums for a hole that meets nothing else that is drilled or
milled. One along the axis that lies wholly in metal is a cylinder, in closed
form. Where its ends meet a chamfer, a groove or a step, and for a cross hole,
the metal in it is integrated over the exact half-section: closed forms across,
and Gauss-Legendre between the places where their law changes.
"""

from __future__ import annotations

import math
from functools import cache
from itertools import pairwise

from tommybar.facts.threads import thread
from tommybar.shapes.along import bounds_of, corners_across, corners_along, covers, lengths_at, radii_at
from tommybar.shapes.curves import ArcPiece, Line, Ring, meetings
from tommybar.shapes.features import CircleHoles, CrossHole, Dim
from tommybar.shapes.moments import Moments, gauss, rod

POINTS = 24


def drawn_hole(dia: Dim, designation: str) -> float:
    """Diameter of a hole as drilled [mm]: a tapped one at its tapping drill."""
    return thread(designation).tapping_drill if designation else dia.target


def circle_hole_moments(holes: CircleHoles, ring: Ring) -> Moments:
    """What one hole of a pitch circle takes away, turned to the x axis."""
    dia, out = drawn_hole(holes.dia, holes.thread), holes.circle / 2
    low, high, _ = bounds_of(ring)
    start, end = max(holes.start, low), min(holes.end, high)
    if covers(ring, start, end, out - dia / 2, out + dia / 2):
        return rod(dia, start, end).shifted(dx=out)
    return _axial_in_section(ring, dia / 2, out, start, end)


def cross_hole_moments(hole: CrossHole, ring: Ring) -> Moments:
    """What one plain cross hole takes away: from the outside to the axis (1 wall) or right through (2)."""
    radius = drawn_hole(hole.dia, hole.thread) / 2
    edges = _places_to_split(ring, hole.z, radius)
    v = x = xx = yy = z1 = zz = 0.0
    for z_from, z_to in pairwise(edges):
        for z, weight in stretch(z_from, z_to):
            half = math.sqrt(max(radius**2 - (z - hole.z) ** 2, 0.0))
            strip = _strip(radii_at(ring, z), half)
            v += weight * strip[0]
            x += weight * strip[1]
            xx += weight * strip[2]
            yy += weight * strip[3]
            z1 += weight * strip[0] * z
            zz += weight * strip[0] * z * z
    if hole.walls == 2:
        return Moments(2 * v, 0.0, 0.0, 2 * z1, 2 * xx, 2 * yy, 2 * zz).turned(hole.angle)
    return Moments(v, x, 0.0, z1, xx, yy, zz).turned(hole.angle)


def _places_to_split(ring: Ring, middle: float, radius: float) -> list[float]:
    """Where the metal in a cross hole changes its law: corners, and where the hole grazes the outline."""
    places = {middle - radius, middle, middle + radius}
    places.update(z for z in corners_along(ring) if abs(z - middle) < radius)
    # where the hole's edge touches the part: in the half-section that is a circle about its middle
    edge = ArcPiece((middle + radius, 0.0), (middle - radius, 0.0), (middle, 0.0), True)
    places.update(z for piece in ring for z, _ in meetings(edge, piece))
    for r in corners_across(ring):
        if r < radius:
            graze = math.sqrt(radius**2 - r**2)
            places.update((middle - graze, middle + graze))
    return sorted(places)


def _strip(metal: list[tuple[float, float]], half: float) -> tuple[float, float, float, float]:
    """Area, and first and second moments, of a strip |y| < half, x at or above 0, in rings of metal."""
    area = x = xx = yy = 0.0
    for inner, outer in metal:
        for r, sign in ((outer, 2.0), (inner, -2.0)):  # y and -y alike
            y = min(half, r)
            if y <= 0:
                continue
            root, arc = math.sqrt(r * r - y * y), math.asin(y / r)
            area += sign * (y * root + r * r * arc) / 2
            x += sign * (r * r * y - y**3 / 3) / 2
            xx += sign * (y * (5 * r * r - 2 * y * y) * root + 3 * r**4 * arc) / 24
            yy += sign * (y * (2 * y * y - r * r) * root + r**4 * arc) / 8
    return area, x, xx, yy


def _axial_in_section(ring: Ring, radius: float, out: float, start: float, end: float) -> Moments:
    """A hole along the axis that meets metal only partly: shells of equal distance from the axis."""
    corners = {r for r in corners_across(ring) if abs(r - out) < radius}
    for z in (start, end):  # where the outline runs off an end of the hole
        across = Line((z, out - radius), (z, out + radius))
        corners.update(r for piece in ring for _, r in meetings(across, piece) if abs(r - out) < radius)
    edges = [out - radius, *sorted(corners), out + radius]
    v = x = xx = yy = z1 = zz = 0.0
    for r_from, r_to in pairwise(edges):
        for r, weight in stretch(r_from, r_to):
            reach = math.acos(min(1.0, (r * r + out * out - radius**2) / (2 * r * out)))
            for z_a, z_b in lengths_at(ring, r, start, end):
                shell = weight * r * (z_b - z_a)
                v += 2 * reach * shell
                x += 2 * math.sin(reach) * r * shell
                xx += (reach + math.sin(2 * reach) / 2) * r * r * shell
                yy += (reach - math.sin(2 * reach) / 2) * r * r * shell
                z1 += 2 * reach * weight * r * (z_b**2 - z_a**2) / 2
                zz += 2 * reach * weight * r * (z_b**3 - z_a**3) / 3
    return Moments(v, x, 0.0, z1, xx, yy, zz)


def stretch(low: float, high: float, points: int = POINTS) -> list[tuple[float, float]]:
    """Places and weights between two corners, drawn together at both so that roots there do no harm."""
    middle, half = (low + high) / 2, (high - low) / 2
    return [(middle + half * u, half * w) for u, w in _nodes(points)]


@cache
def _nodes(points: int) -> tuple[tuple[float, float], ...]:
    return tuple(
        (math.sin(math.pi / 2 * t), w * math.pi / 2 * math.cos(math.pi / 2 * t)) for t, w in gauss(points)
    )
