"""The whole sheet of a part of sheet or wire."""

from __future__ import annotations

from collections.abc import Callable

from tommybar.design.model import Part, SizedDesign
from tommybar.pack.bent.round import (
    ring_figures,
    ring_rows,
    ring_views,
    spring_figures,
    spring_rows,
    spring_views,
    wire_rows,
    wire_views,
)
from tommybar.pack.bent.strip import strip_figures, strip_rows, strip_views
from tommybar.pack.bent.views import View
from tommybar.pack.boxes import Box
from tommybar.pack.imprint import Imprint
from tommybar.pack.isometric import with_isometric
from tommybar.pack.paper import SCALES, drawing_area, more_room, scale_ratio
from tommybar.pack.plates.cluster import without_rooms
from tommybar.pack.plates.sheet import WIDTHS, tables_of
from tommybar.pack.plates.told import Row
from tommybar.pack.turned.layout import block, packed
from tommybar.pack.turned.sheet import Drawing, notes_block
from tommybar.pack.units import Reader
from tommybar.pack.words import part_notes
from tommybar.refusals import Refusal
from tommybar.shapes.features import RolledRing, SheetShape, SpringShape, WireShape

Bent = SheetShape | RolledRing | SpringShape | WireShape


def bent_drawing(part: Part, design: SizedDesign, imprint: Imprint, area: Box | None = None) -> Drawing:
    """Everything drawn and written of a part of sheet or wire, in paper millimetres.

    Raises
    ------
    Refusal
        If it has no room on the paper at the smallest standard scale.
    """
    shape = part.shape
    assert isinstance(shape, SheetShape | RolledRing | SpringShape | WireShape)
    area = area or drawing_area(imprint.paper)
    wide = area[2] - area[0]
    edges = None if isinstance(shape, SpringShape) else imprint.reader
    for given in (True, False):
        rows, views_at = _told(shape, imprint.reader, given)
        placed = any(any(row.places) for row in rows)
        notes = (*_notes(shape, placed), *part_notes(part, design, imprint.reader))
        words = [notes_block(notes, min(width, wide), edges) for width in WIDTHS]
        tables = tables_of(rows, wide)
        # wire is laid on its drawing as it is bent: full size wherever that has room
        scales = sorted(SCALES, key=lambda one: one != 1.0) if isinstance(shape, WireShape) else SCALES
        for scale in scales:
            views = views_at(scale)
            if views is None:
                continue
            blocks = [block(list(one.marks)) for one in views]
            if any(one.size[0] > wide or one.size[1] > area[3] - area[1] for one in blocks):
                continue
            others = [
                *([one] for one in blocks[1:]),
                *([tables] if rows else []),
                *([words] if notes or edges else []),
            ]
            made = packed(blocks[0], others, area)
            if made is not None:
                said = tuple(one for row in rows for one in row.printed)
                marks = without_rooms(with_isometric(shape, made, area, scale))
                return Drawing(scale, tuple(marks), (*(one for view in views for one in view.printed), *said))
    raise Refusal(
        f"The part {part.name} must have room on {imprint.paper} with its words at {scale_ratio(SCALES[-1])}; "
        "it has not.",
        more_room(imprint.paper),
    )


Views = Callable[[float], list[View] | None]


def _told(shape: Bent, reader: Reader, given: bool) -> tuple[list[Row], Views]:
    """The rows of the table, and the views at a scale; with ``given`` the views bear figures."""
    if isinstance(shape, SheetShape):
        figures = strip_figures(shape, reader, given)
        rows = strip_rows(shape, reader, figures.drawn)
        return rows, lambda scale: strip_views(shape, rows, scale, figures)
    if isinstance(shape, RolledRing):
        ring = ring_figures(shape, reader) if given else ([], [], [])
        return ring_rows(shape, reader, ring[2]), lambda scale: ring_views(shape, scale, *ring)
    if isinstance(shape, SpringShape):
        spring = spring_figures(shape, reader) if given else ([], [])
        return spring_rows(shape, reader, spring[1]), lambda scale: spring_views(shape, scale, *spring)
    wire = wire_rows(shape, reader)
    return wire, lambda scale: wire_views(shape, wire, scale)


def _notes(shape: Bent, placed: bool) -> list[str]:
    notes: list[str] = []
    if isinstance(shape, SheetShape):
        if placed:
            notes.append("Places on the blank are measured from its lower left corner")
        if shape.bends:
            notes.append(
                f"The blank is worked out with the neutral fibre at {shape.neutral:g} of the thickness from the "
                "inside of a bend; bend a trial strip of the same sheet and mend the blank by what it shows"
            )
    if isinstance(shape, SpringShape):
        notes.append("Wear eye protection; hold both ends of the wire whenever it is under tension")
    return notes
