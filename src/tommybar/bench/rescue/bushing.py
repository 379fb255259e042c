"""A bore that is past saving gets a bush: a new part, pressed in, bored to the old size."""

from __future__ import annotations

import re

from tommybar.bench.places import place_of
from tommybar.bench.rescue.situation import Situation, Try
from tommybar.bench.rescue.sizes import fits_of
from tommybar.bench.splice import scalar, with_lines, with_value
from tommybar.design.yaml_file import Place, yaml_from_text
from tommybar.shapes.features import TurnedShape

WALL = 1.5  # of a bush that is pressed in, at least [mm]; common practice, no source
BORING = 15.0  # the bore opened for the bush, and the bush pressed in [min]; common practice, no source
BUSH_METAL = "phosphor bronze"


def bushed(situation: Situation, size: str, value: float) -> Try | None:
    """The try that bores ``size`` out and presses a bush in, or None where the part is not turned.

    The bush gets the fits that the bore had; the part's bore gets a press fit
    with the bush.
    """
    part, _, feature = size.partition(".")
    shape = situation.plan.design.part(part).shape
    if not isinstance(shape, TurnedShape):
        return None
    bore = next((one for one in shape.bores if one.name == feature and one.through and not one.after), None)
    text = situation.inputs.design_text
    if bore is None or f"{part}_bush" in yaml_from_text(text).data["parts"]:
        return None
    outside = _outside(situation, value)
    fits = [one for one in fits_of(situation, size) if one.hole == size]
    if not fits or not fits[0].zones.startswith("H"):
        return None
    written = place_of(text, size)
    if written is None:
        return None
    inside = written.named or scalar(bore.dia.value)
    text = with_value(text, _own_place(text, part, feature), outside)
    text = with_lines(text, ("parts",), f"{part}_bush: {_bush(inside, outside, bore.depth)}")
    for index, one in enumerate(yaml_from_text(text).data["relations"]):
        if one.get("fit") == size:
            text = with_value(text, ("relations", index, "fit"), f"{part}_bush.bore")
    text = with_lines(
        text, ("relations",), f"{{fit: {size}, on: {part}_bush.body, limits: H7/p6, joint: press}}"
    )
    for index, one in enumerate(yaml_from_text(text).data.get("purposes", ())):
        if part in one.get("turns", ()):
            text = with_lines(text, ("purposes", index, "turns"), f"{part}_bush")
    return Try(
        f"Bore {size} out to {outside:g} mm, press in a bush of {BUSH_METAL} and ream that.",
        design=text,
        forget=(size,),
        keep=(part,),
        by_hand=BORING,
    )


def _outside(situation: Situation, value: float) -> float:
    """The bush's outside: the next reamer that leaves a wall, else the next whole half millimetre [mm]."""
    least = value + 2 * WALL
    owned = [one.size for one in situation.plan.shop.reamers if one.size >= least]
    return min(owned) if owned else -(-least // 0.5) * 0.5


def _own_place(text: str, part: str, feature: str) -> Place:
    bores = yaml_from_text(text).data["parts"][part]["turned"]["bores"]
    index = next(at for at, one in enumerate(bores) if one["name"] == feature)
    return ("parts", part, "turned", "bores", index, "dia")


def _bush(inside: str, outside: float, long: float) -> str:
    name = inside if re.fullmatch(r"[A-Za-z0-9_.]+", inside) else scalar(inside)
    return (
        f"{{material: {BUSH_METAL}, turned: {{outside: [{{name: body, dia: {scalar(outside)}, long: {scalar(long)},"
        f" edge_b: 0.5 x 45 deg}}], bores: [{{name: bore, dia: {name}, through: true, after: press}}]}}}}"
    )
