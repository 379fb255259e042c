"""The drawing of one part on one sheet: the largest standard scale at which everything has room."""

from __future__ import annotations

from tommybar.design.model import Part, SizedDesign
from tommybar.pack.imprint import Imprint
from tommybar.pack.paper import SIZES, Particulars, drawing_frame
from tommybar.pack.plates.sheet import plate_drawing
from tommybar.pack.sheet import Sheet
from tommybar.pack.turned.sheet import turned_drawing
from tommybar.refusals import Refusal
from tommybar.shapes.features import PlateShape, TurnedShape


def part_drawing(
    part: Part,
    design: SizedDesign,
    imprint: Imprint,
    number: tuple[int, int] = (1, 1),
    stock: str = "",
    mass: float | None = None,
) -> Sheet:
    """The drawing sheet of one part that is made; ``stock`` in words and ``mass`` [g] for the title block."""
    width, height = SIZES[imprint.paper]
    sheet = Sheet(part.name, width, height, unit=imprint.reader.unit)
    if isinstance(part.shape, TurnedShape):
        drawn = turned_drawing(part, design, imprint)
        sheet.scale = drawn.scale
        sheet.add(*drawn.marks)
        sheet.printed.extend(drawn.printed)
    elif isinstance(part.shape, PlateShape):
        drawn = plate_drawing(part, design, imprint)
        sheet.scale = drawn.scale
        sheet.add(*drawn.marks)
        sheet.printed.extend(drawn.printed)
    else:
        raise Refusal(f"The part {part.name} is bought; only parts with a shape are drawn.")
    drawing = f"{imprint.plan_id}-{part.name}"
    about = Particulars(part.material, part.count, number, drawing, stock=stock, mass=mass)
    drawing_frame(sheet, imprint, part.name, about)
    return sheet
