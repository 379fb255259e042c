"""The outer sizes of a part in words, for lists."""

from __future__ import annotations

from tommybar.design.model import Part
from tommybar.pack.units import Reader
from tommybar.refusals import Refusal
from tommybar.shapes.features import Arc, PlateShape, TurnedShape
from tommybar.shapes.section import half_section


def size_words(part: Part, reader: Reader) -> str:
    """The outer sizes of a part for a list, in the reader's unit; empty where none are told."""
    shape = part.shape
    if isinstance(shape, TurnedShape):
        dia = max(max(land.start_dia, land.end_dia) for land in shape.outside)
        if any(isinstance(land, Arc) for land in shape.outside):  # it may bulge beyond its ends
            try:
                dia = max(dia, 2 * half_section(shape).bounds[3])
            except Refusal:
                return ""
        return f"Ø{reader.length(dia, 2)} × {reader.length(shape.length.value, 2)} {reader.unit}"
    if isinstance(shape, PlateShape):
        sides = (shape.length.value, shape.width.value, shape.thickness.value)
        return " × ".join(reader.length(one, 2) for one in sides) + f" {reader.unit}"
    return ""
