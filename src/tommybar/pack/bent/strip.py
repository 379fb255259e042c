"""Sheet metal: the flat blank with its bend lines, and the part as it is when bent."""

from __future__ import annotations

from dataclasses import dataclass

from tommybar.pack.bent.folded import folded_figures
from tommybar.pack.bent.views import View, seen_from
from tommybar.pack.boxes import box_of
from tommybar.pack.plates.cluster import room_of
from tommybar.pack.plates.cuts import Drawn, outline_rows
from tommybar.pack.plates.drawn import figured, titled
from tommybar.pack.plates.figures import Figure, Figures
from tommybar.pack.plates.holes import hole_rows
from tommybar.pack.plates.letters import letter_marks
from tommybar.pack.plates.placed import corner_figures, few_corners, place_figures
from tommybar.pack.plates.spans import Span
from tommybar.pack.plates.told import Row, Told
from tommybar.pack.plates.views import orthographic
from tommybar.pack.printed import PrintedDimension
from tommybar.pack.sheet import Line
from tommybar.pack.units import Reader
from tommybar.shapes.developed import bend_allowance
from tommybar.shapes.features import PlateShape, SheetShape
from tommybar.shapes.outlines import plate_loop
from tommybar.shapes.solids.rings import chorded, of_pieces

TITLE = 4.25  # size of the words over a view [mm]


def blank_of(shape: SheetShape) -> PlateShape:
    """The flat blank as a plate."""
    return PlateShape(shape.length, shape.width, shape.thickness, 0.0, shape.holes, shape.outline)


def middle_of_bend(shape: SheetShape, number: int) -> float:
    """Where the middle of a bend lies on the blank, from its left end [mm]."""
    bend = sorted(shape.bends, key=lambda one: one.at)[number]
    long = bend_allowance(bend.angle, bend.radius, shape.thickness.value, shape.neutral)
    return bend.at + long / 2


def strip_rows(shape: SheetShape, reader: Reader, drawn: Drawn = frozenset()) -> list[Row]:
    """Thickness, holes from the corner of the blank, bends with their way and what else no view gives, legs."""
    told = Told("blank", reader)
    told.sized("length", "thickness", shape.thickness, "sheet ", " thick")
    rows = [told.row("blank", (None, None, None))]
    rows += hole_rows(blank_of(shape), reader, drawn)
    rows += _outline(shape, reader, drawn)
    top = shape.thickness.value
    for n, bend in enumerate(sorted(shape.bends, key=lambda one: one.at)):
        at = middle_of_bend(shape, n)
        told = Told(bend.name, reader, drawn=drawn)
        if not told.given("angle"):
            told.say("bend")
        told.angle("angle", abs(bend.angle))
        told.word("form", "way", "up," if bend.angle > 0 else "down,")
        told.length("radius", "radius", bend.radius, "inside R", ",")
        long = bend_allowance(bend.angle, bend.radius, shape.thickness.value, shape.neutral)
        told.say(f"({reader.place(long)}) of the blank goes into it")
        spot = (at, shape.width.value, top)
        rows.append(told.row(f"bend {n + 1}", (at, None, None), "top", (spot,), 0.2))
    if shape.legs and ("legs", "leg_1") not in drawn:
        told = Told("legs", reader)
        told.say("outside, in order:")
        for n, leg in enumerate(shape.legs, 1):
            told.length("length", f"leg_{n}", leg, after="," if n < len(shape.legs) else "")
        rows.append(told.row("legs", (None, None, None)))
    return rows


def _outline(shape: SheetShape, reader: Reader, drawn: Drawn) -> list[Row]:
    if shape.outline is None:
        return []
    return outline_rows(blank_of(shape), reader, drawn)


@dataclass(frozen=True)
class StripFigures:
    """What the views of a strip give: the blank, and the strip when it is bent."""

    flat: Figures
    bent: tuple[Figure, ...]
    printed: tuple[PrintedDimension, ...]

    @property
    def drawn(self) -> Drawn:
        """Sizes that a view gives."""
        return frozenset((one.feature, one.size) for one in self.printed) | self.flat.on_datum


def strip_figures(shape: SheetShape, reader: Reader, given: bool = True) -> StripFigures:
    """Length and width of the blank, and if ``given`` bend lines, holes, legs and radii as dimensions."""
    flat = Figures(blank_of(shape), reader, "first")
    length, width = flat.told("blank"), flat.told("blank")
    length.sized("length", "length", shape.length, after=" developed" if shape.bends else "")
    width.sized("length", "width", shape.width)
    whole = Span(
        "below", (0.0, 0.0), (shape.length.value, 0.0), shape.length.value, flat.say(length), datum=True
    )
    across = Span(
        "left", (0.0, 0.0), (0.0, shape.width.value), shape.width.value, flat.say(width), datum=True
    )
    flat.put("top", whole, across)
    bent: list[Figure] = []
    printed: list[PrintedDimension] = []
    if given:
        for n, bend in enumerate(sorted(shape.bends, key=lambda one: one.at)):
            spot = (middle_of_bend(shape, n), 0.0, shape.thickness.value)
            flat.place("top", bend.name, "x", spot)
        place_figures(flat)
        if shape.outline is not None and shape.outline.form != "disc" and few_corners(flat.shape):
            corner_figures(flat)
        if shape.bends:
            bent, printed = folded_figures(shape, reader)
    flat.finished()
    return StripFigures(flat, tuple(bent), (*flat.printed, *printed))


def strip_views(shape: SheetShape, rows: list[Row], scale: float, figures: StripFigures) -> list[View] | None:
    """The blank from above, then the bent part from its edge and from above; None when one is crowded."""
    long, wide = shape.length.value * scale, shape.width.value * scale
    marks = orthographic(figures.flat.shape, "top", scale)
    for n in range(len(shape.bends)):
        marks += [Line(one, "thin") for one in _across(shape, middle_of_bend(shape, n), scale)]
    more = figured(marks, figures.flat.of["top"], (0.0, -wide, long, 0.0), scale)
    if more is None:
        return None
    marks += more
    wanted = [
        (row.tag, (spot[0] * scale, -spot[1] * scale), row.radius * scale)
        for row in rows
        for spot in row.spots
    ]
    marks += letter_marks(wanted, marks)
    box = (0.0, -wide, long, 0.0)
    flat = titled(marks, "flat blank", box, TITLE) if shape.bends else marks
    views = [View((*flat, room_of(flat)), figures.printed)]
    if shape.bends:
        edge = seen_from(shape, "front", scale)
        around = box_of(edge)
        more = figured(edge, figures.bent, around, scale)
        if more is None:
            return None
        views.append(View(tuple(titled([*edge, *more], "bent, from the front", around, TITLE))))
        above = seen_from(shape, "top", scale)
        views.append(View(tuple(titled(above, "bent, from above", box_of(above), TITLE))))
    return views


def _across(shape: SheetShape, x: float, scale: float) -> list[tuple[tuple[float, float], ...]]:
    """A bend line across the blank, as far as it is metal."""
    from shapely import LineString, Polygon

    ring = Polygon(chorded(of_pieces(plate_loop(blank_of(shape))), 360, keep_area=False))
    cut = ring.intersection(LineString([(x, -1.0), (x, shape.width.value + 1.0)]))
    parts = list(getattr(cut, "geoms", [cut]))
    return [
        tuple((px * scale, -py * scale) for px, py in one.coords)
        for one in parts
        if one.geom_type == "LineString"
    ]
