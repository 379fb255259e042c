"""How much room marks take, and moving them about."""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import replace

from tommybar.pack.marks import dimension_marks
from tommybar.pack.sheet import Angular, Arc, Area, Dimension, Line, Mark, Point, Radial, Text

Box = tuple[float, float, float, float]  # left, top, right, bottom [mm]


def box_of(marks: Iterable[Mark]) -> Box:
    """The box around all marks."""
    boxes = [_box(one) for one in marks]
    if not boxes:
        return (0.0, 0.0, 0.0, 0.0)
    return (
        min(b[0] for b in boxes),
        min(b[1] for b in boxes),
        max(b[2] for b in boxes),
        max(b[3] for b in boxes),
    )


def box_ring(x: float, y: float, w: float, h: float) -> tuple[tuple[float, float], ...]:
    """The corners of a box, from its left and top edge and its width and height [mm]."""
    return ((x, y), (x + w, y), (x + w, y + h), (x, y + h))


def _box(one: Mark) -> Box:
    if isinstance(one, Text):
        return one.box
    if isinstance(one, Dimension | Radial | Angular):
        return box_of(dimension_marks(one))
    if isinstance(one, Arc):
        return _arc_box(one)
    points = one.points if isinstance(one, Line) else [p for ring in one.rings for p in ring]
    xs, ys = [p[0] for p in points], [p[1] for p in points]
    return (min(xs), min(ys), max(xs), max(ys))


def _arc_box(one: Arc) -> Box:
    (x, y), r = one.centre, one.radius
    if one.end - one.start >= 360.0:
        return (x - r, y - r, x + r, y + r)
    last = one.start + (one.end - one.start) % 360.0
    quarters = [90.0 * n for n in range(-8, 13) if one.start < 90.0 * n < last]
    at = [math.radians(a) for a in (one.start, last, *quarters)]
    xs, ys = [x + r * math.cos(a) for a in at], [y - r * math.sin(a) for a in at]
    return (min(xs), min(ys), max(xs), max(ys))


def moved(marks: Iterable[Mark], dx: float, dy: float) -> list[Mark]:
    """The same marks shifted."""

    def to(p: Point) -> Point:
        return (p[0] + dx, p[1] + dy)

    def one_moved(one: Mark) -> Mark:
        if isinstance(one, Text):
            return replace(one, at=to(one.at))
        if isinstance(one, Line):
            return replace(one, points=tuple(map(to, one.points)))
        if isinstance(one, Arc):
            return replace(one, centre=to(one.centre))
        if isinstance(one, Area):
            return replace(one, rings=tuple(tuple(map(to, ring)) for ring in one.rings))
        words = tuple(replace(text, at=to(text.at)) for text in one.words)
        tail = tuple(map(to, one.tail))
        if isinstance(one, Radial):
            return replace(one, centre=to(one.centre), point=to(one.point), words=words, tail=tail)
        if isinstance(one, Angular):
            return replace(one, vertex=to(one.vertex), a=to(one.a), b=to(one.b), words=words, tail=tail)
        return replace(
            one,
            a=to(one.a),
            b=to(one.b),
            at=one.at + (dx if one.along == "y" else dy),
            words=words,
            tail=tail,
        )

    return [one_moved(one) for one in marks]


def overlap(a: Box, b: Box, spare: float = 0.0) -> bool:
    """Whether two boxes share room, ``spare`` mm of clearance wanted between them."""
    return a[0] < b[2] + spare and b[0] < a[2] + spare and a[1] < b[3] + spare and b[1] < a[3] + spare


def spread(wanted: list[float], rooms: list[float], low: float, high: float) -> list[float]:
    """Places in the same order, each with its room to the next, as near to the wanted ones as a sweep gives.

    ``rooms[i]`` is what place i needs before place i + 1 [mm]. Places that run
    over ``high`` are pushed back; ``low`` wins if not all can be had.

    Examples
    --------
    >>> spread([0.0, 1.0, 50.0], [10.0, 10.0, 10.0], 0.0, 100.0)
    [0.0, 10.0, 50.0]
    >>> spread([90.0, 95.0], [10.0, 10.0], 0.0, 100.0)
    [80.0, 90.0]
    """
    places = list(wanted)
    for i, place in enumerate(places):
        places[i] = max(place, low if i == 0 else places[i - 1] + rooms[i - 1])
    limit = high
    for i in range(len(places) - 1, -1, -1):
        limit -= rooms[i]
        places[i] = min(places[i], limit)
        limit = places[i]
    for i, place in enumerate(places):
        places[i] = max(place, low if i == 0 else places[i - 1] + rooms[i - 1])
    return places
