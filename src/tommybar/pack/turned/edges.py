"""Edges of undefined shape, as one sign for those outside and one for those inside (ISO 13715)."""

from __future__ import annotations

from tommybar.pack.sheet import LINE_STEP, Line, Mark, Text
from tommybar.pack.units import Reader

UNDEFINED = 0.2  # taken off outside, left on inside, at most; common practice, no source [mm]
ARM = 5.4  # of the upright arm of the sign [mm]
LEADER = 2.6  # how far the slanting line reaches down and to the left of its corner [mm]
GAP = 1.2  # between figures, words and lines [mm]


def edge_sign(x: float, y: float, figure: str, size: float) -> tuple[list[Mark], float]:
    """The sign with the corner of its right angle at (x, y), its figure within; and where it ends on the right.

    A slanting line from the edge to the corner of a right angle, one arm
    upright, the other under the figure; minus takes material off, plus
    leaves it on (ISO 13715, from memory).
    """
    text = Text((x + GAP, y - GAP), figure, size)
    right = x + 2 * GAP + text.width
    marks: list[Mark] = [
        Line(((x - LEADER, y + LEADER), (x, y)), "thin"),
        Line(((x, y - ARM), (x, y), (right, y)), "rule"),
        text,
    ]
    return marks, right


def edge_rows(y: float, width: float, size: float, reader: Reader) -> tuple[list[Mark], float]:
    """A note of both signs, its first base line at y, and the base line of the next note [mm]."""
    small = reader.free(UNDEFINED)
    lead = Text((0.0, y), "– Other edges ISO 13715", size)
    marks: list[Mark] = [lead]
    x = lead.width + 2 * GAP + LEADER
    signs = [(f"–{small}", "outside"), (f"+{small}", "inside")]
    long = sum(LEADER + 5 * GAP + Text((0, 0), figure + words, size).width for figure, words in signs)
    if x + long > width:
        y += size * LINE_STEP + ARM - size
        x = LEADER
    else:
        for n, one in enumerate(marks):
            assert isinstance(one, Text)
            marks[n] = Text((0.0, y + ARM - size), one.words, size)
        y += ARM - size
    for figure, words in signs:
        sign, x = edge_sign(x, y + GAP, figure, size)
        marks += [*sign, Text((x + GAP, y), words, size)]
        x += 3 * GAP + LEADER + Text((0, 0), words, size).width
    return marks, y + LEADER + GAP + size
