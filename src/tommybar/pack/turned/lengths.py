"""Lengths below the view, all from face A: one a lane, or along one line when there are many."""

from __future__ import annotations

from dataclasses import dataclass, field

from tommybar.pack.boxes import spread
from tommybar.pack.marks import GAP, arrow
from tommybar.pack.printed import PrintedDimension
from tommybar.pack.profile import metal_at, nominal
from tommybar.pack.sheet import Arc, Dimension, Line, Mark, Text
from tommybar.pack.turned.across import alike, shown
from tommybar.pack.turned.metal import chords, solid
from tommybar.pack.units import Reader
from tommybar.shapes.features import Arc as ArcLand
from tommybar.shapes.features import Cone, Dim, TurnedShape
from tommybar.shapes.outside import arc_of

SIZE = 4.25
SMALL = 3.5
FIRST = 11.0  # from the lowest outline to the first dimension line [mm]
STEP = 7.6  # from one dimension line to the next [mm]
ABOVE = 1.0  # between a dimension line and the words above it [mm]
LANES = 6  # more lengths than this stand along one line
SAME = 0.003  # places nearer than this are one [mm]


@dataclass
class Place:
    """A distance from face A that is dimensioned, and the ends of features that stand there."""

    z: float
    dim: Dim
    ends: list[tuple[str, str]] = field(default_factory=list)
    held: bool = False  # an arc ends there, whose radius fits no other place


def places_of(shape: TurnedShape) -> list[Place]:
    """What is measured from face A, rising; every end of a feature is said once."""
    length = shape.length.value
    found: list[Place] = []

    def put(z: float, feature: str, size: str, dim: Dim | None = None) -> None:
        for one in found:
            if abs(one.z - z) < SAME:
                one.ends.append((feature, size))
                return
        if z > SAME:
            found.append(Place(z, dim or Dim(z), [(feature, size)]))

    put(length, "part", "length", shape.length)
    arcs = [
        z
        for one in shape.outside
        if isinstance(one, ArcLand) and abs(arc_of(one).centre[1]) > 1e-6  # its ends fix one on the axis
        for z in (one.start, one.end)
    ]
    bodies = sorted(shape.outside, key=lambda body: body.start)
    for n, one in enumerate(bodies):
        if isinstance(one, Cone) and one.given == "D d a" and n + 1 < len(bodies):
            continue  # its length follows from what its callouts say
        last = bodies[n + 1] if n + 2 == len(bodies) else None
        if isinstance(last, Cone) and last.given == "D d a" and not isinstance(one, Cone):
            continue  # where the cone at the end begins follows from the whole length and its callouts
        put(one.end, one.name, "end")
    between = [(one.name, one.start, one.end) for one in shape.grooves]
    between += [(one.name, one.start, one.end) for one in shape.bore_grooves]
    between += [(one.name, one.start, one.end) for one in shape.flats]
    between += [(one.name, one.start, one.end) for one in shape.cross_slots]
    between += [(one.name, one.start, one.end) for one in shape.keyways]
    for name, start, end in between:
        # its width stands in its callout: one end is enough, the one that something else ends at first
        known = [one.z for one in found]
        if (
            start > SAME
            and not any(abs(start - z) < SAME for z in known)
            and any(abs(end - z) < SAME for z in known)
        ):
            put(end, name, "end")
        else:
            put(start, name, "start")
    for holes in alike(shape):
        if shown(shape, holes) is not None:  # else its place is said in the view along the axis
            for hole in holes:
                put(hole.z, hole.name, "z")
    for place in found:
        place.held = any(abs(z - place.z) < SAME for z in arcs)
    return sorted(found, key=lambda one: one.z)


def _words(place: Place, reader: Reader) -> tuple[str, str, tuple[str, str] | None]:
    dim = place.dim
    figure = (
        reader.length(dim.value, 3)
        if dim.toleranced
        else reader.plain(dim.value)
        if place.held
        else reader.free(dim.value)
    )
    if dim.smallest is None or dim.largest is None:
        return figure, figure, None
    low, high = reader.limits(dim.smallest, dim.largest)
    return f"{figure} ({low}–{high})", figure, (low, high)


