"""The view of a turned part along its axis: metal, what is milled, callouts, lengths; axis at y = 0."""

from __future__ import annotations

from collections.abc import Sequence

from tommybar.pack.boxes import box_of
from tommybar.pack.printed import PrintedDimension
from tommybar.pack.profile import metal_at, nominal
from tommybar.pack.sheet import Mark, Text
from tommybar.pack.turned.broken import opened
from tommybar.pack.turned.detail import Detail, circle_marks
from tommybar.pack.turned.drawn import (
    View,
    eccentric_marks,
    half_marks,
    knurl_marks,
    thread_marks,
    view_of,
)
from tommybar.pack.turned.lengths import length_marks
from tommybar.pack.turned.metal import chords, radius_of
from tommybar.pack.turned.milled import milled_marks
from tommybar.pack.turned.place import above_marks, column_marks
from tommybar.pack.turned.saying import Callout, Row
from tommybar.pack.turned.sections import cutting_planes
from tommybar.pack.units import Reader
from tommybar.shapes.features import TurnedShape
from tommybar.shapes.profile import profile


def shape_marks(shape: TurnedShape, scale: float, view: View | None = None) -> list[Mark]:
    """The part alone, without a figure."""
    shape = nominal(shape)
    view = view or view_of(shape)
    marks = half_marks(shape, scale, 1, view != "outside")
    marks += half_marks(shape, scale, -1, view == "full")
    if view == "outside":
        marks = opened(shape, marks, scale)
    marks += knurl_marks(shape, scale, view)
    marks += [*eccentric_marks(shape, scale), *thread_marks(shape, scale, view)]
    return [*marks, *milled_marks(shape, scale, view)]


def face_callout(shape: TurnedShape) -> Callout:
    """The letter at face A, from which all lengths are measured."""
    bounds = metal_at(chords((profile(nominal(shape)),)), 2e-3)
    r = (bounds[-1] + bounds[-2]) / 2 if len(bounds) > 1 else 0.0
    return Callout(0.0, r, (Row("", True, datum="A"),), side="A", feature="A")


def main_view(
    shape: TurnedShape,
    callouts: Sequence[Callout],
    details: list[Detail],
    scale: float,
    reader: Reader,
    room: float,
    letter: str = "",
) -> tuple[list[Mark], list[PrintedDimension]] | None:
    """The dimensioned view, callouts within ``room`` [mm] of width; None when they have no room.

    ``letter`` stands below it where the view along the axis says how the section stands.
    """
    radius, length = radius_of(shape) * scale, shape.length.value * scale
    marks = shape_marks(shape, scale)
    marks += cutting_planes(shape, scale) + circle_marks(details, scale)
    top, bottom = -radius - (3.5 if shape.keyways else 0.0), radius + (3.5 if shape.keyways else 0.0)
    for one in details:
        top = min(top, -(one.r + one.radius) * scale)
    wide = [0.0, 0.0]
    for n, (side, edge) in enumerate((("A", 0.0), ("B", length))):
        made, high, low = column_marks(
            [one for one in callouts if one.side == side], scale, edge, side, radius
        )
        marks += made
        if made:
            top, bottom = min(top, high), max(bottom, low + 1.5)
            wide[n] = 24.0
    spare = max((room - length) / 2, 0.0)
    over = min(spare, 70.0)
    placed = above_marks([one for one in callouts if one.side == "above"], scale, top, -over, length + over)
    if placed is None:
        return None
    lengths, printed = length_marks(shape, scale, bottom, reader)
    made = [*placed[0], *marks, *lengths]
    if letter:
        _, _, right, low = box_of(lengths)
        made.append(Text((max(right, length) + 5.0, low - 1.0), f"{letter}–{letter}", 5.0, True))
    return made, printed
