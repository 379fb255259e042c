"""The whole design file as it is written, with relations and purposes."""

from __future__ import annotations

import re
from typing import Annotated, Any, Literal

from pydantic import BaseModel, BeforeValidator, Discriminator, Field, Tag

from tommybar.design.formula import LengthFormula, SpeedFormula
from tommybar.design.tokens import wrong
from tommybar.design.validation import Entry, YesNo
from tommybar.design.written_names import FeatureName
from tommybar.design.written_parts import WrittenPart
from tommybar.design.written_sizes import SizeEntry, WrittenMust


def _listed(given: Any) -> Any:
    return [given] if isinstance(given, str) else given


Names = Annotated[list[str], BeforeValidator(_listed, json_schema_input_type=str | list[str])]
"""One name or a list of names."""


class WrittenFit(Entry):
    """A hole and a shaft that belong together."""

    fit: str = Field(description="The hole, part.feature")
    on: Names = Field(description="The shaft or shafts, part.feature")
    limits: str = Field(description="Zone pair, e.g. H7/g6")
    joint: Literal["", "press", "adhesive", "solder"] = ""


class WrittenLoop(Entry):
    """A chain of lengths with signs whose sum must lie within ``float``."""

    loop: tuple[str, ...] = Field(min_length=1, description="Terms such as base.width, -2 * bush.flange.long")
    float_: tuple[LengthFormula, LengthFormula] = Field(alias="float", description="Least and most")
    made_last: str = Field(description="The part whose length is made to measure")
    name: str = ""


class WrittenScrew(Entry):
    """A screw through clearance holes into a thread."""

    screw: str
    through: Names
    into: Names


def _relation(given: Any) -> str:
    keys = given if isinstance(given, dict) else {}
    for key in ("fit", "loop", "screw"):
        if key in keys or (not isinstance(given, dict) and hasattr(given, key)):
            return f"a {key}"  # no tag may be a key, or the place of a fault could not be told
    return "?"


Relation = Annotated[
    Annotated[WrittenFit, Tag("a fit")]
    | Annotated[WrittenLoop, Tag("a loop")]
    | Annotated[WrittenScrew, Tag("a screw")],
    Discriminator(
        _relation,
        custom_error_type="relation",
        custom_error_message="it must have one of the keys fit, loop, screw",
    ),
]


def _grade(given: Any) -> Any:
    if given is None or isinstance(given, float):
        return given
    found = re.fullmatch(r"\s*G\s*([0-9]+(?:\.[0-9]+)?)\s*", str(given))
    if not found or float(found[1]) <= 0:
        raise wrong(1, f'"{given}" is no balance grade.', "Write G 6.3.")
    return float(found[1])


class WrittenPurpose(Entry):
    """What the thing must do."""

    turns: Names = Field(description="Parts that turn together")
    at: SpeedFormula
    balance: Annotated[float | None, BeforeValidator(_grade, json_schema_input_type=str)] = Field(
        None, description="Grade, e.g. G 6.3"
    )
    hand_driven: YesNo = False


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


class SizesAlone(BaseModel):
    """Only the sizes of a design file, read when something else of the file is wrong."""

    sizes: dict[str, SizeEntry] = Field(default_factory=dict)
