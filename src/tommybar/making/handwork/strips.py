"""A part of sheet: cut out flat, drilled flat, then bent in the order in which every bend can be reached."""

from __future__ import annotations

from tommybar.design.model import Part
from tommybar.facts.materials import material
from tommybar.findings import Finding
from tommybar.making.cards import Blank, Card
from tommybar.making.cuts import spindle
from tommybar.making.handwork.bend_order import Made, bend_order
from tommybar.making.handwork.former import former_for
from tommybar.making.handwork.hand_card import HandCard, numbered
from tommybar.making.handwork.rules import hand_rule
from tommybar.making.lengths import Mm
from tommybar.making.practice import rule
from tommybar.making.turned import Making
from tommybar.shapes.developed import bend_allowance, flats
from tommybar.shapes.features import PlateHole, SheetShape
from tommybar.shop.model import Shop

SOFT = ("mild steel", "free-cutting brass", "sheet brass", "copper", "nickel silver", "structural steel")
EDGES = (
    "Sheet edges cut: dress them before anything else; gloves for carrying, none near anything that turns."
)


def sheet_part(part: Part, shop: Shop, gives_to: dict[str, tuple[str, ...]]) -> Making:
    """Blank and cards of a part of sheet."""
    shape = part.shape
    assert isinstance(shape, SheetShape)
    flat, findings = _flat_card(part, shape, shop, gives_to)
    cards = [flat]
    if shape.bends:
        bent, more = _bent_card(part, shape, shop)
        cards.append(bent)
        findings += more
    return Making(sheet_blank(part, shape), numbered(cards), tuple(findings))


def sheet_blank(part: Part, shape: SheetShape) -> Blank:
    """The flat blank with what is sawn outside its line [mm]."""
    edge = rule("blank", "plate_edge")
    long, wide, thick = shape.length.value + 2 * edge, shape.width.value + 2 * edge, shape.thickness.value
    return Blank(
        part.name,
        part.material,
        "sheet",
        thick,
        wide,
        long,
        shape.length.value,
        (("first end", edge), ("second end", edge), ("edges across", 2 * edge)),
        part.count,
        round(long * wide * thick * material(part.material).density / 1000, 1),
        f"sheet {thick:g} thick, as supplied",
        as_supplied=True,
    )


def _flat_card(
    part: Part, shape: SheetShape, shop: Shop, gives_to: dict[str, tuple[str, ...]]
) -> tuple[Card, list[Finding]]:
    card = HandCard(part, shop, 1, gives_to)
    bends = "; ".join(f"{one.name} begins {Mm(one.at):.2f} from the left end" for one in shape.bends)
    card.add(
        "Mark out the flat: outline, holes, bend lines",
        "length",
        "scriber, square, rule; template at 1:1",
        f"{shape.length.value:.2f}",
        "mm long",
        f"Flat {Mm(shape.length.value):.2f} x {Mm(shape.width.value):g}, from one filed edge and the left end.",
        *((f"Bend lines in pencil, not scribed: {bends}.",) if bends else ()),
        why="A scribed line inside a bend is where it cracks.",
    )
    card.add(
        f"Cut out {Mm(hand_rule('line')):g} outside the line, file to it",
        "length",
        "shears or piercing saw, file",
        f"{shape.length.value:.2f}",
        "mm long",
        "Shears curl a narrow strip: saw what is narrower than five thicknesses.",
        minutes=15.0,
        cautions=(EDGES,),
        measure=(
            *card.measured(shape.length, "length", "length"),
            *card.measured(shape.width, "width", "length"),
        ),
    )
    for hole in shape.holes:
        _hole(card, hole)
    return (
        card.card(
            f"cut out flat{', drill' if shape.holes else ''}",
            "clamped on hard wood, in the vice for filing",
            "the sheet's face",
            "Thin sheet is drilled flat on wood, clamped all round, never held in the hand.",
            ("Clamps on sheet: a drill that grabs spins it like a knife.", EDGES),
            ("Drilled after bending: the hole cannot be supported.",),
            "Everything that can be done flat is done flat.",
        ),
        card.findings,
    )


def _hole(card: HandCard, hole: PlateHole) -> None:
    if hole.thread or hole.depth is not None or hole.tilt or hole.sink_dia > 0:
        card.find(
            905,
            "stop",
            f"{hole.name} of {card.part.name}: in sheet only plain through holes are planned.",
            remedy="Make it plain and through, with a nut or a bush, or drill it from the drawing.",
            figure=hole.thread or f"{hole.dia.value:g} mm",
        )
        return
    size = hole.dia.value
    drill = min(card.shop.drills, key=lambda d: (abs(d - size), d), default=0.0)
    if abs(drill - size) > (0.05 if hole.dia.toleranced else 0.2):
        owned = f"nearest owned {drill:g} mm" if drill else "no drills owned"
        card.find(
            411,
            "stop",
            f"No drill for {hole.name} of {card.part.name}.",
            remedy="Buy the drill or file it out to a line.",
            figure=f"{size:g} mm",
            bound=owned,
        )
        return
    card.add(
        f"Drill {hole.name} {Mm(drill):tool} at {Mm(hole.x):g}, {Mm(hole.y):g}",
        hole.name,
        f"drill {Mm(drill):tool}",
        f"{drill:g}",
        "DIA mm",
        f"{Mm(hole.x):g} from the left end, {Mm(hole.y):g} from the lower edge of the flat; centre punch lightly, pilot first.",
        minutes=rule("minutes", "hole"),
        cautions=(
            "Clamped between wood; the lips stoned or a sheet-metal drill, or it tears three-cornered.",
        ),
        measure=card.measured(hole.dia, hole.name, "inside") if hole.dia.toleranced else (),
        kind="drill",
        speed=spindle(
            card.shop.mill.speeds if card.shop.mill else card.shop.lathe.speeds,
            card.part.material,
            "HSS",
            "drilling",
            drill,
        ),
    )


