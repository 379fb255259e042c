"""Figures of places: holes, corners and round ends from the one datum, overall sizes, circles of holes."""

from __future__ import annotations

import math

from tommybar.pack.plates.figures import Figures, Lean, Round
from tommybar.pack.plates.holes import datum_of, in_plate
from tommybar.pack.plates.pitch import PitchCircle, circles_of
from tommybar.pack.plates.spans import Span
from tommybar.pack.plates.told import DIA
from tommybar.pack.projected.directions import Looked
from tommybar.shapes.features import Dim, PlateHole, PlateShape
from tommybar.shapes.outlines import Arc as Piece
from tommybar.shapes.outlines import extent, plate_loop

BACK = 3.0  # from the end of an extension line to a hole's centre [mm on paper]
MOST = {"top": (5, 4), "front": (4, 3), "end": (3, 3)}  # places along and up a view
VIEW = {"top": "top", "bottom": "top", "front": "front", "back": "front", "left": "end", "right": "end"}


def few_places(shape: PlateShape) -> bool:
    """Whether places of holes are few enough to be drawn as dimensions instead of written in the table."""
    x0, y0 = datum_of(shape)
    on_circles = {name for circle in circles_of(shape) for name in circle.names}
    found: dict[str, tuple[set[float], set[float]]] = {}
    for hole in shape.holes:
        if hole.name in on_circles:
            continue
        spot = in_plate(shape, hole)
        x, y, z = round(spot[0] - x0, 3), round(spot[1] - y0, 3), round(spot[2], 3)
        along, up = {"top": (x, y), "bottom": (x, y), "front": (x, z), "back": (x, z)}.get(hole.face, (y, z))
        if along < 0 or up < 0:
            return False  # a place behind the datum has a sign, which a dimension line does not show
        view = found.setdefault(VIEW[hole.face], (set(), set()))
        view[0].add(along)
        view[1].add(up)
    return all(len(a) <= MOST[view][0] and len(b) <= MOST[view][1] for view, (a, b) in found.items())


def place_figures(figures: Figures, places: bool = True) -> None:
    """Places of all holes on circles, and with ``places`` of the others when they are few."""
    shape = figures.shape
    circles = circles_of(shape)
    for circle in circles:
        _circle(figures, circle)
    done = {name for circle in circles for name in circle.names}
    if places and few_places(shape):
        for hole in shape.holes:
            if hole.name not in done:
                _hole(figures, hole)


def ray_figures(figures: Figures) -> None:
    """From where engraved lines radiate."""
    for fan in figures.shape.rays:
        for axis in "xy":
            figures.place("top", fan.name, axis, (fan.x, fan.y, figures.shape.thickness.value))


def _hole(figures: Figures, hole: PlateHole) -> None:
    spot = in_plate(figures.shape, hole)
    axes = {"top": "xy", "bottom": "xy", "front": "xz", "back": "xz"}.get(hole.face, "yz")
    view = VIEW[hole.face]
    looked: Looked | None = figures.end if view == "end" else "top" if view == "top" else "front"
    assert looked is not None  # a hole in an end has that end drawn
    for axis in axes:
        figures.place(looked, hole.name, axis, spot, BACK)


def _circle(figures: Figures, circle: PitchCircle) -> None:
    """The circle with its diameter, its middle from the datum, and at which angle the first hole stands."""
    name = circle.names[0]
    told = figures.told(name)
    told.length("diameter", "circle", 2 * circle.radius, DIA)
    spread = 180.0 / len(circle.names)
    start = circle.first + spread * 0.4
    figures.put(
        "top",
        Round((circle.x, circle.y), circle.radius, start, start + spread * 1.2, figures.say(told), True),
    )
    top = figures.shape.thickness.value
    for axis in "xy":
        figures.place("top", f"{name} circle", axis, (circle.x, circle.y, top), BACK)
    if circle.first > 1e-6:
        told = figures.told(name)
        told.angle("first", circle.first)
        lean = Lean((circle.x, circle.y), 0.0, circle.first, circle.first, figures.say(told), circle.radius)
        figures.put("top", lean)


