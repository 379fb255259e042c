"""How wide printed words are: measured from the shipped font's own advance widths."""

from __future__ import annotations

import csv
from functools import cache
from pathlib import Path

FONTS = Path(__file__).parent / "fonts"
FAMILY = "Atkinson Hyperlegible Next"
POINT = 25.4 / 72  # one typographic point [mm]
CAPITAL = 0.668  # height of a capital, as part of the type size (from the font's OS/2 table)
DESCENT = 0.20  # how far a g reaches below the line, as part of the type size
UNKNOWN = 0.65  # width allowed for a character that the font has not [type sizes]
REPLACED = str.maketrans({"⌀": "Ø", "∅": "Ø", "µ": "u", "→": "›", "✓": "×", "−": "–", "\u00a0": " "})


@cache
def _advances() -> dict[str, tuple[float, float]]:
    """Character to advance widths, regular and bold [type sizes]."""
    with (FONTS / "widths.csv").open(encoding="utf-8") as lines:
        rows = csv.DictReader(line for line in lines if not line.startswith("#"))
        return {chr(int(row["code"])): (int(row["regular"]) / 1000, int(row["bold"]) / 1000) for row in rows}


def printable(words: str) -> str:
    """The words with the few characters replaced that the font does not have."""
    return words.translate(REPLACED)


def has_glyphs(words: str) -> bool:
    """Whether the shipped font can set every character."""
    return all(letter in _advances() for letter in printable(words))


def width_of(words: str, size: float, bold: bool = False) -> float:
    """Width of a line of words [mm] at a type size [mm].

    Examples
    --------
    >>> round(width_of("0", 10.0), 2)
    6.48
    """
    known = _advances()
    column = 1 if bold else 0
    return size * sum(known[c][column] if c in known else UNKNOWN for c in printable(words))


def wrapped(words: str, width: float, size: float, bold: bool = False) -> tuple[str, ...]:
    """Words broken into lines no wider than ``width`` [mm]; a longer word stands alone.

    Examples
    --------
    >>> wrapped("face to length", 20.0, 4.2)
    ('face to', 'length')
    """
    lines: list[str] = []
    line = ""
    for word in words.split():
        tried = f"{line} {word}".strip()
        if line and width_of(tried, size, bold) > width:
            lines.append(line)
            line = word
        else:
            line = tried
    if line:
        lines.append(line)
    return tuple(lines)
