"""Distances beside a view, each in the nearest lane in which nothing runs through its words."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field
from typing import Literal

from tommybar.pack.boxes import Box
from tommybar.pack.marks import STUB
from tommybar.pack.sheet import Dimension, Mark, Point, Text

Side = Literal["above", "below", "left", "right"]
SIZE = 4.25
STEP = 7.6  # from one lane below or above a view to the next [mm]
ASIDE = 8.2  # and at its left or right
ABOVE = 1.0  # between a dimension line and its words [mm]
FIT = 7.0  # what arrows need beside the words [mm]
CLEAR = 1.0  # of words from an extension line [mm]
SHIFT = 2.0  # step in which words are moved along their line [mm]


@dataclass(frozen=True)
class Span:
    """A distance between two points of a view, in the part's own millimetres, u to the right and v up.

    ``back`` is where an extension line starts before its point, on paper, so
    that it leaves a circle's centre lines alone.
    """

    side: Side
    a: Point
    b: Point
    value: float
    words: str
    back: tuple[float, float] = (0.0, 0.0)
    datum: bool = False  # a place: its first point is the datum


@dataclass
class _Lane:
    taken: list[tuple[float, float]] = field(default_factory=list)

    def free(self, low: float, high: float) -> bool:
        return all(high + 2.0 < a or b + 2.0 < low for a, b in self.taken)


@dataclass(frozen=True)
class _Set:
    """A span on paper: its ends along the lane, and where its words stand along it."""

    low: float
    high: float
    words: tuple[float, float]
    outside: bool

    @property
    def reach(self) -> tuple[float, float]:
        """From where to where the lane is taken."""
        stub = STUB + 0.5 if self.outside else 0.0
        return min(self.low - stub, self.words[0]), max(self.high + stub, self.words[1])


def laid(spans: Iterable[Span], side: Side, box: Box, scale: float, first: float) -> list[Mark]:
    """The dimensions of one side of a view, the nearest lane ``first`` from the view's box [mm on paper].

    Shorter distances stand nearer to the view; several share a lane where
    they have room side by side.
    """
    level = side in ("above", "below")
    wanted = [one for one in spans if one.side == side]
    ends = {id(one): _ends(one, level, scale) for one in wanted}
    wanted.sort(key=lambda one: (ends[id(one)][1] - ends[id(one)][0], one.datum, ends[id(one)]))
    lanes: list[_Lane] = []
    marks: list[Mark] = []
    for n, one in enumerate(wanted):
        low, high = ends[id(one)]
        later = [t for other in wanted[n + 1 :] for t in ends[id(other)]]
        placed = _worded(one, low, high, later, level)
        number = 0
        while number < len(lanes) and not lanes[number].free(*placed.reach):
            number += 1
        if number == len(lanes):
            lanes.append(_Lane())
        lanes[number].taken.append(placed.reach)
        away = first + number * (STEP if level else ASIDE)
        at = {"above": box[1] - away, "below": box[3] + away, "left": box[0] - away, "right": box[2] + away}[
            side
        ]
        marks.append(_drawn(one, placed, side, at, scale))
    return marks


def _ends(one: Span, level: bool, scale: float) -> tuple[float, float]:
    """Both ends along the lane on paper, y down."""
    axis, sign = (0, 1.0) if level else (1, -1.0)
    found = sorted((one.a[axis] * sign * scale, one.b[axis] * sign * scale))
    return found[0], found[1]


def _worded(one: Span, low: float, high: float, later: list[float], level: bool) -> _Set:
    """The words between the arrows if they have room there, else beyond the datum's end or the other one."""
    wide = Text((0, 0), one.words, SIZE).width
    tried: list[_Set] = []
    if high - low >= wide + FIT:
        middle, spare = (low + high - wide) / 2, (high - low - wide - FIT) / 2
        steps = int(spare / SHIFT)
        for n in range(2 * steps + 1):
            shift = SHIFT * ((n + 1) // 2) * (1 if n % 2 else -1)
            tried.append(_Set(low, high, (middle + shift, middle + shift + wide), False))
    elif high - low >= wide + 1.5:
        tried.append(_Set(low, high, ((low + high - wide) / 2, (low + high + wide) / 2), True))
    before = _Set(low, high, (low - FIT - wide, low - FIT), True)
    behind = _Set(low, high, (high + FIT, high + FIT + wide), True)
    # beyond the datum: to the left of it, or, y down, below it
    tried += [before, behind] if level else [behind, before]
    for placed in tried:
        start, end = placed.words[0] - CLEAR, placed.words[1] + CLEAR
        if not any(start < t < end for t in later):
            return placed
    return tried[0]


def _drawn(one: Span, placed: _Set, side: Side, at: float, scale: float) -> Dimension:
    a, b = ((p[0] * scale, -p[1] * scale) for p in (one.a, one.b))
    start, end = placed.words
    away = {"above": (0.0, -1.0), "below": (0.0, 1.0), "left": (-1.0, 0.0), "right": (1.0, 0.0)}[side]
    a, b = ((p[0] + away[0] * back, p[1] + away[1] * back) for p, back in zip((a, b), one.back, strict=True))
    tail: tuple[Point, ...] = ()
    if side in ("above", "below"):
        text = Text((start, at - ABOVE), one.words, SIZE)
        if placed.outside:
            far = start if end < placed.low else max(end, placed.high)
            tail = ((placed.low if far > placed.high - 1e-9 else placed.high, at), (far, at))
        return Dimension(a, b, "x", at, one.value, (text,), outside=placed.outside, tail=tail)
    text = Text((at - ABOVE, end), one.words, SIZE, turned=True)
    if placed.outside:
        far = start if end < placed.low else max(end, placed.high)
        tail = ((at, placed.low if far > placed.high - 1e-9 else placed.high), (at, far))
    return Dimension(a, b, "y", at, one.value, (text,), outside=placed.outside, tail=tail)
