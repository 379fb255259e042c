"""The drawing of one part on one sheet: the largest standard scale at which everything has room."""

from __future__ import annotations

from tommybar.design.model import Part, SizedDesign
from tommybar.pack.grid import Column, grid
from tommybar.pack.imprint import Imprint
from tommybar.pack.lettering import wrapped
from tommybar.pack.paper import SCALES, SIZES, Particulars, drawing_area, drawing_frame
from tommybar.pack.plate import hole_rows, plate_view
from tommybar.pack.sheet import LINE_STEP, Mark, Sheet, Text
from tommybar.pack.turned.layout import Block, block
from tommybar.pack.turned.sheet import turned_drawing
from tommybar.pack.words import part_notes
from tommybar.refusals import Refusal
from tommybar.shapes.features import PlateShape, TurnedShape

NOTE = 4.25


def notes_block(notes: tuple[str, ...], width: float) -> Block:
    """Numberless notes, one under another, wrapped to the width."""
    marks: list[Mark] = []
    y = 0.0
    for note in notes:
        for n, line in enumerate(wrapped(note, width - 4.0, NOTE)):
            marks.append(Text((4.0 if n else 0.0, y), line if n else f"– {line}", NOTE))
            y += NOTE * LINE_STEP
        y += 0.8
    return block(marks)


def _plate(shape: PlateShape, notes: tuple[str, ...], imprint: Imprint) -> tuple[float, list[Mark]]:
    area = drawing_area(imprint.paper)
    rows = hole_rows(shape, imprint.reader)
    columns = (
        Column("No"), Column("face"), Column("x", align="end"), Column("y", align="end"), Column("hole"),
    )  # fmt: skip
    extra = ("x and y from the lower left corner of the face, seen from outside", *notes)
    for scale in SCALES:
        view = block(plate_view(shape, scale, imprint.reader))
        room = area[2] - area[0] - view.size[0] - 10.0
        table = grid(columns, rows[1:], 0.0, 0.0, 1e9, 1e9) if len(rows) > 1 else None
        marks: list[Mark] = list(table.marks) if table else []
        width = max(60.0, min(room, 125.0))
        text = notes_block(extra if table else notes, width)
        side = block([*marks, *text.at(0.0, (table.height if table else 0.0) + 6.0)])
        if side.size[0] <= room and max(view.size[1], side.size[1]) <= area[3] - area[1]:
            spare = (room + 10.0 - side.size[0]) / 3
            middle = (area[1] + area[3]) / 2
            made = view.at(area[0] + spare, middle - view.size[1] / 2)
            return scale, made + side.at(
                area[2] - spare - side.size[0], middle - max(side.size[1], view.size[1]) / 2
            )
        side = block([*marks, *text.at((table.width + 8.0) if table else 0.0, 0.0)])
        height = view.size[1] + 8.0 + side.size[1]
        if max(view.size[0], side.size[0]) <= area[2] - area[0] and height <= area[3] - area[1]:
            top = area[1] + (area[3] - area[1] - height) / 3
            made = view.at((area[0] + area[2] - view.size[0]) / 2, top)
            return scale, made + side.at(area[0], area[3] - side.size[1])
    raise Refusal(
        f"The plate is {shape.length.value:g} mm long; at 1:20 it must still have room on A4.",
        "Print it on a larger sheet from the DXF file.",
    )


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
        notes = part_notes(part, design, imprint.reader)
        sheet.scale, marks = _plate(part.shape, notes, imprint)
        sheet.add(*marks)
    else:
        raise Refusal(f"The part {part.name} is bought; only parts with a shape are drawn.")
    drawing = f"{imprint.plan_id}-{part.name}"
    about = Particulars(part.material, part.count, number, drawing, stock=stock, mass=mass)
    drawing_frame(sheet, imprint, part.name, about)
    return sheet
