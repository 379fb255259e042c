"""The whole sheet of a plate or block: the largest standard scale at which everything has room."""

from __future__ import annotations

from dataclasses import replace

from tommybar.design.model import Part, SizedDesign
from tommybar.pack.boxes import Box
from tommybar.pack.grid import Column, grid
from tommybar.pack.imprint import Imprint
from tommybar.pack.isometric import with_isometric
from tommybar.pack.lettering import width_of
from tommybar.pack.paper import SCALES, drawing_area, more_room, scale_ratio
from tommybar.pack.plates.cluster import Given, cluster, figures_of, has_cuts, views_of, without_rooms
from tommybar.pack.plates.cuts import Drawn, cut_rows, outline_rows
from tommybar.pack.plates.holes import hole_rows
from tommybar.pack.plates.placed import few_places
from tommybar.pack.plates.told import Row
from tommybar.pack.plates.views import sections_of
from tommybar.pack.printed import PrintedDimension
from tommybar.pack.sheet import Mark, Text
from tommybar.pack.turned.frames import FRAME, cells_marks
from tommybar.pack.turned.layout import Block, block, packed
from tommybar.pack.turned.sheet import Drawing, notes_block
from tommybar.pack.units import Reader
from tommybar.pack.words import part_notes
from tommybar.refusals import Refusal
from tommybar.shapes.features import PlateShape

WIDTHS = (
    95.0,
    120.0,
    150.0,
    88.0,
    80.0,
    190.0,
    255.0,
)  # to which table and notes are set, in this order [mm]
WAYS = (
    *(Given(sections=n) for n in (3, 2, 1)),
    *(Given(places=False, sections=n) for n in (3, 1)),
    Given(cuts=False, sections=1),
    Given(cuts=False, places=False, sections=1),
)  # the one liked best first
SMALLER = 2.1  # a view this much larger is worth having figures in the table
LEGIBLE = 80.0  # and any larger one when the longer side would be shorter than this on paper [mm]
SMALLEST = 35.0  # a longer side under this on paper says too little to bear figures [mm]
WORDS = 36.0  # the least width of the column of words [mm]
TYPE = (3.9, 3.4)  # size of the table's words, the smaller one where the larger has no room [mm]


def plate_drawing(part: Part, design: SizedDesign, imprint: Imprint, area: Box | None = None) -> Drawing:
    """Everything drawn and written of a plate or block, in paper millimetres.

    Sizes stand in the views; where these are crowded, what is cut stands in
    the table instead.

    Raises
    ------
    Refusal
        If it has no room on the paper at the smallest standard scale.
    """
    shape = in_patterns(part, design)
    part = replace(part, shape=shape)
    area = area or drawing_area(imprint.paper)
    best: Drawing | None = None
    side = max(shape.length.value, shape.width.value)

    def worth(scale: float) -> float:
        """How much larger a view must be to be worth having figures in the table."""
        return SMALLER if side * scale >= LEGIBLE else 1.1

    tried: set[Given] = set()
    for given in WAYS:
        given = Given(
            given.cuts and has_cuts(shape),
            given.places and few_places(shape),
            min(given.sections, len(sections_of(shape))),
        )
        if given in tried:
            continue
        tried.add(given)
        least = worth(best.scale) * best.scale if best is not None else 0.0
        best = _drawn(part, design, imprint, area, given, least) or best
    if best is None:
        raise Refusal(
            f"The part {part.name} is {shape.length.value:g} mm long; at {scale_ratio(SCALES[-1])} its views and "
            f"words must have room on {imprint.paper}.",
            more_room(imprint.paper),
        )
    return best


