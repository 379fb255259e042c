"""Named sizes and must-lines as they stand in a design file."""

from __future__ import annotations

import re
from typing import Annotated, Any, Literal, get_args

from pydantic import BeforeValidator, Field, PlainValidator, WithJsonSchema

from tommybar.design.figures import expression_text
from tommybar.design.formula import Formula
from tommybar.design.tokens import wrong
from tommybar.design.validation import Entry, YesNo

Class = Literal["scale", "reamer", "drill", "cutter", "thread", "bar", "plate", "sheet", "bought", "nothing"]
CLASSES: tuple[str, ...] = get_args(Class)

Given = Annotated[
    str,
    PlainValidator(expression_text),
    WithJsonSchema({"anyOf": [{"type": "number"}, {"type": "string"}]}),
]


class WrittenSize(Entry):
    """A named size: its figure as drawn, or an expression of other sizes."""

    is_: Given = Field(alias="is", description="Figure, expression, thread (M4) or bought part as drawn")
    follows: Class | None = Field(None, description="What the size follows when the design is resized")
    kind: Literal["length", "angle", "number"] = Field("length", description="What a figure without unit is")
    drives: YesNo = Field(False, description="The size by which the scale is told")
    between: tuple[Given, Given] | None = Field(None, description="Least and most that may be chosen")
    prefers: tuple[Given, ...] = Field((), description="Figures that are liked best, first one first")
    because: str = Field("", description="Why it is so; printed in the size table")


def _size_entry(given: Any) -> Any:
    return given if isinstance(given, dict | WrittenSize) else {"is": given}


SizeEntry = Annotated[
    WrittenSize, BeforeValidator(_size_entry, json_schema_input_type=WrittenSize | float | str)
]
"""A size with its keys, or just its expression."""


class Comparison:
    """Two expressions of which the first must not be less (or more) than the second."""

    def __init__(self, text: str) -> None:
        signs = list(re.finditer(r">=|<=|==|>|<|=", text))
        if len(signs) != 1 or signs[0].group() not in (">=", "<="):
            had = " and ".join(one.group() for one in signs) or "no sign"
            raise wrong(
                signs[0].start() + 1 if signs else 1,
                f"The comparison has {had}; it must have one >= or <=.",
                "Write (hub - bore) / 2 >= 5.",
            )
        self.text, self.sign = text, signs[0].group()
        self.left = Formula(text[: signs[0].start()], "length")
        self.right = Formula(text[signs[0].end() :], "length", offset=signs[0].end())

        self.formulas = (self.left, self.right)

    def __repr__(self) -> str:
        return f"Comparison({self.text!r})"

    def slack(self, values: Any) -> float:
        """By how much it holds [mm]; below 0 when it is broken."""
        apart = self.left.at(values) - self.right.at(values)
        return apart if self.sign == ">=" else -apart


def _comparison(given: Any) -> Comparison:
    if not isinstance(given, str):
        raise wrong(0, f"It is {given}; a comparison is wanted.", "Write (hub - bore) / 2 >= 5.")
    return Comparison(given)


class WrittenMust(Entry):
    """Something that must hold at every scale."""

    that: Annotated[Comparison, PlainValidator(_comparison), WithJsonSchema({"type": "string"})] = Field(
        description="A comparison of two lengths, e.g. (hub - bore) / 2 >= 5"
    )
    because: str = Field("", description="Why it must hold")
