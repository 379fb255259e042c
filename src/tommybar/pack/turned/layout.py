"""Blocks of marks on a sheet: the main view first, everything else where it has room."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise

from tommybar.pack.boxes import Box, box_of, moved
from tommybar.pack.marks import plain_marks
from tommybar.pack.sheet import Line, Mark

GAP = 6.0  # between blocks [mm]
CELL = 3.0  # of the raster that says what is taken [mm]


@dataclass(frozen=True)
class Block:
    """Marks that belong together, with the box around them."""

    marks: tuple[Mark, ...]
    box: Box

    @property
    def size(self) -> tuple[float, float]:
        """Width and height [mm]."""
        return self.box[2] - self.box[0], self.box[3] - self.box[1]

    def at(self, x: float, y: float) -> list[Mark]:
        """The marks with the top left corner of their box at (x, y)."""
        return moved(self.marks, x - self.box[0], y - self.box[1])


def block(marks: list[Mark]) -> Block:
    """Marks with their box."""
    return Block(tuple(marks), box_of(marks))


def beside(main: Block, other: Block, left: bool) -> Block:
    """Two views on one axis (y = 0 of both), the other one right of the main one or left of it."""
    shift = main.box[0] - GAP - 3.0 - other.box[2] if left else main.box[2] + GAP + 3.0 - other.box[0]
    return block([*main.marks, *moved(other.marks, shift, 0.0)])


def _boxes(marks: tuple[Mark, ...]) -> Iterator[Box]:
    """Boxes of all marks, lines stretch by stretch."""
    for one in plain_marks(marks):
        if isinstance(one, Line):
            points = (*one.points, one.points[0]) if one.closed else one.points
            for (a, b), (c, d) in pairwise(points):
                yield min(a, c), min(b, d), max(a, c), max(b, d)
        else:
            yield box_of([one])


@dataclass
class _Raster:
    """What is taken of an area, a bit a cell."""

    columns: int
    rows: list[int]

    def take(self, box: Box, gap: float) -> None:
        """Mark a box and a gap round it as taken."""
        left = max(math.floor((box[0] - gap) / CELL), 0)
        right = min(math.ceil((box[2] + gap) / CELL), self.columns)
        if right <= left:
            return
        mask = ((1 << (right - left)) - 1) << left
        first = max(math.floor((box[1] - gap) / CELL), 0)
        for n in range(first, min(math.ceil((box[3] + gap) / CELL), len(self.rows))):
            self.rows[n] |= mask

    def free(self, wide: float, tall: float) -> tuple[float, float] | None:
        """The free place that is nearest to the lower edge, of these the leftmost [mm]."""
        w, h = math.ceil(wide / CELL), math.ceil(tall / CELL)
        for top in range(len(self.rows) - h, -1, -1):
            taken = 0
            for row in self.rows[top : top + h]:
                taken |= row
            mask = (1 << w) - 1
            for left in range(self.columns - w + 1):
                if not taken & (mask << left):
                    return left * CELL, top * CELL
        return None


def packed(first: Block, others: list[list[Block]], area: Box) -> list[Mark] | None:
    """The first block and one form of each other one, without a clash inside the area; None if they do not fit.

    Each of ``others`` is one thing in several forms (notes wrapped wider or
    narrower); the first form that has room is taken. The first block stands in
    the middle, or at the top left when that leaves more room.
    """
    width, height = area[2] - area[0], area[3] - area[1]
    wide, tall = first.size
    if wide > width or tall > height:
        return None
    spare_x, spare_y = width - wide, height - tall
    for x, y in (
        (spare_x / 2, spare_y / 2),
        (spare_x / 2, 0.0),
        (0.0, 0.0),
        (spare_x, 0.0),
        (0.0, spare_y / 2),
    ):
        made = _round(first.at(x, y), others, width, height)
        if made is not None:
            return moved(made, area[0], area[1])
    return None


def _round(marks: list[Mark], others: list[list[Block]], width: float, height: float) -> list[Mark] | None:
    """The others placed round what stands already."""
    raster = _Raster(int(width / CELL), [0] * int(height / CELL))
    for box in _boxes(tuple(marks)):
        raster.take(box, GAP - CELL / 2)
    for forms in others:
        for one in forms:
            place = raster.free(*one.size)
            if place is not None:
                break
        else:
            return None
        more = one.at(*place)
        raster.take(box_of(more), GAP - CELL / 2)
        marks = [*marks, *more]
    return marks
