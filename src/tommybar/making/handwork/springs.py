"""A wound spring: the mandrel for its wire, the turns to wind, its ends, its free length."""

from __future__ import annotations

from tommybar.design.model import Part
from tommybar.facts.materials import material
from tommybar.making.cards import Blank
from tommybar.making.cuts import spindle
from tommybar.making.handwork.hand_card import HandCard, numbered
from tommybar.making.handwork.rules import hand_rule
from tommybar.making.handwork.wire_blank import wire_blank
from tommybar.making.lengths import Mm
from tommybar.making.turned import Making
from tommybar.mechanics.springback import former_radius
from tommybar.refusals import Refusal
from tommybar.shapes.developed import solid_length, spring_length, spring_runs
from tommybar.shapes.features import SpringShape
from tommybar.shop.model import Shop

WIND = (
    "Nothing near the wire that it can catch: no gloves, no sleeves; eye protection. "
    "Turn the chuck by hand or in the slowest back gear, a hand at the switch.",
    "Wound wire holds its strain: before it is cut, let the mandrel run slowly back until the wire is slack, "
    "and keep hold of the end with pliers. An end let go whips round.",
)


def spring_part(part: Part, shop: Shop, gives_to: dict[str, tuple[str, ...]]) -> Making:
    """Blank and card of a spring."""
    shape = part.shape
    assert isinstance(shape, SpringShape)
    card = HandCard(part, shop, 1, gives_to)
    turns = shape.total + hand_rule("wind_over")
    coil = spring_length(shape) / max(shape.total, 1e-9)
    blank = spring_blank(part, shape, coil)
    mandrel = mandrel_dia(part, shape)
    _mandrel(card, shape, mandrel)
    _wind(card, shape, turns, blank.length)
    _ends(card, shape)
    lines = (
        ("Press a compression spring solid three times first: what it loses now it does not lose later.",)
        if shape.kind == "compression"
        else ()
    )
    card.add(
        "Set it, then measure",
        "free",
        "rule or caliper",
        f"{Mm(shape.free):g}",
        "mm long",
        *lines,
        f"Free length {Mm(shape.free):g}, {shape.total:g} coils, {shape.active:g} of them working"
        + (f"; solid {Mm(solid_length(shape)):.1f}." if shape.kind == "compression" else "."),
        measure=card.measured(shape.outside, "outside", "outside"),
        cautions=("A spring that slips from the vice flies: guard over it, eye protection.",),
        why="A new spring settles when it is first pressed solid.",
    )
    done = card.card(
        f"wind {shape.total:g} coils of {Mm(shape.wire):g} wire, {_hand(shape)} hand",
        "mandrel in the lathe's chuck, its far end on a centre",
        "the wire's end in a cross hole of the mandrel",
        "The wire is drawn off between two blocks of hard wood or brass that brake it evenly.",
        WIND,
        (
            "Outside comes out too large: the wire is harder than reckoned; take a thinner mandrel, never squeeze the coils.",
            "Uneven brake: uneven coils.",
        ),
        "Wound cold from hard-drawn wire, which needs no hardening.",
    )
    return Making(blank, numbered([done]), tuple(card.findings))


def spring_blank(part: Part, shape: SpringShape, coil: float) -> Blank:
    """Wire for a spring: its coils, the turns that are cut away, what is held at both ends [mm]."""
    more = [
        ("turns cut away", round(hand_rule("wind_over") * coil, 1)),
        ("held at the ends", 2 * hand_rule("wire_over")),
    ]
    if shape.ends == "hooks":
        more.append(("two hooks, a coil each", round(2 * coil, 1)))
    return wire_blank(part, shape.wire, spring_length(shape), more, f"wire of {shape.wire:g}, wound cold")


def mandrel_dia(part: Part, shape: SpringShape) -> float | None:
    """Diameter of the mandrel on which the wire must be wound to open to its size [mm]; None where no figure holds."""
    metal = material(part.material)
    mean = (shape.outside.target - shape.wire) / 2
    if metal.yield_strength <= 0 or metal.modulus <= 0:
        return None
    try:
        bent = former_radius(mean, shape.wire, metal.yield_strength, metal.modulus, wire=True)
    except Refusal:
        return None
    return 2 * bent - shape.wire


