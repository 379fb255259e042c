"""What a mill card's sketch shows: the work seen from above, its numbered places, what is milled."""

from __future__ import annotations

from dataclasses import replace

from tommybar.making.cards import Card
from tommybar.pack.boxes import box_of
from tommybar.pack.cardsheets.from_above import plate_from_above, rim_from_above
from tommybar.pack.cardsheets.spots import SIZE, spot_marks
from tommybar.pack.plate import plate_view
from tommybar.pack.profile import drawn_profile, end_circles, end_radii
from tommybar.pack.sheet import Arc, Area, Line, Mark, Text
from tommybar.pack.units import Reader
from tommybar.shapes.features import PlateFace, PlateShape, Shape, TurnedShape

ON_ITS_RIM = "standing on its rim"
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
        return plate_from_above(card, shape, face_of(card, shape), width, height, reader)
    if isinstance(shape, TurnedShape) and card.places:
        if ON_ITS_RIM in card.hold.device:
            return rim_from_above(card, shape, width, height)
        ring = any(abs(p.y) > 1e-6 for p in card.places) or any(p.x < -1e-6 for p in card.places)
        return (
            _round(card, shape, width, height)
            if (ring and not card.title.startswith("across")) or "circle" in card.title
            else _side(card, shape, width, height)
        )
    return []


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
        marks += spot_marks(x + one.x * scale, y - one.y * scale, one.n)
    return marks


def _side(card: Card, shape: TurnedShape, width: float, height: float) -> list[Mark]:
    """Seen from above, lying in the vee: the outline, face A at the left, and the places on the axis."""
    ring = [p for p in drawn_profile(shape).section.exterior.coords[:-1] if p[1] > 1e-6]
    length = shape.length.value
    radius = max(r for _, r in ring)
    scale = min((width - 20.0) / length, (height - 12.0) / (2 * radius), 3.0)
    x, y = (width - length * scale) / 2, height / 2
    marks: list[Mark] = []
    free = card.free_end or "A"
    for one in shape.outside:
        start, end = end_radii(one)
        near, far = (one.start, one.end) if free == "A" else (length - one.end, length - one.start)
        start, end = (start, end) if free == "A" else (end, start)
        left, right = x + near * scale, x + far * scale
        points = (
            (left, y - start * scale),
            (right, y - end * scale),
            (right, y + end * scale),
            (left, y + start * scale),
        )
        marks.append(Area((points,), "light", "thick"))
    marks.append(Line(((x - 4, y), (x + length * scale + 4, y)), "chain"))
    marks.append(Text((x - 3.0, y - 2.0), free, SIZE, True, "end"))
    there: dict[tuple[float, float], list[int]] = {}
    for place in card.places:
        there.setdefault((place.x, place.y), []).append(place.n)
    for (at, beside), numbers in there.items():
        px, py = x + at * scale, y - beside * scale
        tag = Text((px, y + radius * scale + 6.0), _counted(numbers), SIZE, True, "middle")
        marks += [*spot_marks(px, py, numbers[0])[:3], Line(((px, py), (px, tag.at[1] - 4.0)), "thin"), tag]
    return marks


def _counted(numbers: list[int]) -> str:
    """Places that lie one over the other, turned to at different angles."""
    if len(numbers) < 3:
        return ", ".join(str(n) for n in numbers)
    return f"{numbers[0]} to {numbers[-1]}"


def finished_block(shape: PlateShape, width: float, height: float, reader: Reader) -> list[Mark]:
    """The squared block without its holes, with its sizes, at the largest scale that has room."""
    bare = replace(shape, holes=())
    for scale in (2.0, 1.0, 0.5, 0.2, 0.1):
        marks = plate_view(bare, scale, reader)
        box = box_of(marks)
        if box[2] - box[0] <= width and box[3] - box[1] <= height:
            return marks
    return []
