"""Jaws, tools, drills, reamers and instruments as a shop file writes them."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import AfterValidator, BeforeValidator, Field, model_validator

from tommybar.design.figures import Angle, NotNegativeLength, Speed
from tommybar.design.figures import PositiveLength as Length
from tommybar.design.validation import Entry
from tommybar.refusals import Refusal
from tommybar.shop.amounts import Lengths, at_least_one
from tommybar.shop.model import ToolKind


class Rounds(Entry):
    """From the smallest round to the largest."""

    from_: Annotated[Length, Field(alias="from")]
    to: Length

    @model_validator(mode="after")
    def _rising(self) -> Rounds:
        if self.to <= self.from_:
            raise Refusal(
                f"The range ends at {self.to:.6g} mm; it must end above its start, {self.from_:.6g} mm.",
                "Write the smaller diameter first.",
            )
        return self


class GripEntry(Rounds):
    """One range of a jaw set: diameters from, to, and how much length it holds."""

    depth: Length


class JawsEntry(Entry):
    """A jaw set by its ranges, or a collet set by its sizes and how far each closes."""

    name: str
    device: Literal["three-jaw", "four-jaw", "collets", "soft jaws"]
    grips: Literal["outside", "inside"] = "outside"
    ranges: tuple[GripEntry, ...] = ()
    sizes: Lengths | None = None
    closes: Length | None = None
    depth: Length | None = None
    runout: NotNegativeLength | None = None
    body: NotNegativeLength = 0.0
    jaw_height: NotNegativeLength = 0.0
    top_speed: Speed | None = None

    @model_validator(mode="after")
    def _one_way(self) -> JawsEntry:
        if bool(self.ranges) == bool(self.sizes):
            raise Refusal(
                f'"{self.name}" must have either ranges (jaws) or sizes, closes and depth (collets).',
                "Give one of the two.",
            )
        if self.sizes and (self.closes is None or self.depth is None):
            raise Refusal(
                f'"{self.name}" has sizes, but not how far a collet closes and how deep it is.',
                "Add closes and depth.",
            )
        return self


class ToolEntry(Entry):
    """A lathe tool with the letter on its drawer."""

    letter: Annotated[str, Field(min_length=1, max_length=3)]
    kind: ToolKind
    hand: Literal["right", "left", "both"] = "right"
    material: Literal["HSS", "carbide"] = "HSS"
    nose: NotNegativeLength = 0.0
    width: NotNegativeLength = 0.0
    reach: NotNegativeLength = 0.0
    smallest_bore: NotNegativeLength = 0.0
    shank: Length | None = None
    angle: Angle = 45.0
    pitch: NotNegativeLength = 0.0
    pattern: Literal["", "straight", "diamond"] = ""
    cuts_deep: NotNegativeLength = Field(
        0.0, description="Of an inside grooving tool: deepest groove, radially"
    )
    radius: NotNegativeLength = Field(0.0, description="Of a form tool: the curve it leaves on the work")
    leaves: Literal["", "round", "hollow"] = Field("", description="Of a form tool: a rounded edge or a cove")
    note: str = ""

    @model_validator(mode="after")
    def _can_be_chosen(self) -> ToolEntry:
        needs = {
            "parting": ("width", "reach"),
            "groove": ("width", "reach"),
            "recess": ("width", "reach"),
            "boring": ("smallest_bore", "reach"),
            "knurling": ("pitch",),
            "inside groove": ("width", "reach", "smallest_bore", "cuts_deep"),
            "form": ("radius", "leaves"),
        }
        if self.kind == "inside groove" and 0 < self.smallest_bore < self.cuts_deep + (self.shank or 0.0):
            raise Refusal(
                f"Tool {self.letter} cuts {self.cuts_deep:.6g} mm deep from a shank of {self.shank or 0.0:.6g} mm;"
                f" it cannot enter a bore of {self.smallest_bore:.6g} mm.",
                "Try it: smallest_bore is the hole that shank and edge go into together.",
            )
        missing = [name for name in needs.get(self.kind, ()) if not getattr(self, name)]
        if missing:
            raise Refusal(
                f"Tool {self.letter} is {'an' if self.kind[0] == 'i' else 'a'} {self.kind} tool without {' and '.join(missing)};"
                " it can never be chosen so.",
                "Measure it and write it in.",
            )
        return self


def _reamer_form(given: object) -> object:
    return given if isinstance(given, dict) else {"size": given}


class ReamerFigures(Entry):
    """A reamer: its size, and what a test hole with it came out at."""

    size: Length
    zone: str = "H7"
    cuts: Length | None = None

    @model_validator(mode="after")
    def _near_its_size(self) -> ReamerFigures:
        if self.cuts is not None and abs(self.cuts - self.size) > 0.1:
            raise Refusal(
                f"The reamer of {self.size:.6g} mm is said to cut {self.cuts:.6g} mm; more than 0.1 mm away"
                " is no reamer any more.",
                "Write the measured diameter of a test hole.",
            )
        return self


ReamerEntry = Annotated[
    ReamerFigures, BeforeValidator(_reamer_form, json_schema_input_type=ReamerFigures | float | str)
]

Span = Annotated[tuple[NotNegativeLength, Length], Field(description="from, to")]


class CounterboreEntry(Entry):
    """A counterbore with a pilot."""

    dia: Length
    pilot: Length

    @model_validator(mode="after")
    def _pilot_is_smaller(self) -> CounterboreEntry:
        if self.pilot >= self.dia:
            raise Refusal(
                f"The counterbore is {self.dia:.6g} mm with a pilot of {self.pilot:.6g} mm; the pilot is smaller.",
                "Write dia for the seat and pilot for the pin in front of it.",
            )
        return self


class InstrumentEntry(Entry):
    """A measuring instrument."""

    name: str
    measures: Annotated[
        tuple[Literal["outside", "inside", "depth", "length", "runout"], ...], AfterValidator(at_least_one)
    ]
    range: Span
    resolution: Length
    uncertainty: Length | None = None

    @model_validator(mode="after")
    def _rising(self) -> InstrumentEntry:
        if self.range[1] <= self.range[0]:
            raise Refusal(
                f"The range ends at {self.range[1]:.6g} mm; it must end above {self.range[0]:.6g} mm.",
                "Write the smaller figure first.",
            )
        return self
