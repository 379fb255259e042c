"""Rolled rings, wound springs and bent wire: what they are told by, and their views."""

from __future__ import annotations

import math
from collections.abc import Sequence

from tommybar.pack.bent.views import View, seen_from
from tommybar.pack.boxes import box_of
from tommybar.pack.plates.drawn import figured
from tommybar.pack.plates.figures import Figure
from tommybar.pack.plates.letters import letter_marks
from tommybar.pack.plates.spans import Span
from tommybar.pack.plates.told import DIA, NOWHERE, Row, Told
from tommybar.pack.printed import PrintedDimension
from tommybar.pack.sheet import Line, Mark
from tommybar.pack.units import Reader
from tommybar.shapes.developed import ring_length, solid_length, spring_length, wire_length
from tommybar.shapes.features import RolledRing, SpringShape, WireShape

ENDS = {
    "open": "open ends",
    "closed": "closed ends, not ground",
    "ground": "closed ends, ground square",
    "hooks": "a hook at each end",
    "legs": "straight legs",
}


def ring_figures(
    shape: RolledRing, reader: Reader
) -> tuple[list[Figure], list[Figure], list[PrintedDimension]]:
    """Inside diameter in the view along the axis, width of a strip in the view from the side."""
    inside, width = Told("ring", reader), Told("ring", reader)
    inside.sized("diameter", "inside", shape.inside, DIA)
    row, half = inside.row("", NOWHERE), shape.inside.value / 2
    face: list[Figure] = [Span("below", (-half, 0.0), (half, 0.0), 2 * half, row.words)]
    if shape.round:
        return face, [], list(row.printed)
    width.length("width", "width", shape.width)
    second, edge = width.row("", NOWHERE), half + shape.thickness
    side: list[Figure] = [Span("right", (edge, 0.0), (edge, shape.width), shape.width, second.words)]
    return face, side, [*row.printed, *second.printed]


def ring_rows(shape: RolledRing, reader: Reader, printed: Sequence[PrintedDimension] = ()) -> list[Row]:
    """Inside diameter, section, cut length and joint; what is ``printed`` at a view is not said again."""
    drawn = frozenset((one.feature, one.size) for one in printed)
    told = Told("ring", reader, drawn=drawn)
    told.sized("diameter", "inside", shape.inside, f"inside {DIA}")
    rows = [row for row in [told.row("ring", NOWHERE)] if row.words]
    told = Told("ring", reader, drawn=drawn)
    if shape.round:
        told.length("diameter", "thickness", shape.thickness, f"wire {DIA}")
    else:
        told.say("strip")
        told.length("width", "width", shape.width, after=" wide ×")
        told.length("length", "thickness", shape.thickness, after=" thick")
    rows.append(told.row("section", NOWHERE))
    told = Told("ring", reader)
    told.say(f"({reader.place(ring_length(shape))}) along the middle of the metal")
    rows.append(told.row("cut length", NOWHERE))
    told = Told("ring", reader)
    told.word("form", "joint", {"butt": "butted", "lap": "lapped"}.get(shape.joint, shape.joint))
    if shape.gap:
        told.length("width", "gap", shape.gap, ", gap ")
    rows.append(told.row("joint", NOWHERE))
    return rows


def ring_views(
    shape: RolledRing, scale: float, face: Sequence[Figure], side: Sequence[Figure],
    printed: Sequence[PrintedDimension],
) -> list[View] | None:  # fmt: skip
    """Along the axis, and from the side."""
    along, beside = seen_from(shape, "top", scale), seen_from(shape, "front", scale)
    around = box_of(along)
    along += _cross(along)
    at_face = figured(along, face, around, scale)
    at_side = figured(beside, side, box_of(beside), scale)
    if at_face is None or at_side is None:
        return None
    return [View((*along, *at_face), tuple(printed)), View((*beside, *at_side))]


def _cross(marks: list[Mark]) -> list[Mark]:
    left, top, right, bottom = box_of(marks)
    reach = max(right - left, bottom - top) / 2 + 3.0
    return [Line(((-reach, 0.0), (reach, 0.0)), "chain"), Line(((0.0, -reach), (0.0, reach)), "chain")]


def spring_figures(shape: SpringShape, reader: Reader) -> tuple[list[Figure], list[PrintedDimension]]:
    """Outside diameter beside the view of a spring, and its free length when no hooks or legs belong to it."""
    free, outside = Told("spring", reader), Told("spring", reader)
    free.length("length", "free", shape.free)
    outside.sized("diameter", "outside", shape.outside, DIA)
    half = shape.outside.value / 2
    rows = [outside.row("", NOWHERE)]
    figures: list[Figure] = [Span("left", (0.0, -half), (0.0, half), 2 * half, rows[0].words)]
    if shape.ends not in ("hooks", "legs"):
        rows.append(free.row("", NOWHERE))
        figures.append(Span("below", (0.0, -half), (shape.free, -half), shape.free, rows[1].words))
    return figures, [one for row in rows for one in row.printed]


