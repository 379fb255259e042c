"""The bodies that features of a plate take away, each as its slice at a depth below the top face.

Frame of a plate: x along the length, y along the width, z the depth below the
top face [mm]. A slice is bounded by lines and arcs, so that cuts that run
into one another are put together exactly.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, field
from functools import cached_property
from typing import Protocol

from tommybar.shapes.outlines import Arc, Line, Loop, Piece, circle, extent, rectangle
from tommybar.shapes.plan_regions import chords, encloses

THIN = 2e-8  # an edge cut that reaches in less is nothing: under 1e-9 mm3 a plate [mm]
Box = tuple[float, float, float, float, float, float]
"""Least x, y, z and greatest x, y, z [mm]."""


class Cut(Protocol):
    """A body of metal taken away."""

    @property
    def box(self) -> Box:
        """What it lies within."""
        ...

    @property
    def breaks(self) -> tuple[float, ...]:
        """Depths where its slice changes its law, the first and the last among them."""
        ...

    @property
    def steady(self) -> bool:
        """Whether its slice is the same at every depth between two breaks."""
        ...

    def pieces(self, z: float) -> list[Piece]:
        """The edges of its slice."""
        ...

    def holds(self, x: float, y: float, z: float) -> bool:
        """Whether a point lies in it."""
        ...


@dataclass(frozen=True)
class Upright:
    """A body of one outline in plan from one depth to another."""

    loop: Loop
    top: float
    bottom: float
    steady: bool = field(default=True, init=False)

    @cached_property
    def box(self) -> Box:
        """What it lies within."""
        x1, y1, x2, y2 = extent(self.loop)
        return x1, y1, self.top, x2, y2, self.bottom

    @property
    def breaks(self) -> tuple[float, ...]:
        """Its top and its bottom."""
        return self.top, self.bottom

    def pieces(self, z: float) -> list[Piece]:
        """Its outline."""
        return list(self.loop)

    def holds(self, x: float, y: float, z: float) -> bool:
        """Whether a point lies in it."""
        return self.top < z < self.bottom and encloses(self.loop, x, y)


@dataclass(frozen=True)
class Cone:
    """A cone frustum standing upright: radius ``upper`` at ``top``, ``lower`` at ``bottom``."""

    x: float
    y: float
    top: float
    upper: float
    bottom: float
    lower: float
    steady: bool = field(default=False, init=False)

    @property
    def box(self) -> Box:
        """What it lies within."""
        r = max(self.upper, self.lower)
        return self.x - r, self.y - r, self.top, self.x + r, self.y + r, self.bottom

    @property
    def breaks(self) -> tuple[float, ...]:
        """Its top and its bottom."""
        return self.top, self.bottom

    def radius(self, z: float) -> float:
        """Its radius at a depth."""
        return self.upper + (z - self.top) / (self.bottom - self.top) * (self.lower - self.upper)

    def pieces(self, z: float) -> list[Piece]:
        """A circle."""
        return list(circle(self.x, self.y, self.radius(z)))

    def holds(self, x: float, y: float, z: float) -> bool:
        """Whether a point lies in it."""
        return self.top < z < self.bottom and math.hypot(x - self.x, y - self.y) < self.radius(z)


@dataclass(frozen=True)
class Lying:
    """A body of one section that runs level along x or y; its loop is in (the other one, z)."""

    along: str
    loop: Loop
    start: float
    end: float
    steady: bool = field(default=False, init=False)

    @cached_property
    def box(self) -> Box:
        """What it lies within."""
        s1, z1, s2, z2 = extent(self.loop)
        if self.along == "x":
            return self.start, s1, z1, self.end, s2, z2
        return s1, self.start, z1, s2, self.end, z2

    @cached_property
    def breaks(self) -> tuple[float, ...]:
        """Depths where pieces of its section join or turn back."""
        found = {self.box[2], self.box[5]}
        for one in self.loop:
            if not (isinstance(one, Arc) and abs(one.turn) > 2 * math.pi - 1e-12):
                found.add(one.at(0.0)[1])
        return tuple(sorted(found))

    def pieces(self, z: float) -> list[Piece]:
        """Rectangles across the plate."""
        found: list[Piece] = []
        for low, high in chords(self.loop, z):
            if self.along == "x":
                found += rectangle(self.start, low, self.end, high)
            else:
                found += rectangle(low, self.start, high, self.end)
        return found

    def holds(self, x: float, y: float, z: float) -> bool:
        """Whether a point lies in it."""
        along, across = (x, y) if self.along == "x" else (y, x)
        return self.start < along < self.end and encloses(self.loop, across, z)


@dataclass(frozen=True)
class EdgeCut:
    """What a chamfer or a round takes off along the outline of the top or bottom face.

    A slice is what lies nearer to the outline than the cut reaches in at that
    depth: convex corners come out sharp, a sharp inner corner is left round, as
    a cutter leaves it.
    """

    outline: Loop
    face: float  # depth of the face
    into: float  # 1 downwards from the top face, -1 upwards from the bottom face
    size: float
    round: bool
    steady: bool = field(default=False, init=False)

    @cached_property
    def box(self) -> Box:
        """What it lies within."""
        x1, y1, x2, y2 = extent(self.outline)
        low, high = sorted((self.face, self.face + self.into * self.size))
        return x1, y1, low, x2, y2, high

    @property
    def breaks(self) -> tuple[float, ...]:
        """The face, and where the edge begins to be whole."""
        return self.box[2], self.box[5]

    def reach(self, z: float) -> float:
        """How far in from the outline it reaches at a depth."""
        deep = (z - self.face) * self.into
        if not 0 <= deep <= self.size:
            return 0.0
        if self.round:
            reach = self.size - math.sqrt(max(self.size**2 - (self.size - deep) ** 2, 0.0))
        else:
            reach = self.size - deep
        return reach if reach > THIN else 0.0

    def pieces(self, z: float) -> list[Piece]:
        """The outline, and the same drawn in by the reach."""
        reach, found = self.reach(z), list(self.outline)
        if not reach:
            return found
        for index, one in enumerate(self.outline):
            if isinstance(one, Line):
                nx, ny = one.normal(0.0)
                found.append(
                    Line(one.x1 + reach * nx, one.y1 + reach * ny, one.x2 + reach * nx, one.y2 + reach * ny)
                )
            else:
                radius = one.radius - math.copysign(reach, one.turn)
                if radius > 1e-9:
                    found.append(Arc(one.x, one.y, radius, one.start, one.turn))
            before = self.outline[index - 1]
            (ax, ay), (bx, by) = before.normal(1.0), one.normal(0.0)
            if ax * by - ay * bx < -1e-9:  # the outline turns inwards without an arc
                found += circle(*one.at(0.0), reach)
        return found

    def holds(self, x: float, y: float, z: float) -> bool:
        """Whether a point lies in it."""
        return self.box[2] < z < self.box[5] and any(
            distance(one, x, y) < self.reach(z) for one in self.outline
        )


def distance(one: Piece, x: float, y: float) -> float:
    """How far a point lies from a piece [mm]."""
    if isinstance(one, Line):
        dx, dy = one.x2 - one.x1, one.y2 - one.y1
        share = ((x - one.x1) * dx + (y - one.y1) * dy) / (dx * dx + dy * dy)
        px, py = one.at(min(max(share, 0.0), 1.0))
        return math.hypot(x - px, y - py)
    angle = math.atan2(y - one.y, x - one.x)
    back = ((angle - one.start) * math.copysign(1.0, one.turn)) % (2 * math.pi)
    if back <= abs(one.turn):
        return abs(math.hypot(x - one.x, y - one.y) - one.radius)
    return min(math.hypot(x - px, y - py) for px, py in (one.at(0.0), one.at(1.0)))
