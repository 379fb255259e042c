"""Feature control frames (ISO 1101), datum letters (ISO 5459) and the sign of a finish (ISO 21920-1)."""

from __future__ import annotations

from tommybar.pack.sheet import Arc, Area, Line, Mark, Text

FRAME = 5.6  # height of a frame [mm]
CELL = 3.8  # size of its words [mm]
TAPER = 6.2  # room of the symbol of a taper before its words [mm]
SYMBOL = 7.0  # width of the cell of the symbol [mm]


def _wide(words: str) -> float:
    return max(Text((0, 0), words, CELL).width + 2.4, FRAME)


def cells_width(cells: tuple[str, ...]) -> float:
    """Width of a frame [mm]."""
    if cells[0] == "finish":
        return 5.0 + Text((0, 0), cells[1], CELL * 0.9).width
    return SYMBOL + sum(map(_wide, cells[1:]))


def cells_marks(cells: tuple[str, ...], x: float, y: float) -> list[Mark]:
    """A frame with its top left corner at (x, y): the symbol, then words."""
    bottom = y + FRAME
    if cells[0] == "finish":
        marks: list[Mark] = [
            Line(((x, bottom - 2.6), (x + 1.4, bottom - 0.4), (x + 4.4, y + 0.6)), "thin"),
            Line(((x, bottom - 2.6), (x + 2.75, bottom - 2.6)), "thin"),
            Text((x + 4.9, bottom - 0.9), cells[1], CELL * 0.9),
        ]
        return marks
    width = cells_width(cells)
    marks = [Area((((x, y), (x + width, y), (x + width, bottom), (x, bottom)),), "none", "rule")]
    marks += symbol_marks(cells[0], x + SYMBOL / 2, y + FRAME / 2)
    left = x + SYMBOL
    for words in cells[1:]:
        marks.append(Line(((left, y), (left, bottom)), "rule"))
        marks.append(Text((left + _wide(words) / 2, bottom - 1.6), words, CELL, anchor="middle"))
        left += _wide(words)
    return marks


def symbol_marks(name: str, x: float, y: float) -> list[Mark]:
    """The symbol of a tolerance about (x, y)."""
    if name == "run-out":
        tip = (x + 1.6, y - 1.8)
        head = ((tip), (tip[0] - 1.7, tip[1] + 0.7), (tip[0] - 0.7, tip[1] + 1.7))
        return [Line(((x - 1.6, y + 1.8), tip), "rule"), Area((head,), "black", None)]
    if name == "position":
        return [
            Arc((x, y), 1.3, "rule"),
            Line(((x - 2.2, y), (x + 2.2, y)), "rule"),
            Line(((x, y - 2.2), (x, y + 2.2)), "rule"),
        ]
    if name == "square":
        return [
            Line(((x - 1.8, y + 1.5), (x + 1.8, y + 1.5)), "rule"),
            Line(((x, y + 1.5), (x, y - 1.8)), "rule"),
        ]
    if name == "parallel":
        return [
            Line(((x - 1.8, y + 1.7), (x + 0.6, y - 1.7)), "rule"),
            Line(((x - 0.6, y + 1.7), (x + 1.8, y - 1.7)), "rule"),
        ]
    raise ValueError(f"There is no symbol of the name {name}.")


def taper_mark(x: float, y: float, way: int) -> Mark:
    """The symbol of a taper (ISO 3040) on a base line at y, its point to the right for 1, to the left for -1."""
    middle, half, long = y - 1.5, 1.1, TAPER - 1.4
    point, base = (x + long, x) if way > 0 else (x, x + long)
    return Area((((base, middle - half), (point, middle), (base, middle + half)),), "none", "rule")


def datum_marks(letter: str, x: float, y: float) -> list[Mark]:
    """A datum letter in its frame with its top left corner at (x, y)."""
    ring = ((x, y), (x + FRAME, y), (x + FRAME, y + FRAME), (x, y + FRAME))
    foot = (
        (x + FRAME + 3.2, y + FRAME / 2 - 1.1),
        (x + FRAME + 3.2, y + FRAME / 2 + 1.1),
        (x + FRAME + 1.6, y + FRAME / 2),
    )
    return [
        Area((ring,), "none", "rule"),
        Text((x + FRAME / 2, y + FRAME - 1.5), letter, CELL, True, "middle"),
        Line(((x + FRAME, y + FRAME / 2), (x + FRAME + 1.8, y + FRAME / 2)), "rule"),
        Area((foot,), "black", None),
    ]
