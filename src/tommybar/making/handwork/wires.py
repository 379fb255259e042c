"""Bent wire and rod: one bend after the other from one end."""

from __future__ import annotations

import math

from tommybar.design.model import Part
from tommybar.making.handwork.former import former_for
from tommybar.making.handwork.hand_card import HandCard, numbered
from tommybar.making.handwork.rules import hand_rule
from tommybar.making.handwork.wire_blank import wire_blank
from tommybar.making.lengths import Mm
from tommybar.making.turned import Making
from tommybar.shapes.developed import wire_length
from tommybar.shapes.features import WireShape
from tommybar.shop.model import Shop


def wire_part(part: Part, shop: Shop, gives_to: dict[str, tuple[str, ...]]) -> Making:
    """Blank and card of a bent wire."""
    shape = part.shape
    assert isinstance(shape, WireShape)
    card = HandCard(part, shop, 1, gives_to)
    dia, whole = shape.dia.target, wire_length(shape)
    over = [("held past the last bend, cut off after it", hand_rule("wire_over"))]
    blank = wire_blank(part, dia, whole, over, f"wire of {dia:g}, bent cold")
    card.add(
        f"Cut {Mm(blank.length):.1f} of wire, straighten, square one end",
        "dia",
        "wire cutters or saw, file",
        f"{blank.length:.1f}",
        "mm long",
        f"Developed length {Mm(whole):.2f} along the middle of the wire; the rest is cut off last.",
        measure=card.measured(shape.dia, "dia", "outside"),
        cautions=("Nipped ends fly: hold both, eye protection.",),
    )
    at = 0.0
    for n, ((radius, angle), leg) in enumerate(zip(shape.bends, shape.legs, strict=False), start=1):
        at += leg
        former = former_for(card, radius, dia, abs(angle), f"bend {n}", wire=True)
        card.add(
            f"Bend {n}: {abs(angle):g} deg to the {'left' if angle > 0 else 'right'} round a {Mm(2 * former.radius):.1f} peg",
            f"bend {n}",
            f"peg {Mm(2 * former.radius):.1f}, bending block",
            f"{at:.1f}",
            "mm from the end",
            f"The bend begins {Mm(at):.2f} from the squared end; bend on to {former.angle:.0f} deg, it springs back.",
            "Lay it on the drawing before the next bend, or where that is not at 1:1 on its lines scribed full size; left and "
            "right as drawn: a bend the other way is set by turning it over in the block.",
            why="One bend after the other from the squared end, so that every place is measured on straight wire.",
        )
        at += math.radians(abs(angle)) * (radius + dia / 2)
    card.add(
        f"Cut to length: last leg {Mm(shape.legs[-1]):g}",
        "dia",
        "saw and file",
        f"{shape.legs[-1]:g}",
        "mm long",
        "Against the drawing or its lines scribed full size, flat on a plate; round the ends.",
    )
    done = card.card(
        f"bend {Mm(dia):g} wire: {len(shape.bends)} bends",
        "bending block with pegs, in the vice",
        "the straight before each bend",
        "Soft jaws, or the wire is nicked where it is bent.",
        ("Eye protection; springy wire is let go slowly, never under load.",),
        (
            "Nicked by pliers at the bend: it breaks there.",
            "Two bends the wrong way round: lay it on the drawing each time.",
        ),
        "All bends of a piece in one sitting, in the order in which they can be measured.",
    )
    return Making(blank, numbered([done]), tuple(card.findings))
