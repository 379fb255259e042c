"""Straight lines and circular arcs with a direction: the pieces that an exact outline is made of."""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import cached_property

Point = tuple[float, float]
Box = tuple[float, float, float, float]
ON = 1e-7  # a point nearer to a curve than this lies on it [mm]


@dataclass(frozen=True)
class Line:
    """A straight side from ``start`` to ``end`` [mm]."""

    start: Point
    end: Point

    @cached_property
    def long(self) -> float:
        """Its length [mm]."""
        return math.dist(self.start, self.end)

    @cached_property
    def box(self) -> Box:
        """The rectangle that holds it: least and greatest of both directions [mm]."""
        (a, b), (c, d) = self.start, self.end
        return min(a, c), min(b, d), max(a, c), max(b, d)

    def at(self, share: float) -> Point:
        """The point at a share of its length, 0 at its start and 1 at its end."""
        (a, b), (c, d) = self.start, self.end
        return a + share * (c - a), b + share * (d - b)

    def towards(self, share: float) -> Point:
        """Direction there, of length 1."""
        (a, b), (c, d) = self.start, self.end
        long = self.long
        return (c - a) / long, (d - b) / long

    def share_of(self, point: Point) -> float:
        """The share of its length at which a point on it lies."""
        (a, b), (c, d) = self.start, self.end
        u, v = c - a, d - b
        return ((point[0] - a) * u + (point[1] - b) * v) / (u * u + v * v)

    def away(self, point: Point) -> float:
        """How far a point lies from it [mm]."""
        share = min(1.0, max(0.0, self.share_of(point)))
        return math.dist(self.at(share), point)

    def between(self, start: Point, end: Point) -> Line:
        """The stretch of it from one point on it to another."""
        return Line(start, end)

    def reversed(self) -> Line:
        """The same side run the other way."""
        return Line(self.end, self.start)

    def chords(self) -> list[Point]:
        """Its points as a polygon has them, the last left out."""
        return [self.start]


@dataclass(frozen=True)
class ArcPiece:
    """A circular arc from ``start`` to ``end`` about ``centre`` [mm], less than a whole turn.

    ``ccw`` says which way it turns, counter-clockwise when z runs to the
    right and r upwards.
    """

    start: Point
    end: Point
    centre: Point
    ccw: bool

    @cached_property
    def radius(self) -> float:
        """Its radius [mm]."""
        return math.dist(self.start, self.centre)

    @cached_property
    def first(self) -> float:
        """Direction of its start from its centre [rad]."""
        return math.atan2(self.start[1] - self.centre[1], self.start[0] - self.centre[0])

    @cached_property
    def sweep(self) -> float:
        """Angle that it turns through, negative when clockwise [rad]."""
        last = math.atan2(self.end[1] - self.centre[1], self.end[0] - self.centre[0])
        turn = (last - self.first) % (2 * math.pi)
        return turn if self.ccw else turn - 2 * math.pi

    @cached_property
    def long(self) -> float:
        """Its length [mm]."""
        return self.radius * abs(self.sweep)

    @cached_property
    def box(self) -> Box:
        """A rectangle that holds it: that of the whole circle [mm]."""
        (x, y), r = self.centre, self.radius
        return x - r, y - r, x + r, y + r

    def at(self, share: float) -> Point:
        """The point at a share of its length, 0 at its start and 1 at its end."""
        t = self.first + share * self.sweep
        return self.centre[0] + self.radius * math.cos(t), self.centre[1] + self.radius * math.sin(t)

    def towards(self, share: float) -> Point:
        """Direction there, of length 1."""
        t = self.first + share * self.sweep
        sign = 1.0 if self.ccw else -1.0
        return -sign * math.sin(t), sign * math.cos(t)

    def share_of(self, point: Point) -> float:
        """The share of its length at which a point on it lies; beyond either end below 0 or above 1."""
        sweep = self.sweep
        t = math.atan2(point[1] - self.centre[1], point[0] - self.centre[0])
        turn = (t - self.first) % (2 * math.pi)
        if not self.ccw:
            turn = (2 * math.pi - turn) % (2 * math.pi)
        whole = abs(sweep)
        if turn > whole + (2 * math.pi - whole) / 2:
            turn -= 2 * math.pi
        return turn / whole

    def away(self, point: Point) -> float:
        """How far a point lies from it [mm]."""
        if 0 <= self.share_of(point) <= 1:
            return abs(math.dist(point, self.centre) - self.radius)
        return min(math.dist(point, self.start), math.dist(point, self.end))

    def between(self, start: Point, end: Point) -> ArcPiece:
        """The stretch of it from one point on it to another."""
        return ArcPiece(start, end, self.centre, self.ccw)

    def reversed(self) -> ArcPiece:
        """The same arc run the other way."""
        return ArcPiece(self.end, self.start, self.centre, not self.ccw)

    def chords(self) -> list[Point]:
        """Points on it from its start on, the end left out: 16 a quarter turn or more, 2 um off at most."""
        sweep, radius = abs(self.sweep), self.radius
        step = min(math.pi / 32, 2 * math.sqrt(2 * SAGITTA / radius))
        count = max(1, math.ceil(sweep / step - 1e-9))
        return [self.start, *(self.at(n / count) for n in range(1, count))]


