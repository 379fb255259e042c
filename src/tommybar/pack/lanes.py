"""Lengths from face A below a turned part, and inside diameters beside its ends."""

from __future__ import annotations

from tommybar.pack.sheet import Dimension, Mark, Text
from tommybar.pack.units import Reader
from tommybar.pack.words import bore_words, size_words
from tommybar.shapes.features import Bore, Cylinder, Dim, Land, TurnedShape

SIZE = 4.25
SMALL = 3.5
FIRST = 11.0  # from the lowest outline to the first dimension line [mm]
STEP = 7.6  # from one dimension line to the next [mm]
ABOVE = 1.0  # between a dimension line and the words above it [mm]


def lengths_of(shape: TurnedShape) -> list[tuple[float, float, Dim]]:
    """What is measured from face A: (z, radius where the extension line starts, size), rising."""
    length = shape.length.value
    found: dict[float, tuple[float, Dim]] = {}

    def put(z: float, r: float, dim: Dim | None = None) -> None:
        key = round(z, 3)
        if key > 0.001 and (key not in found or r > found[key][0]):
            found[key] = (r, dim or Dim(z))

    for one in shape.outside:
        first, last = end_radii(one)
        put(one.start, first)
        put(one.end, last)
    for recess in shape.recesses:
        put(recess.depth if recess.face == "A" else length - recess.depth, recess.outside / 2)
    for bore in shape.bores:
        if not bore.through:
            put(bore.depth if bore.face == "A" else length - bore.depth, bore.dia.value / 2)
    for groove in shape.grooves:
        near = [abs(groove.start - z) < 0.05 or abs(groove.end - z) < 0.05 for z in (0.0, *found)]
        if not any(near):
            put(groove.end, groove.floor / 2)
    for hole in shape.cross_holes:
        put(hole.z, 0.0)
    whole = round(length, 3)
    found[whole] = (found.get(whole, (0.0, shape.length))[0], shape.length)
    return [(z, r, dim) for z, (r, dim) in sorted(found.items())]


def length_marks(shape: TurnedShape, scale: float, bottom: float, reader: Reader) -> tuple[list[Mark], float]:
    """One dimension a lane, all from face A; and the lowest line used [mm on paper].

    ``bottom`` is the lowest outline (positive) with face A at x = 0.
    """
    marks: list[Mark] = []
    level = bottom + FIRST
    face = face_radius(shape)
    for z, r, dim in lengths_of(shape):
        words = " ".join(size_words(dim, reader))
        measured = Text((0, 0), words, SIZE).width
        span = z * scale
        outside = span < measured + 7.0
        a, b = (0.0, face * scale), (span, r * scale)
        if outside:
            x = -7.0
            text = Text((x, level - ABOVE), words, SIZE, anchor="end")
            tail: tuple[tuple[float, float], ...] = ((0.0, level), (x - measured, level))
        else:
            text = Text((span / 2, level - ABOVE), words, SIZE, anchor="middle")
            tail = ()
        marks.append(Dimension(a, b, "x", level, z, (text,), outside=outside, tail=tail))
        level += STEP
    return marks, level - STEP


def end_radii(one: Land) -> tuple[float, float]:
    """Radii of an outside feature where it begins and ends, chamfers not counted [mm]."""
    return one.start_dia / 2, one.end_dia / 2


def face_radius(shape: TurnedShape) -> float:
    """Radius of the outside at face A, inside its chamfer [mm]."""
    one = min(shape.outside, key=lambda feature: feature.start)
    return end_radii(one)[0] - (one.edge_start if isinstance(one, Cylinder) else 0.0)


def inside_of(shape: TurnedShape) -> dict[str, list[tuple[float, float, tuple[str, ...]]]]:
    """Inside diameters by the face they are measured at: (radius, z, words), small ones first."""
    length = shape.length.value
    made: dict[str, list[tuple[float, float, tuple[str, ...]]]] = {"A": [], "B": []}
    busy = {"A": 0, "B": 0}
    for recess in shape.recesses:
        busy[recess.face] += 2
    for recess in shape.recesses:
        z = 0.0 if recess.face == "A" else length
        made[recess.face].append((recess.outside / 2, z, ("{}",)))
        if recess.inside > 0:
            made[recess.face].append((recess.inside / 2, z, ("{}",)))
    for bore in shape.bores:
        face = bore.face
        if bore.through and busy[face]:
            face = "B" if face == "A" else "A"
        made[face].append((bore.dia.value / 2, _mouth(bore, face, length), ("bore", bore.name)))
    for rows in made.values():
        rows.sort()
    return made


def _mouth(bore: Bore, face: str, length: float) -> float:
    return 0.0 + bore.edge if face == "A" else length - bore.edge


def inside_marks(shape: TurnedShape, scale: float, reader: Reader, clear: dict[str, float]) -> list[Mark]:
    """Inside diameters in lanes left of face A and right of face B.

    ``clear`` is the x from which the lanes of each side start [mm on paper].
    """
    marks: list[Mark] = []
    for face, rows in inside_of(shape).items():
        away = -1.0 if face == "A" else 1.0
        x = clear[face] + away * 10.0
        for r, z, key in rows:
            bore = next((b for b in shape.bores if key[0] == "bore" and b.name == key[1]), None)
            words = bore_words(bore, reader) if bore else (f"Ø{reader.length(2 * r, 3)}",)
            span = 2 * r * scale
            line = "  ".join(words)
            width = Text((0, 0), line, SIZE).width
            a, b = (z * scale, -r * scale), (z * scale, r * scale)
            if span > width + 9.0 and width < 40:
                text = Text((x - ABOVE, width / 2), line, SIZE, turned=True)
                marks.append(Dimension(a, b, "y", x, 2 * r, (text,), diameter=True))
                x += away * (SIZE + 5.0)
                continue
            sizes = (SIZE, *([SMALL] * (len(words) - 1)))
            widest = max(Text((0, 0), w, s).width for w, s in zip(words, sizes, strict=True))
            left = x + 2.0 if away > 0 else x - 2.0 - widest
            y = 1.3 if len(words) == 1 else -0.4
            texts = [Text((left, y), words[0], SIZE)]
            if len(words) > 1:
                texts.append(Text((left, y + SIZE), words[1], SMALL))
            tapped = bool(bore and bore.thread)
            marks.append(
                Dimension(a, b, "y", x, 2 * r, tuple(texts), outside=span < 9.0, diameter=not tapped)
            )
            x += away * (widest + 9.0)
    return marks
