"""What every written feature has: a name, one size that it goes by, and edges as the trade writes them."""

from __future__ import annotations

import re
from typing import Annotated, Any

from pydantic import BeforeValidator, PlainValidator, WithJsonSchema, model_validator

from tommybar.design.figures import expression_text
from tommybar.design.formula import Formula
from tommybar.design.tokens import wrong
from tommybar.design.validation import Entry
from tommybar.refusals import Refusal


def _name(given: Any) -> Any:
    if isinstance(given, str) and not re.fullmatch(r"[A-Za-z][A-Za-z0-9_]*", given):
        raise wrong(1, f'"{given}" is no name.', "Use letters, digits and underlines, a letter first.")
    return given


FeatureName = Annotated[str, BeforeValidator(_name)]


class WrittenEdge:
    """A broken edge: "1", "1 x 45 deg" or "1 x 15 deg" (length along the axis, angle to it), "0.5 round"."""

    def __init__(self, text: str) -> None:
        self.text = text
        self.round = False
        self.angle: Formula | None = None
        size = text
        if found := re.fullmatch(r"(?P<size>.+?)\s+x\s+(?P<angle>.+)", text):
            size = found["size"]
            self.angle = Formula(found["angle"], "angle", above=0, offset=found.start("angle"))
        elif found := re.fullmatch(r"(?P<size>.+?)\s+round", text):
            size, self.round = found["size"], True
        self.size = Formula(size, "length", least=0)
        # the size last: an editor shows it as the figure of the entry
        self.formulas = (self.size,) if self.angle is None else (self.angle, self.size)


def _edge(given: Any) -> WrittenEdge:
    return WrittenEdge(expression_text(given))


Edge = Annotated[
    WrittenEdge,
    PlainValidator(_edge),
    WithJsonSchema(
        {
            "anyOf": [{"type": "number"}, {"type": "string"}],
            "description": "A chamfer or round; for example 0.5, 1 x 45 deg, 1 x 15 deg, 0.5 round.",
        }
    ),
]


def _chamfer(given: Any) -> WrittenEdge:
    edge = _edge(given)
    if edge.round:
        raise Refusal("The edge is a round; only a chamfer can be cut here.", "Write 0.5 x 45 deg.")
    if edge.angle is not None and not (edge.angle.bare and edge.angle.text.split()[0] in ("45", "45.0")):
        raise wrong(
            edge.angle.offset + 1,
            f"The edge is {edge.angle.text}; this one is made at 45 deg.",
            "For another angle give a countersink (an entry of cups).",
        )
    return edge


Chamfer = Annotated[
    WrittenEdge,
    PlainValidator(_chamfer),
    WithJsonSchema(
        {
            "anyOf": [{"type": "number"}, {"type": "string"}],
            "description": "A chamfer of 45 degrees; for example 0.5 or 1 x 45 deg.",
        }
    ),
]


class Sized(Entry):
    """Base of a feature that has a diameter or a thread, not both."""

    @model_validator(mode="after")
    def _one_size(self) -> Any:
        given = [key for key in ("dia", "thread") if getattr(self, key, None) is not None]
        if len(given) != 1:
            had = " and ".join(given) or "neither"
            raise Refusal(f"The feature has {had}; it must have dia or thread.", "Keep one of the two.")
        return self