def in_patterns(part: Part, design: SizedDesign) -> PlateShape:
    """The plate, its holes that must meet those of another part with the position zone of their pattern.

    Holes that are spotted through the other part have their place from there.
    """
    shape = part.shape
    assert isinstance(shape, PlateShape)
    zones: dict[str, float] = {}
    for pattern in design.patterns:
        for name in (*pattern.first, *(() if pattern.spot_through else pattern.second)):
            owner, _, hole = name.partition(".")
            if owner == part.name and pattern.place > 0:
                zones[hole] = pattern.place
    holes = tuple(replace(one, place=one.place or zones.get(one.name, 0.0)) for one in shape.holes)
    return replace(shape, holes=holes)


def spotted(part: Part, design: SizedDesign) -> list[str]:
    """Notes of holes that are spotted through another part."""
    notes: list[str] = []
    for pattern in design.patterns:
        pairs = zip(pattern.second, pattern.first, strict=True) if pattern.spot_through else ()
        there = [(own.partition(".")[2], other) for own, other in pairs if own.partition(".")[0] == part.name]
        if there:
            names, others = (", ".join(one[n] for one in there).replace("_", " ") for n in (0, 1))
            notes.append(f"Spot {names} through {others.replace('.', ' ')}")
    return notes


def _drawn(
    part: Part, design: SizedDesign, imprint: Imprint, area: Box, given: Given, least: float
) -> Drawing | None:
    """The drawing with so much given in the views; None when it has no room at a scale over ``least``."""
    shape = part.shape
    assert isinstance(shape, PlateShape)
    figures = figures_of(shape, imprint.reader, imprint.angle, given)
    last = not (given.cuts or given.places)
    rows = plate_rows(shape, imprint, figures.drawn)
    notes = plate_notes(part, design, imprint, rows)
    said = tuple(one for row in rows for one in (*row.printed, *_zone(row, shape, imprint.reader)))
    wide = area[2] - area[0]
    tables = tables_of(rows, wide)
    words = [notes_block(notes, min(width, wide), imprint.reader) for width in WIDTHS]
    width, height = area[2] - area[0], area[3] - area[1]
    side = max(shape.length.value, shape.width.value)
    for scale in SCALES:
        if scale <= least or (not last and side * scale < SMALLEST):
            break
        if side * scale > max(width, height):
            continue
        views = views_of(figures, rows, scale, width, height)
        if views is None:
            continue
        for end_apart, front_apart in ((False, False), (True, False), (True, True)):
            if end_apart and not front_apart and not figures.end:
                continue
            whole = cluster(figures, views, scale, end_apart, front_apart)
            others = [[block(list(one))] for one in whole.apart]
            made = packed(block(list(whole.marks)), [*others, *([tables] if rows else []), words], area)
            if made is not None:
                marks = without_rooms(with_isometric(shape, made, area, scale))
                return Drawing(scale, tuple(marks), (*whole.printed, *said))
    return None


def _zone(row: Row, shape: PlateShape, reader: Reader) -> list[PrintedDimension]:
    """The figure of a row's position frame."""
    if not row.frame:
        return []
    feature = row.printed[0].feature
    place = next(one.place for one in shape.holes if one.name == feature)
    figure = reader.length(place, 3)
    return [PrintedDimension("position", feature, "position", row.frame[1], figure, place, None, reader.unit)]


def plate_rows(shape: PlateShape, imprint: Imprint, drawn: Drawn = frozenset()) -> list[Row]:
    """Rows with letters for the views and for the table; ``drawn`` is what the views give."""
    reader = imprint.reader
    return [
        *hole_rows(shape, reader, drawn), *cut_rows(shape, reader, drawn), *outline_rows(shape, reader, drawn)
    ]  # fmt: skip


def plate_notes(part: Part, design: SizedDesign, imprint: Imprint, rows: list[Row]) -> tuple[str, ...]:
    """What is said in words below the table."""
    notes: list[str] = []
    shape = part.shape
    assert isinstance(shape, PlateShape)
    notes += _measured_from(shape, rows)
    if any(hole.place for hole in shape.holes):
        notes.append("Datums: A underside, B front edge, C left end")
    notes += spotted(part, design)
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
