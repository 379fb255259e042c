"""Letters beside features of a view: each on no line, no word and no other letter."""

from __future__ import annotations

import math
from collections.abc import Iterable
from itertools import pairwise

import numpy as np

from tommybar.pack.boxes import Box, overlap
from tommybar.pack.marks import leader, plain_marks
from tommybar.pack.sheet import Arc, Area, Line, Mark, Point, Text

SIZE = 3.6
WAYS = (45, 135, 315, 225, 22, 67, 112, 157, 202, 247, 292, 337, 0, 90, 180, 270)  # tried in this order [deg]
STEPS = (0.5, 1.4, 2.6, 4.5, 7.0, 10.0, 14.0, 19.0, 25.0, 32.0, 40.0)  # away from the feature [mm]
CLEAR = 0.35  # of a letter from any line [mm]
Wanted = tuple[str, Point, float]  # letter, place and radius [mm on paper]


def segments_of(marks: Iterable[Mark]) -> list[tuple[float, float, float, float]]:
    """Every line of some marks in straight stretches."""
    found: list[tuple[float, float, float, float]] = []
    for one in plain_marks(marks):
        if isinstance(one, Line):
            points = (*one.points, one.points[0]) if one.closed else one.points
            found += [(*a, *b) for a, b in pairwise(points)]
        elif isinstance(one, Arc):
            span = one.end - one.start
            steps = max(8, int(abs(span) / 8))
            at = [math.radians(one.start + span * k / steps) for k in range(steps + 1)]
            ring = [
                (one.centre[0] + one.radius * math.cos(a), one.centre[1] - one.radius * math.sin(a))
                for a in at
            ]
            found += [(*a, *b) for a, b in pairwise(ring)]
        elif isinstance(one, Area) and one.kind:
            for points in one.rings:
                found += [(*a, *b) for a, b in zip(points, (*points[1:], points[0]), strict=True)]
    return found


class Lines:
    """Asks whether a line runs through a box."""

    def __init__(self, marks: Iterable[Mark]) -> None:
        self.ends = np.array(segments_of(marks), dtype=np.float64).reshape(-1, 4)

    def add(self, marks: Iterable[Mark]) -> None:
        """More lines."""
        more = np.array(segments_of(marks), dtype=np.float64).reshape(-1, 4)
        self.ends = np.concatenate([self.ends, more])

    def crossed(self, a: Point, b: Point, spare: float = 0.6) -> bool:
        """Whether a stretch from a to b, without ``spare`` mm at each end, crosses any line."""
        return self.crossings(a, b, spare) > 0

    def crossings(self, a: Point, b: Point, spare: float = 0.6) -> int:
        """How many lines a stretch from a to b, without ``spare`` mm at each end, crosses."""
        long = math.hypot(b[0] - a[0], b[1] - a[1])
        if len(self.ends) == 0 or long <= 2 * spare:
            return 0
        ux, uy = (b[0] - a[0]) / long, (b[1] - a[1]) / long
        ax, ay = a[0] + spare * ux, a[1] + spare * uy
        dx, dy = (long - 2 * spare) * ux, (long - 2 * spare) * uy
        px, py, qx, qy = self.ends.T
        rx, ry = qx - px, qy - py
        across = dx * ry - dy * rx
        safe = np.where(np.abs(across) < 1e-12, 1.0, across)
        t = ((px - ax) * ry - (py - ay) * rx) / safe
        s = ((px - ax) * dy - (py - ay) * dx) / safe
        return int(((np.abs(across) >= 1e-12) & (t >= 0) & (t <= 1) & (s >= 0) & (s <= 1)).sum())

    def through(self, box: Box) -> bool:
        """Whether any stretch of line has a part in the box."""
        if len(self.ends) == 0:
            return False
        low, high = np.zeros(len(self.ends)), np.ones(len(self.ends))
        out = np.zeros(len(self.ends), dtype=bool)
        for p, q, small, large in (
            (self.ends[:, 0], self.ends[:, 2], box[0], box[2]),
            (self.ends[:, 1], self.ends[:, 3], box[1], box[3]),
        ):
            run = q - p
            still = np.abs(run) < 1e-9
            out |= still & ((p <= small) | (p >= large))
            safe = np.where(still, 1.0, run)
            s, t = (small - p) / safe, (large - p) / safe
            low = np.where(still, low, np.maximum(low, np.minimum(s, t)))
            high = np.where(still, high, np.minimum(high, np.maximum(s, t)))
        return bool((~out & (low < high)).any())


def letter_marks(wanted: Iterable[Wanted], marks: list[Mark]) -> list[Mark]:
    """Letters for features of a view that is drawn already; one that stands away gets a leader."""
    lines = Lines(marks)
    busy = [one.box for one in plain_marks(marks) if isinstance(one, Text)]
    made: list[Mark] = []
    for words, at, radius in wanted:
        text, way = _free(words, at, radius, busy, lines)
        busy.append(text.box)
        made.append(text)
        if way is not None:
            drawn = leader(*way)
            lines.add(drawn)
            made += drawn
    return made


def _leads(text: Text, at: Point, radius: float, step: float) -> tuple[Point, Point] | None:
    """From where to where a letter that stands away has its leader."""
    left, top, right, bottom = text.box
    near = (min(max(at[0], left), right), min(max(at[1], top), bottom))
    away = math.hypot(near[0] - at[0], near[1] - at[1])
    if step <= 2.0 or away <= radius + 4.0:
        return None
    return (at[0] + (near[0] - at[0]) * radius / away, at[1] + (near[1] - at[1]) * radius / away), near


def _free(
    words: str, at: Point, radius: float, busy: list[Box], lines: Lines
) -> tuple[Text, tuple[Point, Point] | None]:
    """The nearest place where neither a letter nor its leader lies on anything that is read."""
    first = Text(at, words, SIZE, True)
    left, top, right, bottom = first.box
    wide, tall = right - left, bottom - top
    for step in STEPS:
        for degrees in WAYS:
            c, s = math.cos(math.radians(degrees)), -math.sin(math.radians(degrees))
            away = radius + step + abs(c) * wide / 2 + abs(s) * tall / 2
            x = at[0] + away * c - wide / 2
            y = at[1] + away * s + tall / 2 - (bottom - at[1])
            text = Text((x, y), words, SIZE, True)
            b = text.box
            room = (b[0] - CLEAR, b[1] - CLEAR, b[2] + CLEAR, b[3] + CLEAR)
            if any(overlap(room, one) for one in busy) or lines.through(room):
                continue
            way = _leads(text, at, radius, step)
            if way is None or not any(Lines([Line(way)]).through(one) for one in busy):
                return text, way
    return first, None


def free_along(places: Iterable[Point], half: float, marks: list[Mark]) -> int:
    """The first of some places about which a square is free of lines and words; 0 when none is."""
    lines = Lines(marks)
    busy = [one.box for one in plain_marks(marks) if isinstance(one, Text)]
    for n, (x, y) in enumerate(places):
        room = (x - half, y - half, x + half, y + half)
        if not any(overlap(room, one) for one in busy) and not lines.through(room):
            return n
    return 0
