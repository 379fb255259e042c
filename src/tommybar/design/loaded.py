"""A design file loaded: its named sizes still open, its shape at any choice of them."""

from __future__ import annotations

from collections.abc import Mapping
from contextlib import suppress
from pathlib import Path
from typing import Any, Literal

from tommybar.design.formula import formulas_in
from tommybar.design.model import Part, SizedDesign
from tommybar.design.named_sizes import NamedSize, SizeGraph
from tommybar.design.reading import TINY, Reading
from tommybar.design.relations import resolve, zones_of_clearances, zones_of_fits
from tommybar.design.shapes_of_parts import build_part
from tommybar.design.validation import in_file_order, schema_of, unit_of, validated
from tommybar.design.written_file import DesignFile, SizesAlone
from tommybar.design.written_parts import KINDS
from tommybar.design.written_plates import PLATE_LISTS
from tommybar.design.written_turned import FEATURE_LISTS
from tommybar.design.yaml_file import Place, YamlFile, read_yaml, yaml_from_text
from tommybar.refusals import Complaint, Refusal

KEPT = 6  # choices of sizes at which a design stays filled in
# keys that only hold the features of a part together
UNNAMED = ("parts", *(one for one in KINDS if one != "wire"), *FEATURE_LISTS, *PLATE_LISTS)


