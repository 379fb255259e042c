"""The making of a plate or block: squared in the vice, then holes face by face."""

from __future__ import annotations

import itertools
from dataclasses import replace

from tommybar.design.model import Part
from tommybar.findings import Finding
from tommybar.making.blanks import plate_blank
from tommybar.making.cards import Blank, Card, Hold
from tommybar.making.lengths import Mm
from tommybar.making.mill_steps import MillBench
from tommybar.making.milled_holes import START
from tommybar.making.practice import rule
from tommybar.making.turned import Making
from tommybar.making.visiting import Spot, hole_places
from tommybar.shapes.features import PlateFace, PlateHole, PlateShape
from tommybar.shapes.plates import face_size
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
        return Making(
            blank,
            (),
            (
                Finding(
                    903, "stop", words, part.name, remedy="Add a mill or a milling slide to the shop file."
                ),
            ),
        )
    if shape.corner > 0:
        findings.append(
            Finding(
                902,
                "note",
                f"{part.name}: corner radii of {Mm(shape.corner):g} are filed to buttons or a line; no step is planned for them.",
                part.name,
                "corners",
            )
        )
    cards = [_square_card(part, shape, blank, shop, shop.mill, findings)]
    for face in FACES:
        holes = [hole for hole in shape.holes if hole.face == face]
        if holes:
            cards.append(
                _face_card(part, shape, face, holes, shop, shop.mill, len(cards) + 1, gives_to, findings)
            )
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


def _square_card(
    part: Part, shape: PlateShape, blank: Blank, shop: Shop, mill: Mill, findings: list[Finding]
) -> Card:
    bench = MillBench(part, shop, mill, 1)
    edge = rule("blank", "plate_edge")
    length = shape.length
    if any(words == "edges across" for words, _ in blank.allowances):
        bench.mill_to("Mill one long edge clean", shape.width.value + edge, shape.width, "width", edge)
        bench.mill_to(
            f"Mill the other edge to {Mm(shape.width.value):g} wide",
            shape.width.value,
            shape.width,
            "width",
            edge,
        )
    if blank.size > shape.thickness.value + 1e-6:
        over = blank.size - shape.thickness.value
        bench.mill_to(
            f"Mill the face to {Mm(shape.thickness.value):g} thick",
            shape.thickness.value,
            shape.thickness,
            "thickness",
            over,
        )
    bench.mill_to("Mill one end clean and square: face A", length.value + edge, length, "length", edge)
    bench.mill_to(f"Mill the other end to {Mm(length.value):g} long", length.value, length, "length", edge)
    findings += bench.findings
    over_jaws = mill.vice_depth
    hold = Hold(
        "vice, on parallels",
        "",
        "the two long edges" if shape.width.value <= mill.vice_opening else "clamped to the table",
        0.0,
        over_jaws,
        shape.thickness.value,
        0.02,
        "The fixed jaw is the reference; a round bar at the moving jaw lets the work sit square.",
        "tapped down on the parallels",
    )
    if shape.width.value > mill.vice_opening:
        findings.append(
            Finding(
                431,
                "caution",
                f"{part.name} is {Mm(shape.width.value):g} wide, the vice opens {Mm(mill.vice_opening):g}: clamp it down.",
                part.name,
                card=1,
                figure=f"{shape.width.value:g} mm",
                bound=f"{mill.vice_opening:g} mm, vice opening of the shop",
                remedy="Clamps on packing of equal height, cutter clear of them.",
            )
        )
    return Card(
        part.name,
        1,
        1,
        "mill",
        "square and to size",
        "",
        hold,
        tuple(bench.steps),
        (
            "Set it to one side of the jaws, the end to be milled out by half the cutter and 2 more; "
            "turn it end for end for the other.",
            "Parallels clear of the cutter.",
            *START,
        ),
        tuple(dict.fromkeys(step.tool for step in bench.steps)),
        minutes=round(sum(step.minutes for step in bench.steps) + rule("minutes", "set_up"), 1),
        goes_wrong=("The work lifts at the moving jaw: tap down, feel that both parallels are tight.",),
        why="Every hole is measured from the milled end and the fixed-jaw edge, so these come first.",
    )


def _group_words(names: list[str]) -> str:
    if len(names) == 1:
        return names[0]
    return f"{len(names)} places"


