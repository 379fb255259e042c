"""A written turned part with its figures filled in, and proof that it is one piece of metal."""

from __future__ import annotations

import math
from dataclasses import fields

from tommybar.design.grooves import build_bore_grooves, build_face_grooves, build_grooves
from tommybar.design.lands import build_lands, outside_features, overall
from tommybar.design.milled_round import Milled
from tommybar.design.reading import Reading
from tommybar.design.turned_ends import build_bore_tapers, build_centres, build_cups
from tommybar.design.turned_holes import build_bores, build_circles, build_cross, build_recesses
from tommybar.design.written_turned import FEATURE_LISTS, WrittenTurned
from tommybar.design.yaml_file import Place
from tommybar.refusals import Refusal
from tommybar.shapes.features import TurnedShape
from tommybar.shapes.profile import profile


def build_turned(read: Reading, part: str, written: WrittenTurned, place: Place) -> TurnedShape:
    """The shape of a turned part; what stands in the way of its being one piece is told there."""
    read.unique(
        (one.name, (*place, key, index))
        for key in FEATURE_LISTS
        for index, one in enumerate(getattr(written, key))
    )
    before = len(read.wrong)
    lands = build_lands(read, written, place)
    grooves = build_grooves(read, written.grooves, place, lands)
    bores = build_bores(read, part, written, place, lands, grooves)
    recesses = build_recesses(read, written, place, lands, bores)
    milled = Milled(read, part, place, lands, bores)
    shape = TurnedShape(
        overall(read, part, lands, (*place, "length")),
        outside_features(read, part, lands),
        grooves,
        bores,
        recesses,
        build_circles(read, part, written, place, lands, bores, recesses),
        build_cross(read, part, written, place, lands, bores),
        build_face_grooves(read, written, place, lands, bores),
        build_bore_tapers(read, written, place, lands),
        build_cups(read, written, place, lands, bores),
        build_centres(read, written, place, lands),
        build_bore_grooves(read, written, place, lands, bores),
        milled.flats(written),
        milled.head_slots(written),
        milled.cross_slots(written),
        milled.keyways(written),
        milled.bore_keyways(written),
        milled.slits(written),
        milled.engravings(written),
    )
    if len(read.wrong) == before and _known(shape):
        _refuse_section(read, shape, place)
    return shape


def _known(figures: object) -> bool:
    """Whether every figure could be worked out; one that could not has been told where it stands."""
    if isinstance(figures, float):
        return not math.isnan(figures)
    if isinstance(figures, str | int) or figures is None:
        return True
    inside = figures if isinstance(figures, tuple) else vars(figures).values()
    return all(map(_known, inside))


def _refuse_section(read: Reading, shape: TurnedShape, place: Place) -> None:
    """Tell when the features, each possible alone, leave no single closed section."""
    try:
        profile(shape)
    except Refusal as refusal:
        read.wrong += read.file.complaints(place, refusal)


FEATURE_GROUPS = tuple(field.name for field in fields(TurnedShape) if field.name != "length")


def turned_features(shape: TurnedShape) -> dict[str, object]:
    """Every feature of a turned part by name."""
    return {one.name: one for group in FEATURE_GROUPS for one in getattr(shape, group)}


def turned_lengths(name: str, shape: TurnedShape) -> dict[str, float]:
    """Lengths of a turned part that a loop may name, part.what [mm]."""
    found = {f"{name}.length": shape.length.value}
    for land in shape.outside:
        found[f"{name}.{land.name}.long"] = land.end - land.start
    for milled in (shape.flats, shape.cross_slots, shape.keyways):
        found.update({f"{name}.{one.name}.long": one.end - one.start for one in milled})
    for sunk in (shape.bores, shape.recesses, shape.face_grooves, shape.bore_tapers, shape.head_slots):
        found.update({f"{name}.{one.name}.deep": one.depth for one in sunk})
    found.update({f"{name}.{one.name}.deep": one.depth for one in shape.slits if one.depth is not None})
    for narrow in (shape.grooves, shape.bore_grooves):
        found.update({f"{name}.{one.name}.wide": one.end - one.start for one in narrow})
    return found
