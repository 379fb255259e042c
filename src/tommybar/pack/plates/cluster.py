"""The views of a plate set round its datum corner, dimensioned and lettered, at one scale."""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass

from tommybar.pack.boxes import Box, box_of, moved
from tommybar.pack.imprint import Angle
from tommybar.pack.plates.cuts import datum_is_corner
from tommybar.pack.plates.dimensions import datum_on_edge, height_right, section_marks
from tommybar.pack.plates.drawn import figured, floats, lanes, titled
from tommybar.pack.plates.figures import Figures
from tommybar.pack.plates.holes import datum_of
from tommybar.pack.plates.insets import inset_figures, lean_figures
from tommybar.pack.plates.letters import Wanted, letter_marks
from tommybar.pack.plates.placed import outline_figures, place_figures, ray_figures
from tommybar.pack.plates.profiles import profile_figures
from tommybar.pack.plates.spans import Side
from tommybar.pack.plates.told import Row, Told
from tommybar.pack.plates.views import orthographic, ray_words, sectioned
from tommybar.pack.printed import PrintedDimension
from tommybar.pack.projected.directions import Looked, looked_at
from tommybar.pack.sheet import Arc, Area, Kind, Mark
from tommybar.pack.units import Reader
from tommybar.shapes.features import PlateShape
from tommybar.shapes.outlines import extent, plate_loop
from tommybar.shapes.solids.frames import point

APART = 14.0  # between two views [mm]
TITLE = 4.6
FACES_OF: dict[str, tuple[str, ...]] = {
    "top": ("top", "bottom"), "front": ("front", "back"), "left": ("left", "right"), "right": ("left", "right"),
}  # fmt: skip


@dataclass(frozen=True)
class Cluster:
    """The views, and the figures that stand in them."""

    marks: tuple[Mark, ...]
    printed: tuple[PrintedDimension, ...]
    apart: tuple[tuple[Mark, ...], ...] = ()  # a section that may stand anywhere


@dataclass(frozen=True)
class Given:
    """What stands in the views and not in the table: sizes of what is cut, places of holes; and how many sections."""

    cuts: bool = True
    places: bool = True
    sections: int = 3


def has_cuts(shape: PlateShape) -> bool:
    """Whether anything but holes is cut in a plate, or a hole leans."""
    cut = (
        shape.slots,
        shape.pockets,
        shape.steps,
        shape.vees,
        shape.dovetails,
        shape.slits,
        shape.edges,
        shape.rays,
    )
    return any(cut) or any(hole.tilt for hole in shape.holes)


def figures_of(shape: PlateShape, reader: Reader, angle: Angle, given: Given) -> Figures:
    """What the views give in figures."""
    figures = Figures(shape, reader, angle, given.sections)
    outline_figures(figures)
    place_figures(figures, given.places)
    if given.cuts:
        inset_figures(figures)
        profile_figures(figures)
        lean_figures(figures)
        ray_figures(figures)
    return figures.finished()


@dataclass(frozen=True)
class Views:
    """The views of a plate at one scale, each with its figures, about its own origin."""

    plan: tuple[Mark, ...]
    front: tuple[Mark, ...]
    end: tuple[Mark, ...]
    sections: tuple[tuple[Mark, ...], ...]


def views_of(figures: Figures, rows: list[Row], scale: float, width: float, height: float) -> Views | None:
    """All views at a scale; None when one is crowded, or too large for a sheet."""

    def fits(marks: list[Mark] | None) -> bool:
        left, top, right, bottom = box_of(marks or [])
        return marks is not None and right - left <= width and bottom - top <= height

    plan = _plan(figures, rows, scale)
    if plan is None or not fits(plan):
        return None
    front = _front(figures, rows, scale)
    if front is None or not fits(front):
        return None
    end = _end(figures, figures.end, rows, scale) if figures.end is not None else []
    if end is None or not fits(end):
        return None
    sections: list[tuple[Mark, ...]] = []
    for letter in figures.planes:
        if letter == "X" and only_section(figures):
            continue
        section = _section(figures, letter, scale)
        if section is None or not fits(section):
            return None
        sections.append(tuple(section))
    return Views(tuple(plan), tuple(front), tuple(end), tuple(sections))


