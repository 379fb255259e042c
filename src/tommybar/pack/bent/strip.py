"""Sheet metal: the flat blank with its bend lines, and the part as it is when bent."""

from __future__ import annotations

from tommybar.pack.bent.views import View, seen_from
from tommybar.pack.boxes import box_of
from tommybar.pack.plates.cluster import room_of
from tommybar.pack.plates.cuts import outline_rows
from tommybar.pack.plates.dimensions import Lane, lanes_below, lanes_left
from tommybar.pack.plates.holes import hole_rows
from tommybar.pack.plates.letters import letter_marks
from tommybar.pack.plates.told import Row, Told
from tommybar.pack.plates.views import orthographic
from tommybar.pack.sheet import Line, Mark, Text
from tommybar.pack.units import Reader
from tommybar.shapes.developed import bend_allowance
from tommybar.shapes.features import PlateShape, SheetShape
from tommybar.shapes.outlines import plate_loop
from tommybar.shapes.solids.rings import chorded, of_pieces


def blank_of(shape: SheetShape) -> PlateShape:
    """The flat blank as a plate."""
    return PlateShape(shape.length, shape.width, shape.thickness, 0.0, shape.holes, shape.outline)


def middle_of_bend(shape: SheetShape, number: int) -> float:
    """Where the middle of a bend lies on the blank, from its left end [mm]."""
    bend = sorted(shape.bends, key=lambda one: one.at)[number]
    long = bend_allowance(bend.angle, bend.radius, shape.thickness.value, shape.neutral)
    return bend.at + long / 2


def strip_rows(shape: SheetShape, reader: Reader) -> list[Row]:
    """Thickness, holes from the corner of the blank, bends with their place, angle, way and inside radius, legs."""
    told = Told("blank", reader)
    told.sized("length", "thickness", shape.thickness, "sheet ", " thick")
    rows = [told.row("blank", (None, None, None))]
    rows += hole_rows(blank_of(shape), reader)
    rows += _outline(shape, reader)
    top = shape.thickness.value
    for n, bend in enumerate(sorted(shape.bends, key=lambda one: one.at)):
        at = middle_of_bend(shape, n)
        told = Told(bend.name, reader)
        told.angle("angle", abs(bend.angle), "bend ")
        told.word("form", "way", "up," if bend.angle > 0 else "down,")
        told.length("radius", "radius", bend.radius, "inside R")
        told.say("; x is the bend line")
        spot = (at, shape.width.value, top)
        rows.append(told.row(f"bend {n + 1}", (at, None, None), "top", (spot,), 0.2))
    if shape.legs:
        told = Told("legs", reader)
        told.say("outside, in order:")
        for n, leg in enumerate(shape.legs, 1):
            told.length("length", f"leg_{n}", leg, after="," if n < len(shape.legs) else "")
        rows.append(told.row("legs", (None, None, None)))
    return rows


def _outline(shape: SheetShape, reader: Reader) -> list[Row]:
    if shape.outline is None:
        return []
    return outline_rows(blank_of(shape), reader)


def strip_views(shape: SheetShape, rows: list[Row], scale: float, reader: Reader) -> list[View]:
    """The blank from above, then the bent part from its edge and from above."""
    flat = blank_of(shape)
    marks = orthographic(flat, "top", scale)
    for n in range(len(shape.bends)):
        marks += [Line(one, "thin") for one in _across(shape, middle_of_bend(shape, n), scale)]
    length, width = Told("blank", reader), Told("blank", reader)
    length.sized("length", "length", shape.length, after=" developed" if shape.bends else "")
    width.sized("length", "width", shape.width)
    told = [length.row("", (None, None, None)), width.row("", (None, None, None))]
    left, below = lanes_left([Lane(shape.width.value, told[1].words)], scale)
    marks += [*left, *lanes_below([Lane(shape.length.value, told[0].words)], scale, 11.0 + below)]
    wanted = [
        (row.tag, (spot[0] * scale, -spot[1] * scale), row.radius * scale)
        for row in rows
        for spot in row.spots
    ]
    marks += letter_marks(wanted, marks)
    printed = tuple(one for row in told for one in row.printed)
    views = [View((*_titled("flat blank" if shape.bends else "", marks), room_of(marks)), printed)]
    if shape.bends:
        views.append(View(tuple(_titled("bent, from the front", seen_from(shape, "front", scale)))))
        views.append(View(tuple(_titled("bent, from above", seen_from(shape, "top", scale)))))
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


def _titled(words: str, marks: list[Mark]) -> list[Mark]:
    """Marks with words over their middle."""
    if not words:
        return marks
    left, top, right, _ = box_of(marks)
    return [*marks, Text(((left + right) / 2, top - 2.5), words, 4.25, True, "middle")]
