"""Questions of the sizes in a rescue: which named size stands behind one, what else may be chosen."""

from __future__ import annotations

from collections.abc import Iterator

from tommybar.bench.places import place_of
from tommybar.bench.rescue.situation import Situation
from tommybar.design import NamedSize
from tommybar.design.model import FitRelation
from tommybar.shapes.features import PlateShape, TurnedShape


def named_size(situation: Situation, size: str) -> NamedSize | None:
    """The named size that a figure of a part is taken from, when it is a free one."""
    standing = place_of(situation.inputs.design_text, size)
    if standing is None or not standing.named:
        return None
    found = next(one for one in situation.inputs.design.named if one.name == standing.named)
    return None if found.expression else found


def fits_of(situation: Situation, size: str) -> tuple[FitRelation, ...]:
    """The fits that a size has a part in."""
    return tuple(one for one in situation.plan.design.fits if size in (one.hole, one.shaft))


def mates_of(situation: Situation, size: str) -> tuple[str, ...]:
    """The other members of those fits."""
    return tuple(
        dict.fromkeys(one.shaft if one.hole == size else one.hole for one in fits_of(situation, size))
    )


def as_planned(situation: Situation) -> dict[str, float | str]:
    """Every free size as the plan has it."""
    free = {one.name for one in situation.inputs.design.named if not one.expression}
    return {row.name: row.new for row in situation.plan.sizes if row.name in free}


def sizes_that_move(situation: Situation, value_of: str) -> Iterator[tuple[str, float, float]]:
    """Free lengths that a part's length leans on: name, figure as planned [mm], and how much it moves by 1."""
    design, now = situation.inputs.design, as_planned(situation)
    here = _length(situation, value_of, now)
    for one in design.named:
        if one.expression or one.unit != "mm" or one.follows not in ("scale", "nothing"):
            continue
        value = now.get(one.name)
        if not isinstance(value, float):
            continue
        moved = _length(situation, value_of, {**now, one.name: value + 0.001})
        if abs(moved - here) > 1e-7:
            yield one.name, value, (moved - here) / 0.001


def _length(situation: Situation, part: str, values: dict[str, float | str]) -> float:
    shape = situation.inputs.design.sized(values).part(part).shape
    return shape.length.value if isinstance(shape, TurnedShape | PlateShape) else 0.0
