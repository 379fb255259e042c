"""The drawing of one part on A4: the largest standard scale at which everything has room."""

from __future__ import annotations

from dataclasses import dataclass

from tommybar.design.model import Part, SizedDesign
from tommybar.pack.boxes import Box, box_of, moved
from tommybar.pack.endview import end_view_marks, has_end_view
from tommybar.pack.grid import Column, grid
from tommybar.pack.imprint import Imprint
from tommybar.pack.lettering import wrapped
from tommybar.pack.paper import BOTTOM, LEFT, RIGHT, STRIP, TOP, drawing_frame
from tommybar.pack.plate import hole_rows, plate_view
from tommybar.pack.profile import drawn_profile
from tommybar.pack.sheet import LINE_STEP, Mark, Sheet, Text
from tommybar.pack.turned import turned_view
from tommybar.pack.words import part_notes
from tommybar.refusals import Refusal
from tommybar.shapes.features import PlateShape, TurnedShape

SCALES = (10.0, 5.0, 2.0, 1.0, 0.5, 0.2, 0.1, 0.05)  # ISO 5455
EDGE = 5.0  # kept clear inside the border [mm]
AREA: Box = (LEFT + EDGE, TOP + EDGE, RIGHT - EDGE, BOTTOM - STRIP - EDGE)
NOTE = 4.25


@dataclass(frozen=True)
class Block:
    """Marks that belong together, with the box around them."""

    marks: tuple[Mark, ...]
    box: Box

    @property
    def size(self) -> tuple[float, float]:
        """Width and height [mm]."""
        return self.box[2] - self.box[0], self.box[3] - self.box[1]

    def at(self, x: float, y: float) -> list[Mark]:
        """The marks with the top left corner of their box at (x, y)."""
        return moved(self.marks, x - self.box[0], y - self.box[1])


def block(marks: list[Mark]) -> Block:
    """Marks with their box."""
    return Block(tuple(marks), box_of(marks))


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


def _rows(views: list[Block], notes: Block, gap: float) -> list[Mark] | None:
    """Views side by side on one axis, notes below all; None if it does not fit the area."""
    width = sum(view.size[0] for view in views) + gap * (len(views) - 1)
    above = max(-view.box[1] for view in views)
    below = max(view.box[3] for view in views)
    height = above + below + (8.0 + notes.size[1] if notes.marks else 0.0)
    if width > AREA[2] - AREA[0] or height > AREA[3] - AREA[1]:
        return None
    spare = (AREA[2] - AREA[0] - width) / (len(views) + 1)
    x, axis = AREA[0] + spare, AREA[1] + (AREA[3] - AREA[1] - height) / 2 + above
    marks: list[Mark] = []
    for view in views:
        marks += moved(view.marks, x - view.box[0], axis)
        x += view.size[0] + gap + spare
    if notes.marks:
        marks += notes.at(AREA[0], AREA[3] - notes.size[1])
    return marks


def _beside(views: list[Block], notes_of: tuple[str, ...], gap: float) -> list[Mark] | None:
    """First view left; at its right the end view, if any, with the notes below it."""
    first, right = views[0], views[1:]
    room = AREA[2] - AREA[0] - first.size[0] - 2 * gap
    if room < 75.0:
        return None
    notes = notes_block(notes_of, min(room, 125.0))
    wide = max([notes.size[0], *(view.size[0] for view in right)])
    if wide > room:
        return None
    above = max(-view.box[1] for view in views)
    below = max(first.box[3], right[0].box[3] + 8.0 + notes.size[1] if right else 0.0)
    height = max(above + below, notes.size[1])
    if height > AREA[3] - AREA[1]:
        return None
    spare = (AREA[2] - AREA[0] - first.size[0] - wide) / 3
    x, axis = AREA[0] + spare, AREA[1] + (AREA[3] - AREA[1] - height) / 2 + above
    marks = moved(first.marks, x - first.box[0], axis)
    x += first.size[0] + spare
    if right:
        shift = x + (wide - right[0].size[0]) / 2 - right[0].box[0]
        marks += moved(right[0].marks, shift, axis)
        return marks + notes.at(x, axis + right[0].box[3] + 8.0)
    return marks + notes.at(x, axis + (first.box[1] + first.box[3]) / 2 - notes.size[1] / 2)


