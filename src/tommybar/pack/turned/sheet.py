"""The whole sheet of a turned part: the largest standard scale at which everything has room."""

from __future__ import annotations

from dataclasses import dataclass

from tommybar.design.model import Part, SizedDesign
from tommybar.pack.boxes import Box
from tommybar.pack.imprint import Imprint
from tommybar.pack.lettering import wrapped
from tommybar.pack.paper import SCALES, drawing_area, more_room, scale_ratio
from tommybar.pack.printed import PrintedDimension
from tommybar.pack.sheet import LINE_STEP, Mark, Text
from tommybar.pack.turned.across import across_callouts
from tommybar.pack.turned.broken import broken_out
from tommybar.pack.turned.clocking import clocked
from tommybar.pack.turned.detail import LEAST, SMALL, detail_marks, details_of
from tommybar.pack.turned.drawn import view_of
from tommybar.pack.turned.edges import edge_rows
from tommybar.pack.turned.ends import end_marks, has_end_view
from tommybar.pack.turned.inside import inside_callouts
from tommybar.pack.turned.layout import Block, beside, block, packed
from tommybar.pack.turned.needs import framed
from tommybar.pack.turned.notes import turned_notes
from tommybar.pack.turned.outside import outside_callouts
from tommybar.pack.turned.planes import leans
from tommybar.pack.turned.saying import Angles, Callout
from tommybar.pack.turned.sections import keyway_places, keyway_section
from tommybar.pack.turned.view import face_callout, main_view
from tommybar.pack.units import Reader
from tommybar.refusals import Refusal
from tommybar.shapes.features import TurnedShape

NOTE = 4.0  # size of the words of notes [mm]
WIDTHS = (90.0, 125.0, 65.0, 180.0, 250.0)  # to which notes are wrapped, in this order [mm]


@dataclass(frozen=True)
class Drawing:
    """A drawn part: its scale, its marks and every figure that is printed."""

    scale: float
    marks: tuple[Mark, ...]
    printed: tuple[PrintedDimension, ...]


def notes_block(notes: tuple[str, ...], width: float, edges: Reader | None = None) -> Block:
    """Notes one under another, wrapped to the width; with the signs of other edges for a reader below them."""
    marks: list[Mark] = []
    y = 0.0
    for note in notes:
        for n, line in enumerate(wrapped(note, width - 4.0, NOTE)):
            marks.append(Text((4.0 if n else 0.0, y), line if n else f"– {line}", NOTE))
            y += NOTE * LINE_STEP
        y += 0.8
    if edges is not None:
        signs, _ = edge_rows(y, width, NOTE, edges)
        marks += signs
    return block(marks)


def turned_drawing(part: Part, design: SizedDesign, imprint: Imprint, area: Box | None = None) -> Drawing:
    """Everything drawn and written of a turned part, in paper millimetres.

    Raises
    ------
    Refusal
        If it has no room on the paper at the smallest standard scale.
    """
    shape = part.shape
    assert isinstance(shape, TurnedShape)
    area = area or drawing_area(imprint.paper)
    reader = imprint.reader
    seen = has_end_view(shape)
    arcs = tuple(clocked(shape)) if seen else ()
    ways = [Angles(seen, arcs), Angles(seen, arcs, True)] if arcs else []
    told = [_told(part, design, reader, way) for way in (*ways, Angles(seen))]
    for scale in SCALES:
        for words in told:
            for least in (SMALL, LEAST):
                made = _at_scale(shape, words, scale, imprint, area, least)
                if made:
                    marks, printed = made
                    return Drawing(scale, tuple(marks), (*printed, *words.figures))
                if not any(LEAST <= one.wide * scale < SMALL for one in words.callouts if one.wide):
                    break
    raise Refusal(
        f"The part {part.name} is {shape.length.value:g} mm long; at {scale_ratio(SCALES[-1])} its views and "
        f"words must have room on {imprint.paper}.",
        more_room(imprint.paper),
    )


@dataclass(frozen=True)
class _Told:
    """Everything that is written of a part, before it has a place: callouts, notes, and the figures beside them."""

    angles: Angles
    callouts: list[Callout]
    notes: tuple[str, ...]
    figures: tuple[PrintedDimension, ...]


def _told(part: Part, design: SizedDesign, reader: Reader, angles: Angles) -> _Told:
    shape = part.shape
    assert isinstance(shape, TurnedShape)
    said = [
        *outside_callouts(shape, reader),
        *across_callouts(shape, reader, angles),
        *inside_callouts(shape, reader, angles),
    ]
    said, left, framed_figures = framed(said, part, design, reader)
    notes, noted = turned_notes(part, design, reader, left, angles.seen)
    return _Told(angles, said, notes, (*framed_figures, *noted))


def _at_scale(
    shape: TurnedShape,
    told: _Told,
    scale: float,
    imprint: Imprint,
    area: Box,
    least: float,
) -> tuple[list[Mark], list[PrintedDimension]] | None:
    reader, width, height = imprint.reader, area[2] - area[0], area[3] - area[1]
    if shape.length.value * scale > width or max(one.end_dia for one in shape.outside) * scale > height:
        return None
    angles, said, notes = told.angles, told.callouts, told.notes
    letters = list("VWXYZUTSR")
    section_letters = [letters.pop(0) for _ in shape.keyways if letters]
    view = view_of(shape)
    stay, details = details_of(said, scale, letters, least)
    stay += keyway_places(shape, section_letters)
    stay.append(face_callout(shape))
    marked = angles.seen and (view != "outside" or broken_out(shape)) and leans(shape)
    plane = letters.pop(0) if marked and letters else ""
    main = main_view(shape, stay, details, scale, reader, width, plane)
    if main is None:
        return None
    first = block(main[0])
    detailed = [one for detail in details for one in detail.callouts]
    printed = [*(figure for one in (*stay, *detailed) for figure in one.printed), *main[1]]
    others: list[list[Block]] = []
    if angles.seen:
        ends = end_marks(shape, scale, reader, width, angles, plane)
        if ends is None:
            return None
        first = beside(first, block(ends[0]), imprint.angle == "third")
        printed += ends[1]
    for key, letter in zip(shape.keyways, section_letters, strict=True):
        marks, keyed = keyway_section(shape, key, letter, scale, reader, angles)
        others.append([block(marks)])
        printed += [figure for one in keyed for figure in one.printed]
    for detail in details:
        others.append([block(detail_marks(shape, detail, view, scale_ratio(detail.scale)))])
    others.append([notes_block(notes, min(wide, width), reader) for wide in WIDTHS])
    made = packed(first, others, area)
    return (made, printed) if made else None
