"""A part as it stands in a design file; its kinds stand in files of their own."""

from __future__ import annotations

from typing import Literal

from pydantic import Field, model_validator

from tommybar.design.formula import CountFormula, SizeFormula
from tommybar.design.validation import Entry
from tommybar.design.written_bent import (
    WrittenBench,
    WrittenBought,
    WrittenRing,
    WrittenSheet,
    WrittenSpring,
    WrittenWire,
)
from tommybar.design.written_plates import WrittenBlock, WrittenPlate
from tommybar.design.written_turned import WrittenTurned
from tommybar.refusals import Refusal


class WrittenNeed(Entry):
    """A run-out need: one feature true to another."""

    runout: str
    to: str
    within: SizeFormula


KINDS = ("turned", "plate", "block", "sheet", "ring", "spring", "wire", "bought")
"""Keys of a part, one of which says how it is come by."""


class WrittenPart(Entry):
    """A part: turned, plate, block, sheet, ring, spring, wire or bought."""

    material: str = ""
    count: CountFormula | None = None
    turned: WrittenTurned | None = None
    plate: WrittenPlate | None = None
    block: WrittenBlock | None = None
    sheet: WrittenSheet | None = None
    ring: WrittenRing | None = None
    spring: WrittenSpring | None = None
    wire: WrittenWire | None = None
    bought: str | WrittenBought | None = Field(None, description="Designation, e.g. ISO 4762 M5 x 16")
    needs: tuple[WrittenNeed, ...] = ()
    bench: tuple[WrittenBench, ...] = Field((), description="Work of the hand, in order")
    from_: Literal["", "round", "flat", "plate", "hexagon", "square", "tube"] = Field("", alias="from")
    note: str = ""

    @model_validator(mode="after")
    def _one_kind(self) -> WrittenPart:
        given = [key for key in KINDS if getattr(self, key) is not None]
        if len(given) != 1:
            had = " and ".join(given) or "none of them"
            raise Refusal(f"The part has {had}; it must have one of {', '.join(KINDS)}.", "Keep one.")
        if not self.bought and not self.material:
            raise Refusal("The part names no material.", "Add material, e.g. mild steel.")
        return self
