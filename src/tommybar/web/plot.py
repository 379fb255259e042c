"""A small writer of plots as SVG: axes with round ticks, bars, curves, and words that never lie on other words."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from html import escape
from itertools import pairwise

from tommybar.pack.lettering import width_of

WIDE = 400.0  # of a plot, in its own units
SIZE = 15.0  # of its words
LINE = 20.0  # from one line of words to the next
Box = tuple[float, float, float, float]  # left, top, right, bottom


def round_ticks(low: float, high: float, most: int = 6) -> tuple[float, ...]:
    """Round figures from at or below ``low`` to at or above ``high``, 1, 2 or 5 times a power of ten apart.

    Examples
    --------
    >>> round_ticks(0.0, 480.0)
    (0.0, 100.0, 200.0, 300.0, 400.0, 500.0)
    >>> round_ticks(-22.0, 12.0)
    (-30.0, -20.0, -10.0, 0.0, 10.0, 20.0)
    """
    if high - low <= 1e-9 * max(abs(high), abs(low)):  # one figure alone: an axis of some length all the same
        high = low + (abs(low) or 1.0)
    power = 10.0 ** math.floor(math.log10((high - low) / most))
    for step in (power, 2 * power, 5 * power, 10 * power, 20 * power):
        first, last = math.floor(low / step + 1e-9), math.ceil(high / step - 1e-9)
        if last - first < most:
            break
    return tuple(round(n * step, 12) for n in range(first, last + 1))


def tick_words(ticks: Sequence[float]) -> tuple[str, ...]:
    """Ticks with as many decimals as their step has."""
    step = ticks[1] - ticks[0]
    decimals = max(0, -math.floor(math.log10(step) + 1e-9))
    return tuple(f"{one:.{decimals}f}".replace("-", "–") for one in ticks)


@dataclass(frozen=True)
class Scale:
    """Figures along one side of a plot."""

    ticks: tuple[float, ...]
    start: float  # place of the first tick
    end: float  # place of the last

    def __call__(self, value: float) -> float:
        """Where a figure lies."""
        low, high = self.ticks[0], self.ticks[-1]
        return self.start + (value - low) / (high - low) * (self.end - self.start)


@dataclass
class Plot:
    """A picture that grows; it remembers where words stand."""

    height: float
    body: list[str] = field(default_factory=list)
    taken: list[Box] = field(default_factory=list)

    def words(
        self, x: float, y: float, words: str, anchor: str = "start", bold: bool = False, plain: bool = False
    ) -> None:
        """Write words with their baseline at y; ``plain`` without the paper that keeps lines off them."""
        self.taken.append(box_of(x, y, words, anchor, bold))
        kind = anchor + (" bold" if bold else "") + (" plain" if plain else "")
        self.body.append(f'<text class="{kind}" x="{x:.1f}" y="{y:.1f}">{escape(words)}</text>')

    def fits(self, box: Box) -> bool:
        """Whether words may stand there: inside the picture and off all others."""
        inside = box[0] >= 0 and box[1] >= 0 and box[2] <= WIDE and box[3] <= self.height
        return inside and not any(_meet(box, one) for one in self.taken)

    def words_at_best(
        self, words: str, places: Iterable[tuple[float, float, str]], bold: bool = False
    ) -> bool:
        """Write words at the first place where nothing is in the way; False when there is none."""
        for x, y, anchor in places:
            if self.fits(box_of(x, y, words, anchor, bold)):
                self.words(x, y, words, anchor, bold)
                return True
        return False

    def line(self, kind: str, *points: tuple[float, float]) -> None:
        """A line through points."""
        path = "M" + "L".join(f"{x:.2f} {y:.2f}" for x, y in points)
        self.body.append(f'<path class="{kind}" d="{path}"/>')

    def bar(self, kind: str, left: float, top: float, right: float, bottom: float) -> None:
        """A bar; one without width is drawn as a stroke."""
        if right - left < 2:
            middle = (left + right) / 2
            left, right = middle - 1.5, middle + 1.5
        self.body.append(
            f'<rect class="{kind}" x="{left:.2f}" y="{top:.2f}" width="{right - left:.2f}" height="{bottom - top:.2f}"/>'
        )

    def across(self, ticks: tuple[float, ...], left: float, right: float, y: float, caption: str) -> Scale:
        """An axis along the foot, its caption under it at the right."""
        scale = Scale(ticks, left, right)
        for at, words in zip(ticks, tick_words(ticks), strict=True):
            self.line("tick", (scale(at), y), (scale(at), y + 5))
            self.words(scale(at), y + 5 + SIZE, words, "middle")
        self.line("axis-line", (left, y), (right, y))
        self.words(WIDE - 4, y + 9 + SIZE + LINE, caption, "end")
        return scale

    def svg(self, told: str) -> str:
        """The picture; ``told`` says in words what it shows."""
        return (
            f'<svg class="plot" viewBox="0 0 {WIDE:.0f} {self.height:.0f}" role="img"><title>{escape(told)}</title>'
            + "".join(self.body)
            + "</svg>"
        )


def box_of(x: float, y: float, words: str, anchor: str, bold: bool = False) -> Box:
    """The room that words take, with a little air."""
    wide = width_of(words, SIZE, bold)
    left = x - {"start": 0.0, "middle": wide / 2, "end": wide}[anchor]
    return (left - 2, y - SIZE * 0.8, left + wide + 2, y + SIZE * 0.25)


def _meet(one: Box, other: Box) -> bool:
    return one[0] < other[2] and other[0] < one[2] and one[1] < other[3] and other[1] < one[3]


def crosses(box: Box, points: Sequence[tuple[float, float]]) -> bool:
    """Whether a curve runs through a box."""
    for (x0, y0), (x1, y1) in pairwise(points):
        for step in range(9):
            x, y = x0 + (x1 - x0) * step / 8, y0 + (y1 - y0) * step / 8
            if box[0] < x < box[2] and box[1] < y < box[3]:
                return True
    return False
