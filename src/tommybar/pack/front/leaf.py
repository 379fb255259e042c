"""A plain page of the pack: its head and foot, and tables that run over several pages."""

from __future__ import annotations

from collections.abc import Sequence

from tommybar.pack.grid import Column, column_widths, grid
from tommybar.pack.imprint import Imprint
from tommybar.pack.lettering import wrapped
from tommybar.pack.sheet import LINE_STEP, Sheet

LEFT, RIGHT, TOP, BOTTOM = 18.0, 285.0, 30.0, 198.0
WIDTH = RIGHT - LEFT
BODY = 4.25
SIZE = 3.9  # type size of tables [mm]


def leaf(name: str, title: str, imprint: Imprint) -> Sheet:
    """An empty page with its head."""
    sheet = Sheet(name)
    sheet.text(LEFT, 20.0, title, 8.2, True)
    sheet.text(RIGHT, 12.0, f"{imprint.title} · {imprint.line}", 3.6, anchor="end")
    sheet.line((LEFT, 24.0), (RIGHT, 24.0), kind="heavy")
    return sheet


def paragraphs(sheet: Sheet, lines: Sequence[str], y: float, width: float = WIDTH, x: float = LEFT) -> float:
    """Paragraphs from y down; gives the y below them."""
    for paragraph in lines:
        for line in wrapped(paragraph, width, BODY):
            sheet.text(x, y + 3.2, line, BODY)
            y += BODY * LINE_STEP
        y += 1.2
    return y


def heading(sheet: Sheet, words: str, y: float, x: float = LEFT) -> float:
    """A heading inside a page; gives the y below it."""
    sheet.text(x, y + 4.0, words, 5.4, True)
    return y + 8.0


class Leaves:
    """Pages being filled from the top, a new one taken when the next thing has no room."""

    def __init__(self, imprint: Imprint) -> None:
        self.imprint = imprint
        self.title = ""
        self.sheets: list[Sheet] = []
        self.sections: list[tuple[str, int, int]] = []  # title, first and last page counted from 1
        self.y = BOTTOM

    def section(self, title: str, room: float = 70.0) -> None:
        """Begin a section: lower on the page if so much room is left, or on a new page."""
        self.title = title
        if self.sheets and self.y + room < BOTTOM:
            self.y += 8.0
            self.sheet.text(LEFT, self.y + 6.0, title, 8.2, True)
            self.sheet.line((LEFT, self.y + 9.5), (RIGHT, self.y + 9.5), kind="thick")
            self.y += 14.0
        else:
            self.turn()
        self.sections.append((title, len(self.sheets), len(self.sheets)))

    def turn(self) -> None:
        """Take a new page."""
        again = bool(self.sections) and self.sections[-1][0] == self.title
        words = f"{self.title}, continued" if again else self.title
        self.sheets.append(leaf(f"front-{len(self.sheets) + 1}", words, self.imprint))
        self.y = TOP
        if again:
            title, first, _ = self.sections[-1]
            self.sections[-1] = (title, first, len(self.sheets))

    @property
    def sheet(self) -> Sheet:
        """The page in hand."""
        return self.sheets[-1]

    def need(self, height: float) -> None:
        """Turn the page unless so much room is left [mm]."""
        if self.y + height > BOTTOM and self.y > TOP:
            self.turn()

    def say(self, *lines: str) -> None:
        """Paragraphs."""
        for line in lines:
            self.need(BODY * LINE_STEP * len(wrapped(line, WIDTH, BODY)) + 2.0)
            self.y = paragraphs(self.sheet, [line], self.y)

    def head(self, words: str, room: float = 30.0) -> None:
        """A heading that keeps so much room below it."""
        self.need(room)
        self.y = heading(self.sheet, words, self.y + (4.0 if self.y > TOP else 0.0))

    def table(self, columns: Sequence[Column], rows: Sequence[Sequence[str]]) -> None:
        """A table, its head again on each page; one that is not too wide runs in two columns."""
        left = list(rows)
        half = WIDTH / 2 - 5.0
        natural = sum(column_widths(columns, left, 1e9, SIZE))
        double = len(left) > 7 and natural <= 0.8 * WIDTH
        while left:
            part = left[: (len(left) + 1) // 2] if double else left
            laid = grid(columns, part, LEFT, self.y, half if double else WIDTH, BOTTOM)
            if not laid.taken and self.y > TOP:
                self.turn()
                continue
            if not laid.taken:  # one row higher than a page: set it all the same, none is lost
                laid = grid(columns, left[:1], LEFT, self.y, WIDTH, 1e9)
            self.sheet.add(*laid.marks)
            left = left[laid.taken :]
            height = laid.height
            if left and double:
                other = grid(columns, left, LEFT + half + 10.0, self.y, half, BOTTOM)
                self.sheet.add(*other.marks)
                left = left[other.taken :]
                height = max(height, other.height)
            self.y += height + 3.0
            if left:
                self.turn()