def _face_card(
    part: Part,
    shape: PlateShape,
    face: PlateFace,
    holes: list[PlateHole],
    shop: Shop,
    mill: Mill,
    number: int,
    gives_to: dict[str, tuple[str, ...]],
    findings: list[Finding],
) -> Card:
    bench = MillBench(part, shop, mill, number)
    seen = face_size(shape, face)
    along, across, thick = seen.width, seen.height, seen.depth
    bench.spot(len(holes), holes[0].name)
    groups: dict[tuple[object, ...], list[PlateHole]] = {}
    for hole in sorted(holes, key=lambda h: (h.dia.toleranced, h.dia.value, h.name)):
        groups.setdefault(
            (hole.thread, hole.dia.value, hole.depth, hole.dia.zone, hole.sink_dia, hole.sink_depth), []
        ).append(hole)
    for alike in groups.values():
        first = alike[0]
        words = _group_words([h.name for h in alike])
        if first.thread:
            bench.tapped(first.thread, first.depth, thick, words, len(alike), first.name)
        elif first.depth is not None:
            bench.blind(first.dia, first.depth, words, len(alike), first.name)
        else:
            gives = gives_to.get(f"{part.name}.{first.name}", ())
            bench.sized(first.dia, thick, words, len(alike), first.name, gives)
        if first.sink_dia > 0:
            bench.stop(
                905,
                f"{first.name} of {part.name}: counterbores are not routed yet; a drill leaves a cone under the head.",
                first.name,
                "Use a counterbore or an end mill of that size by hand from the drawing.",
            )
            bench.drill(
                first.sink_dia,
                first.sink_depth,
                words + ", counterbore",
                len(alike),
                first.name,
                through=False,
            )
    findings += bench.findings
    spots = [
        Spot(h.x, h.y, f"{h.name}: {h.thread or f'dia {Mm(h.dia.value):g} {h.dia.zone}'.strip()}")
        for h in holes
    ]
    standing = face in ("left", "right", "front", "back")
    height = mill.nose_to_table - mill.vice_height - thick
    hold = Hold(
        "vice, standing on edge" if standing else "vice, on parallels",
        "",
        f"{face} face up",
        0.0,
        mill.vice_depth,
        thick,
        0.02,
        "Both zero edges are milled or as supplied and square; the fixed jaw carries the one, a stop the other.",
        "end against the vice stop" if not standing else "squared with a small square, end against a stop",
    )
    if height < 60:
        findings.append(
            Finding(
                432,
                "caution" if height > 30 else "stop",
                f"{part.name} with its {face} face up leaves {height:.0f} mm for chuck and drill.",
                part.name,
                card=number,
                figure=f"{height:.0f} mm",
                bound=f"{mill.nose_to_table:g} mm nose to table less the vice",
                remedy="Hold drills in collets, use stub drills, or drill it in the lathe.",
            )
        )
    minutes = sum(step.minutes for step in bench.steps) + rule("minutes", "set_up")
    return Card(
        part.name,
        number,
        number,
        "mill",
        f"{face} face: " + ", ".join(dict.fromkeys(h.name for h in holes)),
        "",
        hold,
        tuple(bench.steps),
        (
            f"Zero at the lower left corner of the {face} face ({Mm(along):g} x {Mm(across):g}): touch the edge, "
            "add half the finder's diameter, set 0; both ways.",
            f"From work to spindle nose {height:.0f} mm at most.",
            *START,
        ),
        tuple(dict.fromkeys(step.tool for step in bench.steps)),
        hole_places(mill, spots),
        _chords(holes),
        round(minutes, 1),
        goes_wrong=(
            "Half the edge finder forgotten: spot, then measure from the edge before drilling.",
            "Drill meets a parallel: look under every place first.",
        ),
        why="All holes of a face in one setting, so that they are true to each other.",
    )


def _chords(holes: list[PlateHole]) -> tuple[str, ...]:
    checks = []
    ordered = sorted(holes, key=lambda h: (round(h.x, 3), round(h.y, 3)))
    for one, two in itertools.pairwise(ordered):
        far = ((one.x - two.x) ** 2 + (one.y - two.y) ** 2) ** 0.5
        checks.append(f"{one.name} to {two.name}: {Mm(far):.2f} centre to centre")
    return tuple(checks[:6])


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
