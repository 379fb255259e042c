"""The whole design file as it is written, with relations and purposes."""

from __future__ import annotations

import re
from typing import Annotated, Any, Literal

from pydantic import BaseModel, BeforeValidator, Field, model_validator

from tommybar.design.formula import ForceFormula, NumberFormula, SizeFormula, SpeedFormula, TimeFormula
from tommybar.design.tokens import wrong
from tommybar.design.validation import Entry, YesNo
from tommybar.design.written_names import FeatureName
from tommybar.design.written_parts import WrittenPart
from tommybar.design.written_relations import Names, Relation
from tommybar.design.written_sizes import SizeEntry, WrittenMust
from tommybar.refusals import Refusal

DUTIES = ("carries", "runs_for", "stroke", "force", "pressure", "sounds", "looks")
"""Keys of a purpose other than turning."""


def _grade(given: Any) -> Any:
    if given is None or isinstance(given, float):
        return given
    found = re.fullmatch(r"\s*G\s*([0-9]+(?:\.[0-9]+)?)\s*", str(given))
    if not found or float(found[1]) <= 0:
        raise wrong(1, f'"{given}" is no balance grade.', "Write G 6.3.")
    return float(found[1])


class WrittenPurpose(Entry):
    """What the thing must do: parts that turn together at a speed, or one of the other duties."""

    turns: Names = Field(default_factory=list, description="Parts that turn together")
    at: SpeedFormula | None = None
    balance: Annotated[float | None, BeforeValidator(_grade, json_schema_input_type=str)] = Field(
        None, description="Grade, e.g. G 6.3"
    )
    hand_driven: YesNo = False
    carries: ForceFormula | None = Field(None, description="Load")
    runs_for: TimeFormula | None = Field(None, description="Time once set going")
    stroke: SizeFormula | None = None
    force: ForceFormula | None = None
    pressure: NumberFormula | None = Field(
        None, description="bar above the air's; only up to a statement's worth"
    )
    sounds: NumberFormula | None = Field(None, description="Hz")
    looks: str = Field("", description="What it must look like, in words")
    on: Names = Field(default_factory=list, description="Parts or features of that duty")
    most: NumberFormula | None = Field(None, description="Greatest, in the same unit")

    @model_validator(mode="after")
    def _one_duty(self) -> Any:
        given = [key for key in ("turns", *DUTIES) if getattr(self, key)]
        if len(given) != 1:
            had = " and ".join(given) or "none of them"
            known = ", ".join(("turns", *DUTIES))
            raise Refusal(f"The purpose has {had}; it must have one of {known}.", "Keep one.")
        if self.turns and self.at is None:
            raise Refusal('The key "at" is missing.', "Add the speed, e.g. at: 240 rev/min.")
        return self


class DesignFile(Entry):
    """A design file, format version 1."""

    tommybar: Literal[1] = Field(description="Format version of the file")
    design: str = Field(min_length=1, description="Title")
    revision: str = "A"
    units: Literal["mm", "in"] = Field(description="Unit of every figure that names none")
    sizes: dict[str, SizeEntry] = Field(default_factory=dict)
    must: tuple[WrittenMust, ...] = ()
    parts: dict[FeatureName, WrittenPart] = Field(min_length=1)
    relations: tuple[Relation, ...] = ()
    purposes: tuple[WrittenPurpose, ...] = ()
    cautions: tuple[str, ...] = ()
    foot: str = Field(
        "", description="What the assembly stands on: a part, or a face of it, e.g. base.bottom"
    )


class SizesAlone(BaseModel):
    """Only the sizes of a design file, read when something else of the file is wrong."""

    sizes: dict[str, SizeEntry] = Field(default_factory=dict)