def length_marks(
    shape: TurnedShape, scale: float, bottom: float, reader: Reader
) -> tuple[list[Mark], list[PrintedDimension]]:
    """Dimensions of all places below ``bottom`` with face A at x = 0 [mm on paper]."""
    places = places_of(shape)
    printed: list[PrintedDimension] = []
    for one in places:
        words, figure, limits = _words(one, reader)
        printed += [
            PrintedDimension(
                "length",
                feature,
                size,
                words,
                figure,
                one.z,
                limits,
                reader.unit,
                "face A",
                (0.0, 0.0),
                (one.z, 0.0),
            )
            for feature, size in one.ends
        ]
    outline = chords((solid(nominal(shape)),))

    def radius(z: float) -> float:
        near = [metal_at(outline, min(max(z + d, 1e-3), shape.length.value - 1e-3)) for d in (-2e-3, 2e-3)]
        return max((bounds[-1] for bounds in near if bounds), default=0.0) * scale

    crowded = len(places) > LANES
    made = _along(places, scale, bottom, reader, radius(0.0)) if crowded else None
    if made is None:
        made = _lanes(places, scale, bottom, reader, radius)
    else:
        made = [*_feet(places, scale, bottom, radius), *made]
    return made, printed


def _face(shape_radius: float) -> float:
    return max(shape_radius, 0.5)


def _lanes(places: list[Place], scale: float, bottom: float, reader: Reader, radius: object) -> list[Mark]:
    assert callable(radius)
    marks: list[Mark] = []
    level = bottom + FIRST
    for one in places:
        words = _words(one, reader)[0]
        measured = Text((0, 0), words, SIZE).width
        span = one.z * scale
        outside = span < measured + 7.0
        a, b = (0.0, _face(radius(0.0))), (span, _face(radius(one.z)))
        if outside:
            x = -7.0
            text = Text((x, level - ABOVE), words, SIZE, anchor="end")
            tail: tuple[tuple[float, float], ...] = ((0.0, level), (x - measured, level))
        else:
            text = Text((span / 2, level - ABOVE), words, SIZE, anchor="middle")
            tail = ()
        marks.append(Dimension(a, b, "x", level, one.z, (text,), outside=outside, tail=tail))
        level += STEP
    return marks


def _feet(places: list[Place], scale: float, bottom: float, radius: object) -> list[Mark]:
    """Extension lines of a row along one line, with the little circle at face A where it begins."""
    assert callable(radius)
    level = bottom + FIRST
    marks: list[Mark] = [
        Line(((0.0, _face(radius(0.0)) + GAP), (0.0, level + 1.8)), "thin"),
        Arc((0.0, level), 1.0, "thin"),
        Line(((1.0, level), (places[-1].z * scale, level)), "thin"),
    ]
    for one in places:
        x = one.z * scale
        marks.append(Line(((x, _face(radius(one.z)) + GAP), (x, level)), "thin"))
        marks.append(arrow((x, level), (x - 5.0, level)))
    return marks


def _along(places: list[Place], scale: float, bottom: float, reader: Reader, face: float) -> list[Mark]:
    """Running dimensions (ISO 129-1) from the circle at face A: figures turned, below the line."""
    level = bottom + FIRST
    step = SIZE * 0.668 + 2.4
    wanted = [one.z * scale for one in places]
    at = spread(wanted, [step] * len(places), 3.0, wanted[-1] + 60.0)
    marks: list[Mark] = []
    for one, x, place in zip(places, wanted, at, strict=True):
        words = _words(one, reader)[0]
        text = Text((place + SIZE * 0.334, level + 12.0), words, SIZE, anchor="end", turned=True)
        marks.append(Line(((x, level), (place, level + 8.0), (place, level + 10.5)), "thin"))
        marks.append(Dimension((0.0, face), (x, face), "x", level, one.z, (text,), pointed=True))
    return marks
