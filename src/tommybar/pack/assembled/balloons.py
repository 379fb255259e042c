"""Numbers in circles beside a picture: two columns, leaders that cross neither one another nor a circle."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from tommybar.pack.boxes import Box, spread
from tommybar.pack.plates.letters import Lines
from tommybar.pack.sheet import Arc, Area, Line, Mark, Text

RADIUS = 4.2  # of a balloon [mm]
ROOM = 11.0  # from one balloon to the next [mm]
AWAY = 11.0  # from the picture to the middle of its balloons [mm]
Spot = tuple[float, float]


@dataclass(frozen=True)
class Balloon:
    """A numbered circle and the place that its leader points to [mm on paper]."""

    words: str
    middle: Spot
    tip: Spot


def balloons_of(
    wanted: list[tuple[str, tuple[Spot, ...]]], around: Box, drawn: Sequence[Mark] = ()
) -> list[Balloon]:
    """A balloon for each number, left or right of the picture.

    Of the places that a part offers, a leader goes to the one on the way to
    which it runs over the fewest lines of what is ``drawn``.
    """
    lines = Lines(drawn)
    left, top, right, bottom = around
    middle = (left + right) / 2
    means = [(words, spots, sum(x for x, _ in spots) / len(spots)) for words, spots in wanted]
    ranked = sorted(means, key=lambda one: one[2])
    half = len(ranked) // 2
    sides = [ranked[:half], ranked[half:]] if _uneven(ranked, middle) else [
        [one for one in ranked if one[2] < middle], [one for one in ranked if one[2] >= middle],
    ]  # fmt: skip
    made: list[Balloon] = []
    for side, x in zip(sides, (left - AWAY, right + AWAY), strict=True):
        made += _column([(words, spots) for words, spots, _ in side], x, top, bottom, lines)
    return made


def _uneven(ranked: list[tuple[str, tuple[Spot, ...], float]], middle: float) -> bool:
    low = sum(one[2] < middle for one in ranked)
    return min(low, len(ranked) - low) < len(ranked) / 4


def _column(
    wanted: list[tuple[str, tuple[Spot, ...]]], x: float, top: float, bottom: float, lines: Lines
) -> list[Balloon]:
    def way(spot: Spot) -> tuple[float, float, float]:
        return lines.crossings((x, spot[1]), spot), abs(spot[0] - x), spot[1]

    near = [(words, min(spots, key=way)) for words, spots in wanted]
    near.sort(key=lambda one: (one[1][1], one[1][0]))
    places = spread([tip[1] for _, tip in near], [ROOM] * len(near), top + RADIUS, bottom + RADIUS)
    tips = list(near)
    for _ in range(len(tips) ** 2):  # swap two whose leaders cross until none do; each swap shortens the sum
        pair = next(
            (
                (i, j)
                for i in range(len(tips))
                for j in range(i + 1, len(tips))
                if crossing((x, places[i]), tips[i][1], (x, places[j]), tips[j][1])
            ),
            None,
        )
        if pair is None:
            break
        i, j = pair
        tips[i], tips[j] = tips[j], tips[i]
    return [Balloon(words, (x, y), tip) for (words, tip), y in zip(tips, places, strict=True)]


def crossing(a: Spot, b: Spot, c: Spot, d: Spot) -> bool:
    """Whether two stretches of line cross."""

    def side(p: Spot, q: Spot, r: Spot) -> float:
        return (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0])

    return side(a, b, c) * side(a, b, d) < 0 and side(c, d, a) * side(c, d, b) < 0


def balloon_marks(balloons: list[Balloon]) -> list[Mark]:
    """Circles, numbers and leaders that end in a dot on the part (ISO 6433)."""
    marks: list[Mark] = []
    for one in balloons:
        (x, y), (tx, ty) = one.middle, one.tip
        away = math.hypot(tx - x, ty - y) or 1.0
        start = (x + RADIUS * (tx - x) / away, y + RADIUS * (ty - y) / away)
        dot = tuple((tx + 0.6 * math.cos(a), ty + 0.6 * math.sin(a)) for a in _round())
        marks += [
            Line((start, one.tip), "thin"),
            Area((dot,), "black", None),
            Arc(one.middle, RADIUS, "rule"),
            Text((x, y + 1.5), one.words, 4.25, True, "middle"),
        ]
    return marks


def _round() -> list[float]:
    return [math.tau * n / 12 for n in range(12)]
