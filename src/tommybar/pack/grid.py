"""Tables on a sheet: measured columns, wrapped cells, rules, and a turn to the next page."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from tommybar.pack.lettering import width_of, wrapped
from tommybar.pack.sheet import LINE_STEP, Line, Mark, Text

Align = Literal["start", "end"]


@dataclass(frozen=True)
class Column:
    """A column: its heading, width [mm] (0: as wide as its words), and which side it keeps to."""

    head: str
    width: float = 0.0
    align: Align = "start"
    bold: bool = False


@dataclass(frozen=True)
class Grid:
    """A table laid out on one page: its marks, height, and how many rows it took."""

    marks: tuple[Mark, ...]
    height: float
    taken: int
    width: float


def column_widths(
    columns: Sequence[Column], rows: Sequence[Sequence[str]], width: float, size: float
) -> list[float]:
    """Widths of all columns within ``width``; wishes of 0 share what is left by what their words need."""
    need = []
    for i, column in enumerate(columns):
        longest = max(
            [width_of(column.head, size, True), *(width_of(row[i], size, column.bold) for row in rows)]
        )
        need.append(column.width or longest + 3.0)
    if sum(need) <= width:
        return need
    loose = {i for i, column in enumerate(columns) if not column.width and need[i] > 30.0}
    room = width - sum(n for i, n in enumerate(need) if i not in loose)
    if not loose or room < 24.0 * len(loose):
        return _squeezed(need, columns, rows, width, size)
    while loose:  # longer words get more, but by the root only; who needs less than that takes what it needs
        share = room / sum(math.sqrt(need[i]) for i in loose)
        content = {i for i in loose if need[i] <= share * math.sqrt(need[i])}
        if not content:
            break
        room -= sum(need[i] for i in content)
        loose -= content
    for i in loose:
        need[i] = share * math.sqrt(need[i])
    return need


def _squeezed(
    need: list[float], columns: Sequence[Column], rows: Sequence[Sequence[str]], width: float, size: float
) -> list[float]:
    """Columns narrowed alike, none below its longest word as long as these have room beside one another."""
    words = [
        max(
            width_of(word, size, bold or column.bold)
            for line, bold in ((column.head, True), *((row[i], False) for row in rows))
            for word in line.split() or [""]
        )
        + 3.0
        for i, column in enumerate(columns)
    ]
    spare = width - sum(words)
    if spare < 0:
        return [n * width / sum(need) for n in need]
    more = [max(n - least, 0.0) for n, least in zip(need, words, strict=True)]
    share = min(spare / sum(more), 1.0) if sum(more) > 0 else 0.0
    return [least + share * one for least, one in zip(words, more, strict=True)]


def grid(
    columns: Sequence[Column],
    rows: Sequence[Sequence[str]],
    x: float,
    y: float,
    width: float,
    bottom: float,
    size: float = 3.9,
) -> Grid:
    """As many rows as fit above ``bottom``, with the heading on top; (x, y) is the top left corner."""
    widths = column_widths(columns, rows, width, size)
    step = size * LINE_STEP
    marks: list[Mark] = []
    total = sum(widths)

    def put(cells: Sequence[tuple[str, ...]], top: float, bold: bool) -> None:
        left = x
        for column, cell, wide in zip(columns, cells, widths, strict=True):
            for n, words in enumerate(cell):
                at = left + wide - 2.0 if column.align == "end" else left + 0.8
                base = top + 0.95 + 0.72 * size + n * step
                marks.append(Text((at, base), words, size, bold or column.bold, column.align))
            left += wide

    put([(column.head,) if column.head else () for column in columns], y, True)
    y_now = y + step + 2.2
    marks.append(Line(((x, y_now), (x + total, y_now)), "thick"))
    taken = 0
    for row in rows:
        cells = [
            wrapped(words, wide - 2.6, size, column.bold)
            for words, wide, column in zip(row, widths, columns, strict=True)
        ]
        height = max([1, *(len(cell) for cell in cells)]) * step + 1.7
        if y_now + height > bottom:
            break
        put(cells, y_now, False)
        y_now += height
        marks.append(Line(((x, y_now), (x + total, y_now)), "thin"))
        taken += 1
    return Grid(tuple(marks), y_now - y, taken, total)
