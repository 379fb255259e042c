"""Work at the mill seen from above: a face in the vice or on the table, its outline, a ring on its rim."""

from __future__ import annotations

import math
from dataclasses import replace

from tommybar.making.cards import Card
from tommybar.making.jobs import largest_outside
from tommybar.pack.boxes import box_ring, overlap
from tommybar.pack.cardsheets.spots import SIZE, spot_marks, spots_marks
from tommybar.pack.sheet import Area, Line, Mark, Point, Text
from tommybar.pack.units import Reader
from tommybar.shapes.features import PlateFace, PlateShape, TurnedShape
from tommybar.shapes.outlines import Arc, Loop, plate_loop
from tommybar.shapes.plates import face_size

JAW = 7.0  # drawn width of a jaw [mm]
TABLE = 5.0  # how far the table or the scrap shows beside the work [mm]
SMALL = 3.2  # type size of the tags on an outline [mm]
TAGGED = 8  # pieces of an outline that are told apart by a tag, at most


def plate_from_above(
    card: Card, shape: PlateShape, face: PlateFace | None, width: float, height: float, reader: Reader
) -> list[Mark]:
    """The face that is up, between jaws, on the table, or by itself where it is worked by hand."""
    size = face_size(shape, face or "top")
    long, tall = size.width, size.height
    scale = min((width - 14.0) / long, (height - 2 * JAW - 16.0) / tall, 3.0)
    w, h = long * scale, tall * scale
    x, y = (width - w) / 2, (height - h) / 2 - 2.0
    shaped = face in (None, "top") and (card.machine == "bench" or card.title.startswith("outline"))
    marks = [*_below(card, x, y, w, h), *_body(card, shape, shaped, x, y, scale)]
    spots = [(x + one.x * scale, y + h - one.y * scale, one.n) for one in card.places]
    marks += spots_marks(spots, (x, y, x + w, y + h))
    marks += _leaning(card, shape, x, y + h, scale)
    foot = y + h + (JAW if card.machine != "bench" else 0.0) + 5.5
    left = 0.0
    if card.places:
        marks.append(Area((((x, y + h), (x + 4, y + h), (x, y + h - 4)),), "black", None))
        zero = Text((x, foot), "X0 Y0", SIZE, True)
        marks.append(zero)
        left = x + zero.width + 3.0
    else:
        marks += _cut_edges(card, x, y, w, h)
    words = f"{reader.length(long)} × {reader.length(tall)}"
    lines = [f"{face} face up, {words}", words, f"{face} face up"] if face else [words]
    if face and Text((0, 0), lines[0], SIZE).width > width - left:
        lines = lines[1:]
    else:
        lines = lines[:1]
    for line in lines:
        said = Text((width, foot), line, SIZE, anchor="end")
        if said.width > width - left:
            foot, left = foot + 5.4, 0.0
            said = replace(said, at=(width, foot))
        marks.append(said)
        foot, left = foot + 5.4, 0.0
    return marks


def _below(card: Card, x: float, y: float, w: float, h: float) -> list[Mark]:
    """What the work stands in or lies on."""
    if card.machine == "bench":
        return []
    if "vice" in card.hold.device:
        return [
            Area((box_ring(x - 4, y - JAW, w + 8, JAW),), "dark", "thick"),
            Area((box_ring(x - 4, y + h, w + 8, JAW),), "dark", "thick"),
            Text((x + w / 2, y - JAW / 2 + 1.4), "fixed jaw", SIZE, True, "middle", tone="white"),
        ]
    under = "scrap" if "scrap" in card.hold.surface or "sacrificial" in card.hold.device else "table"
    return [
        Area((box_ring(x - TABLE, y - JAW, w + 2 * TABLE, h + 2 * JAW),), "none", "thin"),
        Text((x + w / 2, y - JAW / 2 + 1.4), under, SIZE, False, "middle"),
    ]


def _body(card: Card, shape: PlateShape, shaped: bool, x: float, y: float, scale: float) -> list[Mark]:
    """The blank as a rectangle; with its outline in it where that is what the card makes."""
    size = face_size(shape, "top")
    if not shaped:
        face = next((f for f in ("front", "back", "left", "right") if f in card.title.split(":")[0]), "top")
        here = face_size(shape, face)  # type: ignore[arg-type]  # one of the faces
        return [Area((box_ring(x, y, here.width * scale, here.height * scale),), "light", "thick")]
    loop = plate_loop(shape)
    bottom = y + size.height * scale

    def at(point: tuple[float, float]) -> Point:
        return x + point[0] * scale, bottom - point[1] * scale

    marks: list[Mark] = []
    if card.machine != "bench":
        marks.append(Area((box_ring(x, y, size.width * scale, size.height * scale),), "none", "thin"))
    marks.append(Area((tuple(at(one) for one in _points(loop)),), "light", "thick"))
    return [*marks, *(_tags(shape, loop, x, bottom, scale) if card.machine != "bench" else [])]


