"""The making of a plate or block: squared in the vice, then face by face, then what wants it tilted, then its outline."""

from __future__ import annotations

from dataclasses import replace

from tommybar.design.model import Part
from tommybar.findings import Finding
from tommybar.making.blanks import plate_blank
from tommybar.making.cards import Card
from tommybar.making.lengths import Mm
from tommybar.making.mill_steps import MillBench
from tommybar.making.milling.dovetails import told_dovetail
from tommybar.making.milling.face_card import face_card, has_work
from tommybar.making.milling.outline_card import has_outline, outline_card
from tommybar.making.milling.slope_cards import slant_card, vee_card
from tommybar.making.milling.square_card import square_card
from tommybar.making.turned import Making
from tommybar.shapes.features import PlateFace, PlateShape
from tommybar.shop.model import Mill, Shop

FACES: tuple[PlateFace, ...] = ("top", "bottom", "front", "back", "left", "right")


def plate_part(part: Part, shop: Shop, gives_to: dict[str, tuple[str, ...]], *, stock: str = "ask") -> Making:
    """Blank and cards of a plate."""
    shape = part.shape
    assert isinstance(shape, PlateShape)
    blank = plate_blank(part, shop, stock)
    findings: list[Finding] = []
    if blank is None:
        return Making(None, (), (_no_plate(part, shape, shop),))
    if shop.mill is None:
        words = f"{part.name} wants a mill, and the shop file has none: file it to a line and drill to the coordinates."
        remedy = "Add a mill or a milling slide to the shop file."
        return Making(blank, (), (Finding(903, "stop", words, part.name, remedy=remedy),))
    first, found = square_card(part, shape, blank, shop, shop.mill, gives_to)
    cards, more = _face_cards(part, shape, shop, shop.mill, gives_to)
    findings += [*found, *more, *_dovetails(part, shape, shop, shop.mill)]
    cards = [first, *cards]
    of = len(cards)
    done = tuple(
        replace(
            card,
            of=of,
            after=f"to card {card.number + 1}" if card.number < of else "deburr, measure, bag and label it",
        )
        for card in cards
    )
    return Making(blank, done, tuple(findings))


def _face_cards(
    part: Part, shape: PlateShape, shop: Shop, mill: Mill, gives_to: dict[str, tuple[str, ...]]
) -> tuple[list[Card], list[Finding]]:
    """A card for each face with work in it, one for each vee and each slanting hole, then the outline."""
    made: list[tuple[Card, list[Finding]]] = []
    for face in FACES:
        if has_work(shape, face):
            made.append(face_card(part, shape, face, shop, mill, len(made) + 2, gives_to))
    for one in shape.vees:
        made.append(vee_card(part, shape, one, shop, mill, len(made) + 2, gives_to))
    for hole in shape.holes:
        if hole.tilt:
            made.append(slant_card(part, shape, hole, shop, mill, len(made) + 2, gives_to))
    if has_outline(shape):
        made.append(outline_card(part, shape, shop, mill, len(made) + 2, gives_to))
    return [card for card, _ in made], [finding for _, found in made for finding in found]


def _dovetails(part: Part, shape: PlateShape, shop: Shop, mill: Mill) -> list[Finding]:
    bench = MillBench(part, shop, mill, 0)
    for one in shape.dovetails:
        told_dovetail(bench, one.name, one.narrow.target, one.depth, one.angle, tail=one.tail)
    return bench.findings


def _no_plate(part: Part, shape: PlateShape, shop: Shop) -> Finding:
    have = ", ".join(
        f"{Mm(b.size):g} x {Mm(b.width):g}"
        for b in shop.rack
        if b.section in ("flat", "plate", "sheet") and b.material == part.material
    )
    return Finding(
        202,
        "stop",
        f"No flat or plate of {part.material} for {part.name}: {Mm(shape.thickness.value):g} x {Mm(shape.width.value):g}.",
        part=part.name,
        figure=f"{shape.thickness.value:g} x {shape.width.value:g} mm",
        bound="on the rack: " + (have or "none"),
        remedy="Buy or ask for it (--stock buy), or choose another material.",
    )
