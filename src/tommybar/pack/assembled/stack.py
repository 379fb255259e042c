"""Lists under one another in a column, or in columns on a page: no list leaves a row or two alone."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from tommybar.pack.boxes import Box
from tommybar.pack.grid import Column, Grid, column_widths, grid
from tommybar.pack.lettering import width_of, wrapped
from tommybar.pack.sheet import LINE_STEP, Mark, Text

NOTE = 3.7
TITLE = 5.2
APART = 6.0  # between two lists, and between two columns [mm]
LEAST = 3  # rows of a list that may stand before or after a break
FORMS = ((1, 3.7), (1, 3.3), (2, 3.7), (2, 3.3))  # columns of a page and size of type, tried in this order


@dataclass(frozen=True)
class Listed:
    """A list with its title."""

    title: str
    columns: Sequence[Column]
    rows: tuple[tuple[str, ...], ...]
    narrow: Listed | None = None  # the same in fewer columns, where its words have no room side by side

    def within(self, width: float, size: float) -> Listed | None:
        """The form whose longest words have room in their columns; None when none has."""
        widths = column_widths(self.columns, self.rows, width, size)
        for n, column in enumerate(self.columns):
            words = [(column.head, True), *((row[n], column.bold) for row in self.rows)]
            longest = max(width_of(word, size, bold) for line, bold in words for word in line.split() or [""])
            if longest + 2.6 > widths[n]:
                return self.narrow.within(width, size) if self.narrow else None
        if self.narrow is not None and self.narrow.within(width, size):
            return min((self, self.narrow), key=lambda one: one.height(width, size))
        return self

    def height(self, width: float, size: float) -> float:
        """Height of its table in a column that is high enough [mm]."""
        return grid(self.columns, self.rows, 0.0, 0.0, width, 1e9, size).height


@dataclass(frozen=True)
class Stacked:
    """What a column or a page holds, and what is left over."""

    marks: tuple[Mark, ...]
    left: list[Listed]
    words: list[str]

    @property
    def over(self) -> int:
        """Rows and lines left over."""
        return sum(len(one.rows) + 1 for one in self.left) + len(self.words)


def stacked(lists: list[Listed], words: list[str], area: Box, size: float) -> Stacked:
    """Whole lists, then words, as far as they have room in an area; what does not stays over.

    A list that is too long for an empty column is broken, so that it goes on elsewhere.
    """
    marks: list[Mark] = []
    y = area[1]
    left = list(lists)
    while left:
        one = left[0].within(area[2] - area[0], size)
        if one is None:
            return Stacked(tuple(marks), left, words)
        table = _table(one, y, area, size)
        whole = table is not None and table.taken == len(one.rows)
        if table is None or not (whole or y == area[1]):
            return Stacked(tuple(marks), left, words)
        if not whole:
            table, rest = _broken(one, table.taken, y, area, size)
            marks += [Text((area[0], y + TITLE), one.title, TITLE, True), *table.marks]
            return Stacked(tuple(marks), [rest, *left[1:]], words)
        marks += [Text((area[0], y + TITLE), one.title, TITLE, True), *table.marks]
        y += TITLE + 2.8 + table.height + APART
        left = left[1:]
    for n, note in enumerate(words):
        lines = wrapped(note, area[2] - area[0], NOTE)
        if y + len(lines) * NOTE * LINE_STEP > area[3]:
            return Stacked(tuple(marks), [], words[n:])
        for line in lines:
            marks.append(Text((area[0], y + NOTE), line, NOTE))
            y += NOTE * LINE_STEP
    return Stacked(tuple(marks), [], [])


def _table(one: Listed, y: float, area: Box, size: float) -> Grid | None:
    top = y + TITLE + 2.8
    if top > area[3] - 12.0:
        return None
    return grid(one.columns, one.rows, area[0], top, area[2] - area[0], area[3], size)


def _broken(one: Listed, taken: int, y: float, area: Box, size: float) -> tuple[Grid, Listed]:
    """As many rows as leave at least LEAST for the next column, and the rest."""
    taken = max(min(taken, len(one.rows) - LEAST), 1)
    title = one.title if one.title.endswith(", continued") else f"{one.title}, continued"
    table = _table(replace(one, rows=one.rows[:taken]), y, area, size)
    assert table is not None
    return table, Listed(title, one.columns, one.rows[taken:])


def paged(lists: list[Listed], words: list[str], area: Box, columns: int, size: float) -> Stacked:
    """A page of one column or more, filled from the left."""
    wide = (area[2] - area[0] - APART * (columns - 1)) / columns
    page = Stacked((), lists, words)
    for n in range(columns):
        x = area[0] + n * (wide + APART)
        more = stacked(page.left, page.words, (x, area[1], x + wide, area[3]), size)
        page = Stacked((*page.marks, *more.marks), more.left, more.words)
    return page
