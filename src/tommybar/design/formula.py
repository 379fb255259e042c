"""A figure of the design file that stays an expression until the sizes are chosen."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from typing import Annotated, Any

from pydantic import BaseModel, PlainValidator, WithJsonSchema

from tommybar.design.expressions import Tree, names_in, parse
from tommybar.design.figures import EXAMPLES, expression_text
from tommybar.design.quantities import HOUSE_UNIT, Kind
from tommybar.design.tokens import wrong
from tommybar.design.working import Scope, Worker, worker
from tommybar.design.yaml_file import Place, YamlFile
from tommybar.facts.threads import thread
from tommybar.refusals import Complaint, Refusal


def in_arithmetic(value: float | str) -> float:
    """What a named size counts as in an expression: a thread stands for its major diameter [mm].

    >>> in_arithmetic("M6"), in_arithmetic(2.5)
    (6.0, 2.5)
    """
    return thread(value).major if isinstance(value, str) else value


class Formula:
    """An expression as written, with its bounds; :meth:`bind` makes it ready for working out.

    ``offset`` is where the expression begins in the text of its entry, for an
    entry that holds more than the expression.
    """

    def __init__(
        self, text: str, kind: Kind, above: float = -math.inf, least: float = -math.inf, offset: int = 0
    ) -> None:
        self.text, self.kind, self.above, self.least, self.offset = text, kind, above, least, offset
        self.tree: Tree = self._placed(lambda: parse(text))
        self.names: tuple[str, ...] = tuple(one.name for one in names_in(self.tree))
        self.place: Place = ()
        self._work: Worker | None = None
        self._file: YamlFile | None = None

    def __repr__(self) -> str:
        return f"Formula({self.text!r})"

    def _placed(self, deed: Any) -> Any:
        """Do ``deed``; a refusal's column is moved to where the expression stands in its entry."""
        try:
            return deed()
        except Refusal as refusal:
            if not self.offset:
                raise
            moved = [
                Complaint(one.what, one.remedy, column=one.column + self.offset) for one in refusal.complaints
            ]
            raise Refusal(moved) from None

    @property
    def bare(self) -> bool:
        """Whether no size is named in it: at resize such a figure is kept."""
        return not self.names

    def bind(self, file: YamlFile, place: Place, scope: Scope) -> None:
        """Check names and units against the sizes of the design; raises a refusal without place."""
        self._file, self.place = file, place
        self._work = self._placed(lambda: worker(self.tree, scope, self.kind))

    def at(self, values: Mapping[str, Any]) -> float:
        """Its value [house unit] with the sizes as given; a refusal carries the place in the file.

        nan when it could not be bound, or leans on a size that is nan: that
        fault has been told where it stands.
        """
        if self._work is None or self._file is None:
            return math.nan
        work, named = self._work, {one: in_arithmetic(values[one]) for one in self.names}
        if any(math.isnan(one) for one in named.values()):
            return math.nan
        try:
            # the last digits of binary arithmetic are no part of a drawing
            value = round(float(self._placed(lambda: work(named))), 9)
            self._refuse_bounds(value)
        except Refusal as refusal:
            raise Refusal(self._file.complaints(self.place, refusal)) from None
        return value

    def _refuse_bounds(self, value: float) -> None:
        unit = HOUSE_UNIT.get(self.kind, "")
        shown = f"The {self.kind} comes to {value:.6g} {unit}".rstrip()
        if not value > self.above:
            raise wrong(1, f"{shown}; it must be above {self.above:g}.", "Check the sizes in it.")
        if value < self.least:
            raise wrong(1, f"{shown}; it must not be below {self.least:g}.", "Check the sizes in it.")
        if self.kind == "count" and abs(value - round(value)) > 1e-9:
            raise wrong(1, f"{shown}; it must be a whole number.")


def _field(kind: Kind, above: float = -math.inf, least: float = -math.inf) -> Any:
    def read(given: Any) -> Formula:
        return Formula(expression_text(given), kind, above, least)

    note = f"A figure or expression of named sizes, {kind}; for example {EXAMPLES.get(kind, '1')}."
    return (
        PlainValidator(read),
        WithJsonSchema({"anyOf": [{"type": "number"}, {"type": "string"}], "description": note}),
    )


LengthFormula = Annotated[Formula, *_field("length")]
"""A length of any sign [mm]."""
SizeFormula = Annotated[Formula, *_field("length", above=0)]
"""A length above 0 [mm]."""
EdgeFormula = Annotated[Formula, *_field("length", least=0)]
"""A length, 0 or more [mm]."""
AngleFormula = Annotated[Formula, *_field("angle")]
"""An angle [deg]."""
SpeedFormula = Annotated[Formula, *_field("speed", above=0)]
"""A speed above 0 [rev/min]."""
NumberFormula = Annotated[Formula, *_field("number", least=0)]
"""A plain number, 0 or more."""
ForceFormula = Annotated[Formula, *_field("force", above=0)]
"""A force above 0 [N]."""
TimeFormula = Annotated[Formula, *_field("time", above=0)]
"""A time above 0 [s]."""
CountFormula = Annotated[Formula, *_field("count", above=0)]
"""A whole number above 0."""


def formulas_in(model: Any, place: Place = ()) -> Iterator[tuple[Place, Formula]]:
    """Every formula of a model with its place in the file."""
    if isinstance(model, Formula):
        yield place, model
    elif formulas := getattr(model, "formulas", None):
        yield from ((place, one) for one in formulas)
    elif isinstance(model, BaseModel):
        for name, field in type(model).model_fields.items():
            yield from formulas_in(getattr(model, name), (*place, field.alias or name))
    elif isinstance(model, dict):
        for key, one in model.items():
            yield from formulas_in(one, (*place, key))
    elif isinstance(model, list | tuple):
        for index, one in enumerate(model):
            yield from formulas_in(one, (*place, index))
