"""Numbers beside the holes of a plate: each where it lies on no outline, no hole and no other number."""

from __future__ import annotations

import math
from collections.abc import Iterable

from tommybar.pack.boxes import Box, box_of, overlap
from tommybar.pack.marks import leader, plain_marks
from tommybar.pack.sheet import Mark, Point, Text

SIZE = 3.6
DIRECTIONS = (
    45,
    135,
    315,
    225,
    0,
    180,
    90,
    270,
    22,
    67,
    112,
    157,
    202,
    247,
    292,
    337,
)  # tried in this order [deg]
STEPS = (0.6, 1.6, 3.0, 6.0, 10.0, 15.0, 22.0, 30.0)  # away from the hole [mm]


def tag_marks(wanted: Iterable[tuple[int, Point, float]], taken: Iterable[Box], outline: Box) -> list[Mark]:
    """Numbers for holes given as (number, place, radius) [mm on paper]; far ones get a leader.

    ``taken`` are boxes that no number may lie on; every hole's own box is
    kept free as well, and no number lies across the outline.
    """
    holes = list(wanted)
    busy = list(taken)
    rounds = [(at, radius) for _, at, radius in holes]
    marks: list[Mark] = []
    for n, at, radius in holes:
        text, step = _free_place(str(n), at, radius, busy, rounds, outline)
        busy.append(text.box)
        marks.append(text)
        if step > 3.0:
            left, top, right, bottom = text.box
            near = (min(max(at[0], left), right), min(max(at[1], top), bottom))
            away = math.hypot(near[0] - at[0], near[1] - at[1])
            if away > radius + 2.0:
                tip = tuple(a + (b - a) * radius / away for a, b in zip(at, near, strict=True))
                marks += leader((tip[0], tip[1]), near)
    return marks


def _free_place(
    words: str, at: Point, radius: float, busy: list[Box], rounds: list[tuple[Point, float]], outline: Box
) -> tuple[Text, float]:
    """The nearest place that is free, and how far it lies from the hole."""
    first = Text(at, words, SIZE, True)
    left, top, right, bottom = first.box
    wide, tall = right - left, bottom - top
    for step in STEPS:
        for degrees in DIRECTIONS:
            c, s = math.cos(math.radians(degrees)), -math.sin(math.radians(degrees))
            away = radius + step + abs(c) * wide / 2 + abs(s) * tall / 2
            x = at[0] + away * c - wide / 2
            y = at[1] + away * s + tall / 2 - (bottom - at[1])
            text = Text((x, y), words, SIZE, True)
            box = text.box
            if (
                not _across(box, outline)
                and not any(overlap(box, one, 0.2) for one in busy)
                and all(_gap(box, centre) > r + 0.5 for centre, r in rounds)
            ):
                return text, step
    return first, STEPS[-1]


def _gap(box: Box, point: Point) -> float:
    """How far a box lies from a point; 0 when the point is in it [mm]."""
    dx = max(box[0] - point[0], 0.0, point[0] - box[2])
    dy = max(box[1] - point[1], 0.0, point[1] - box[3])
    return math.hypot(dx, dy)


def _across(box: Box, outline: Box) -> bool:
    """Whether a box lies on the outline, neither wholly inside nor wholly outside."""
    inside = (
        outline[0] + 0.4 < box[0]
        and outline[1] + 0.4 < box[1]
        and box[2] + 0.4 < outline[2]
        and box[3] + 0.4 < outline[3]
    )
    return not inside and overlap(box, outline, 0.4)


def taken_by(marks: Iterable[Mark]) -> list[Box]:
    """Boxes of all words among the marks."""
    return [box_of([one]) for one in plain_marks(marks) if isinstance(one, Text)]
