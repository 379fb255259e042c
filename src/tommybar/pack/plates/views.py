"""The views of a plate: from above, from the front, from a side where something is there, and a section."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

from tommybar.facts.threads import thread
from tommybar.pack.boxes import Box, overlap
from tommybar.pack.marks import plain_marks
from tommybar.pack.plates.cuts import Place
from tommybar.pack.plates.holes import in_plate
from tommybar.pack.plates.letters import Lines
from tommybar.pack.projected.directions import Looked, body, body_in, looked_at
from tommybar.pack.projected.hidden import seen
from tommybar.pack.projected.lines import Circle, scaled, view_marks
from tommybar.pack.sheet import Arc, Area, Line, Mark, Text
from tommybar.shapes.features import PlateHole, PlateShape, Rays
from tommybar.shapes.mesh import as_mesh
from tommybar.shapes.outlines import Arc as Round
from tommybar.shapes.outlines import Loop, plate_loop
from tommybar.shapes.plate_features import pocket_loop, slot_loop
from tommybar.shapes.plate_frames import face_frame
from tommybar.shapes.plates import drilled_depth
from tommybar.shapes.solids.frames import cosine, direction, point, sine

Spot = tuple[float, float]
LETTER = 2.8  # of engraved words as drawn [mm on paper]
BESIDE = 2.6  # of the middle of an engraved word from its line [mm on paper]
MOST = 3  # sections of one plate
PAST = 2.0  # how far a centre line runs past a circle [mm on paper]


@dataclass(frozen=True)
class Plane:
    """Where a section is cut: across y (seen from the front) at ``at`` from the front edge [mm]."""

    at: float


def plate_body(shape: PlateShape) -> Any:
    """The plate as a body, x along the length, y across, z up from the underside."""
    return body(shape)


@lru_cache(maxsize=64)
def lines_of(shape: PlateShape, looked: Looked) -> tuple[Mark, ...]:
    """What is seen of a plate from one side, at 1:1, with its hidden lines."""
    found = seen(as_mesh(body_in(plate_body(shape), looked_at(looked))))
    return tuple(view_marks(found, 1.0, _circles(shape, looked)))


@lru_cache(maxsize=16)
def cut_at(shape: PlateShape, plane: Plane) -> tuple[Any, tuple[Mark, ...]]:
    """The rings that a section cuts, and what is seen behind it."""
    placed = body_in(plate_body(shape), looked_at("front"))
    rings = placed.slice(-plane.at - 1e-6).simplify(1e-4).to_polygons()
    behind = seen(as_mesh(placed.trim_by_plane((0.0, 0.0, -1.0), plane.at)))
    return rings, tuple(view_marks(behind, 1.0, (), False))


def orthographic(shape: PlateShape, looked: Looked, scale: float) -> list[Mark]:
    """A view with its hidden lines, thread lines and centre lines; the plate's datum corner at (0, 0)."""
    marks = scaled(lines_of(shape, looked), scale) + hole_marks(shape, looked, scale)
    return marks + (ray_marks(shape, scale) if looked == "top" else [])


def ray_marks(shape: PlateShape, scale: float) -> list[Line]:
    """Engraved lines that radiate from a place."""
    return [Line(way, "thin") for fan in shape.rays for way in _ways(fan, scale)]


def _ways(fan: Rays, scale: float) -> list[tuple[Spot, Spot]]:
    found: list[tuple[Spot, Spot]] = []
    for angle in fan.angles:
        c, s = cosine(angle), sine(angle)
        a, b = ((fan.x + r * c, fan.y + r * s) for r in (fan.inner, fan.outer))
        found.append(
            (
                (round(a[0] * scale, 4), round(-a[1] * scale, 4)),
                (round(b[0] * scale, 4), round(-b[1] * scale, 4)),
            )
        )
    return found


def ray_words(shape: PlateShape, scale: float, marks: Sequence[Mark]) -> list[Text]:
    """What stands beside engraved lines, clear of all that is drawn: on the left, the right or beyond the end."""
    lines = Lines(marks)
    taken = [one.box for one in plain_marks(marks) if isinstance(one, Text)]
    made: list[Text] = []
    for fan in shape.rays:
        for words, angle, way in zip(fan.words, fan.angles, _ways(fan, scale), strict=bool(fan.words)):
            tried = _beside_ray(words, angle, way)
            text = next((one for one in tried if _clear(one, lines, taken)), tried[0])
            taken.append(text.box)
            made.append(text)
    return made


