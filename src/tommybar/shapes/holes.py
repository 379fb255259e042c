"""Holes that are not on the axis: what each takes away from a turned part, as moments.

A hole on a pitch circle that lies wholly in metal is a cylinder, in closed
form. Where its ends meet a chamfer, a groove or a step, and for every cross
hole, the metal in it is integrated over the half-section itself: closed forms
across, and 24 points of Gauss-Legendre in each stretch between the corners of
the section along the axis (true to about 1 part in 10^9, tested at 10^7).
"""

from __future__ import annotations

import math
from functools import cache
from itertools import pairwise

import numpy as np
from shapely import LineString, Polygon, box

from tommybar.facts.threads import thread
from tommybar.refusals import Refusal
from tommybar.shapes.features import CircleHoles, CrossHole, Dim
from tommybar.shapes.moments import Moments, rod

POINTS = 24
RELATIVE_ERROR = 1e-7  # of a cross hole's volume; the tests hold it to this


def drawn_hole(dia: Dim, designation: str) -> float:
    """Diameter of a hole as drilled [mm]: a tapped one at its tapping drill."""
    return thread(designation).tapping_drill if designation else dia.target


def circle_hole_moments(holes: CircleHoles, section: Polygon) -> Moments:
    """What all holes of one pitch circle take away."""
    dia, out = drawn_hole(holes.dia, holes.thread), holes.circle / 2
    if out < dia / 2:
        raise Refusal(
            f"{holes.name}: the circle is {holes.circle:g} mm and the holes {dia:g} mm; "
            f"the circle must be at least {dia:g} mm, or the holes reach over the axis.",
            "Give a larger circle, or a bore on the axis.",
        )
    z_range = max(holes.start, section.bounds[0]), min(holes.end, section.bounds[2])
    place = box(z_range[0], out - dia / 2, z_range[1], out + dia / 2)
    if section.buffer(1e-9).covers(place):
        one = rod(dia, *z_range).shifted(dx=out)
    else:
        one = _axial_in_section(section, dia / 2, out, *z_range)
    total = Moments()
    for n in range(holes.count):
        total += one.turned(holes.start_angle + 360 * n / holes.count)
    return total


def cross_hole_moments(hole: CrossHole, section: Polygon) -> Moments:
    """What one cross hole takes away: from the outside to the axis (1 wall) or right through (2)."""
    radius = drawn_hole(hole.dia, hole.thread) / 2
    low, high = section.bounds[0], section.bounds[2]
    if not low < hole.z - radius < hole.z + radius < high:
        raise Refusal(
            f"{hole.name} is {2 * radius:g} mm in diameter at {hole.z:g} mm from face A; it must lie "
            f"between the faces, {low:g} and {high:g} mm.",
            "Move it along the part.",
        )
    edges = _places_to_split(section, hole.z, radius)
    v = x = xx = yy = z1 = zz = 0.0
    for z_from, z_to in pairwise(edges):
        for z, weight in _stretch(z_from, z_to):
            half = math.sqrt(max(radius**2 - (z - hole.z) ** 2, 0.0))
            strip = _strip(_radii_at(section, z), half)
            v += weight * strip[0]
            x += weight * strip[1]
            xx += weight * strip[2]
            yy += weight * strip[3]
            z1 += weight * strip[0] * z
            zz += weight * strip[0] * z * z
    if hole.walls == 2:
        return Moments(2 * v, 0.0, 0.0, 2 * z1, 2 * xx, 2 * yy, 2 * zz).turned(hole.angle)
    return Moments(v, x, 0.0, z1, xx, yy, zz).turned(hole.angle)


def _places_to_split(section: Polygon, middle: float, radius: float) -> list[float]:
    """Where the metal in a cross hole changes its law: corners, and where the hole grazes a cylinder."""
    places = {middle - radius, middle, middle + radius}
    for z, r in section.exterior.coords:
        if abs(z - middle) < radius:
            places.add(z)
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


def _axial_in_section(section: Polygon, radius: float, out: float, start: float, end: float) -> Moments:
    """A hole along the axis that meets metal only partly: shells of equal distance from the axis."""
    corners = sorted({r for _, r in section.exterior.coords if abs(r - out) < radius})
    edges = [out - radius, *corners, out + radius]
    v = x = xx = yy = z1 = zz = 0.0
    for r_from, r_to in pairwise(edges):
        for r, weight in _stretch(r_from, r_to):
            reach = math.acos(min(1.0, (r * r + out * out - radius**2) / (2 * r * out)))
            for z_a, z_b in _lengths_at(section, r, start, end):
                shell = weight * r * (z_b - z_a)
                v += 2 * reach * shell
                x += 2 * math.sin(reach) * r * shell
                xx += (reach + math.sin(2 * reach) / 2) * r * r * shell
                yy += (reach - math.sin(2 * reach) / 2) * r * r * shell
                z1 += 2 * reach * weight * r * (z_b**2 - z_a**2) / 2
                zz += 2 * reach * weight * r * (z_b**3 - z_a**3) / 3
    return Moments(v, x, 0.0, z1, xx, yy, zz)


def _radii_at(section: Polygon, z: float) -> list[tuple[float, float]]:
    """Rings of metal (inner, outer radius) at one z."""
    return [(r[0], r[1]) for r in _pieces(section, LineString([(z, -1.0), (z, 1e5)]), axis=1)]


def _lengths_at(section: Polygon, r: float, start: float, end: float) -> list[tuple[float, float]]:
    """Lengths of metal (from z, to z) at one radius."""
    return _pieces(section, LineString([(start, r), (end, r)]), axis=0)


def _pieces(section: Polygon, line: LineString, axis: int) -> list[tuple[float, float]]:
    cut = section.intersection(line)
    found = []
    for piece in getattr(cut, "geoms", [cut]):
        if piece.geom_type == "LineString" and not piece.is_empty:
            places = [point[axis] for point in piece.coords]
            found.append((min(places), max(places)))
    return found


def _stretch(low: float, high: float) -> list[tuple[float, float]]:
    """Places and weights between two corners, drawn together at both so that roots there do no harm."""
    middle, half = (low + high) / 2, (high - low) / 2
    return [(middle + half * u, half * w) for u, w in _nodes()]


@cache
def _nodes() -> tuple[tuple[float, float], ...]:
    t, w = np.polynomial.legendre.leggauss(POINTS)
    bent = np.sin(math.pi / 2 * t)
    return tuple(zip(bent.tolist(), (w * math.pi / 2 * np.cos(math.pi / 2 * t)).tolist(), strict=True))