def cluster(
    figures: Figures, views: Views, scale: float, end_apart: bool = False, front_apart: bool = False
) -> Cluster:
    """All views set round the view from above, whose lower left corner lies at (0, 0).

    ``end_apart`` and ``front_apart`` take the view of an end and the front
    out of the row, to stand by themselves under their titles.
    """
    shape, angle = figures.shape, figures.angle
    wide = shape.width.value * scale
    plan, front, end = list(views.plan), list(views.front), list(views.end)
    marks = plan
    base = 0.0
    apart: list[tuple[Mark, ...]] = []
    if front_apart:
        box = (0.0, -shape.thickness.value * scale, shape.length.value * scale, 0.0)
        named = front if only_section(figures) else titled(front, "seen from the front", box, TITLE)
        apart.append(tuple(named))
    else:
        front.append(room_of(front))
        above, under = box_of(plan), box_of(front)
        base = (
            min(-wide - APART, above[1] - 5.0 - under[3]) if angle == "first" else above[3] + 6.0 - under[1]
        )
        marks = plan + moved(front, 0.0, base)
    side = figures.end
    if side is not None and (end_apart or front_apart):
        box = _end_box(figures, side, scale)
        apart.append(tuple(titled(end, f"seen from the {side}", box, TITLE)))
    elif side is not None:
        end.append(room_of(end))
        box, taken = box_of(end), box_of(marks)
        right = (side == "left") == (angle == "first")
        shift = taken[2] + 8.0 - box[0] if right else taken[0] - 8.0 - box[2]
        marks = marks + moved(end, shift, base)
    told = Told("plate", figures.reader)
    told.sized("length", "thickness", shape.thickness)
    printed = [*figures.printed, *told.row("", (None, None, None)).printed]
    return Cluster(tuple(marks), tuple(printed), (*apart, *views.sections))


def only_section(figures: Figures) -> bool:
    """Whether a section stands for the view from the front, in which nothing is cut."""
    shape = figures.shape
    faces = {*(h.face for h in shape.holes), *(s.face for s in shape.slots), *(p.face for p in shape.pockets)}
    return bool(figures.planes) and not faces & {"front", "back"}


def _front(figures: Figures, rows: list[Row], scale: float) -> list[Mark] | None:
    """The view from the front, or the section that stands for it, with the thickness."""
    shape = figures.shape
    long, thick = shape.length.value * scale, shape.thickness.value * scale
    wanted = list(figures.of.get("front", []))
    cut = only_section(figures)
    if cut:
        wanted += figures.of.get("X", [])
        front = sectioned(shape, figures.planes["X"], scale)
    else:
        front = orthographic(shape, "front", scale)
    box = (0.0, -thick, long, 0.0)
    beside = lanes(front, wanted, box, scale, {})
    if beside is None:
        return None
    front += beside
    told = Told("plate", figures.reader)
    told.sized("length", "thickness", shape.thickness)
    words = told.row("", (None, None, None)).words
    ends = extent(plate_loop(shape))[2] * scale
    front += height_right(ends, 0.0, shape.thickness.value, words, scale, box_of(front)[2])
    more = floats(front, wanted, scale)
    if more is None:
        return None
    front += more
    if any(hole.place for hole in shape.holes):
        front += datum_on_edge("A", (min(12.0, long / 4), 0.0), (long, 0.0), (0.0, 1.0), front)
    if cut:
        return titled(front, "X–X", box, TITLE)
    return front + letter_marks(_wanted(rows, "front", scale), front)