def _clear(text: Text, lines: Lines, taken: Sequence[Box]) -> bool:
    b = text.box
    room = (b[0] - 0.2, b[1] - 0.2, b[2] + 0.2, b[3] + 0.2)
    return not lines.through(room) and not any(overlap(b, one) for one in taken)


def _beside_ray(words: str, angle: float, way: tuple[Spot, Spot]) -> list[Text]:
    """Places for the words of a line, the one liked best first."""
    c, s = cosine(angle), sine(angle)
    (x1, y1), (x2, y2) = way
    spots: list[Spot] = []
    for side in (1.0, -1.0):
        for share in (0.5, 0.75, 0.25):
            x, y = x1 + share * (x2 - x1), y1 + share * (y2 - y1)
            spots.append((x - side * BESIDE * s, y - side * BESIDE * c))
    spots += [(x2 + more * BESIDE * c, y2 - more * BESIDE * s) for more in (1.0, 1.6, 2.4)]
    return [
        Text((round(x, 4), round(y + 0.35 * LETTER, 4)), words, LETTER, anchor="middle") for x, y in spots
    ]


def sectioned(shape: PlateShape, plane: Plane, scale: float) -> list[Mark]:
    """The plate cut across y and looked at from the front: cut metal hatched, and what is seen behind it."""
    rings, behind = cut_at(shape, plane)
    on_paper = tuple(
        tuple((round(float(u) * scale, 4), round(-float(v) * scale, 4)) for u, v in ring) for ring in rings
    )
    marks: list[Mark] = [Area(on_paper, "hatch", None)] if on_paper else []
    marks += scaled(behind, scale)
    return marks + hole_marks(shape, "front", scale, plane)


def leans_along(hole: PlateHole) -> bool:
    """Whether a hole leans in a plane along the length, so that a section shows its angle true."""
    return bool(hole.tilt) and hole.face in ("top", "bottom") and round(hole.towards % 180.0, 6) == 0.0


def sections_of(shape: PlateShape) -> tuple[Plane, ...]:
    """Where sections show what is blind, sunk or undercut: none, one, or more when one leaves depths unseen."""
    wanted: list[
        tuple[float, float, float, bool]
    ] = []  # y, half its width, how much it tells, needs a section
    for hole in shape.holes:
        if hole.face in ("top", "bottom") and (hole.depth is not None or hole.sink_dia or hole.tilt):
            tells = 1.0 + bool(hole.sink_dia) + 2.0 * bool(hole.tilt)
            wanted.append((in_plate(shape, hole)[1], 0.5, tells, leans_along(hole)))
    for slot in shape.slots:
        if slot.face in ("top", "bottom") and slot.depth is not None:
            lies = round(slot.angle % 180.0, 6) == 0.0
            wanted.append((slot.y, (slot.width.value if lies else slot.long) / 2, 1.5, True))
    for pocket in shape.pockets:
        if pocket.face in ("top", "bottom") and pocket.depth is not None:
            wanted.append((pocket.y, pocket.width.value / 2, 2.0, True))
    planes: list[Plane] = []
    while wanted and len(planes) < MOST:
        told = {
            y: sum(tells for at, half, tells, _ in wanted if abs(at - y) < half - 1e-6)
            for y, _, _, _ in wanted
        }
        best = max(told, key=lambda y: (told[y], -y))
        planes.append(Plane(best))
        wanted = [one for one in wanted if abs(one[0] - best) >= one[1] - 1e-6 and one[3]]
    return tuple(planes)


def side_of(shape: PlateShape) -> Looked | None:
    """The end from which a view is wanted, because something is cut in it or runs out of it."""
    ends: tuple[Looked, ...] = ("right", "left")
    for face in ends:
        things: Sequence[Any] = (*shape.holes, *shape.slots, *shape.pockets, *shape.vees)
        if any(one.face == face for one in things):
            return face
    vees = any(one.along == "x" and one.face in ("top", "bottom") for one in shape.vees)
    tails = any(one.along == "x" for one in shape.dovetails)
    if vees or tails or any(one.side in ("front", "back") for one in shape.steps):
        return "left"
    return None


