"""What is cut by hand when a part is else finished: bore keyways, slits, broken edges, engraved lines."""

from __future__ import annotations

import math

from tommybar.design.model import Part
from tommybar.findings import Finding
from tommybar.making.cards import Card
from tommybar.making.handwork.cautions import ENGRAVING
from tommybar.making.handwork.hand_card import HandCard
from tommybar.making.handwork.rules import hand_rule
from tommybar.making.lengths import Mm
from tommybar.shapes.features import (
    BoreKeyway,
    Cylinder,
    Engraving,
    PlateEdge,
    PlateShape,
    PlateSlit,
    Rays,
    Slit,
    TurnedShape,
)
from tommybar.shop.model import Shop

SAW = (
    "Away from you, fingers behind the teeth, the work in the vice: a saw jumps out of its start.",
    "A slitting saw on the mill shatters when it jams: slowest speed, guard, eye protection, feed by the quill's fine feed.",
)
PLANING = (
    "Spindle locked, out of gear and the motor's plug drawn: the carriage is racked by hand only.",
    "Chips off with a brush, never a finger in the bore.",
)


def lines_card(
    part: Part, shop: Shop, gives_to: dict[str, tuple[str, ...]], cards_before: int
) -> tuple[Card | None, list[Finding]]:
    """One card with all of it, in the order that burrs are taken off last; None when there is nothing."""
    shape = part.shape
    card = HandCard(part, shop, cards_before + 1, gives_to)
    if isinstance(shape, TurnedShape):
        for key in shape.bore_keyways:
            _keyway(card, shape, key)
        for slit in shape.slits:
            _slit_of_round(card, shape, slit)
        for lines in shape.engravings:
            _scale_of_round(card, shape, lines)
    elif isinstance(shape, PlateShape):
        for cut in shape.slits:
            _slit_of_plate(card, shape, cut)
        for lines in shape.engravings:
            _scale_of_plate(card, lines)
        for fan in shape.rays:
            _rays_of_plate(card, fan)
        for edge in shape.edges:
            _edge(card, edge)
    if not card.steps:
        return None, []
    sawn = bool(getattr(shape, "slits", ()))
    engraved = bool(getattr(shape, "engravings", ()) or getattr(shape, "rays", ()))
    names = ", ".join(dict.fromkeys(step.feature for step in card.steps))
    done = card.card(
        f"by hand: {names}",
        "vice with soft jaws",
        "finished faces, card or brass between",
        "Soft jaws, or finished faces are marked.",
        ("Sizes that are measured are measured before a slit: it lets the metal move.",)
        if sawn
        else ("The face is finished and clean: what is engraved cannot be filed off again.",)
        if engraved
        else ("Both lines of an edge are marked before it is filed.",),
        ("A slit before the bore is finished: the bore closes and is bored oval.",)
        if sawn
        else ("A line begun before its place is read twice: it stays.",)
        if engraved
        else ("Filed past a line or out of level: it stays. Look at both lines after every few strokes.",),
        "After all machining, since a slit lets the metal move and burrs come off last."
        if sawn
        else "After all machining, since burrs come off last and marks would be rubbed.",
    )
    return done, card.findings


