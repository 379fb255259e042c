"""The drawing of one part on one sheet: the largest standard scale at which everything has room."""

from __future__ import annotations

from dataclasses import replace

from tommybar.design.model import Part, SizedDesign
from tommybar.pack.bent.sheet import bent_drawing
from tommybar.pack.imprint import Imprint, PaperName
from tommybar.pack.isometric import with_isometric
from tommybar.pack.paper import SIZES, Particulars, drawing_area, drawing_frame
from tommybar.pack.plates.sheet import plate_drawing
from tommybar.pack.sheet import Sheet
from tommybar.pack.turned.sheet import Drawing, turned_drawing
from tommybar.refusals import Refusal
from tommybar.shapes.features import PlateShape, TurnedShape

LEAST = 35.0  # of the longer side of a view that is drawn smaller than the part [mm]
LARGER: dict[PaperName, PaperName] = {"A4": "A3", "Letter": "Tabloid"}


def part_drawing(
    part: Part,
    design: SizedDesign,
    imprint: Imprint,
    number: tuple[int, int] = (1, 1),
    stock: str = "",
    mass: float | None = None,
) -> Sheet:
    """The drawing sheet of one part that is made; ``stock`` in words and ``mass`` [g] for the title block."""
    drawn, imprint = _drawn(part, design, imprint)
    width, height = SIZES[imprint.paper]
    sheet = Sheet(part.name, width, height, drawn.scale, unit=imprint.reader.unit)
    marks = list(drawn.marks)
    if isinstance(part.shape, TurnedShape):
        marks = with_isometric(part.shape, marks, drawing_area(imprint.paper), drawn.scale)
    sheet.add(*marks)
    sheet.printed.extend(drawn.printed)
    drawing = f"{imprint.plan_id}-{part.name}"
    about = Particulars(part.material, part.count, number, drawing, stock=stock, mass=mass)
    drawing_frame(sheet, imprint, part.name, about)
    return sheet


def _drawn(part: Part, design: SizedDesign, imprint: Imprint) -> tuple[Drawing, Imprint]:
    """The drawing on the wished paper, or on the next larger one when it has no room there."""
    if part.shape is None:
        raise Refusal(f"The part {part.name} is bought; only parts with a shape are drawn.")
    if isinstance(part.shape, TurnedShape):
        draw = turned_drawing
    else:
        draw = plate_drawing if isinstance(part.shape, PlateShape) else bent_drawing
    drawn: Drawing | None = None
    try:
        drawn = draw(part, design, imprint)
    except Refusal:
        if imprint.paper not in LARGER:
            raise
    if drawn is not None and (imprint.paper not in LARGER or _legible(part, drawn)):
        return drawn, imprint
    larger = replace(imprint, paper=LARGER[imprint.paper])
    wider = draw(part, design, larger)
    if drawn is not None and wider.scale <= drawn.scale:
        return drawn, imprint
    return wider, larger


def _legible(part: Part, drawn: Drawing) -> bool:
    """Whether a view is large enough to be read: full size, or its longer side at least LEAST on paper."""
    shape = part.shape
    sides = [shape.length.value] if isinstance(shape, TurnedShape | PlateShape) else []
    if isinstance(shape, TurnedShape):
        sides += [max(land.start_dia, land.end_dia) for land in shape.outside]
    elif isinstance(shape, PlateShape):
        sides.append(shape.width.value)
    return drawn.scale >= 1 or max(sides, default=LEAST / drawn.scale) * drawn.scale >= LEAST
