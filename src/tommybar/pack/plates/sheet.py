"""The whole sheet of a plate or block: the largest standard scale at which everything has room."""

from __future__ import annotations

from dataclasses import replace

from tommybar.design.model import Part, SizedDesign
from tommybar.pack.boxes import Box
from tommybar.pack.grid import Column, grid
from tommybar.pack.imprint import Imprint
from tommybar.pack.isometric import with_isometric
from tommybar.pack.lettering import width_of
from tommybar.pack.paper import SCALES, drawing_area, scale_ratio
from tommybar.pack.plates.cluster import cluster, few_places, without_rooms
from tommybar.pack.plates.cuts import cut_rows, outline_rows
from tommybar.pack.plates.holes import hole_rows
from tommybar.pack.plates.told import Row
from tommybar.pack.plates.views import side_of
from tommybar.pack.sheet import Mark, Text
from tommybar.pack.turned.frames import FRAME, cells_marks
from tommybar.pack.turned.layout import Block, block, packed
from tommybar.pack.turned.sheet import Drawing, notes_block
from tommybar.pack.words import part_notes
from tommybar.refusals import Refusal
from tommybar.shapes.features import PlateShape

WIDTHS = (95.0, 120.0, 150.0, 80.0, 190.0, 255.0)  # to which table and notes are set, in this order [mm]
WORDS = 36.0  # the least width of the column of words [mm]
TYPE = (3.9, 3.4)  # size of the table's words, the smaller one where the larger has no room [mm]


def plate_drawing(part: Part, design: SizedDesign, imprint: Imprint, area: Box | None = None) -> Drawing:
    """Everything drawn and written of a plate or block, in paper millimetres.

    Raises
    ------
    Refusal
        If it has no room on the paper at the smallest standard scale.
    """
    shape = part.shape
    assert isinstance(shape, PlateShape)
    area = area or drawing_area(imprint.paper)
    rows, shown = plate_rows(shape, imprint)
    notes = plate_notes(part, design, imprint, shown)
    said = tuple(one for row in shown for one in row.printed)
    wide = area[2] - area[0]
    tables = tables_of(shown, wide)
    words = [notes_block(notes, min(width, wide)) for width in WIDTHS]
    for scale in SCALES:
        if max(shape.length.value, shape.width.value) * scale > max(area[2] - area[0], area[3] - area[1]):
            continue
        for end_apart in (False, True) if side_of(shape) else (False,):
            views = cluster(shape, rows, scale, imprint.reader, imprint.angle, end_apart)
            others = [[block(list(one))] for one in views.apart]
            made = packed(block(list(views.marks)), [*others, *([tables] if shown else []), words], area)
            if made is not None:
                marks = without_rooms(with_isometric(shape, made, area, scale))
                return Drawing(scale, tuple(marks), (*views.printed, *said))
    raise Refusal(
        f"The part {part.name} is {shape.length.value:g} mm long; at {scale_ratio(SCALES[-1])} its views and "
        f"words must have room on {imprint.paper}.",
        "Print it on A3 or Tabloid.",
    )


def plate_rows(shape: PlateShape, imprint: Imprint) -> tuple[list[Row], list[Row]]:
    """Rows with letters for the views, and rows as they stand in the table."""
    reader = imprint.reader
    holes, others = hole_rows(shape, reader), [*cut_rows(shape, reader), *outline_rows(shape, reader)]
    if not few_places(shape):
        every = [*holes, *others]
        return every, every
    lettered: list[Row] = []
    shown: list[Row] = []
    for row in holes:  # places are drawn; only what a letter means is written
        tag = row.tag.rstrip("0123456789")
        lettered.append(replace(row, tag=tag))
        if not row.words.startswith("as "):
            places = {"x", "y", "z"}
            kept = tuple(one for one in row.printed if one.size not in places)
            shown.append(replace(row, tag=tag, places=("", "", ""), printed=kept))
    return [*lettered, *others], [*shown, *others]


def plate_notes(part: Part, design: SizedDesign, imprint: Imprint, rows: list[Row]) -> tuple[str, ...]:
    """What is said in words below the table."""
    notes: list[str] = []
    shape = part.shape
    assert isinstance(shape, PlateShape)
    if not few_places(shape):
        notes += _measured_from(shape, rows)
    if any(hole.place for hole in shape.holes):
        notes.append("Datums: A underside, B front edge, C left end")
    notes.append(f"Break other sharp edges {imprint.reader.length(0.2)} at most")
    return (*notes, *part_notes(part, design, imprint.reader))


def _measured_from(shape: PlateShape, rows: list[Row]) -> list[str]:
    """From where the places in the table count, told of those that are written."""
    used = [n for n in range(3) if any(row.places[n] for row in rows)]
    if not used:
        return []
    ways = ("to the right", "towards the back", "up from the underside")
    if shape.outline is None or not shape.outline.bosses:
        ways = ("from the left end", "from the front edge", "up from the underside")
    mark = "the marked corner" if shape.outline is None or shape.outline.corners else "the marked centre"
    told = ", ".join(f"{'xyz'[n]} {ways[n]}" for n in used)
    return [f"Places are measured from {mark}: {told}"]


def tables_of(rows: list[Row], widest: float) -> list[Block]:
    """The table in every form in which its words have room, the one liked best first."""
    forms = [(min(width, widest), size) for size in TYPE for width in WIDTHS]
    return [table_block(rows, width, size) for width, size in forms if width >= _narrowest(rows, size)]


def _narrowest(rows: list[Row], size: float) -> float:
    """What letters and places take, and a column for the words beside them [mm]."""
    words = [[row.tag for row in rows], *([row.places[n] for row in rows] for n in range(3))]
    fixed = sum(max(width_of(one, size, True) for one in column) + 4.0 for column in words if any(column))
    return fixed + WORDS


def table_block(rows: list[Row], width: float, size: float = TYPE[0]) -> Block:
    """The table of features with the position frames below it."""
    marks: list[Mark] = []
    if not rows:
        return block(marks)
    used = [n for n in range(3) if any(row.places[n] for row in rows)]
    columns = [Column("", bold=True), *(Column("xyz"[n], align="end") for n in used), Column("feature")]
    cells = [(row.tag, *(row.places[n] for n in used), row.words) for row in rows]
    table = grid(columns, cells, 0.0, 0.0, width, 1e9, size)
    marks += table.marks
    y = table.height + 4.0
    for row in rows:
        if row.frame:
            marks += [Text((0.8, y + 4.0), row.tag, 3.9, True), *cells_marks(row.frame, 9.0, y)]
            y += FRAME + 2.5
    return block(marks)


__all__ = ["plate_drawing", "plate_notes", "plate_rows", "tables_of"]