def _keyway(card: HandCard, shape: TurnedShape, key: BoreKeyway) -> None:
    bore = next((one for one in shape.bores if one.name == key.on), None)
    stroke = hand_rule("plane_stroke")
    strokes = math.ceil(key.depth / stroke)
    across = f" From the opposite wall of the bore {Mm(bore.dia.target + key.depth):.2f}." if bore else ""
    blind = bore is not None and not bore.through
    if blind:
        card.find(
            469,
            "caution",
            f"{key.name} of {card.part.name} ends in a blind bore: the planing tool needs a groove or a hole to run into.",
            remedy="Drill a hole across at its end first, or turn a groove in the bore.",
            figure=f"{key.on} is blind",
        )
    card.add(
        f"Plane the keyway {Mm(key.width.value):g} wide in {key.on}, {Mm(key.depth):g} deep",
        key.name,
        f"slotting tool {Mm(key.width.value):g} in the toolpost",
        f"{key.depth:g}",
        "deep mm",
        f"In the lathe, still in its chuck where that can be, at {key.angle:g} deg; touch the wall, then {Mm(stroke):g} "
        f"of the cross-slide to a stroke: about {strokes} strokes, the last two without infeed.",
        f"Tool on centre height, its edge as wide as the key.{across}",
        minutes=5.0 + 0.3 * strokes,
        cautions=PLANING,
        measure=card.measured(key.width, key.name, "inside"),
        why="Or a push broach with its bush, where one of that width is owned.",
    )


def _saw_words(card: HandCard, name: str, width: float, deep: float) -> tuple[str, ...]:
    if deep > hand_rule("slitting_deep"):
        card.find(
            467,
            "caution",
            f"{name} of {card.part.name} is {deep:.1f} mm deep: a small slitting saw does not reach, and a hand saw wanders.",
            remedy="Saw from both faces to scribed lines, or make it shallower.",
            figure=f"{deep:.1f} mm",
            bound=f"{hand_rule('slitting_deep'):g} mm, slitting saw of {hand_rule('slitting_dia'):g} mm (common practice)",
        )
    blades = max(1, round(width / hand_rule("hacksaw")))
    return (
        f"Slitting saw {Mm(width):g} wide, the shop file does not list any; or a hacksaw, {blades} blade"
        f"{'s side by side' if blades > 1 else ''} in the frame, filed to {Mm(width):g}.",
    )


def _slit_of_plate(card: HandCard, shape: PlateShape, slit: PlateSlit) -> None:
    card.add(
        f"Saw the slit {Mm(slit.width):g} wide, {Mm(slit.long):.1f} in from the {slit.side}",
        slit.name,
        f"slitting saw {Mm(slit.width):g} or hacksaw",
        f"{slit.long:.1f}",
        "mm long",
        f"Its middle {Mm(slit.at):.2f} from the lower left of that side, through {Mm(shape.thickness.value):g}.",
        *_saw_words(card, slit.name, slit.width, slit.long),
        minutes=10.0,
        cautions=SAW,
        why="After the hole that it ends in is to size: the slit lets the metal move.",
    )


def _slit_of_round(card: HandCard, shape: TurnedShape, slit: Slit) -> None:
    deep = shape.length.value if slit.depth is None else slit.depth
    walls = "both walls" if slit.walls == 2 else "one wall"
    card.add(
        f"Saw the slit {Mm(slit.width):g} wide, {Mm(deep):.1f} from face {slit.face}",
        slit.name,
        f"slitting saw {Mm(slit.width):g} or hacksaw",
        f"{deep:.1f}",
        "deep mm",
        f"Through the axis at {slit.angle:g} deg, {walls}; scribe both faces first, held upright between soft jaws.",
        *_saw_words(card, slit.name, slit.width, deep),
        minutes=10.0,
        cautions=SAW,
        why="After bore and outside are to size: the slit lets the metal move.",
    )


def _edge(card: HandCard, edge: PlateEdge) -> None:
    what = f"{Mm(edge.size):g} radius" if edge.round else f"{Mm(edge.size):g} x 45 deg"
    wide = edge.size * math.sqrt(2.0)
    gauge = (
        "Facets first at 45 deg, then round them; radius gauge."
        if edge.round
        else f"The flat is {Mm(wide):.2f} wide when it is right: a felt-pen line {Mm(edge.size):g} from the edge on both faces."
    )
    card.add(
        f"Break the outline's edge of the {edge.face} face, {what}",
        edge.name,
        "file, chamfering file or bevel gauge",
        f"{edge.size:g}",
        "RAD mm" if edge.round else "mm",
        gauge,
        minutes=5.0 + 10.0 * edge.size,
        why="By hand along the whole outline, once nothing is measured from that edge.",
    )