class Design:
    """A design whose named sizes may still be chosen. Make one with :func:`load_design`.

    ``named`` are the sizes as drawn; :meth:`evaluate` works all of them out
    for a choice of the free ones, and :meth:`sized` gives the whole design.
    """

    def __init__(self, file: YamlFile) -> None:
        unit = unit_of(file)
        written = _written(file, unit)
        graph = SizeGraph(written.sizes, file, unit)
        complaints: list[Complaint] = []
        for place, formula in formulas_in(written):
            try:
                formula.bind(file, place, graph.scope)
            except Refusal as refusal:
                complaints += file.complaints(place, refusal)
        self._file, self._written, self._graph = file, written, graph
        self.title, self.revision, self.path = written.design, written.revision, Path(file.path)
        self.units: Literal["mm", "in"] = written.units
        self.named: tuple[NamedSize, ...] = graph.named()
        self._filled: dict[tuple[tuple[str, float | str], ...], tuple[Reading, SizedDesign]] = {}
        complaints += graph.wrong
        if complaints:
            read, _ = self._filled_anew(graph.drawn())  # what else is wrong, in the same answer
            raise Refusal(in_file_order(complaints + read.wrong))

    @property
    def file_text(self) -> str:
        """The text of the file, comments and all."""
        return self._file.text

    def evaluate(self, values: Mapping[str, float | str] | None = None) -> dict[str, float | str]:
        """Every named size [mm, deg or designation], the free ones in ``values`` in place of those drawn."""
        return self._graph.values(values or {})

    def must(self, values: Mapping[str, float | str] | None = None) -> tuple[tuple[str, str, float], ...]:
        """Each must-line with its reason and its slack [mm]; a slack below 0 is broken."""
        worked = self.evaluate(values)
        return tuple((one.that.text, one.because, one.that.slack(worked)) for one in self._written.must)

    def sized(self, values: Mapping[str, float | str] | None = None) -> SizedDesign:
        """The design at one choice of sizes; raises :class:`Refusal` when it cannot be made of metal."""
        read, sized = self._filled_in(self.evaluate(values))
        if read.wrong:
            raise Refusal(in_file_order(read.wrong))
        return sized

    def part_alone(self, name: str, values: Mapping[str, float | str] | None = None) -> Part:
        """One part at one choice of sizes, the others left out; a :class:`Refusal` says why it cannot be."""
        if self._has_clearances:  # limits that lean on the mate: all is needed
            return self.sized(values).part(name)
        read = Reading(self._file, self.units, self.evaluate(values))
        read.zones = zones_of_fits(read, self._written)
        part = build_part(read, name, self._written.parts[name])
        if read.wrong:
            raise Refusal(in_file_order(read.wrong))
        return part

    @property
    def _has_clearances(self) -> bool:
        return any(getattr(one, "clearance", None) and hasattr(one, "fit") for one in self._written.relations)

    def _filled_in(self, worked: dict[str, float | str]) -> tuple[Reading, SizedDesign]:
        """What becomes of the design; the last few answers are kept, since many ask at the same sizes."""
        key = tuple(worked.items())
        if key not in self._filled:
            while len(self._filled) >= KEPT:
                del self._filled[next(iter(self._filled))]
            self._filled[key] = self._filled_anew(worked)
        return self._filled[key]

    def _filled_anew(self, worked: dict[str, float | str]) -> tuple[Reading, SizedDesign]:
        written = self._written
        read = Reading(self._file, self.units, worked)
        zones = zones_of_fits(read, written)
        if self._has_clearances:
            tried = Reading(self._file, self.units, worked)  # only for the nominal sizes
            parts = tuple(build_part(tried, name, part) for name, part in written.parts.items())
            zones = zones_of_clearances(tried, written, parts, zones)
        read.zones = zones
        parts = tuple(build_part(read, name, part) for name, part in written.parts.items())
        found = resolve(read, written, parts)
        sized = SizedDesign(
            self.title,
            self.revision,
            self.units,
            tuple(worked.items()),
            parts,
            cautions=written.cautions,
            foot=written.foot,
            **found,
        )
        return read, sized

    def refuse_as_drawn(self) -> None:
        """Raise what is wrong with the design as drawn: its shape, its must-lines, its loops."""
        sized = self.sized()
        file, wrong = self._file, []
        for index, (text, because, slack) in enumerate(self.must()):
            if slack < -TINY:
                reason = f" ({because})" if because else ""
                what = f"{text} is broken by {-slack:.3g} mm as drawn{reason}."
                wrong.append(file.complaint(("must", index, "that"), what, "Change the sizes in it."))
        places = [index for index, one in enumerate(self._written.relations) if hasattr(one, "loop")]
        for index, loop in zip(places, sized.loops, strict=True):
            total = sum(term.factor * term.value for term in loop.terms)
            if not loop.least - TINY <= total <= loop.most + TINY:
                what = f"The loop comes to {total:.4g} mm; its float is {loop.least:g} to {loop.most:g} mm."
                wrong.append(file.complaint(("relations", index, "loop"), what, "Change a length in it."))
        if wrong:
            raise Refusal(wrong)

    def kept(self) -> tuple[tuple[str, float], ...]:
        """Bare lengths inside features, which no resize touches: part.feature.key and figure [mm]."""
        found = []
        for place, formula in formulas_in(self._written):
            inside = place[0] == "parts" and formula.kind == "length"
            if inside and formula.bare and place[-1] != "within" and formula.at({}) != 0:
                found.append((self._called(place), formula.at({})))
        return tuple(found)

    def _called(self, place: Place) -> str:
        """A place in the parts by the names of its features instead of their numbers."""
        node, words = self._file.data, []
        for step in place:
            node = node[step]
            if isinstance(step, int):
                words.append(str(node.get("name", step + 1)) if isinstance(node, dict) else str(step + 1))
            elif step not in UNNAMED:
                words.append(step)
        return ".".join(words)


def _written(file: YamlFile, unit: str) -> DesignFile:
    """The file as written; a refusal of its keys also tells what is wrong among its sizes."""
    try:
        return validated(DesignFile, file, unit)
    except Refusal as refusal:
        complaints = list(refusal.complaints)
        with suppress(Refusal):
            graph = SizeGraph(validated(SizesAlone, file, unit).sizes, file, unit)
            graph.named()
            complaints += graph.wrong
        raise Refusal(in_file_order(complaints)) from None


def load_design(path: str | Path) -> Design:
    """Load a design file; raises :class:`Refusal` with every fault of it, each with its place.

    The design as drawn is worked out once, so that what cannot be made of
    metal is refused here and not in the middle of a plan.
    """
    return _whole(Design(read_yaml(path)))


def design_from_text(text: str, path: str = "") -> Design:
    """Like :func:`load_design`, from text that is already in hand."""
    return _whole(Design(yaml_from_text(text, path)))


def _whole(design: Design) -> Design:
    design.refuse_as_drawn()
    return design


def design_schema() -> dict[str, Any]:
    """JSON Schema of the design file, for editors that complete and check."""
    return schema_of(DesignFile)
