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
    try:
        return draw(part, design, imprint), imprint
    except Refusal:
        if imprint.paper not in LARGER:
            raise
    larger = replace(imprint, paper=LARGER[imprint.paper])
    return draw(part, design, larger), larger
