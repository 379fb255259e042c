"""Pieces of a column: marks with a height, set one under another and turned over to the next page."""

from __future__ import annotations

from dataclasses import dataclass

from tommybar.pack.boxes import moved
from tommybar.pack.lettering import CAPITAL, wrapped
from tommybar.pack.sheet import LINE_STEP, Mark, Text

BODY = 4.25  # 12 point, the smallest that a card is read in [mm]
STEP = BODY * LINE_STEP


@dataclass(frozen=True)
class Piece:
    """Marks whose top left corner is (0, 0), how high they stand, and whether they hold to the next piece."""

    marks: tuple[Mark, ...]
    height: float
    with_next: bool = False


def placed(pieces: list[Piece], x: float, y: float) -> list[Mark]:
    """The pieces under one another from (x, y) down."""
    marks: list[Mark] = []
    for piece in pieces:
        marks += moved(piece.marks, x, y)
        y += piece.height
    return marks


def words_piece(
    lines: tuple[str, ...],
    width: float,
    head: str = "",
    size: float = BODY,
    bold: bool = False,
    dash: str = "",
) -> Piece:
    """A heading and paragraphs wrapped to the width."""
    marks: list[Mark] = []
    y = 0.0
    if head:
        marks.append(Text((0.0, CAPITAL * 4.9), head, 4.9, True))
        y += 4.9 * LINE_STEP + 0.6
    indent = 3.4 if dash else 0.0
    for paragraph in lines:
        for n, line in enumerate(wrapped(paragraph, width - indent, size, bold)):
            if dash and n == 0:
                marks.append(Text((0.0, y + CAPITAL * size), dash, size, bold))
            marks.append(Text((indent, y + CAPITAL * size), line, size, bold))
            y += size * LINE_STEP
        y += 0.9
    return Piece(tuple(marks), y + 1.6)