def spring_rows(shape: SpringShape, reader: Reader, printed: Sequence[PrintedDimension] = ()) -> list[Row]:
    """What a spring is wound by: wire, diameter, coils, length, ends, hand; and what follows from them.

    What is ``printed`` at the view already is not said again.
    """
    rows: list[Row] = []
    drawn = frozenset((one.feature, one.size) for one in printed)

    def put(tag: str, told: Told) -> None:
        row = told.row(tag, NOWHERE)
        if row.words:
            rows.append(row)

    def of() -> Told:
        return Told("spring", reader, drawn=drawn)

    told = of()
    told.word("form", "kind", f"{shape.kind} spring,")
    told.word("form", "hand", "wound left-handed" if shape.left else "wound right-handed")
    put("kind", told)
    told = of()
    told.length("diameter", "wire", shape.wire, DIA)
    told.say(f"; ({reader.place(spring_length(shape))}) long, hooks and grips of the winder not counted")
    put("wire", told)
    told = of()
    seen = told.given("outside")
    told.sized("diameter", "outside", shape.outside, f"outside {DIA}")
    inside = shape.outside.value - 2 * shape.wire
    told.say(
        ("" if seen else "; ")
        + f"(inside {DIA}{reader.place(inside)}: wind on a smaller mandrel, it springs open; try one)"
    )
    put("diameter", told)
    told = of()
    told.word("count", "active", f"{shape.active:g}", shape.active)
    told.say("active,")
    told.word("count", "total", f"{shape.total:g}", shape.total)
    told.say("in all")
    put("coils", told)
    told = of()
    told.length("length", "free", shape.free, after=" free")
    if shape.kind == "compression":
        told.say(("" if told.given("free") else "; ") + f"(solid {reader.place(solid_length(shape))})")
    put("length", told)
    told = of()
    told.word("form", "ends", ENDS[shape.ends])
    if shape.leg:
        told.length("length", "leg", shape.leg, ", ", " long each")
    put("ends", told)
    return rows


def spring_views(
    shape: SpringShape, scale: float, figures: Sequence[Figure], printed: Sequence[PrintedDimension]
) -> list[View] | None:
    """From the side, as wound; what is ground off and hooks are not drawn."""
    marks = seen_from(shape, "front", scale)
    more = figured(marks, figures, box_of(marks), scale)
    return None if more is None else [View((*marks, *more), tuple(printed))]


def wire_rows(shape: WireShape, reader: Reader) -> list[Row]:
    """Diameter, legs between the bends, each bend, and the length to cut."""
    told = Told("wire", reader)
    told.sized("diameter", "dia", shape.dia, DIA)
    told.say(f"; cut ({reader.place(wire_length(shape))}) long")
    rows = [told.row("wire", NOWHERE)]
    at = _stations(shape)
    for n, leg in enumerate(shape.legs):
        told = Told(f"leg_{n + 1}", reader)
        told.length("length", "long", leg, after=" straight, between the ends of the bends")
        rows.append(told.row(f"leg {n + 1}", NOWHERE, "top", ((*at[2 * n], 0.0),), shape.dia.value / 2))
        if n < len(shape.bends):
            inside, angle = shape.bends[n]
            told = Told(f"bend_{n + 1}", reader)
            told.angle("angle", abs(angle))
            told.word("form", "way", "to the left," if angle > 0 else "to the right,")
            told.length("radius", "radius", inside, "inside R")
            rows.append(
                told.row(f"bend {n + 1}", NOWHERE, "top", ((*at[2 * n + 1], 0.0),), shape.dia.value / 2)
            )
    return rows


def _stations(shape: WireShape) -> list[tuple[float, float]]:
    """The middle of each leg and of each bend, in turn [mm]."""
    x = y = heading = 0.0
    found: list[tuple[float, float]] = []
    for n, leg in enumerate(shape.legs):
        c, s = math.cos(heading), math.sin(heading)
        found.append((x + leg / 2 * c, y + leg / 2 * s))
        x, y = x + leg * c, y + leg * s
        if n < len(shape.bends):
            inside, angle = shape.bends[n]
            r, turn = inside + shape.dia.value / 2, math.radians(angle)
            side = math.copysign(1.0, angle)
            cx, cy = x - side * r * s, y + side * r * c
            for share in (0.5, 1.0):
                a = heading + share * turn
                x, y = cx + side * r * math.sin(a), cy - side * r * math.cos(a)
                if share == 0.5:
                    found.append((x, y))
            heading += turn
    return found


def wire_views(shape: WireShape, rows: list[Row], scale: float) -> list[View]:
    """The wire as it lies on the bench, its legs and bends named."""
    marks = seen_from(shape, "top", scale)
    # a name lies beside the wire
    wanted = [
        (row.tag, (spot[0] * scale, -spot[1] * scale), 1.5 * row.radius * scale)
        for row in rows
        for spot in row.spots
    ]
    return [View((*marks, *letter_marks(wanted, marks)))]