def _hand(shape: SpringShape) -> str:
    return "left" if shape.left else "right"


def _mandrel(card: HandCard, shape: SpringShape, mandrel: float | None) -> None:
    inside = shape.outside.target - 2 * shape.wire
    if mandrel is None or mandrel <= 0:
        card.find(
            463,
            "caution",
            f"No mandrel can be reckoned for {card.part.name}: too much of its wire stays elastic, or its yield is not known.",
            remedy="Wind two turns on a mandrel of nine tenths of the inside, let go, measure, and turn the mandrel to suit.",
            figure=f"{inside:.1f} mm inside",
        )
        mandrel = 0.9 * inside
    card.add(
        f"Turn a mandrel {Mm(mandrel):.2f}, of mild steel, cross hole for the wire's end",
        "outside",
        "knife tool, the lathe",
        f"{mandrel:.2f}",
        "DIA mm",
        f"The spring's inside is {Mm(inside):.2f}; let go, it opens from {Mm(mandrel):.2f}.",
        "Wind two turns first, let go and measure: turn the mandrel down, or take a thicker one, until they come right.",
        minutes=15.0,
        kind="knife",
        speed=spindle(card.shop.lathe.speeds, "mild steel", "HSS", "turning", mandrel),
        why="Spring-back from the plastic bending of round wire; the trial turns settle it, since wire differs.",
    )


def _wind(card: HandCard, shape: SpringShape, turns: float, length: float) -> None:
    runs = spring_runs(shape)
    pitches = "; ".join(f"{number:g} at {Mm(pitch):.2f} pitch" for number, pitch in runs)
    screw = max(pitch for _, pitch in runs)
    card.add(
        f"Wind {turns:g} turns, {_hand(shape)} hand",
        "coils",
        "mandrel and wire brake",
        f"{turns:g}",
        "turns",
        f"Cut {Mm(length):.0f} of wire. In order: {pitches}; one turn over at each end.",
        f"The carriage may lead the wire by the lead screw at {Mm(screw):.2f} a turn"
        if screw > shape.wire + 1e-9
        else "Close coils: each turn guides the next.",
        minutes=15.0,
        cautions=WIND,
        why="Close coils at the ends, open ones between, in one winding.",
    )


def _ends(card: HandCard, shape: SpringShape) -> None:
    card.add(
        f"Cut to {shape.total:g} coils",
        "coils",
        "hard-wire cutters or a thin grinding disc",
        f"{shape.total:g}",
        "coils",
        "Count from the wire's end, both ends at the same clocking unless drawn otherwise.",
        cautions=("Hard wire flies when it is nipped: hold both ends, eye protection, and no soft pliers.",),
    )
    if shape.ends == "ground":
        card.add(
            "Grind both ends square",
            "ends",
            "side of a fine wheel, spring on a mandrel",
            f"{shape.free:g}",
            "mm long",
            "Till three quarters of the end coil are flat; stand it against a square and turn it.",
            minutes=8.0,
            cautions=(
                "Only on a wheel that is made for its side; the rest close to it; dip often, hot wire loses its spring.",
            ),
        )
    elif shape.ends == "hooks":
        card.add(
            "Bend the end coils up for hooks",
            "ends",
            "round-nosed pliers, a peg",
            "2",
            "hooks",
            "A whole coil each, its opening as drawn, root of the bend not nicked.",
        )
    elif shape.ends == "legs":
        card.add(
            "Bend and cut the legs",
            "ends",
            "pliers",
            f"{shape.leg:g}",
            "mm long",
            f"{Mm(shape.leg):g} each from the coil.",
        )
    elif shape.ends == "closed":
        card.add("Take the burrs off both ends", "ends", "stone", "2", "ends", "Closed, not ground.")
