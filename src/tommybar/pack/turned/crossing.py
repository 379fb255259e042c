"""Whether words of a view are free: no line runs through them and no other words lie on them."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from itertools import pairwise

from tommybar.pack.boxes import Box
from tommybar.pack.marks import plain_marks
from tommybar.pack.sheet import Arc, Line, Mark, Point, Text

SPARE = 0.4  # between words and a line [mm]


def clear(words: Sequence[Text], marks: Iterable[Mark]) -> bool:
    """Whether none of the words lies on other words or on a line of the marks."""
    boxes = [(b[0] - SPARE, b[1] - SPARE, b[2] + SPARE, b[3] + SPARE) for b in (text.box for text in words)]
    for one in plain_marks(marks):
        if isinstance(one, Text):
            there = one.box
            if any(
                one is not text
                and there[0] < b[2]
                and b[0] < there[2]
                and there[1] < b[3]
                and b[1] < there[3]
                for text, b in zip(words, boxes, strict=True)
            ):
                return False
        elif isinstance(one, Line | Arc):
            stretches = list(pairwise(_points(one)))
            if any(crosses(a, b, box) for a, b in stretches for box in boxes):
                return False
    return True


def _points(one: Line | Arc) -> list[Point]:
    if isinstance(one, Line):
        return [*one.points, one.points[0]] if one.closed else list(one.points)
    at = [math.radians(one.start + (one.end - one.start) * k / 48) for k in range(49)]
    (x, y), r = one.centre, one.radius
    return [(x + r * math.cos(a), y - r * math.sin(a)) for a in at]


def crosses(a: Point, b: Point, box: Box) -> bool:
    """Whether a stretch of line runs through a box."""
    low, high = 0.0, 1.0
    for p, q, small, large in ((a[0], b[0], box[0], box[2]), (a[1], b[1], box[1], box[3])):
        if abs(q - p) < 1e-9:
            if not small < p < large:
                return False
            continue
        s, t = sorted(((small - p) / (q - p), (large - p) / (q - p)))
        low, high = max(low, s), min(high, t)
    return low < high
