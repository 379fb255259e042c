"""A written part with its figures filled in: the shape, its needs and its lengths for loops."""

from __future__ import annotations

import math
import re
from typing import Literal

from tommybar.design.model import Part, RunoutNeed
from tommybar.design.plates import build_plate
from tommybar.design.reading import Reading
from tommybar.design.turned import build_turned, turned_features, turned_lengths
from tommybar.design.written_parts import WrittenPart
from tommybar.design.yaml_file import Place
from tommybar.facts.materials import material
from tommybar.refusals import Refusal
from tommybar.shapes.features import PlateShape, Shape, TurnedShape


def build_part(read: Reading, name: str, written: WrittenPart) -> Part:
    """The part at the values of ``read``; faults are gathered there."""
    place: Place = ("parts", name)
    found = written.material
    if found:
        try:
            material(found)
        except Refusal as refusal:
            read.wrong += read.file.complaints((*place, "material"), refusal)
    count = read.of(written.count, 1.0)
    shape: TurnedShape | PlateShape | None = None
    if written.turned:
        shape = build_turned(read, name, written.turned, (*place, "turned"))
    elif written.plate:
        shape = build_plate(read, name, written.plate, (*place, "plate"))
    needs = _needs(read, written, place, features_of(shape))
    kind: Literal["turned", "plate", "bought"] = (
        "turned" if written.turned else "plate" if written.plate else "bought"
    )
    return Part(
        name,
        kind,
        written.material,
        0 if math.isnan(count) else round(count),
        shape,
        needs,
        _designation(read, written.bought or "", (*place, "bought")),
        written.note,
        written.from_,
    )


def features_of(shape: Shape | None) -> dict[str, object]:
    """The features of a shape by name."""
    if isinstance(shape, PlateShape):
        return {hole.name: hole for hole in shape.holes}
    if not isinstance(shape, TurnedShape):
        return {}
    return turned_features(shape)


def lengths_of(part: Part) -> dict[str, float]:
    """Lengths that a loop may name, part.what [mm]."""
    shape, name = part.shape, part.name
    if isinstance(shape, PlateShape):
        return {
            f"{name}.length": shape.length.value,
            f"{name}.width": shape.width.value,
            f"{name}.thick": shape.thickness.value,
        }
    if not isinstance(shape, TurnedShape):
        return {}
    return turned_lengths(name, shape)


def _designation(read: Reading, text: str, place: Place) -> str:
    """The designation of a bought part, names of sizes in { } filled in."""

    def fill(found: re.Match[str]) -> str:
        read.one_of(found[1], read.values, place, "size")
        value = read.values.get(found[1], "")
        return value if isinstance(value, str) else f"{value:g}"

    return re.sub(r"\{\s*(\w+)\s*\}", fill, text)


def _needs(
    read: Reading, written: WrittenPart, place: Place, features: dict[str, object]
) -> tuple[RunoutNeed, ...]:
    found = []
    for index, need in enumerate(written.needs):
        here = (*place, "needs", index)
        known = read.one_of(need.runout, features, (*here, "runout"), "feature", str(place[-1]))
        known = read.one_of(need.to, features, (*here, "to"), "feature", str(place[-1])) and known
        if known:
            found.append(RunoutNeed(need.runout, need.to, read.of(need.within)))
    return tuple(found)
