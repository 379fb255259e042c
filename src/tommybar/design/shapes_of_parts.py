"""A written part with its figures filled in: the shape, its needs and its lengths for loops."""

from __future__ import annotations

import math
import re
from typing import Literal

from tommybar.design.lands import build_grooves, build_lands, outside_features, overall
from tommybar.design.model import Part, RunoutNeed
from tommybar.design.plates import build_plate
from tommybar.design.reading import Reading
from tommybar.design.turned_holes import build_bores, build_circles, build_cross, build_recesses
from tommybar.design.written_parts import WrittenPart, WrittenTurned
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


def build_turned(read: Reading, part: str, written: WrittenTurned, place: Place) -> TurnedShape:
    """The shape of a turned part."""
    named = [
        (one.name, (*place, key, index))
        for key in ("outside", "grooves", "bores", "recesses", "holes", "cross_holes")
        for index, one in enumerate(getattr(written, key))
    ]
    read.unique(named)
    lands = build_lands(read, written, place)
    grooves = build_grooves(read, written.grooves, place, lands)
    bores = build_bores(read, part, written, place, lands, grooves)
    recesses = build_recesses(read, written, place, lands, bores)
    return TurnedShape(
        overall(read, part, lands, (*place, "length")),
        outside_features(read, part, lands),
        grooves,
        bores,
        recesses,
        build_circles(read, part, written, place, lands, bores, recesses),
        build_cross(read, part, written, place, lands, bores),
    )


def features_of(shape: Shape | None) -> dict[str, object]:
    """The features of a shape by name."""
    if isinstance(shape, PlateShape):
        return {hole.name: hole for hole in shape.holes}
    if not isinstance(shape, TurnedShape):
        return {}
    groups = (
        shape.outside,
        shape.grooves,
        shape.bores,
        shape.recesses,
        shape.circle_holes,
        shape.cross_holes,
    )
    return {feature.name: feature for group in groups for feature in group}


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
    found = {f"{name}.length": shape.length.value}
    found.update({f"{name}.{land.name}.long": land.end - land.start for land in shape.outside})
    found.update({f"{name}.{one.name}.deep": one.depth for one in shape.bores})
    found.update({f"{name}.{one.name}.deep": one.depth for one in shape.recesses})
    return found


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