def outline_figures(figures: Figures) -> None:
    """Overall sizes, radii of corners and round ends, and the places of these."""
    shape = figures.shape
    outline = shape.outline
    if outline is None:
        _overall(figures, "length", shape.length)
        _overall(figures, "width", shape.width)
        if shape.corner:
            told = figures.told("outline")
            told.word("count", "corners", "4", 4)
            told.say("×")
            told.length("radius", "corner", shape.corner, "R")
            x, y, r = shape.length.value, shape.width.value, shape.corner
            figures.put("top", Round((x - r, y - r), r, 0.0, 90.0, figures.say(told)))
        return
    loop = plate_loop(shape)
    if not few_corners(shape):
        _reference(figures, extent(loop))
        return
    if outline.form == "disc":
        one = outline.bosses[0]
        told = figures.told("outline")
        told.length("diameter", "disc", 2 * one.radius, DIA)
        a, b = (one.x - one.radius, one.y), (one.x + one.radius, one.y)
        figures.put("top", Span("below", a, b, 2 * one.radius, figures.say(told)))
        return
    corner_figures(figures)
    _reference(figures, extent(loop))


def corner_figures(figures: Figures) -> None:
    """Places and radii of the corners or of the round ends of an outline."""
    shape = figures.shape
    outline = shape.outline
    if outline is None:
        return
    if outline.form == "bosses":
        for n, boss in enumerate(outline.bosses, 1):
            _arc(figures, f"end_{n}", (boss.x, boss.y), boss.radius)
            for axis in "xy":
                figures.place("top", f"end_{n}", axis, (boss.x, boss.y, shape.thickness.value), BACK)
    else:
        for n, corner in enumerate(outline.corners, 1):
            for axis in "xy":
                figures.place("top", f"corner_{n}", axis, (corner.x, corner.y, shape.thickness.value))
            if corner.radius:
                _arc(figures, f"corner_{n}", (corner.x, corner.y), corner.radius)


def few_corners(shape: PlateShape) -> bool:
    """Whether corners or round ends of an outline are few enough to be dimensioned in the view."""
    if shape.outline is None or shape.outline.form == "disc":
        return True
    x0, y0 = datum_of(shape)
    spots = [(one.x - x0, one.y - y0) for one in shape.outline.corners]
    spots += [(one.x - x0, one.y - y0) for one in shape.outline.bosses]
    behind = any(x < -1e-9 or y < -1e-9 for x, y in spots)
    return not behind and all(len({round(one[n], 3) for one in spots}) <= 4 for n in range(2))


def _arc(figures: Figures, feature: str, near: tuple[float, float], radius: float) -> None:
    """A radius of the outline: of all its arcs of that radius the one whose middle lies nearest to a place."""
    arcs = [
        one for one in plate_loop(figures.shape) if isinstance(one, Piece) and abs(one.radius - radius) < 1e-6
    ]
    if not arcs:
        return
    one = min(arcs, key=lambda arc: math.dist(arc.at(0.5), near))
    start = math.degrees(one.start)
    low, high = sorted((start, start + math.degrees(one.turn)))
    told = figures.told(feature)
    told.length("radius", "radius", radius, "R")
    figures.put("top", Round((one.x, one.y), radius, low, high, figures.say(told)))


def _overall(figures: Figures, size: str, dim: Dim) -> None:
    told = figures.told("plate")
    told.sized("length", size, dim)
    words = figures.say(told)
    if size == "length":
        figures.put("top", Span("below", (0.0, 0.0), (dim.value, 0.0), dim.value, words, datum=True))
    else:
        figures.put("top", Span("left", (0.0, 0.0), (0.0, dim.value), dim.value, words, datum=True))


def _reference(figures: Figures, found: tuple[float, float, float, float]) -> None:
    """Overall sizes that follow from the outline, in brackets, where no other figure gives them."""
    shape = figures.shape
    x0, y0 = datum_of(shape)
    x1, y1, x2, y2 = found
    for low, high, start, whole, axis in (
        (x1, x2, x0, shape.length.value, 0),
        (y1, y2, y0, shape.width.value, 1),
    ):
        said = any(
            spot.axis == axis and abs(spot.value - whole) < 1e-6 for spot in figures.spots.get("top", ())
        )
        if (said and abs(low - start) < 1e-6) or abs(low) > 1e-6 or abs(high - whole) > 1e-6:
            continue
        words = f"({figures.reader.place(whole)})"
        a, b = ((low, y1), (high, y1)) if axis == 0 else ((x1, low), (x1, high))
        figures.put("top", Span("below" if axis == 0 else "left", a, b, whole, words))