def _bent_card(part: Part, shape: SheetShape, shop: Shop) -> tuple[Card, list[Finding]]:
    card = HandCard(part, shop, 2)
    order = bend_order(shape)
    if order is None:
        card.find(
            461,
            "stop",
            f"{part.name}: in no order of its bends can the bars hold the strip and swing clear of what is bent.",
            remedy="Lengthen a leg, or make it of two pieces.",
            figure=", ".join(f"{flat:g}" for flat in _free(shape)) + " mm flat",
            bound=f"{max(hand_rule('grip_least') * shape.thickness.target, hand_rule('grip_short')):g} mm held, "
            f"bars {hand_rule('bar_deep'):g} mm deep",
        )
        order = ()
    _trial(card, shape)
    for turn, made in enumerate(order, start=1):
        _bend(card, shape, made, turn)
    legs = " , ".join(f"{Mm(leg):g}" for leg in shape.legs).replace(" ,", ",")
    card.add(
        "Check legs and angles, true it",
        "length",
        "square, caliper, protractor",
        " / ".join(f"{leg:g}" for leg in shape.legs),
        "mm legs",
        f"Outside lengths in order from the left end: {legs}.",
        "A leg out by more than its limits is not hammered true: a new flat with the bend line moved.",
    )
    return (
        card.card(
            f"bend: {', '.join(made.bend.name for made in order) or 'no order found'}",
            "bending bars in the vice, or a small folder",
            "the flat beside each bend line",
            "Bars as long as the strip is wide, the inner one with the bend's radius on its edge.",
            ("Fingers clear between bars and strip; the strip springs: push, do not strike near fingers.",),
            (
                "Bend line on the wrong face: check with the template before each bend.",
                "The wrong bend first: the next cannot be held.",
            ),
            "In the order in which the bars still find flat metal to hold.",
        ),
        card.findings,
    )


def _free(shape: SheetShape) -> tuple[float, ...]:
    bends = [(one.angle, one.radius) for one in shape.bends]
    return flats(shape.legs, bends, shape.thickness.target) if shape.legs else ()


def _trial(card: HandCard, shape: SheetShape) -> None:
    one = shape.bends[0]
    allowance = bend_allowance(one.angle, one.radius, shape.thickness.target, shape.neutral)
    card.add(
        "Bend a trial strip of the same sheet, measure it",
        one.name,
        "offcut, caliper",
        f"{allowance:.2f}",
        "mm in the bend",
        f"{abs(one.angle):g} deg on {Mm(one.radius):g} takes up {Mm(allowance):.2f} (neutral fibre at {shape.neutral:g}).",
        "Strip length = both outside legs, less both setbacks, and this; put what differs into the bend lines.",
        minutes=10.0,
        why="The neutral fibre differs with metal and radius; a strip settles it before the part is bent.",
    )


def _bend(card: HandCard, shape: SheetShape, made: Made, turn: int) -> None:
    one, thick = made.bend, shape.thickness.target
    former = former_for(card, one.radius, thick, abs(one.angle), one.name)
    least = hand_rule("bend_tight" if card.part.material in SOFT else "bend_tight_hard") * thick
    if one.radius < least - 1e-9:
        card.find(
            462,
            "caution",
            f"{one.name} of {card.part.name} is bent on {one.radius:g} mm inside: {card.part.material} may crack.",
            remedy="Bend across the grain, anneal it first where the metal can be annealed, or give a larger radius.",
            figure=f"{one.radius:g} mm",
            bound=f"{least:g} mm (common practice)",
        )
    lines = (
        f"Line {Mm(one.at):.2f} from the left end, on the bar's edge; the {made.held} side held, "
        f"{Mm(made.grip):.1f} of it flat.",
        f"Bend on to {former.angle:.1f} deg, it springs back; edge of the bar rounded to {Mm(former.radius):.1f}.",
    )
    closed = ("To 90 deg in the bars, the rest out of them round a rod.",) if abs(one.angle) > 90 else ()
    card.add(
        f"Bend {one.name} {abs(one.angle):g} deg {'up' if one.angle > 0 else 'down'}",
        one.name,
        "bending bars, wood block, mallet",
        f"{abs(one.angle):g}",
        "deg",
        *lines,
        *closed,
        why=f"Number {turn}: after it the bars still reach the others.",
        cautions=("Annealed or not: bend once, a bend opened again cracks.",),
    )
