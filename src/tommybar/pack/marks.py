"""What a dimension, an arrow or a leader looks like: plain marks, the same for every writer."""

from __future__ import annotations

import math
from collections.abc import Iterable

from tommybar.pack.sheet import Angular, Arc, Area, Dimension, Line, Mark, Point, Radial

ARROW = 2.8  # length of an arrow head [mm]
GAP = 0.8  # between an outline and its extension line [mm]
PAST = 1.8  # how far an extension line runs past the dimension line [mm]
STUB = 5.5  # length of the line behind an arrow that stands outside [mm]


def arrow(tip: Point, towards: Point) -> Area:
    """A filled head with its tip at ``tip``, coming from the direction of ``towards``."""
    x, y = tip
    dx, dy = towards[0] - x, towards[1] - y
    length = math.hypot(dx, dy) or 1.0
    ux, uy = dx / length, dy / length
    half = ARROW * 0.16
    base = (x + ARROW * ux, y + ARROW * uy)
    ring = (tip, (base[0] - half * uy, base[1] + half * ux), (base[0] + half * uy, base[1] - half * ux))
    return Area((ring,), "black", None)


def leader(tip: Point, *way: Point) -> tuple[Mark, ...]:
    """An arrow at ``tip`` and a thin line through the other points."""
    return (Line((tip, *way), "thin"), arrow(tip, way[0]))


def dimension_marks(one: Dimension | Radial | Angular) -> tuple[Mark, ...]:
    """Lines, arrows and words of a dimension."""
    if isinstance(one, Angular):
        return _angular_marks(one)
    if isinstance(one, Radial) or one.pointed:
        way = one.tail
        if not way:
            return one.words
        return (*leader(way[0], *way[1:]), *one.words)
    if one.along == "y":
        ends: tuple[Point, Point] = ((one.at, one.a[1]), (one.at, one.b[1]))
    else:
        ends = ((one.a[0], one.at), (one.b[0], one.at))
    marks: list[Mark] = []
    for point, end in zip((one.a, one.b), ends, strict=True):
        away = math.hypot(end[0] - point[0], end[1] - point[1])
        if away > GAP + 0.5:
            ux, uy = (end[0] - point[0]) / away, (end[1] - point[1]) / away
            start = (point[0] + GAP * ux, point[1] + GAP * uy)
            marks.append(Line((start, (end[0] + PAST * ux, end[1] + PAST * uy)), "thin"))
    first, second = ends
    if one.outside:
        span = math.hypot(second[0] - first[0], second[1] - first[1]) or 1.0
        ux, uy = (second[0] - first[0]) / span, (second[1] - first[1]) / span
        before = (first[0] - STUB * ux, first[1] - STUB * uy)
        behind = (second[0] + STUB * ux, second[1] + STUB * uy)
        marks += [Line((before, first), "thin"), Line((second, behind), "thin")]
        marks += [arrow(first, before), arrow(second, behind)]
        if one.along == "x" and span < 12.0:
            marks.append(Line((first, second), "thin"))
    else:
        marks += [Line((first, second), "thin"), arrow(first, second), arrow(second, first)]
    if one.tail:
        marks.append(Line(one.tail, "thin"))
    return (*marks, *one.words)


def _angular_marks(one: Angular) -> tuple[Mark, ...]:
    if one.pointed:
        return (*leader(one.tail[0], *one.tail[1:]), *one.words)
    x, y = one.vertex
    first, last = (math.degrees(math.atan2(y - p[1], p[0] - x)) for p in (one.a, one.b))
    last = first + (last - first) % 360.0
    stub = math.degrees(STUB / one.radius) if one.outside else 0.0
    marks: list[Mark] = [Arc(one.vertex, one.radius, "thin", first - stub, last + stub)]
    for angle, turn in ((first, 1.0), (last, -1.0)):
        away = turn * math.degrees(ARROW / one.radius) * (-1.0 if one.outside else 1.0)
        tip, base = (
            (x + one.radius * math.cos(math.radians(t)), y - one.radius * math.sin(math.radians(t)))
            for t in (angle, angle + away)
        )
        marks.append(arrow(tip, base))
    if one.tail:
        marks.append(Line(one.tail, "thin"))
    return (*marks, *one.words)


def plain_marks(marks: Iterable[Mark]) -> list[Mark]:
    """The marks with every dimension taken apart into lines, arrows and words."""
    return [
        one
        for mark in marks
        for one in (dimension_marks(mark) if isinstance(mark, Dimension | Radial | Angular) else (mark,))
    ]
