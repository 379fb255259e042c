"""What of a turned part is seen: exact outlines, cut metal, edges, threads; at one scale, axis at y = 0."""

from __future__ import annotations

import math
from typing import Literal

from tommybar.facts.threads import thread
from tommybar.pack.profile import corners, edges_behind, metal_at, nominal
from tommybar.pack.sheet import Arc, Area, Kind, Line, Mark
from tommybar.pack.turned.metal import HAIR, chords, cut, radius_of, solid, turned_metal
from tommybar.pack.turned.mouths import mouth_marks
from tommybar.pack.turned.planes import sides
from tommybar.shapes.curves import ArcPiece, Piece
from tommybar.shapes.features import CrossHole, Cylinder, Eccentric, TurnedShape
from tommybar.shapes.profile import profile

View = Literal["outside", "half", "full"]
LONG = 2.5  # a bored part longer than so many diameters is drawn half in section


def view_of(shape: TurnedShape) -> View:
    """How a turned part is drawn: solid ones from outside, rings and bushes cut, the others half and half."""
    inner = (
        shape.bores or shape.recesses or shape.bore_tapers or shape.face_grooves or shape.circle_holes
        or shape.bore_grooves or shape.cups
    )  # fmt: skip
    if not inner:
        return "outside"
    knurled = any(isinstance(one, Cylinder) and one.knurl for one in shape.outside)
    seen = shape.keyways or shape.cross_slots or shape.slits or shape.head_slots
    across = 2 * radius_of(shape)
    if seen or knurled:
        return "half"
    if "below" in sides(shape).values():
        return "full"
    slender = shape.length.value > LONG * across
    return "half" if shape.flats or slender or any(h.offset for h in shape.cross_holes) else "full"


def piece_mark(piece: Piece, scale: float, side: int, kind: Kind = "thick") -> Mark:
    """A piece of an outline as a line or an arc of the sheet; ``side`` 1 above the axis, -1 below."""
    if isinstance(piece, ArcPiece):
        first, last = math.degrees(piece.first), math.degrees(piece.first + piece.sweep)
        first, last = min(first, last), max(first, last)
        if side < 0:
            first, last = -last, -first
        turn = 360.0 * math.floor(first / 360.0)
        centre = (piece.centre[0] * scale, -side * piece.centre[1] * scale)
        return Arc(centre, piece.radius * scale, kind, first - turn, last - turn)
    points = tuple((z * scale, -side * r * scale) for z, r in (piece.start, piece.end))
    return Line(points, kind)


def _on_axis(piece: Piece) -> bool:
    return max(piece.start[1], piece.end[1]) < HAIR


def half_marks(shape: TurnedShape, scale: float, side: int, section: bool) -> list[Mark]:
    """One half of the view: cut metal with its edges behind, or the outside with its edges."""
    marks: list[Mark] = []
    below = side < 0
    rings = cut(shape, below) if section else (solid(shape, below),)
    points = chords(rings)
    if section:
        marks += [
            Area((tuple((z * scale, -side * r * scale) for z, r in ring),), "hatch", None) for ring in points
        ]
    marks += [piece_mark(one, scale, side) for ring in rings for one in ring if not _on_axis(one)]
    if section:
        edges = [(z, top, floor) for z, top, floor in edges_behind(chords(turned_metal(shape, below)))]
        marks += mouth_marks(shape, scale, side)
    else:
        edges = [(z, r, 0.0) for z, r in corners(points) if r > 1e-6]
    for z, top, floor in dict.fromkeys((round(z, 5), round(t, 5), round(f, 5)) for z, t, f in edges):
        marks.append(Line(((z * scale, -side * top * scale), (z * scale, -side * floor * scale)), "thick"))
    return marks


def eccentric_marks(shape: TurnedShape, scale: float) -> list[Mark]:
    """The own axis of every eccentric land, and its lower side where that lies above the part's axis."""
    marks: list[Mark] = []
    for one in shape.outside:
        if isinstance(one, Eccentric):
            a, b, y = one.start * scale, one.end * scale, -one.throw * scale
            marks.append(Line(((a - 3.0, y), (b + 3.0, y)), "chain"))
            low = one.throw - one.dia.value / 2
            if low > HAIR:
                marks.append(Line(((a, -low * scale), (b, -low * scale)), "thick"))
    return marks