def _points(loop: Loop) -> list[tuple[float, float]]:
    found: list[tuple[float, float]] = []
    for piece in loop:
        steps = max(2, math.ceil(abs(piece.turn) / math.radians(6))) if isinstance(piece, Arc) else 1
        found += [piece.at(n / steps) for n in range(steps)]
    return found


def _tags(shape: PlateShape, loop: Loop, x: float, bottom: float, scale: float) -> list[Mark]:
    """The arcs and corners by the numbers that the steps give them, on the metal's side."""
    arcs = [piece for piece in loop if isinstance(piece, Arc)]
    if len(arcs) > TAGGED:
        return []
    made: list[Text] = []
    for n, arc in enumerate(arcs, 1):
        (px, py), (nx, ny) = arc.at(0.5), arc.normal(0.5)
        tag = Text((0.0, 0.0), str(n), SMALL, anchor="middle")
        away = 2.0 + abs(nx) * tag.width / 2 + abs(ny) * SMALL / 2
        sides = [
            replace(
                tag, at=(x + px * scale + s * nx * away, bottom - py * scale - s * ny * away + SMALL * 0.35)
            )
            for s in (1.0, -1.0)
        ]
        free = (one for one in sides if not any(overlap(one.box, other.box, 0.3) for other in made))
        made.append(next(free, sides[0]))  # on the other side where two small arcs lie close together
    return list(made)


def _leaning(card: Card, shape: PlateShape, x: float, bottom: float, scale: float) -> list[Mark]:
    """The place of a leaning hole, with an arrow the way in which it goes down."""
    if not card.title.startswith("slanting"):
        return []
    named = card.title.partition(": ")[2].split(", ")
    marks: list[Mark] = []
    for hole in shape.holes:
        if hole.tilt <= 0 or hole.name not in named:
            continue
        px, py = x + hole.x * scale, bottom - hole.y * scale
        along = math.radians(hole.towards)
        far = (px + 12.0 * math.cos(along), py - 12.0 * math.sin(along))
        marks += spot_marks(px, py, 1)[:3]
        marks.append(Line(((px, py), far), "thick"))
        for turn in (150.0, -150.0):
            barb = along + math.radians(turn)
            marks.append(Line((far, (far[0] + 2.5 * math.cos(barb), far[1] - 2.5 * math.sin(barb))), "thick"))
    return marks


def _cut_edges(card: Card, x: float, y: float, w: float, h: float) -> list[Mark]:
    words = " ".join(step.do for step in card.steps)
    if card.title.startswith("outline") or card.machine == "bench":
        return []
    marks: list[Mark] = []
    if "end" in words.replace("end mill", ""):
        marks += [Line(((at, y), (at, y + h)), "cut") for at in (x, x + w)]
    if "edge" in words:
        marks += [Line(((x, at), (x + w, at)), "cut") for at in (y, y + h)]
    return marks


def rim_from_above(card: Card, shape: TurnedShape, width: float, height: float) -> list[Mark]:
    """A ring that stands on its rim in the vice: its width between the jaws, places from the fixed jaw."""
    long, dia = shape.length.value, largest_outside(shape)
    scale = min((width - 14.0) / dia, (height - 2 * JAW - 12.0) / long, 3.0)
    w, h = dia * scale, long * scale
    x, y = (width - w) / 2, JAW + 2.0
    marks: list[Mark] = [
        Area((box_ring(x - 4, y - JAW, w + 8, JAW),), "dark", "thick"),
        Area((box_ring(x - 4, y + h, w + 8, JAW),), "dark", "thick"),
        Text((x + w / 2, y - JAW / 2 + 1.4), "fixed jaw", SIZE, True, "middle", tone="white"),
        Area((box_ring(x, y, w, h),), "light", "thick"),
        Line(((x + w / 2, y - 1.0), (x + w / 2, y + h + 1.0)), "chain"),
        Text((x - 5.0, y + 4.0), "A", SIZE, True, "end"),
    ]
    spots = [(x + w / 2 + one.x * scale, y - one.y * scale, one.n) for one in card.places]
    return [*marks, *spots_marks(spots, (x, y, x + w, y + h))]
