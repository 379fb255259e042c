"""Boxes to write a measured size in: its limits, the sum to be done, and who reads it."""

from __future__ import annotations

from tommybar.making.cards import Measure, Step
from tommybar.pack.boxes import box_ring
from tommybar.pack.cardsheets.piece import BODY, STEP, Piece
from tommybar.pack.lettering import CAPITAL, wrapped
from tommybar.pack.sheet import Area, Line, Mark, Text
from tommybar.pack.units import Reader
from tommybar.pack.words import general_words

BOX = 10.0  # height of a box for a reading [mm]
SUM = 8.4  # height of a line of the sum [mm]


def write_in(step: Step, measure: Measure, width: float, reader: Reader, reads: str) -> Piece:
    """One box; ``reads`` is what the cross-slide's dial is numbered in ("RAD" or "DIA")."""
    dim = measure.dim
    marks: list[Mark] = []
    y = 0.0

    def line(words: str, bold: bool = False) -> None:
        nonlocal y
        for one in wrapped(words, width, BODY, bold):
            marks.append(Text((0.0, y + CAPITAL * BODY), one, BODY, bold))
            y += STEP

    line(
        f"after step {step.number}: {measure.size.split('.', 1)[-1].replace('_', ' ').replace('.', ' ')}",
        True,
    )
    if dim.smallest is not None and dim.largest is not None:
        low, high = reader.limits(dim.smallest, dim.largest)
        line(f"{low} to {high}")
    else:
        line(f"{reader.length(dim.value, 3)} {general_words(dim.value, reader)}".strip())
    if measure.instrument:
        line(measure.instrument)
    y += 0.6
    marks.append(Area((box_ring(0.0, y, width, BOX),), "white", "thick"))
    marks.append(Text((width - 1.5, y + BOX - 2.2), reader.unit, BODY, anchor="end", tone="grey"))
    y += BOX + 1.8
    for words in _sum(step, measure, reader, reads):
        base = y + SUM - 2.4
        marks.append(Text((0.0, base), words, BODY))
        start = Text((0.0, 0.0), words, BODY).width + 1.5
        marks.append(Line(((start, base + 1.0), (width, base + 1.0)), "rule"))
        y += SUM
    for mate in measure.gives_to:
        line(f"give to: {mate.replace('.', ' ').replace('_', ' ').replace('.', ' ')}", True)
    if dim.because:
        line(dim.because)
    marks.append(Line(((0.0, y + 1.4), (width, y + 1.4)), "rule"))
    return Piece(tuple(marks), y + 4.2)


def _sum(step: Step, measure: Measure, reader: Reader, reads: str) -> tuple[str, ...]:
    """The sum from a reading before the last cuts to what is dialled; only for turned diameters."""
    last = [one for one in step.passes if one.last] or list(step.passes)
    if step.big_kind[:3] not in ("DIA", "RAD") or not step.passes or not measure.dim.toleranced:
        return ()
    if measure.size.split(".", 1)[-1] != step.feature:
        return ()  # a length across shoulders, read at the same stop, is no diameter
    target = reader.within(measure.dim, 3)
    cuts = len(last)
    words = ["it reads now", f"less {target} ="]
    if cuts > 1:
        words.append(f"÷ {cuts} cuts =")
    if reads == "RAD":
        words.append("÷ 2, RAD =")
    return tuple(words)
