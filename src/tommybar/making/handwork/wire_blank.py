"""The length of wire or rod that something bent or wound starts from."""

from __future__ import annotations

import math

from tommybar.design.model import Part
from tommybar.facts.materials import material
from tommybar.making.cards import Blank


def wire_blank(part: Part, dia: float, length: float, allowances: list[tuple[str, float]], why: str) -> Blank:
    """A piece of round wire with its allowances [mm]."""
    whole = round(length + sum(mm for _, mm in allowances), 1)
    mass = math.pi / 4 * dia**2 * whole * material(part.material).density / 1000
    return Blank(
        part.name,
        part.material,
        "round",
        dia,
        0.0,
        whole,
        round(length, 2),
        tuple(allowances),
        part.count,
        round(mass, 1),
        why,
        as_supplied=True,
    )