def _circles(shape: PlateShape, looked: Looked) -> list[Circle]:
    """Circles that are seen as circles in a view."""
    found: list[Circle] = []
    at = looked_at(looked)
    opposite = {"top": "bottom", "front": "back", "left": "right", "right": "left"}.get(looked, "")
    for hole in shape.holes:
        if hole.face not in (looked, opposite) or hole.tilt:
            continue
        u, v, _ = point(at, in_plate(shape, hole))
        dia = thread(hole.thread).tapping_drill if hole.thread else hole.dia.target
        found += [(u, v, dia / 2), *([(u, v, hole.sink_dia / 2)] if hole.sink_dia else [])]
    if looked == "top":
        loops: list[Loop] = [plate_loop(shape)]
        loops += [slot_loop(one) for one in shape.slots if one.face == "top"]
        loops += [pocket_loop(one) for one in shape.pockets if one.face == "top"]
        found += [(one.x, one.y, one.radius) for loop in loops for one in loop if isinstance(one, Round)]
    return found


def hole_marks(shape: PlateShape, looked: Looked, scale: float, plane: Plane | None = None) -> list[Mark]:
    """Centre lines and the thin lines of threads, in a view or, with a plane, in a section."""
    marks: list[Mark] = []
    at = looked_at(looked)
    for hole in shape.holes:
        spot = in_plate(shape, hole)
        if plane is not None and abs(spot[1] - plane.at) > hole.dia.value / 2 + 1e-6:
            continue
        into = _into(shape, hole)
        u, v, w = direction(at, into)
        x, y, _ = point(at, spot)
        x, y = x * scale, -y * scale
        if abs(w) > 0.9999:
            if plane is not None:
                continue
            marks += _head_on(hole, x, y, scale, w < 0)
        elif abs(w) < 1e-6:
            marks += _from_beside(hole, shape, (x, y), (u, -v), scale, plane is not None)
    return marks


def _into(shape: PlateShape, hole: PlateHole) -> Place:
    """Unit vector along which a hole goes in, z up."""
    t, a = math.radians(hole.tilt), math.radians(hole.towards)
    s = math.sin(t)
    x, y, down = face_frame(shape, hole.face).direction(s * math.cos(a), s * math.sin(a), math.cos(t))
    return x, y, -down


def _head_on(hole: PlateHole, x: float, y: float, scale: float, towards: bool) -> list[Mark]:
    major = thread(hole.thread).major / 2 if hole.thread else hole.dia.value / 2
    reach = max(major, hole.sink_dia / 2) * scale + PAST
    marks: list[Mark] = [
        Line(((x - reach, y), (x + reach, y)), "chain"),
        Line(((x, y - reach), (x, y + reach)), "chain"),
    ]
    if hole.thread and (towards or hole.depth is None):
        marks.append(Arc((x, y), major * scale, "thin", 80.0, 350.0))
    return marks


def _from_beside(
    hole: PlateHole,
    shape: PlateShape,
    at: tuple[float, float],
    way: tuple[float, float],
    scale: float,
    cut: bool,
) -> list[Mark]:
    """Axis, and at a tapped hole the lines of its major diameter, thin in a section and dashed elsewhere."""
    deep = drilled_depth(hole, shape) * scale
    if hole.tilt and hole.depth is None:
        deep /= math.cos(math.radians(hole.tilt))
    tip = deep + (PAST if hole.depth is None else 0.3 * hole.dia.value * scale + PAST)
    (x, y), (dx, dy) = at, way
    marks: list[Mark] = [Line(((x - PAST * dx, y - PAST * dy), (x + tip * dx, y + tip * dy)), "chain")]
    if hole.thread:
        full = (hole.depth * scale) if hole.depth is not None else deep
        r = thread(hole.thread).major / 2 * scale
        for side in (r, -r):
            a = (x - side * dy, y + side * dx)
            marks.append(Line((a, (a[0] + full * dx, a[1] + full * dy)), "thin" if cut else "dashed"))
        if cut and hole.depth is not None:
            ends = tuple((x + full * dx - s * dy, y + full * dy + s * dx) for s in (r, -r))
            marks.append(Line(ends, "thick"))
    return marks
