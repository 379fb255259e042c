"""The figures of a design by name, and the same design with some of them changed."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import fields, is_dataclass, replace
from typing import Any

from tommybar.design.model import SizedDesign
from tommybar.shapes.features import Cylinder, Dim, TurnedShape


def dims_of(design: SizedDesign) -> dict[str, Dim]:
    """Every figure of the design that has a name, by part.size."""
    return {dim.name: dim for part in design.parts for dim in _dims(part.shape)}


def lengths_of(design: SizedDesign) -> dict[str, float]:
    """Lengths of outside cylinders, part.feature.long [mm]."""
    return {
        f"{part.name}.{one.name}.long": one.end - one.start
        for part in design.parts
        if isinstance(part.shape, TurnedShape)
        for one in part.shape.outside
        if isinstance(one, Cylinder)
    }


def _dims(given: Any) -> Iterator[Dim]:
    if isinstance(given, Dim):
        if given.name:
            yield given
    elif isinstance(given, tuple):
        for one in given:
            yield from _dims(one)
    elif is_dataclass(given):
        for field in fields(given):
            yield from _dims(getattr(given, field.name))


def with_dims(design: SizedDesign, changed: Mapping[str, Dim]) -> SizedDesign:
    """The design with the named figures replaced."""
    if not changed:
        return design
    return replace(
        design, parts=tuple(replace(one, shape=_changed(one.shape, changed)) for one in design.parts)
    )


def _changed(given: Any, changed: Mapping[str, Dim]) -> Any:
    if isinstance(given, Dim):
        return changed.get(given.name, given)
    if isinstance(given, tuple):
        return tuple(_changed(one, changed) for one in given)
    if is_dataclass(given) and not isinstance(given, type):
        parts = {field.name: getattr(given, field.name) for field in fields(given)}
        new = {name: _changed(value, changed) for name, value in parts.items()}
        return given if new == parts else replace(given, **new)
    return given
