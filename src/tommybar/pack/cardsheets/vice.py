"""What stands in the vice on a mill card: the face seen from above, numbered places, what is milled."""

from __future__ import annotations

from dataclasses import replace

from tommybar.making.cards import Card
from tommybar.pack.boxes import Box, box_of
from tommybar.pack.plate import plate_view
from tommybar.pack.profile import drawn_profile, end_circles, end_radii
from tommybar.pack.sheet import Arc, Area, Line, Mark, Text
from tommybar.pack.units import Reader
from tommybar.shapes.features import PlateFace, PlateShape, Shape, TurnedShape
from tommybar.shapes.plates import face_size

SIZE = 4.25
FACES: tuple[PlateFace, ...] = ("top", "bottom", "front", "back", "left", "right")


def face_of(card: Card, shape: PlateShape) -> PlateFace | None:
    """The face whose holes are the card's places, or None."""
    wanted = {(round(p.x, 2), round(p.y, 2)) for p in card.places}
    for face in FACES:
        there = {(round(h.x, 2), round(h.y, 2)) for h in shape.holes if h.face == face}
        if wanted and wanted <= there and (face in card.title or len(there) == len(wanted)):
            named = [f for f in FACES if f in card.title.split(":")[0]]
            if not named or face in named:
                return face
    return None


def vice_marks(card: Card, shape: Shape | None, width: float, height: float, reader: Reader) -> list[Mark]:
    """The sketch within (0, 0) to (width, height)."""
    if isinstance(shape, PlateShape):
        face = face_of(card, shape)
        size = face_size(shape, face or "top")
        return _plate(card, size.width, size.height, width, height, reader, face)
    if isinstance(shape, TurnedShape) and card.places:
        ring = any(abs(p.y) > 1e-6 for p in card.places) or any(p.x < -1e-6 for p in card.places)
        return (
            _round(card, shape, width, height)
            if ring or "circle" in card.title
            else _side(card, shape, width, height)
        )
    return []


def _plate(
    card: Card, long: float, tall: float, width: float, height: float, reader: Reader, face: str | None
) -> list[Mark]:
    jaw = 7.0
    scale = min((width - 14.0) / long, (height - 2 * jaw - 16.0) / tall, 3.0)
    w, h = long * scale, tall * scale
    x, y = (width - w) / 2, (height - h) / 2 - 2.0
    marks: list[Mark] = [
        Area((_ring(x - 4, y - jaw, w + 8, jaw),), "dark", "thick"),
        Area((_ring(x - 4, y + h, w + 8, jaw),), "dark", "thick"),
        Area((_ring(x, y, w, h),), "light", "thick"),
        Text((width / 2, y - jaw / 2 + 1.4), "fixed jaw", SIZE, True, "middle", tone="white"),
    ]
    for one in card.places:
        at = (x + one.x * scale, y + h - one.y * scale)
        marks += _spot(*at, one.n, (x, y, x + w, y + h))
    if card.places:
        marks += [
            Area((((x, y + h), (x + 4, y + h), (x, y + h - 4)),), "black", None),
            Text((x, y + h + jaw + 5.5), "X0 Y0", SIZE, True),
        ]
    else:
        words = " ".join(step.do for step in card.steps)
        if "end" in words:
            marks += [Line(((at, y), (at, y + h)), "cut") for at in (x, x + w)]
        if "edge" in words:
            marks += [Line(((x, at), (x + w, at)), "cut") for at in (y, y + h)]
    sizes = Text(
        (width, y + h + jaw + 5.5), f"{reader.length(long)} × {reader.length(tall)}", SIZE, anchor="end"
    )
    named = replace(sizes, words=f"{face} face up, {sizes.words}") if face else sizes
    fits = named.width < width - 24.0
    marks.append(named if fits else sizes)
    if face and not fits:
        marks.append(Text((width, sizes.at[1] + 5.4), f"{face} face up", SIZE, anchor="end"))
    return marks