def _turned(shape: TurnedShape, notes: tuple[str, ...], imprint: Imprint) -> tuple[float, list[Mark]]:
    room = AREA[2] - AREA[0]
    below = notes_block(notes, room)
    for scale in SCALES:
        views = [block(turned_view(shape, scale, imprint.reader, room - 40.0))]
        if has_end_view(shape):
            views.append(block(end_view_marks(shape, drawn_profile(shape), scale, imprint.reader)))
        made = _beside(views, notes, 10.0) or _rows(views, below, 10.0)
        if made:
            return scale, made
    raise Refusal(
        f"The part is {shape.length.value:g} mm long; at 1:20 it must still have room on A4.",
        "Print it on a larger sheet from the DXF file.",
    )


def _plate(shape: PlateShape, notes: tuple[str, ...], imprint: Imprint) -> tuple[float, list[Mark]]:
    rows = hole_rows(shape, imprint.reader)
    columns = (
        Column("No"), Column("face"), Column("x", align="end"), Column("y", align="end"), Column("hole"),
    )  # fmt: skip
    extra = ("x and y from the lower left corner of the face, seen from outside", *notes)
    for scale in SCALES:
        view = block(plate_view(shape, scale, imprint.reader))
        room = AREA[2] - AREA[0] - view.size[0] - 10.0
        table = grid(columns, rows[1:], 0.0, 0.0, 1e9, 1e9) if len(rows) > 1 else None
        marks: list[Mark] = list(table.marks) if table else []
        width = max(60.0, min(room, 125.0))
        text = notes_block(extra if table else notes, width)
        side = block([*marks, *text.at(0.0, (table.height if table else 0.0) + 6.0)])
        if side.size[0] <= room and max(view.size[1], side.size[1]) <= AREA[3] - AREA[1]:
            spare = (room + 10.0 - side.size[0]) / 3
            middle = (AREA[1] + AREA[3]) / 2
            made = view.at(AREA[0] + spare, middle - view.size[1] / 2)
            return scale, made + side.at(
                AREA[2] - spare - side.size[0], middle - max(side.size[1], view.size[1]) / 2
            )
        side = block([*marks, *text.at((table.width + 8.0) if table else 0.0, 0.0)])
        height = view.size[1] + 8.0 + side.size[1]
        if max(view.size[0], side.size[0]) <= AREA[2] - AREA[0] and height <= AREA[3] - AREA[1]:
            top = AREA[1] + (AREA[3] - AREA[1] - height) / 3
            made = view.at((AREA[0] + AREA[2] - view.size[0]) / 2, top)
            return scale, made + side.at(AREA[0], AREA[3] - side.size[1])
    raise Refusal(
        f"The plate is {shape.length.value:g} mm long; at 1:20 it must still have room on A4.",
        "Print it on a larger sheet from the DXF file.",
    )


def part_drawing(
    part: Part, design: SizedDesign, imprint: Imprint, number: tuple[int, int] = (1, 1)
) -> Sheet:
    """The drawing sheet of one part that is made (turned or plate)."""
    notes = part_notes(part, design, imprint.reader)
    if isinstance(part.shape, TurnedShape):
        scale, marks = _turned(part.shape, notes, imprint)
    elif isinstance(part.shape, PlateShape):
        scale, marks = _plate(part.shape, notes, imprint)
    else:
        raise Refusal(f"The part {part.name} is bought; only parts with a shape are drawn.")
    sheet = Sheet(part.name, scale=scale)
    sheet.add(*marks)
    drawing = f"{imprint.plan_id}-{part.name}"
    drawing_frame(sheet, imprint, part.name, part.material, part.count, number, drawing)
    return sheet
