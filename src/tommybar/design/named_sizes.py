"""The named sizes of a design as a graph: which are free, which are worked out, in what order."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import partial
from graphlib import CycleError, TopologicalSorter

from tommybar.design.expressions import refuse_size_name
from tommybar.design.figures import figure
from tommybar.design.formula import Formula
from tommybar.design.model import Follows
from tommybar.design.quantities import KIND_DIMS, Dims, Kind, dims_words
from tommybar.design.tokens import wrong
from tommybar.design.working import Scope, ready
from tommybar.design.written_sizes import CLASSES, WrittenSize
from tommybar.design.yaml_file import YamlFile
from tommybar.facts.threads import thread
from tommybar.refusals import Complaint, Refusal, nearest

UNIT_OF: dict[str, str] = {"length": "mm", "angle": "deg", "number": ""}


@dataclass(frozen=True)
class NamedSize:
    """A named size as drawn [mm, deg, plain number, or the designation of a thread or bought part]."""

    name: str
    value: float | str
    unit: str  # "mm", "deg" or ""
    follows: Follows
    expression: bool  # worked out from others
    drives: bool
    between: tuple[float, float] | None
    prefers: tuple[float, ...]
    because: str


class SizeGraph:
    """Named sizes ready for working out at any choice of the free ones."""

    def __init__(self, written: Mapping[str, WrittenSize], file: YamlFile, unit: str) -> None:
        self.written, self.file, self.unit = written, file, unit
        self.wrong: list[Complaint] = []
        self.dims: dict[str, Dims | str] = {}
        self.texts: dict[str, str] = {}  # threads and bought parts
        self.formulas: dict[str, Formula] = {}
        for name, size in written.items():
            self._try(name, partial(self._read, name, size))
        self.order = self._in_order()
        for name in self.order:
            self._try(name, partial(self._bind, name))

    @property
    def scope(self) -> Scope:
        """What the expressions of the file may name."""
        return Scope.of(self.unit, self.dims)

    def _try(self, name: str, deed: Callable[[], None]) -> None:
        try:
            deed()
        except Refusal as refusal:
            self.wrong += self.file.complaints(("sizes", name, "is"), refusal)
            self.dims.setdefault(name, KIND_DIMS["length"])  # so that what leans on it is not blamed too

    def _read(self, name: str, size: WrittenSize) -> None:
        if reason := refuse_size_name(name):
            raise wrong(0, reason, "Choose another name.")
        if size.follows == "thread":
            self.texts[name], self.dims[name] = thread(size.is_).designation, KIND_DIMS["length"]
            return
        if size.follows == "bought":
            self.texts[name], self.dims[name] = size.is_, "a bought part"
            return
        formula = Formula(size.is_, size.kind)
        if size.follows and not formula.bare:
            first = formula.names[0]
            if first not in self.written:
                raise wrong(1, f'"{first}" is no figure.', "A thread follows thread, a bought part bought.")
            what = f'The size follows {size.follows} but is worked out from "{first}".'
            raise wrong(0, what, "Take follows out, or give a figure.")
        if not size.follows and formula.bare:
            remedy = f"Add follows: one of {', '.join(CLASSES)}."
            raise wrong(0, f"The size is {size.is_} and follows nothing that is named.", remedy)
        self.formulas[name] = formula

    def _in_order(self) -> list[str]:
        """Names so that each comes after those it leans on; a circle is a complaint with its whole chain."""
        leans = {
            name: [one for one in dict.fromkeys(formula.names) if one in self.formulas]
            for name, formula in self.formulas.items()
        }
        while True:
            try:
                return list(TopologicalSorter(leans).static_order())
            except CycleError as error:
                ring = list(reversed(error.args[1][1:]))
                first = min(range(len(ring)), key=lambda at: list(self.formulas).index(ring[at]))
                ring = ring[first:] + ring[:first]
                what = f"The sizes lean on each other in a circle: {' -> '.join([*ring, ring[0]])}."
                place = ("sizes", ring[0], "is")
                self.wrong.append(self.file.complaint(place, what, "Give one of them a figure."))
                for name in ring:
                    self.dims[name] = KIND_DIMS["length"]
                leans = {
                    name: [one for one in others if one not in ring]
                    for name, others in leans.items()
                    if name not in ring
                }

    def _bind(self, name: str) -> None:
        formula, size = self.formulas[name], self.written[name]
        dims = ready(formula.tree, self.scope).dims
        kind: Kind = size.kind
        for known in ("length", "angle", "number"):
            if dims == KIND_DIMS[known]:
                kind = known
        if dims is not None and dims != KIND_DIMS[kind]:
            raise wrong(1, f"This is {dims_words(dims)}; a size is a length, an angle or a number.")
        formula.kind = kind
        self.dims[name] = KIND_DIMS[kind]
        formula.bind(self.file, ("sizes", name, "is"), self.scope)

    def named(self) -> tuple[NamedSize, ...]:
        """The sizes in the order of the file, as drawn; faults of their bounds go to ``wrong``."""
        values = self.drawn()
        found = []
        for name, size in self.written.items():
            kind = self.formulas[name].kind if name in self.formulas else "number"
            between = self._bounds(name, size, values[name], kind)
            prefers = tuple(self._extra(name, one, kind, "prefers") for one in size.prefers)
            found.append(
                NamedSize(
                    name,
                    values[name],
                    UNIT_OF[kind],
                    size.follows or "",
                    not size.follows,
                    size.drives,
                    between,
                    prefers,
                    size.because,
                )
            )
        return tuple(found)

    def _extra(self, name: str, text: str, kind: Kind, key: str) -> float:
        try:
            return figure(text, self.unit, kind)
        except Refusal as refusal:
            self.wrong += self.file.complaints(("sizes", name, key), refusal)
            return math.nan

    def _bounds(
        self, name: str, size: WrittenSize, value: float | str, kind: Kind
    ) -> tuple[float, float] | None:
        if size.between is None:
            return None
        low, high = (self._extra(name, one, kind, "between") for one in size.between)
        if isinstance(value, float) and not math.isnan(low + high) and not low <= value <= high:
            what = f"The size is {value:g}; between allows {low:g} to {high:g} {UNIT_OF[kind]}.".replace(
                " .", "."
            )
            self.wrong.append(self.file.complaint(("sizes", name, "is"), what, "Change one of the two."))
        return low, high

    def drawn(self) -> dict[str, float | str]:
        """Every named size as drawn; nan for one that cannot be worked out, told in ``wrong``."""
        found: dict[str, float | str] = {name: self.texts.get(name, math.nan) for name in self.written}
        for name in self.order:
            try:
                found[name] = self.formulas[name].at(found)
            except Refusal as refusal:
                self.wrong += [one for one in refusal.complaints if one not in self.wrong]
        return found

    def values(self, chosen: Mapping[str, float | str]) -> dict[str, float | str]:
        """Every named size with the free ones ``chosen`` in place of those drawn [house units]."""
        for name, value in chosen.items():
            self._refuse_choice(name, value)
        found: dict[str, float | str] = dict(self.texts)
        found.update({name: value for name, value in chosen.items() if name in self.texts})
        for name in self.order:
            given = chosen.get(name)
            found[name] = float(given) if given is not None else self.formulas[name].at(found)
        return {name: found[name] for name in self.written if name in found}

    def _refuse_choice(self, name: str, value: float | str) -> None:
        if name not in self.written:
            remedy = nearest(name, self.written) or f"There are {', '.join(self.written)}."
            raise Refusal(f'No size is named "{name}".', remedy)
        if not self.written[name].follows:
            leans = ", ".join(dict.fromkeys(self.formulas[name].names))
            raise Refusal(
                f'The size "{name}" is worked out and cannot be chosen.', f"Choose {leans} instead."
            )
        if name in self.texts:
            if not isinstance(value, str):
                kind = self.written[name].follows
                raise Refusal(
                    f'The size "{name}" follows {kind}; {value} is a figure.', "Give a designation."
                )
            if self.written[name].follows == "thread":
                thread(value)
        elif isinstance(value, str) or not math.isfinite(value):
            raise Refusal(
                f'The size "{name}" is {value}; it must be a finite figure.', "Give it in mm or deg."
            )