SAGITTA = 0.002  # how far a chord may lie inside its arc [mm]
Piece = Line | ArcPiece
Ring = tuple[Piece, ...]


def closed(points: list[Point]) -> Ring:
    """A ring of straight sides through points, those of no length left out."""
    return tuple(
        Line(a, b) for a, b in zip(points, [*points[1:], points[0]], strict=True) if math.dist(a, b) > ON
    )


def meetings(one: Piece, other: Piece) -> list[Point]:
    """Points in which two pieces meet or cross; ends of stretches that they share are among them."""
    found = [p for p in (other.start, other.end) if one.away(p) < ON]
    found += [p for p in (one.start, one.end) if other.away(p) < ON]
    for p in _crossings(one, other):
        if _within(one, p) and _within(other, p) and all(math.dist(p, q) > ON for q in found):
            found.append(p)
    return found


def _within(piece: Piece, point: Point) -> bool:
    return -1e-12 <= piece.share_of(point) <= 1 + 1e-12


def _crossings(one: Piece, other: Piece) -> list[Point]:
    if isinstance(one, Line) and isinstance(other, Line):
        return _lines(one, other)
    if isinstance(one, Line):
        assert isinstance(other, ArcPiece)
        return _line_and_circle(one, other)
    if isinstance(other, Line):
        return _line_and_circle(other, one)
    return _circles(one, other)


def _lines(one: Line, other: Line) -> list[Point]:
    (a, b), (c, d) = one.start, one.end
    (e, f), (g, h) = other.start, other.end
    u, v, w, x = c - a, d - b, g - e, h - f
    cross = u * x - v * w
    if abs(cross) < 1e-12 * one.long * other.long:
        return []
    return [one.at(((e - a) * x - (f - b) * w) / cross)]


def _line_and_circle(line: Line, arc: ArcPiece) -> list[Point]:
    radius = arc.radius
    foot = line.at(line.share_of(arc.centre))
    off = math.dist(foot, arc.centre)
    if off > radius:
        return []
    half = math.sqrt((radius - off) * (radius + off))
    u, v = line.towards(0.0)
    return [(foot[0] - half * u, foot[1] - half * v), (foot[0] + half * u, foot[1] + half * v)]


def _circles(one: ArcPiece, other: ArcPiece) -> list[Point]:
    apart = math.dist(one.centre, other.centre)
    r, s = one.radius, other.radius
    if apart < ON or apart > r + s or apart < abs(r - s):
        return []
    along = (apart * apart + r * r - s * s) / (2 * apart)
    half = math.sqrt(max(0.0, (r - along) * (r + along)))
    u, v = (other.centre[0] - one.centre[0]) / apart, (other.centre[1] - one.centre[1]) / apart
    x, y = one.centre[0] + along * u, one.centre[1] + along * v
    return [(x - half * v, y + half * u), (x + half * v, y - half * u)]
