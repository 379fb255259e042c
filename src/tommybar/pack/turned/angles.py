"""Angles of cones, points and cups as true dimensions: an arc between the legs, or pointed at when it has no room."""

from __future__ import annotations

import math
from collections.abc import Sequence

from tommybar.pack.marks import ARROW, GAP, PAST, STUB
from tommybar.pack.sheet import Angular, Line, Mark, Point, Text
from tommybar.pack.turned.saying import Measured

ROOM = 2.6 * ARROW  # an arc shorter than this has its arrows outside [mm]
FAR = 12.0  # an arc in front of a face stands no further out than this, clear of words [mm]
CLOSE = 2.0  # a leg shorter than this on paper has no arc [mm]


def half_angle(apex: float, z: float, r: float, degrees: float) -> Measured:
    """The angle between the axis and the side of a cone above it, its arc about the apex through (z, r) of that side."""
    side, axis = (z, r), (z, 0.0)
    legs = (axis, side) if z > apex else (side, axis)
    radius = math.dist((apex, 0.0), side)
    return Measured("angle", degrees, (apex, 0.0), *legs, radius)


def whole_angle(apex: float, z: float, r: float, degrees: float, past: float = 0.0) -> Measured:
    """The angle between both sides of a cone, its arc about the apex through (z, r), or ``past`` mm outside of it."""
    legs = ((z, -r), (z, r)) if z > apex else ((z, r), (z, -r))
    return Measured("angle", degrees, (apex, 0.0), *legs, math.dist((apex, 0.0), (z, r)), past)


def before_face(measured: Measured) -> float:
    """How high above the axis the words of an arc in front of a face point at it [part mm]."""
    return measured.radius * math.sin(math.radians(measured.value) / 4)


def angle_marks(measured: Measured, texts: Sequence[Text], tail: Sequence[Point], scale: float) -> list[Mark]:
    """An angle with its arc and its words; ``tail`` begins where the words point at."""
    x = measured.centre[0] * scale
    a, b = ((z * scale, -r * scale) for z, r in (measured.first, measured.second))
    radius = measured.radius * scale + measured.past
    way = list(tail)
    out = radius - abs(a[0] - x)
    small = max(abs(a[1]), abs(b[1])) < CLOSE
    if not measured.radius or small or (measured.past and out > FAR):
        return [Angular((x, 0.0), a, b, 8.0, measured.value, tuple(texts), tuple(way), True)]
    marks: list[Mark] = []
    if measured.past:
        marks += [_leg((x, 0.0), leg, radius) for leg in (a, b)]
    towards = 1.0 if a[0] > x else -1.0
    outside = radius * math.radians(measured.value) < ROOM
    if measured.past:  # the leader goes on from in front of the arc
        high = min(abs(way[0][1]), radius * 0.99)
        way[0] = (x + towards * math.sqrt(radius**2 - high**2), way[0][1])
        knee = x + towards * (radius + 1.0)
        way[1] = (max(way[1][0], knee) if towards > 0 else min(way[1][0], knee), way[1][1])
    elif outside:  # it goes on from behind the upper arrow
        turn = math.asin(min(-way[0][1] / radius, 1.0)) + STUB / radius
        way[0] = (x + towards * radius * math.cos(turn), -radius * math.sin(turn))
    one = Angular((x, 0.0), a, b, radius, measured.value, tuple(texts), tuple(way), outside=outside)
    return [one, *marks]


def _leg(vertex: Point, end: Point, radius: float) -> Line:
    """A leg drawn on from its end to past the arc."""
    away = math.dist(vertex, end)
    c, s = (end[0] - vertex[0]) / away, (end[1] - vertex[1]) / away
    return Line(
        tuple((vertex[0] + far * c, vertex[1] + far * s) for far in (away + GAP, radius + PAST)), "thin"
    )
