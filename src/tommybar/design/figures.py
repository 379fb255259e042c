"""Figures of a file in house units, and the field types that read them.

A field written as ``Length``, ``Angle``, ``Speed`` ... in a model takes a bare
figure, a figure with its unit, or an expression of figures. The file's unit
comes from the validation context ``{"unit": "mm"}``.
"""

from __future__ import annotations

import math
from typing import Annotated, Any

from pydantic import BeforeValidator, ValidationInfo, WithJsonSchema

from tommybar.design.expressions import parse
from tommybar.design.quantities import Kind
from tommybar.design.tokens import wrong
from tommybar.design.working import Scope, worker
from tommybar.refusals import Refusal

EXAMPLES = {
    "length": "12.5, 3/8 in",
    "angle": "15 deg",
    "speed": "480 rev/min",
    "count": "5",
    "number": "0.75",
}


def expression_text(given: Any) -> str:
    """The text of a figure or expression as it stood in the file; a refusal for anything else."""
    if isinstance(given, bool) or not isinstance(given, int | float | str):
        raise wrong(
            0, f"A figure is wanted here; this is {_kind_words(given)}.", "Give a figure or expression."
        )
    if isinstance(given, str):
        return given
    if not math.isfinite(given):
        raise wrong(0, f"The figure is {given}; it must be finite.", "Give a figure of the workshop.")
    return repr(given)


def _kind_words(given: Any) -> str:
    words = {bool: "true or false", list: "a list", dict: "a group of entries"}
    return words.get(type(given), "something else")


def figure(given: Any, unit: str = "mm", kind: Kind = "length") -> float:
    """A figure in house units [mm, deg, rev/min, N, W, g, s] from a number or text of a file in ``unit``.

    >>> figure("1 3/8 in"), figure(2, unit="in"), figure("0.5 mm", unit="in")
    (34.925, 50.8, 0.5)
    >>> figure("480 rev/min", kind="speed"), figure("15 deg", kind="angle")
    (480.0, 15.0)
    """
    value = worker(parse(expression_text(given)), Scope.of(unit), kind)({})
    if kind == "count":
        if value != round(value) or value < 0:
            raise Refusal(f"The count is {value:g}; it must be a whole number, not below 0.")
        return round(value)
    return value


def _reader(kind: Kind, *, above: float | None = None, least: float | None = None) -> Any:
    def read(given: Any, info: ValidationInfo) -> float:
        value = figure(given, (info.context or {}).get("unit", "mm"), kind)
        if above is not None and not value > above:
            raise Refusal(f"The figure is {value:g}; it must be above {above:g}.")
        if least is not None and value < least:
            raise Refusal(f"The figure is {value:g}; it must not be below {least:g}.")
        return value

    return BeforeValidator(read)


def _schema(kind: str) -> Any:
    note = f"A figure or expression, {kind}; for example {EXAMPLES.get(kind, '1')}."
    return WithJsonSchema({"anyOf": [{"type": "number"}, {"type": "string"}], "description": note})


Length = Annotated[float, _reader("length"), _schema("length")]
"""A length, may be negative [mm]."""
PositiveLength = Annotated[float, _reader("length", above=0), _schema("length")]
"""A length above 0 [mm]."""
NotNegativeLength = Annotated[float, _reader("length", least=0), _schema("length")]
"""A length, 0 or more [mm]."""
Angle = Annotated[float, _reader("angle"), _schema("angle")]
"""An angle [deg]."""
Speed = Annotated[float, _reader("speed", above=0), _schema("speed")]
"""A speed above 0 [rev/min]."""
Power = Annotated[float, _reader("power", above=0), _schema("power")]
"""A power above 0 [W]."""
Number = Annotated[float, _reader("number"), _schema("number")]
"""A plain number."""
Count = Annotated[int, _reader("count"), _schema("count")]
"""A whole number, 0 or more."""
