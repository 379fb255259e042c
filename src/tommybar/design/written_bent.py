"""Parts of sheet and wire, bought parts and work at the bench as they stand in a design file."""

from __future__ import annotations

from typing import Annotated, Any, Literal

from pydantic import BeforeValidator, Field, model_validator

from tommybar.design.formula import (
    AngleFormula,
    EdgeFormula,
    LengthFormula,
    NumberFormula,
    SizeFormula,
)
from tommybar.design.joints import BENCH_KINDS
from tommybar.design.validation import Entry, YesNo
from tommybar.design.written_names import FeatureName
from tommybar.design.written_plates import WrittenOutline, WrittenPlateHole
from tommybar.refusals import Refusal, nearest


class WrittenBend(Entry):
    """A bend between two legs."""

    name: FeatureName
    angle: AngleFormula = Field(description="Out of the flat; above 0 towards the top face")
    radius: EdgeFormula = Field(description="Inside")


class WrittenSheet(Entry):
    """Sheet or strip: a flat blank, its holes, and the bends made after them."""

    width: SizeFormula
    thick: SizeFormula
    length: SizeFormula | None = Field(None, description="Of the flat blank, when there are no legs")
    legs: tuple[SizeFormula, ...] = Field((), description="Outside lengths between tangent intersections")
    bends: tuple[WrittenBend, ...] = ()
    neutral: NumberFormula | None = Field(
        None, description="Share of the thickness that keeps its length; 0.44"
    )
    outline: WrittenOutline | None = Field(None, description="Of the flat blank")
    holes: tuple[WrittenPlateHole, ...] = Field(
        (), description="On the flat blank, from its lower left corner"
    )

    @model_validator(mode="after")
    def _one_length(self) -> Any:
        if bool(self.legs) == (self.length is not None):
            raise Refusal("A sheet must have either length or legs.", "Keep one of the two.")
        return self


class WrittenRing(Entry):
    """A ring or hoop rolled from strip or wire."""

    inside: SizeFormula
    wide: SizeFormula | None = Field(None, description="Of strip, along the axis")
    thick: SizeFormula | None = Field(None, description="Of strip")
    wire: SizeFormula | None = Field(None, description="Diameter of wire")
    gap: EdgeFormula | None = None
    joint: Literal["open", "butt", "lap", "soldered"] = "open"
    limits: str = ""

    @model_validator(mode="after")
    def _section(self) -> Any:
        if (self.wire is None) != (self.wide is not None and self.thick is not None):
            raise Refusal("A ring must have either wire, or wide and thick.", "Keep one of the two.")
        return self


class WrittenSpring(Entry):
    """A wound spring."""

    kind: Literal["compression", "extension", "torsion"] = "compression"
    wire: SizeFormula
    outside: SizeFormula
    active: NumberFormula = Field(description="Coils that work")
    total: NumberFormula | None = Field(None, description="All coils; two more than active when closed")
    free: SizeFormula | None = Field(None, description="Free length; of a close coil worked out")
    ends: Literal["open", "closed", "ground", "hooks", "legs"] | None = None
    leg: EdgeFormula | None = None
    fitted: SizeFormula | None = Field(None, description="Its length in its place")
    left: YesNo = False


class WrittenWireBend(Entry):
    """A bend of wire in its plane."""

    angle: AngleFormula
    radius: EdgeFormula = Field(description="Inside")


class WrittenWire(Entry):
    """Wire or rod bent in a plane."""

    dia: SizeFormula
    legs: tuple[EdgeFormula, ...] = Field(min_length=1, description="Straight lengths between the bends")
    bends: tuple[WrittenWireBend, ...] = ()
    limits: str = ""


class WrittenBought(Entry):
    """A bought part that no table knows, with its own figures."""

    designation: str = Field(min_length=1)
    kind: str = Field(min_length=1, description="The trade's word, e.g. spring washer")
    sizes: dict[FeatureName, LengthFormula] = Field(
        min_length=1, description="e.g. outside, inside, thickness"
    )
    source: str = Field(min_length=1, description="Where its figures come from")


def _kind(given: Any) -> Any:
    if isinstance(given, str) and given not in BENCH_KINDS:
        offer = nearest(given, BENCH_KINDS) or f"Known are {', '.join(BENCH_KINDS)}."
        raise Refusal(f'"{given}" is no work of the bench.', offer)
    return given


def _listed(given: Any) -> Any:
    return [given] if isinstance(given, str) else given


Names = Annotated[tuple[str, ...], BeforeValidator(_listed, json_schema_input_type=str | list[str])]


class WrittenBench(Entry):
    """Work of the hand on a part."""

    work: Annotated[str, BeforeValidator(_kind)] = Field(description=", ".join(BENCH_KINDS))
    name: FeatureName | None = None
    on: Names = Field((), description="Features of the part; all of it when left out")
    with_: Names = Field((), alias="with", description="Parts that are worked together with it")
    dia: SizeFormula | None = None
    wide: SizeFormula | None = None
    deep: SizeFormula | None = None
    radius: SizeFormula | None = None
    angle: AngleFormula | None = None
    grip: SizeFormula | None = Field(None, description="Of a rivet: metal that it holds")
    allowance: NumberFormula | None = Field(
        None, description="Of a rivet's head, in diameters; 1.4 when left out"
    )
    to: NumberFormula | None = Field(None, description="Temper, deg C")
    words: str = ""
