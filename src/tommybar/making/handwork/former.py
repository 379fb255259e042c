"""The former of a bend, smaller than the radius by the spring-back, and how far to bend on it."""

from __future__ import annotations

from dataclasses import dataclass

from tommybar.facts.materials import material
from tommybar.making.handwork.hand_card import HandCard
from tommybar.mechanics.springback import former_radius
from tommybar.refusals import Refusal


@dataclass(frozen=True)
class Former:
    """Radius of the former [mm] and angle to bend to before letting go [deg]."""

    radius: float
    angle: float


def former_for(
    card: HandCard, inside: float, thickness: float, angle: float, what: str, *, wire: bool = False
) -> Former:
    """Former for a wanted inside radius; the length of the middle stays, so the angle grows as the radius falls.

    A bend so tight that its former would be a sharp edge is bent over the
    drawn radius, and only its angle is over-bent.
    """
    metal = material(card.part.material)
    middle = inside + thickness / 2
    try:
        bent = former_radius(middle, thickness, metal.yield_strength, metal.modulus, wire=wire)
    except Refusal as refusal:
        card.find(
            463,
            "caution",
            f"{what} of {card.part.name}: no former can be reckoned. {refusal}",
            remedy="Bend it by trial on a strip of the same metal.",
            figure=f"{inside:g} mm inside",
        )
        return Former(inside, angle)
    over = angle * middle / bent
    radius = bent - thickness / 2
    if radius <= 0:
        return Former(inside, over)
    return Former(radius, over)
