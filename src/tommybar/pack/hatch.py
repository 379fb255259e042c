"""Hatching: the lines at 45 degrees that fill a cut surface, by the even-odd rule."""

from __future__ import annotations

import math

from tommybar.pack.sheet import Point


def hatch_lines(
    rings: tuple[tuple[Point, ...], ...], spacing: float, degrees: float = 45.0
) -> list[tuple[Point, Point]]:
    """Lines inside the rings [mm]; they lie on one grid over the sheet, so neighbours match.

    Examples
    --------
    >>> square = ((0.0, 0.0), (2.0, 0.0), (2.0, 2.0), (0.0, 2.0))
    >>> len(hatch_lines((square,), 1.0))
    2
    """
    angle = math.radians(degrees)
    c, s = math.cos(angle), math.sin(angle)
    # turned so that hatch lines lie level: u along the line, v across
    edges: list[tuple[float, float, float, float]] = []
    for ring in rings:
        turned = [(x * c - y * s, x * s + y * c) for x, y in ring]
        edges += [(*turned[i - 1], *turned[i]) for i in range(len(turned))]
    if not edges:
        return []
    first = math.floor(min(min(e[1], e[3]) for e in edges) / spacing) + 1
    last = math.ceil(max(max(e[1], e[3]) for e in edges) / spacing) - 1
    crossings: dict[int, list[float]] = {}
    for u1, v1, u2, v2 in edges:
        low, high = (v1, v2) if v1 < v2 else (v2, v1)
        for n in range(max(first, math.ceil(low / spacing)), min(last, math.ceil(high / spacing) - 1) + 1):
            crossings.setdefault(n, []).append(u1 + (n * spacing - v1) * (u2 - u1) / (v2 - v1))
    lines: list[tuple[Point, Point]] = []
    for n, places in sorted(crossings.items()):
        places.sort()
        v = n * spacing
        for u1, u2 in zip(places[::2], places[1::2], strict=False):
            if u2 - u1 > 0.05:
                lines.append(((u1 * c + v * s, -u1 * s + v * c), (u2 * c + v * s, -u2 * s + v * c)))
    return lines
