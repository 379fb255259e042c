"""A written part with its figures filled in: the shape, its needs and its lengths for loops."""

from __future__ import annotations

import math
from typing import Literal

from tommybar.design.bench_work import build_bench
from tommybar.design.bent import (
    bent_features,
    bent_lengths,
    build_ring,
    build_sheet,
    build_spring,
    build_wire,
)
from tommybar.design.bought_parts import build_bought
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
    shape = _shape(read, name, written, place)
    features = features_of(shape)
    bought, envelope = build_bought(read, written.bought, (*place, "bought"))
    return Part(
        name,
        _kind(written),
        written.material,
        0 if math.isnan(count) else round(count),
        shape,
        _needs(read, written, place, features),
        bought,
        written.note,
        written.from_,
        build_bench(read, name, written.bench, (*place, "bench"), features),
        envelope,
    )


def _shape(read: Reading, name: str, written: WrittenPart, place: Place) -> Shape | None:
    if written.turned:
        return build_turned(read, name, written.turned, (*place, "turned"))
    if written.plate:
        return build_plate(read, name, written.plate, (*place, "plate"))
    if written.block:
        return build_plate(read, name, written.block, (*place, "block"))
    if written.sheet:
        return build_sheet(read, name, written.sheet, (*place, "sheet"))
    if written.ring:
        return build_ring(read, name, written.ring, (*place, "ring"))
    if written.spring:
        return build_spring(read, name, written.spring, (*place, "spring"))
    if written.wire:
        return build_wire(read, name, written.wire, (*place, "wire"))
    return None


def _kind(written: WrittenPart) -> Literal["turned", "plate", "sheet", "wire", "bought"]:
    if written.turned:
        return "turned"
    if written.plate or written.block:
        return "plate"
    if written.sheet or (written.ring and not written.ring.wire):
        return "sheet"
    return "bought" if written.bought else "wire"


def features_of(shape: Shape | None) -> dict[str, object]:
    """The features of a shape by name."""
    if isinstance(shape, PlateShape):
        groups = (
            shape.holes,
            shape.slots,
            shape.pockets,
            shape.steps,
            shape.vees,
            shape.dovetails,
            shape.edges,
            shape.slits,
            shape.engravings,
            shape.rays,
        )
        return {one.name: one for group in groups for one in group}
    if not isinstance(shape, TurnedShape):
        return bent_features(shape)
    return turned_features(shape)


def lengths_of(part: Part) -> dict[str, float]:
    """Lengths that a loop may name, part.what [mm]."""
    shape, name = part.shape, part.name
    if isinstance(shape, PlateShape):
        found = {
            f"{name}.length": shape.length.value,
            f"{name}.width": shape.width.value,
            f"{name}.thick": shape.thickness.value,
        }
        if shape.thickness.name.endswith(".height"):
            found[f"{name}.height"] = shape.thickness.value
        sunk = [(one.name, one.depth) for one in shape.slots]
        sunk += [(one.name, one.depth) for one in shape.pockets]
        sunk += [(one.name, one.depth) for one in shape.holes]
        sunk += [(one.name, one.depth) for one in shape.dovetails]
        found.update({f"{name}.{called}.deep": deep for called, deep in sunk if deep is not None})
        for step in shape.steps:
            found[f"{name}.{step.name}.wide"] = step.wide.value
            found[f"{name}.{step.name}.deep"] = step.depth.value
        return found
    if part.envelope is not None:
        return {f"{name}.{key}": value for key, value in part.envelope.sizes}
    if not isinstance(shape, TurnedShape):
        return bent_lengths(name, shape)
    return turned_lengths(name, shape)


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
