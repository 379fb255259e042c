"""A rolled ring or hoop: developed length, rolled on a former, its ends joined."""

from __future__ import annotations

from tommybar.design.model import Part
from tommybar.facts.materials import material
from tommybar.making.cards import Blank
from tommybar.making.handwork.cautions import SOLDERING
from tommybar.making.handwork.former import former_for
from tommybar.making.handwork.hand_card import HandCard, numbered
from tommybar.making.handwork.rules import hand_rule
from tommybar.making.handwork.wire_blank import wire_blank
from tommybar.making.lengths import Mm
from tommybar.making.turned import Making
from tommybar.shapes.developed import ring_length
from tommybar.shapes.features import RolledRing
from tommybar.shop.model import Shop


def ring_part(part: Part, shop: Shop, gives_to: dict[str, tuple[str, ...]]) -> Making:
    """Blank and card of a rolled ring."""
    shape = part.shape
    assert isinstance(shape, RolledRing)
    card = HandCard(part, shop, 1, gives_to)
    blank = _blank(part, shape)
    lap = _lap(shape)
    flat = ring_length(shape) + lap
    card.add(
        f"Cut {Mm(blank.length):.1f} long, ends square, edges dressed",
        "inside",
        "shears or saw, file",
        f"{blank.length:.1f}",
        "mm long",
        f"Developed length {Mm(flat):.2f} along the middle of the metal"
        + (f", {Mm(lap):.1f} of it lap" if lap else "")
        + f"; {Mm(blank.length - flat):.1f} over for the ends that the former leaves straight.",
        cautions=("Sheet edges cut: gloves for carrying, none near anything that turns.",),
    )
    former = former_for(card, shape.inside.target / 2, shape.thickness, 360.0, "the ring", wire=shape.round)
    card.add(
        f"Roll it round a former of {Mm(2 * former.radius):.1f}",
        "inside",
        f"former {Mm(2 * former.radius):.1f}, mallet",
        f"{2 * former.radius:.1f}",
        "DIA mm",
        f"Let go, it opens to {Mm(shape.inside.target):g} inside. Begin with both ends, then the middle; wooden or hide mallet.",
        "A trial strip first: a larger or smaller former until it opens to size.",
        minutes=10.0,
        why="Smaller than the ring by the spring-back of its metal.",
    )
    card.add(
        f"Trim to {Mm(flat):.2f} along the middle, ends square",
        "inside",
        "fine saw, file",
        f"{shape.gap:g}",
        "mm gap",
        "Trim a little at a time: the inside, sprung closed, is what counts.",
        measure=card.measured(shape.inside, "inside", "inside"),
    )
    _join(card, shape)
    done = card.card(
        f"roll a ring {Mm(shape.inside.target):g} inside, {shape.joint}",
        "former in the vice, soft jaws",
        "one end under a clamp on the former",
        "Held flat against the former, so that it does not twist.",
        ("Fingers clear between former and strip.",),
        (
            "Straight ends make a pear: form the ends first.",
            "Twisted: the strip was not square to the former.",
        ),
        "Rolled cold; soft metal needs no annealing for so large a radius.",
    )
    return Making(blank, numbered([done]), tuple(card.findings))


def _lap(shape: RolledRing) -> float:
    return hand_rule("lap") * shape.thickness if shape.joint == "lap" else 0.0


def _blank(part: Part, shape: RolledRing) -> Blank:
    flat = ring_length(shape)
    more = [("over at the ends", hand_rule("ring_over"))]
    if shape.joint == "lap":
        more.append(("lap", _lap(shape)))
    if shape.round:
        return wire_blank(part, shape.thickness, flat, more, f"wire of {shape.thickness:g}, rolled")
    whole = round(flat + sum(mm for _, mm in more), 1)
    mass = whole * shape.width * shape.thickness * material(part.material).density / 1000
    return Blank(
        part.name,
        part.material,
        "sheet",
        shape.thickness,
        shape.width,
        whole,
        round(flat, 2),
        tuple(more),
        part.count,
        round(mass, 1),
        f"strip {shape.width:g} x {shape.thickness:g}, cut from sheet or as supplied",
        as_supplied=True,
    )


def _join(card: HandCard, shape: RolledRing) -> None:
    if shape.joint == "open":
        return
    if shape.joint == "butt":
        words = "Ends meet square without light between them; the joint is held by what it sits in."
        card.add("Close the joint", "inside", "fingers, soft jaws", "0", "mm gap", words)
        return
    card.add(
        f"{'Solder the lap' if shape.joint == 'lap' else 'Solder the joint'} of the ring",
        "inside",
        "flux, solder, torch, binding wire",
        f"{max(shape.gap, 0.05):g}",
        "mm gap",
        "Bright metal, flux, bind it with iron wire; heat the metal, not the solder; let it cool unmoved.",
        "Wash off the flux, then true it on the former.",
        minutes=20.0,
        measure=card.measured(shape.inside, "inside", "inside"),
        cautions=SOLDERING,
    )