def _spot(x: float, y: float, n: int, inside: Box | None = None) -> list[Mark]:
    """A place with its number; on a narrow face the number stands on the jaw below, in white."""
    tag = Text((x + 2.4, y - 1.6), str(n), SIZE, True)
    if inside is not None:
        for dx, dy in ((2.4, -1.6), (2.4, 4.6), (-2.4 - tag.width, -1.6), (-2.4 - tag.width, 4.6)):
            tag = replace(tag, at=(x + dx, y + dy))
            if _within(tag.box, inside):
                break
        else:
            tag = Text((x, inside[3] + 4.9), str(n), SIZE, True, "middle", tone="white")
    return [
        Line(((x - 2.6, y), (x + 2.6, y)), "thin"),
        Line(((x, y - 2.6), (x, y + 2.6)), "thin"),
        Arc((x, y), 1.5, "thick"),
        tag,
    ]


def _within(box: Box, room: Box) -> bool:
    return (
        room[0] < box[0] - 0.3
        and room[1] < box[1] - 0.3
        and box[2] + 0.3 < room[2]
        and box[3] + 0.3 < room[3]
    )


def _round(card: Card, shape: TurnedShape, width: float, height: float) -> list[Mark]:
    """Seen along the axis: the circles of the part and the places about its middle."""
    circles = end_circles(drawn_profile(shape))
    radius = max(circles)
    scale = min((width - 10.0) / (2 * radius), (height - 10.0) / (2 * radius))
    x, y = width / 2, height / 2
    marks: list[Mark] = [
        Arc((x, y), r * scale, "thick" if r in (radius, circles[0]) else "thin") for r in circles
    ]
    reach = radius * scale + 3.0
    marks += [
        Line(((x - reach, y), (x + reach, y)), "chain"),
        Line(((x, y - reach), (x, y + reach)), "chain"),
    ]
    for one in card.places:
        marks += _spot(x + one.x * scale, y - one.y * scale, one.n)
    return marks


def _side(card: Card, shape: TurnedShape, width: float, height: float) -> list[Mark]:
    """Seen from above, lying in the vee: the outline, face A at the left, and the places on the axis."""
    ring = [p for p in drawn_profile(shape).section.exterior.coords[:-1] if p[1] > 1e-6]
    length = shape.length.value
    radius = max(r for _, r in ring)
    scale = min((width - 20.0) / length, (height - 12.0) / (2 * radius), 3.0)
    x, y = (width - length * scale) / 2, height / 2
    marks: list[Mark] = []
    for one in shape.outside:
        start, end = end_radii(one)
        left, right = x + one.start * scale, x + one.end * scale
        points = (
            (left, y - start * scale),
            (right, y - end * scale),
            (right, y + end * scale),
            (left, y + start * scale),
        )
        marks.append(Area((points,), "light", "thick"))
    marks.append(Line(((x - 4, y), (x + length * scale + 4, y)), "chain"))
    marks.append(Text((x - 3.0, y - 2.0), "A", SIZE, True, "end"))
    for place in card.places:
        px, py = x + place.x * scale, y - place.y * scale
        tag = Text((px, y + radius * scale + 6.0), str(place.n), SIZE, True, "middle")
        marks += [*_spot(px, py, place.n)[:3], Line(((px, py), (px, tag.at[1] - 4.0)), "thin"), tag]
    return marks


def finished_block(shape: PlateShape, width: float, height: float, reader: Reader) -> list[Mark]:
    """The squared block without its holes, with its sizes, at the largest scale that has room."""
    bare = replace(shape, holes=())
    for scale in (2.0, 1.0, 0.5, 0.2, 0.1):
        marks = plate_view(bare, scale, reader)
        box = box_of(marks)
        if box[2] - box[0] <= width and box[3] - box[1] <= height:
            return marks
    return []


def _ring(x: float, y: float, w: float, h: float) -> tuple[tuple[float, float], ...]:
    return ((x, y), (x + w, y), (x + w, y + h), (x, y + h))