def _lengths(lines: Engraving) -> str:
    if lines.long_every > 0:
        return f"Every {lines.long_every} a line {Mm(lines.long):g} long, the others {Mm(lines.short):g}."
    return f"Lines {Mm(lines.short):g} long."


def _scale_of_plate(card: HandCard, lines: Engraving) -> None:
    pitch = lines.over / lines.divisions
    card.add(
        f"Engrave {lines.divisions + 1} lines on the {lines.on} face, {Mm(pitch):.3f} apart",
        lines.name,
        "engraving point in the mill's spindle, not turning",
        f"{pitch:.3f}",
        "mm apart",
        f"Spindle locked; the table's dial gives every line from the first: {Mm(pitch):.3f}, {Mm(2 * pitch):.3f} and on to "
        f"{Mm(lines.over):.3f}, always from the same side.",
        _lengths(lines),
        *((f"Words: {lines.words}.",) if lines.words else ()),
        minutes=5.0 + lines.divisions * 0.5,
        cautions=ENGRAVING,
        why="From the dial, not by stepping a divider, so that errors do not add up.",
    )


def _rays_of_plate(card: HandCard, fan: Rays) -> None:
    """Lines from one place: a rotary table under the mill gives the angles, a protractor checks them."""
    angles = "; ".join(
        f"{angle:.2f} deg" + (f" ({word})" if word else "")
        for angle, word in zip(fan.angles, fan.words or ("",) * len(fan.angles), strict=True)
    )
    card.add(
        f"Engrave {len(fan.angles)} lines on the top face, from {Mm(fan.inner):g} to {Mm(fan.outer):g} out",
        fan.name,
        "engraving point in the mill's spindle, not turning; rotary table",
        f"{len(fan.angles)}",
        "lines",
        f"All from the place {Mm(fan.x):.2f}, {Mm(fan.y):.2f}: set it over the middle of the rotary table, or scribe from it "
        "along a protractor.",
        f"Turn the table to each angle, always up from below: {angles}.",
        f"Draw every line by the same dial from {Mm(fan.inner):.2f} to {Mm(fan.outer):.2f}.",
        minutes=10.0 + len(fan.angles) * 1.0,
        cautions=ENGRAVING,
        why="From one setting of the table, so that the errors of the angles do not add up.",
    )


def _scale_of_round(card: HandCard, shape: TurnedShape, lines: Engraving) -> None:
    whole = abs(lines.over - 360.0) < 1e-9
    each = lines.over / lines.divisions
    count = lines.divisions if whole else lines.divisions + 1
    land = next((one for one in shape.outside if isinstance(one, Cylinder) and one.name == lines.on), None)
    ring = f" On {lines.on} that is {Mm(math.pi * land.dia.target * each / 360.0):.3f} round." if land else ""
    if "dividing" not in card.shop.can:
        card.find(
            470,
            "caution",
            f"{lines.name} of {card.part.name} wants {lines.divisions} divisions, and the shop file has no way of dividing.",
            remedy="Glue a paper strip with the divisions round the chuck's body, with a fixed pointer, or borrow a divider.",
            figure=f"{each:.4g} deg each",
        )
    card.add(
        f"Engrave {count} lines on {lines.on}, {each:.4g} deg apart",
        lines.name,
        "point tool on its side in the toolpost, dividing at the spindle",
        f"{each:.4g}",
        "deg apart",
        f"In the lathe, spindle locked at each division; draw the point along by the carriage.{ring}",
        _lengths(lines) + " Lengths by the carriage's dial or a stop.",
        *((f"Words: {lines.words}, by stamps in a jig.",) if lines.words else ()),
        minutes=10.0 + count * 0.5,
        cautions=(PLANING[0], *ENGRAVING),
        why="Divided at the spindle, so that every line is counted from the first.",
    )