def thread_marks(shape: TurnedShape, scale: float, view: View) -> list[Mark]:
    """Thin lines at the root of screws and at the major diameter of tapped holes (ISO 6410-1)."""
    marks: list[Mark] = []
    sides = (1, -1)
    for one in shape.outside:
        if isinstance(one, Cylinder) and one.thread:
            root = thread(one.thread).core / 2
            start, end = screw_span(shape, one)
            for side in sides:
                y = -side * root * scale
                marks.append(Line(((start * scale, y), (end * scale, y)), "thin"))
            for z in (start, end):
                inside = one.start + 0.02 < z < one.end - 0.02
                if (inside or _runs_on(shape, one, z)) and not _in_groove(shape, z):
                    half = one.dia.value / 2 * scale
                    marks.append(Line(((z * scale, -half), (z * scale, half)), "thick"))
    if view == "outside":
        return marks
    cut_sides = (1, -1) if view == "full" else (1,)
    length = shape.length.value
    for bore in shape.bores:
        if not bore.thread:
            continue
        major, drill = thread(bore.thread).major / 2, thread(bore.thread).tapping_drill / 2
        full = bore.full or (length if bore.through else bore.depth)
        first, last = (0.0, full) if bore.face == "A" else (length - full, length)
        for side in cut_sides:
            y = -side * major * scale
            marks.append(Line(((first * scale, y), (last * scale, y)), "thin"))
            if bore.full and (bore.through or bore.full < bore.depth - 1e-6):
                z = (last if bore.face == "A" else first) * scale
                marks.append(Line(((z, -side * drill * scale), (z, y)), "thick"))
    for holes in shape.circle_holes:
        if holes.thread:
            major = thread(holes.thread).major / 2
            for r in (holes.circle / 2 - major, holes.circle / 2 + major):
                marks.append(
                    Line(((holes.start * scale, -r * scale), (holes.end * scale, -r * scale)), "thin")
                )
    for hole in shape.cross_holes:
        if hole.thread:
            for side in cut_sides:
                marks += cross_thread(shape, hole, side, scale)
    return marks


def _in_groove(shape: TurnedShape, z: float) -> bool:
    return any(g.start - 0.02 <= z <= g.end + 0.02 for g in shape.grooves)


def cross_thread(shape: TurnedShape, hole: CrossHole, side: int, scale: float) -> list[Mark]:
    """Thin lines at the major diameter of a tapped cross hole, in the half in which it is cut."""
    stands = sides(shape).get(hole.name, "off")
    if stands not in ("both", "above" if side > 0 else "below"):
        return []
    bounds = metal_at(chords((profile(nominal(shape)),)), hole.z)
    if len(bounds) < 2:
        return []
    major, floor = thread(hole.thread).major / 2, bounds[-2]
    if hole.depth is not None:
        floor = max(floor, bounds[-1] - hole.depth)
    return [
        Line(((at * scale, -side * floor * scale), (at * scale, -side * bounds[-1] * scale)), "thin")
        for at in (hole.z - major, hole.z + major)
    ]


def _runs_on(shape: TurnedShape, one: Cylinder, z: float) -> bool:
    """Whether a plain land of the same diameter goes on where a thread ends, so that no shoulder shows its end."""
    return any(
        abs(dia - one.dia.value) < 0.02 and abs(at - z) < 0.02
        for other in shape.outside
        if other is not one
        for at, dia in ((other.start, other.start_dia), (other.end, other.end_dia))
    )


def screw_span(shape: TurnedShape, one: Cylinder) -> tuple[float, float]:
    """Where an outside thread stands at full depth: from its free end for ``full``, up to an undercut."""
    start, end = one.start, one.end
    for groove in shape.grooves:
        if abs(groove.end - end) < 0.05 and groove.start > start:
            end = groove.start
        if abs(groove.start - start) < 0.05 and groove.end < end:
            start = groove.end
    if one.full:
        bodies = sorted(shape.outside, key=lambda body: body.start)
        n = next(i for i, body in enumerate(bodies) if body.name == one.name)
        before = bodies[n - 1].end_dia if n else 0.0
        after = bodies[n + 1].start_dia if n + 1 < len(bodies) else 0.0
        if before <= after:
            end = min(end, start + one.full)
        else:
            start = max(start, end - one.full)
    return start, end


def knurl_marks(shape: TurnedShape, scale: float, view: View) -> list[Mark]:
    """Lines of a knurl on what is seen from outside."""
    marks: list[Mark] = []
    if view == "full":
        return marks
    for one in shape.outside:
        if not isinstance(one, Cylinder) or one.knurl is None:
            continue
        start = (one.start + max(one.edge_start, one.round_start)) * scale
        end = (one.end - max(one.edge_end, one.round_end)) * scale
        radius = one.dia.value / 2 * scale
        top = -radius if view == "outside" else 0.0
        step = max(1.0, one.knurl.pitch * scale)
        if one.knurl.pattern == "straight":
            n = int(radius / step)
            marks += [
                Line(((start, k * step), (end, k * step)), "hatch")
                for k in range(-n, n + 1)
                if k and top - 1e-6 <= k * step
            ]
        else:
            ring = ((start, top), (end, top), (end, radius), (start, radius))
            marks += [Area((ring,), "hatch", None, 2 * step), Area((ring,), "hatch2", None, 2 * step)]
    return marks