def _plan(figures: Figures, rows: list[Row], scale: float) -> list[Mark] | None:
    """The view from above with its figures, its datums, its letters and where sections are cut."""
    shape = figures.shape
    long, wide = shape.length.value * scale, shape.width.value * scale
    plan = [*orthographic(shape, "top", scale), *_corner(shape, scale)]
    wanted: list[Wanted] = []
    for letter, plane in figures.planes.items():
        y = -plane.at * scale
        plan += section_marks(y, 0.0, long)
        wanted += [(letter, (-5.0, y + 4.6), 1.0), (letter, (long + 5.0, y + 4.6), 1.0)]
    placed = any(hole.place for hole in shape.holes)
    first: dict[Side, float] = {"below": 15.5} if placed else {}  # below the boxes of datum letters
    if figures.planes:
        first["right"] = 15.0
    more = figured(plan, figures.of.get("top", []), (0.0, -wide, long, 0.0), scale, first)
    if more is None:
        return None
    plan += more
    plan += ray_words(shape, scale, plan)
    if placed:
        inset = min(3.0, wide / 4, long / 4)
        plan += datum_on_edge("B", (long - inset, 0.0), (inset, 0.0), (0.0, 1.0), plan)
        plan += datum_on_edge("C", (0.0, inset - wide), (0.0, -inset), (-1.0, 0.0), plan)
    plan += letter_marks([*wanted, *_wanted(rows, "top", scale)], plan)
    plan.append(room_of(plan))
    return plan


def _section(figures: Figures, letter: str, scale: float) -> list[Mark] | None:
    """A section with its figures under its title."""
    shape = figures.shape
    box = (0.0, -shape.thickness.value * scale, shape.length.value * scale, 0.0)
    section = sectioned(shape, figures.planes[letter], scale)
    more = figured(section, figures.of.get(letter, []), box, scale, {})
    return None if more is None else titled([*section, *more], f"{letter}–{letter}", box, TITLE)


def _end_box(figures: Figures, side: Looked, scale: float) -> Box:
    wide, thick = figures.shape.width.value * scale, figures.shape.thickness.value * scale
    return (-wide, -thick, 0.0, 0.0) if side == "left" else (0.0, -thick, wide, 0.0)


def _end(figures: Figures, side: Looked, rows: list[Row], scale: float) -> list[Mark] | None:
    """The view of an end with its figures and letters."""
    marks = orthographic(figures.shape, side, scale)
    more = figured(marks, figures.of.get(side, []), _end_box(figures, side, scale), scale, {})
    if more is None:
        return None
    marks += more
    return marks + letter_marks(_wanted(rows, side, scale), marks)


def room_of(marks: list[Mark]) -> Area:
    """The room of a view, so that nothing else is set into it; it is drawn with no line and no fill."""
    left, top, right, bottom = box_of(marks)
    return Area((((left, top), (right, top), (right, bottom), (left, bottom)),), "none", None)


def without_rooms(marks: Iterable[Mark]) -> list[Mark]:
    """Marks without those that only keep room."""
    return [one for one in marks if not (isinstance(one, Area) and one.fill == "none" and one.kind is None)]


def _corner(shape: PlateShape, scale: float) -> list[Mark]:
    """The sign of the datum: a small circle, a quarter of it black."""
    quarter = ((0.0, 0.0), *((2.2 * math.cos(a), -2.2 * math.sin(a)) for a in _steps()))
    kind: Kind = "thick" if datum_is_corner(shape) else "rule"
    x, y = datum_of(shape)
    return moved([Arc((0.0, 0.0), 2.2, kind), Area((quarter,), "black", None)], x * scale, -y * scale)


def _steps() -> list[float]:
    return [math.pi / 2 * n / 8 for n in range(9)]


def _wanted(rows: list[Row], looked: Looked, scale: float) -> list[Wanted]:
    """Letters of the features that are seen, or hidden behind, in a view."""
    at = looked_at(looked)
    found: list[Wanted] = []
    for row in rows:
        if row.face in FACES_OF[looked] and row.tag:
            for spot in row.spots:
                u, v, _ = point(at, spot)
                found.append((row.tag, (u * scale, -v * scale), row.radius * scale))
    return found
