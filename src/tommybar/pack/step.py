"""STEP files of the parts and of the assembly, by the solid kernel (the extra ``solid``)."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Any

from tommybar.assembly.placing import Placement
from tommybar.design.model import Part, SizedDesign
from tommybar.refusals import Refusal
from tommybar.shapes.solids.kernel import solid_of
from tommybar.shapes.solids.step import step_of_assembly, step_of_part

if TYPE_CHECKING:
    from tommybar.shapes.bought import BoughtShape
    from tommybar.shapes.features import Shape


def part_step(part: Part) -> bytes:
    """One part, in its own frame [mm].

    Refuses, with what to install, when the solid kernel is not there.
    """
    return step_of_part(_solid(part, part.shape or part.envelope), part.name)


def assembly_step(design: SizedDesign, placements: Sequence[Placement]) -> bytes:
    """All pieces that are placed, each where it stands; pieces of one part share its solid [mm]."""
    number: dict[str, int] = {}
    solids: list[tuple[str, Any]] = []
    places = []
    for one in placements:
        part = design.part(one.part)
        if one.part not in number:
            number[one.part] = len(solids)
            solids.append((one.part, _solid(part, part.standing)))
        name = one.part if part.count == 1 else f"{one.part} {one.instance}"
        places.append((name, number[one.part], one.frame))
    if not places:
        raise Refusal("No part of the design can be placed; an assembly needs at least one.")
    return step_of_assembly(solids, places, design.title)


def _solid(part: Part, shape: Shape | BoughtShape | None) -> Any:
    if shape is None:
        raise Refusal(f"{part.name} is bought and no table gives its size; it cannot be drawn as a solid.")
    return solid_of(shape)
