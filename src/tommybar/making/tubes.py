"""Drawn tube as the blank of a turned part: which tube serves, and the plug that keeps jaws from crushing it."""

from __future__ import annotations

from dataclasses import replace

from tommybar.design.model import Part
from tommybar.facts.materials import material
from tommybar.findings import Finding
from tommybar.making.grips import Option, jaw_force
from tommybar.making.lengths import Mm
from tommybar.mechanics.gripped_ring import ring_under_jaws
from tommybar.resize.limits import largest_outside, same_material, serving_tubes, skin_on
from tommybar.shapes.features import TurnedShape
from tommybar.shop.model import Bar, Shop

JAWS = {"three-jaw": 3, "four-jaw": 4, "soft jaws": 3}


def hollow_of(bar: Bar) -> float:
    """The bore that a bar brings with it: that of a tube [mm]."""
    return bar.width if bar.section == "tube" else 0.0


def tube_choices(part: Part, shop: Shop, stock: str = "ask") -> list[tuple[Bar, bool]]:
    """Tubes that a part which asks for one can come from: (tube, whether its surface may stay), best first."""
    assert isinstance(part.shape, TurnedShape)
    shape = part.shape
    found = [
        ((bar not in shop.rack, bar.size, -bar.width, bar.name), bar, skin_on(bar, shape) == 0.0)
        for bar in serving_tubes(part.material, shape, shop, stock)
    ]
    return [(bar, stays) for _, bar, stays in sorted(found, key=lambda one: one[0])]


def plugged(option: Option, part: Part, hollow: float) -> Option:
    """The holding of a tube with a plug under its jaws, and the figure that asks for it."""
    device = option.jaws.device if option.jaws is not None else ""
    words = f"a turned plug, a push fit in the {Mm(hollow):g} bore, stands in the tube under the jaws"
    if device in JAWS and hollow < option.dia:
        bare = ring_under_jaws(
            JAWS[device],
            jaw_force(option),
            option.dia,
            hollow,
            option.grip,
            material(part.material).modulus,
        )
        wall = (option.dia - hollow) / 2
        words += (
            f": bare, hand-tight jaws press the {Mm(wall):.1f} wall {Mm(bare.out_of_round):.2f} out of round"
        )
    return replace(option, note="; ".join(one for one in (option.note, words) if one))


def no_tube(part: Part, shop: Shop) -> Finding:
    """The stop of a part that asks for tube where no tube serves."""
    assert isinstance(part.shape, TurnedShape)
    dia = largest_outside(part.shape)
    inside = min((one.dia.value for one in part.shape.bores if one.through), default=0.0)
    tubes = {
        f"{bar.size:g} x {bar.width:g}"
        for bar in (*shop.rack, *shop.obtainable)
        if bar.section == "tube" and same_material(bar.material, part.material)
    }
    return Finding(
        201,
        "stop",
        f"No {part.material} tube for {part.name}: it asks for {dia:g} mm outside and a bore of {inside:g} mm.",
        part=part.name,
        figure=f"{dia:g} x {inside:g} mm",
        bound="tube of the shop: " + (", ".join(sorted(tubes)) or "none"),
        remedy="Add the tube to the shop file once a seller is found, let the sizes follow one there is, "
        "or take `from: tube` out and bore it from bar.",
    )
