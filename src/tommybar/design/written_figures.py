"""The figures of a part as they stand in the file: where, as written, and what each comes to as drawn."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import suppress
from dataclasses import dataclass
from typing import Any

from tommybar.design.formula import Formula, formulas_in
from tommybar.design.named_sizes import SizeGraph
from tommybar.design.validation import unit_of, validated
from tommybar.design.written_file import DesignFile
from tommybar.design.yaml_file import Place, YamlFile
from tommybar.facts.threads import thread
from tommybar.refusals import Refusal


@dataclass(frozen=True)
class WrittenFigure:
    """One entry of a part that may be edited.

    ``value`` is what it comes to as drawn [mm or deg], a thread its major
    diameter, None for words; ``names`` are the named sizes in it.
    """

    place: Place
    feature: str  # name of the feature; empty: of the part itself
    key: str
    words: str  # as read from the file
    value: float | None
    unit: str  # "mm", "deg" or ""
    names: tuple[str, ...]


UNITS = {"length": "mm", "angle": "deg"}


def written_figures(file: YamlFile, part: str) -> tuple[WrittenFigure, ...]:
    """Every entry of a part, in the order of the file; raises a refusal when the file cannot be read."""
    unit = unit_of(file)
    written = validated(DesignFile, file, unit)
    graph = SizeGraph(written.sizes, file, unit)
    graph.named()
    values = graph.drawn()
    formulas: dict[Place, tuple[Formula, float]] = {}
    for place, formula in formulas_in(written.parts.get(part), ("parts", part)):
        with suppress(Refusal):
            formula.bind(file, place, graph.scope)
            formulas[place] = formula, formula.at(values)
    return tuple(
        _figure(place, feature, words, formulas.get(place), values)
        for place, feature, words in _entries(file.data["parts"][part], ("parts", part), "")
    )


def _figure(
    place: Place,
    feature: str,
    words: str,
    found: tuple[Formula, float] | None,
    values: dict[str, float | str],
) -> WrittenFigure:
    key = next(str(step) for step in reversed(place) if isinstance(step, str))
    if found:
        formula, value = found
        return WrittenFigure(place, feature, key, words, value, UNITS.get(formula.kind, ""), formula.names)
    if key == "thread":
        named = values.get(words, words)
        with suppress(Refusal):
            major = thread(str(named)).major
            return WrittenFigure(place, feature, key, words, major, "mm", (words,) if words in values else ())
    return WrittenFigure(place, feature, key, words, None, "", ())


def _entries(node: Any, place: Place, feature: str) -> Iterator[tuple[Place, str, str]]:
    if isinstance(node, dict):
        feature = str(node.get("name", feature))
        for key, one in node.items():
            if key != "name":
                yield from _entries(one, (*place, key), feature)
    elif isinstance(node, list):
        for index, one in enumerate(node):
            yield from _entries(one, (*place, index), feature)
    else:
        yield place, feature, "true" if node is True else "false" if node is False else str(node)
