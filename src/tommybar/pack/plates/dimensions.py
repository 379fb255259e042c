"""Distances from the datum corner of a plate, each in a lane of its own, and the letters of its datums."""

from __future__ import annotations

from tommybar.pack.marks import leader
from tommybar.pack.plates.letters import free_along
from tommybar.pack.sheet import Area, Dimension, Line, Mark, Point, Text

SIZE = 4.25


def height_right(x: float, base: float, value: float, words: str, scale: float, clear: float) -> list[Mark]:
    """A height at the right of a view that ends at x, from its lower edge at ``base`` up, right of ``clear`` [mm]."""
    top, line = base - value * scale, max(x + 10.0, clear + 6.0)
    text = Text((line + 2.5, (base + top) / 2 + 1.4), words, SIZE)
    return [Dimension((x, base), (x, top), "y", line, value, (text,), outside=value * scale < 9.0)]


def datum_on_edge(letter: str, start: Point, end: Point, way: Point, marks: list[Mark]) -> list[Mark]:
    """A datum letter on an edge, at the first place from ``start`` on where it lies on nothing."""
    feet = [
        (start[0] + (end[0] - start[0]) * n / 24, start[1] + (end[1] - start[1]) * n / 24) for n in range(25)
    ]
    middles = [(x + 6.2 * way[0], y + 6.2 * way[1]) for x, y in feet]
    return datum_marks(letter, feet[free_along(middles, 3.0, marks)], way)


def datum_marks(letter: str, foot: Point, way: Point) -> list[Mark]:
    """A datum letter in its box, its triangle on the outline at ``foot``, standing off along ``way``."""
    (x, y), (dx, dy) = foot, way
    side = (1.6 * dy, 1.6 * dx)
    tip = (x + 2.4 * dx, y + 2.4 * dy)
    ring = ((x - side[0], y - side[1]), (x + side[0], y + side[1]), tip)
    cx, cy = x + 6.0 * dx, y + 6.0 * dy
    box = ((cx - 2.6, cy - 2.6), (cx + 2.6, cy - 2.6), (cx + 2.6, cy + 2.6), (cx - 2.6, cy + 2.6))
    return [
        Area((ring,), "black", None),
        Line((tip, (x + 3.4 * dx, y + 3.4 * dy)), "thin"),
        Area((box,), "white", "rule"),
        Text((cx, cy + 1.4), letter, SIZE, True, "middle"),
    ]


def section_marks(y: float, left: float, right: float) -> list[Mark]:
    """Where a section is cut in a view from above: a chain line, its ends thick, arrows the way it is seen."""
    marks: list[Mark] = [Line(((left - 2.0, y), (right + 2.0, y)), "chain")]
    for x, out in ((left, -1.0), (right, 1.0)):
        marks.append(Line(((x + 2.0 * out, y), (x + 6.0 * out, y)), "thick"))
        tip = (x + 5.0 * out, y - 0.4)
        marks += leader(tip, (x + 5.0 * out, y + 4.6))
    return marks
