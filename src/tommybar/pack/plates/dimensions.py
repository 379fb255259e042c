"""Distances from the datum corner of a plate, each in a lane of its own, and the letters of its datums."""

from __future__ import annotations

from dataclasses import dataclass

from tommybar.pack.marks import leader
from tommybar.pack.plates.letters import free_along
from tommybar.pack.sheet import Area, Dimension, Line, Mark, Point, Text

SIZE = 4.25
STEP = 7.6
ABOVE = 1.0  # between a dimension line and its words [mm]
FIT = 7.0  # what arrows need beside the words [mm]


@dataclass(frozen=True)
class Lane:
    """A distance from the datum corner: the model's figure [mm], its words, and where its far line starts."""

    value: float
    words: str
    start: float = 0.0  # of the far extension line, across the lane [mm on paper]


def lanes_below(lanes: list[Lane], scale: float, level: float) -> list[Mark]:
    """Distances along x, below a view whose datum corner is at (0, 0)."""
    marks: list[Mark] = []
    for lane in lanes:
        span, wide = lane.value * scale, Text((0, 0), lane.words, SIZE).width
        outside = span < wide + FIT
        at = (-FIT, level - ABOVE) if outside else (span / 2, level - ABOVE)
        text = Text(at, lane.words, SIZE, anchor="end" if outside else "middle")
        tail = ((0.0, level), (-FIT - wide, level)) if outside else ()
        marks.append(
            Dimension(
                (0.0, 0.0), (span, lane.start), "x", level, lane.value, (text,), outside=outside, tail=tail
            )
        )
        level += STEP
    return marks


def lanes_left(lanes: list[Lane], scale: float, at: float = -10.0) -> tuple[list[Mark], float]:
    """Distances along y, left of a view whose datum corner is at (0, 0); and the room that they take below it."""
    marks: list[Mark] = []
    below = 0.0
    for lane in lanes:
        span, wide = lane.value * scale, Text((0, 0), lane.words, SIZE).width
        fits = span > wide + FIT
        low = -span / 2 + wide / 2 if fits else FIT + wide
        text = Text((at - ABOVE, low), lane.words, SIZE, turned=True)
        tail = () if fits else ((at, 0.0), (at, FIT + wide))
        below = below if fits else max(below, wide + 2.5)
        marks.append(
            Dimension(
                (0.0, 0.0), (lane.start, -span), "y", at, lane.value, (text,), outside=not fits, tail=tail
            )
        )
        at -= STEP + 0.6
    return marks, below


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
