"""The construction of any shape."""

from __future__ import annotations

from tommybar.refusals import Refusal
from tommybar.shapes.bought import BoughtShape
from tommybar.shapes.features import (
    PlateShape,
    RolledRing,
    Shape,
    SheetShape,
    SpringShape,
    TurnedShape,
    WireShape,
)
from tommybar.shapes.solids.bent import ring_part, sheet_part, spring_part, wire_part
from tommybar.shapes.solids.bought import bought_part
from tommybar.shapes.solids.nodes import Node
from tommybar.shapes.solids.plate import plate_part
from tommybar.shapes.solids.turned import turned_part


def construction(shape: Shape | BoughtShape) -> Node:
    """How a shape is put together from plain bodies.

    Turned parts stand with their axis along z and face A at z = 0; plates with
    x along the length, y along the width and z up from the bottom face [mm].
    """
    if isinstance(shape, TurnedShape):
        return turned_part(shape)
    if isinstance(shape, PlateShape):
        return plate_part(shape)
    if isinstance(shape, SheetShape):
        return sheet_part(shape)
    if isinstance(shape, RolledRing):
        return ring_part(shape)
    if isinstance(shape, SpringShape):
        return spring_part(shape)
    if isinstance(shape, WireShape):
        return wire_part(shape)
    if isinstance(shape, BoughtShape):
        return bought_part(shape)
    raise Refusal(f"A {type(shape).__name__} cannot be drawn as a solid.")
