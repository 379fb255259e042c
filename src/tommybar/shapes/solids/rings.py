"""Closed rings of straight sides and true arcs.

A ring is a row of corners (u, v, bulge), counter-clockwise round metal. The
bulge belongs to the side from that corner to the next: 0 is straight, else it
is the tangent of a quarter of the arc's angle, positive when the arc turns
left (as drawing exchange files write it).
"""

from __future__ import annotations

import math
from collections.abc import Iterable

from tommybar.shapes.outlines import Arc, Line

Corner = tuple[float, float, float]
Ring = tuple[Corner, ...]
Points = list[tuple[float, float]]


def polygon(points: Iterable[tuple[float, float]]) -> Ring:
    """A ring of straight sides."""
    return tuple((float(u), float(v), 0.0) for u, v in points)


def box(u_from: float, v_from: float, u_to: float, v_to: float) -> Ring:
    """A rectangle between two corners."""
    return polygon([(u_from, v_from), (u_to, v_from), (u_to, v_to), (u_from, v_to)])


def circle(radius: float, u: float = 0.0, v: float = 0.0) -> Ring:
    """A whole circle, as two half arcs."""
    return ((u + radius, v, 1.0), (u - radius, v, 1.0))


def stadium(long: float, wide: float) -> Ring:
    """A slot about the origin along u, ``long`` overall, with half-round ends."""
    r, half = wide / 2, (long - wide) / 2
    return ((-half, -r, 0.0), (half, -r, 1.0), (half, r, 0.0), (-half, r, 1.0))


def rounded(points: Iterable[tuple[float, float, float]]) -> Ring:
    """A polygon, counter-clockwise, whose corners (u, v, radius) are rounded by tangent arcs.

    Examples
    --------
    >>> round(area(rounded([(0, 0, 0), (4, 0, 0), (4, 4, 1), (0, 4, 0)])), 6)
    15.785398
    """
    corners = list(points)
    found: list[Corner] = []
    for n, (u, v, radius) in enumerate(corners):
        before, after = corners[n - 1], corners[(n + 1) % len(corners)]
        a, b = _unit(before[0] - u, before[1] - v), _unit(after[0] - u, after[1] - v)
        turn = math.atan2(-a[0] * b[1] + a[1] * b[0], -a[0] * b[0] - a[1] * b[1])
        if radius <= 0 or abs(turn) < 1e-12:
            found.append((u, v, 0.0))
            continue
        back = radius * math.tan(abs(turn) / 2)
        found.append((u + back * a[0], v + back * a[1], math.tan(turn / 4)))
        found.append((u + back * b[0], v + back * b[1], 0.0))
    return tuple(found)


def of_pieces(loop: Iterable[Line | Arc]) -> Ring:
    """The ring of a loop of lines and arcs of :mod:`tommybar.shapes.outlines`.

    Examples
    --------
    >>> from tommybar.shapes.outlines import rectangle
    >>> round(area(of_pieces(rectangle(0, 0, 4, 4, 1))), 6)
    15.141593
    """
    found: list[Corner] = []
    for piece in loop:
        if isinstance(piece, Arc):
            parts = 1 if abs(piece.turn) <= math.pi + 1e-9 else 2
            for n in range(parts):
                found.append((*piece.at(n / parts), math.tan(piece.turn / parts / 4)))
        else:
            found.append((piece.x1, piece.y1, 0.0))
    return tuple(found)


def counter_clockwise(ring: Ring) -> Ring:
    """The same ring, run so that metal lies on its left."""
    if area(ring) >= 0:
        return ring
    return tuple((u, v, -ring[n - 1][2]) for n, (u, v, _) in reversed(list(enumerate(ring))))


def arc_of(start: Corner, end: Corner) -> tuple[float, float, float, float, float]:
    """Centre u and v, radius, start angle [rad] and angle swept [rad] of one side that is an arc."""
    bulge = start[2]
    du, dv = end[0] - start[0], end[1] - start[1]
    off = (1 - bulge * bulge) / (4 * bulge)
    u, v = (start[0] + end[0]) / 2 - dv * off, (start[1] + end[1]) / 2 + du * off
    first = math.atan2(start[1] - v, start[0] - u)
    return u, v, math.hypot(start[0] - u, start[1] - v), first, 4 * math.atan(bulge)


def area(ring: Ring) -> float:
    """Area within a ring, negative when it runs clockwise [mm2].

    Examples
    --------
    >>> round(area(circle(1.0)), 9)
    3.141592654
    """
    total = 0.0
    for n, corner in enumerate(ring):
        after = ring[(n + 1) % len(ring)]
        total += (corner[0] * after[1] - after[0] * corner[1]) / 2
        if corner[2]:
            _, _, radius, _, swept = arc_of(corner, after)
            total += radius * radius * (swept - math.sin(swept)) / 2
    return total


def chorded(ring: Ring, facets: int, keep_area: bool) -> Points:
    """Corners of a polygon with its arcs in chords, ``facets`` to a whole turn.

    With ``keep_area`` the corners between the ends of an arc stand a little
    outside it, so that the polygon has the area of the ring; without it all
    corners lie on the arc.
    """
    found: Points = []
    for n, corner in enumerate(ring):
        found.append((corner[0], corner[1]))
        if not corner[2]:
            continue
        u, v, radius, first, swept = arc_of(corner, ring[(n + 1) % len(ring)])
        chords = max(2, math.ceil(facets * abs(swept) / math.tau - 1e-9))
        step = swept / chords
        out = _kept(radius, abs(swept), chords) if keep_area else radius
        for k in range(1, chords):
            a = first + k * step
            found.append((u + out * math.cos(a), v + out * math.sin(a)))
    return found


def _kept(radius: float, swept: float, chords: int) -> float:
    """Distance from the centre of the inner corners of a chorded arc that keeps the sector's area."""
    s = math.sin(swept / chords)
    if chords == 2:
        return radius * swept / (2 * s)
    a, b, c = (chords - 2) * s, 2 * radius * s, -radius * radius * swept
    return (-b + math.sqrt(b * b - 4 * a * c)) / (2 * a)


def _unit(u: float, v: float) -> tuple[float, float]:
    size = math.hypot(u, v)
    return u / size, v / size
