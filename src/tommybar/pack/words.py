"""The words of a drawing: sizes with zone and limits, holes, edges, needs."""

from __future__ import annotations

from tommybar.design.model import Part, SizedDesign
from tommybar.facts.drawing.general_tolerances import general_tolerance
from tommybar.pack.units import Reader
from tommybar.refusals import Refusal
from tommybar.shapes.features import (
    CrossHole,
    Cylinder,
    Dim,
    PlateHole,
    PlateShape,
    Shape,
    TurnedShape,
)

DIA = "Ø"


def general_words(mm: float, reader: Reader) -> str:
    """The general tolerance of a length, medium class: "± 0.2"; nothing outside the standard's table.

    Examples
    --------
    >>> general_words(24.0, Reader())
    '±0.2'
    """
    try:
        return f"±{reader.length(general_tolerance(mm, 'm'), 3)}"
    except Refusal:
        return ""


def size_words(dim: Dim, reader: Reader, sign: str = "", thread: str = "") -> tuple[str, ...]:
    """A size as it is written: the figure with its zone, and below it the limits in figures.

    Examples
    --------
    >>> size_words(Dim(8.0, "bush.bore", "H7", 8.0, 8.015), Reader(), "Ø")
    ('Ø8 H7', '8.000–8.015')
    """
    if thread:
        return (thread,)
    head = f"{sign}{reader.length(dim.value, 3)}"
    if dim.smallest is None or dim.largest is None:
        return (head,)
    zone = dim.zone if dim.zone[:1].isalpha() and not dim.because else ""
    low, high = reader.limits(dim.smallest, dim.largest)
    return (f"{head} {zone}".strip(), f"{low}–{high}")


def cross_words(hole: CrossHole, reader: Reader) -> tuple[str, ...]:
    """The note of a cross hole."""
    what = hole.thread or " ".join(size_words(hole.dia, reader, DIA)[:1])
    where = (
        "right through"
        if hole.walls == 2
        else f"into {hole.into.replace('_', ' ')}"
        if hole.into
        else "to the axis"
    )
    return (what, where)


def plate_hole_words(hole: PlateHole, reader: Reader) -> str:
    """What a hole in a plate is, in one line."""
    what = hole.thread or size_words(hole.dia, reader, DIA)[0]
    depth = "through" if hole.depth is None else f"{reader.length(hole.depth)} deep"
    if hole.thread and hole.depth is not None:
        depth = f"thread {depth}"
    limits = size_words(hole.dia, reader)[1:] if not hole.thread else ()
    sink = (
        f", sunk {DIA}{reader.length(hole.sink_dia)} × {reader.length(hole.sink_depth)}"
        if hole.sink_dia
        else ""
    )
    return f"{what} {depth}{sink}" + (f" ({limits[0]})" if limits else "")


def part_notes(part: Part, design: SizedDesign, reader: Reader, knurl: bool = True) -> tuple[str, ...]:
    """Everything that is said in words: edges, finish, needs, joints, lengths made to suit."""
    notes: list[str] = []
    shape = part.shape
    if isinstance(shape, TurnedShape):
        notes += _edge_notes(shape, reader)
        notes += [
            f"{bore.name}: finish to size after the {bore.after} joint" for bore in shape.bores if bore.after
        ]
        notes += [
            f"{one.name}: {one.finish}" for one in shape.outside if isinstance(one, Cylinder) and one.finish
        ]
        for recess in shape.recesses:
            if recess.corner:
                notes.append(f"{recess.name}: corners R{reader.length(recess.corner)} at most")
    for need in part.needs:
        notes.append(
            f"{need.of} to run true to {need.to} within {reader.length(need.within, 3)} "
            "(total indicator reading)"
        )
    notes += relation_notes(part, design, reader)
    return tuple(dict.fromkeys(note.replace("_", " ") for note in notes))


def relation_notes(part: Part, design: SizedDesign, reader: Reader) -> list[str]:
    """What is said of a part because of others: its fits, lengths made to suit, limits from measured mates."""
    notes: list[str] = []
    for fit in design.fits:
        for mine, other in ((fit.hole, fit.shaft), (fit.shaft, fit.hole)):
            if mine.split(".")[0] == part.name:
                joint = f", {fit.joint} joint" if fit.joint else ""
                notes.append(f"{mine.split('.', 1)[1]} fits {other.replace('.', ' ')}, {fit.zones}{joint}")
    for loop in design.loops:
        if loop.made_last == part.name or loop.made_last.startswith(part.name + "."):
            term = next((t for t in loop.terms if t.name.startswith(part.name + ".")), None)
            figure = (
                f" {term.name.split('.', 1)[1].replace('.', ' ')} ({reader.plain(term.value)}):"
                if term
                else ""
            )
            notes.append(
                f"{loop.name}:{figure} made last, to leave "
                f"{reader.length(loop.least, 3)} to {reader.length(loop.most, 3)}"
            )
    notes += [f"{size.name.split('.', 1)[-1]}: {size.because}" for size in _told_why(part.shape)]
    if part.note:
        notes.append(part.note)
    return notes


def _told_why(shape: Shape | None) -> list[Dim]:
    """Sizes whose limits are not those of the drawing, with the reason."""
    if isinstance(shape, TurnedShape):
        cylinders = [one for one in shape.outside if isinstance(one, Cylinder)]
        sizes = [shape.length, *(one.dia for one in cylinders), *(one.dia for one in shape.bores)]
        sizes += [one.dia for one in shape.circle_holes] + [one.dia for one in shape.cross_holes]
    elif isinstance(shape, PlateShape):
        sizes = [shape.length, shape.width, shape.thickness, *(one.dia for one in shape.holes)]
    else:
        sizes = []
    return [size for size in sizes if size.because]


def _edge_notes(shape: TurnedShape, reader: Reader) -> list[str]:
    """Chamfers, gathered by size: the commonest one is "elsewhere"."""
    found: dict[float, list[str]] = {}
    for one in shape.outside:
        if isinstance(one, Cylinder):
            for edge in (one.edge_start, one.edge_end):
                if edge:
                    found.setdefault(edge, []).append(one.name)
    for bore in shape.bores:
        if bore.edge:
            found.setdefault(bore.edge, []).append(bore.name)
    if not found:
        return ["Break sharp edges 0.2 at most"]
    words = [
        f"{', '.join(dict.fromkeys(names))} {reader.length(edge)} × 45°"
        for edge, names in sorted(found.items(), key=lambda item: -item[0])
    ]
    return ["Chamfers: " + "; ".join(words), "Break other sharp edges 0.2 at most"]
