"""From the words of a row of hole_circles.csv to a call of public functions."""

from __future__ import annotations

import re

from tommybar.facts.circles import CORNER, chord, hole_circle

from .frame import Computed, Row, Unmapped

LEFT_OUT: dict[str, str] = {}

_FACTOR = re.compile(r"^n=(\d+)(?: hole (\d+))?$")
_PLACED = re.compile(
    r"^(\d+) holes, D=([\d.]+), centre \((-?[\d.]+), (-?[\d.]+)\), first hole at (-?[\d.]+) deg: hole (\d+)$"
)
_DISTANCE = re.compile(
    r"^(centre distance of neighbouring|widest distance between two) holes, (\d+) on ([\d.]+) mm$"
)
_SQUARE = re.compile(r"^square round the circle, (\d+) holes on ([\d.]+): lower-left origin hole (\d+)$")


def expected_call(row: Row) -> Computed:
    """What the program computes for this row."""
    if match := _FACTOR.match(row.item):
        if match[2] is None:
            return chord(int(match[1]), 1.0)
        hole = hole_circle(int(match[1]), 1.0)[int(match[2]) - 1]
        return hole.x, hole.y
    if match := _PLACED.match(row.item):
        centre = float(match[3]), float(match[4])
        hole = hole_circle(int(match[1]), float(match[2]), float(match[5]), centre=centre)[int(match[6]) - 1]
        return hole.x, hole.y
    if match := _DISTANCE.match(row.item):
        count = int(match[2])
        return chord(count, float(match[3]), count // 2 if match[1].startswith("widest") else 1)
    if match := _SQUARE.match(row.item):
        hole = hole_circle(int(match[1]), float(match[2]), convention=CORNER)[int(match[3]) - 1]
        return hole.x, hole.y
    raise Unmapped(row.item)
