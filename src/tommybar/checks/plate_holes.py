"""Holes in plates: metal to the edges, between holes, and holes that meet inside."""

from __future__ import annotations

import math
from dataclasses import dataclass
from itertools import combinations

from tommybar.checks.checked import Checked, at_least
from tommybar.checks.walls import EDGE_SHARE, LEAST_WALL, wall_wanted
from tommybar.design.model import Part, SizedDesign
from tommybar.facts.drills import point_length
from tommybar.findings import Finding
from tommybar.shapes.features import PlateHole, PlateShape
from tommybar.shapes.holes import drawn_hole
from tommybar.shapes.plates import drilled_depth, face_size
from tommybar.shop.model import Shop

REMEDY = "Move the hole, take a smaller one, or make the plate larger."
Point = tuple[float, float, float]


@dataclass(frozen=True)
class _Line:
    """The axis of a drilled hole from its mouth to its point, and its radius [mm]."""

    hole: PlateHole
    start: Point
    end: Point
    radius: float


def look(design: SizedDesign, shop: Shop) -> Checked:
    """Every plate."""
    found: list[Finding | None] = []
    for part in design.parts:
        if isinstance(part.shape, PlateShape):
            for hole in part.shape.holes:
                found += _edges(part, part.shape, hole)
            found += _between(part, part.shape, _bearing(design, part))
    return Checked(tuple(one for one in found if one is not None))


def _edges(part: Part, shape: PlateShape, hole: PlateHole) -> list[Finding | None]:
    face = face_size(shape, hole.face)
    near = min(hole.x, face.width - hole.x, hole.y, face.height - hole.y)
    place = {"part": part.name, "feature": hole.name, "remedy": REMEDY}
    found: list[Finding | None] = []
    if hole.thread:
        far = EDGE_SHARE * hole.dia.value
        found.append(
            at_least(616, f"{hole.name} is tapped near the edge; middle to edge", near, far, **place)
        )
    else:
        dia = max(hole.dia.value, hole.sink_dia)
        wanted = wall_wanted(dia)
        found.append(
            at_least(617, f"Little metal from {hole.name} to the edge", near - dia / 2, wanted, **place)
        )
    if hole.depth is not None:
        dia = drawn_hole(hole.dia, hole.thread)
        behind = face.depth - drilled_depth(hole, shape) - point_length(dia)
        words = f"The drill for {hole.name} comes near the far side"
        found.append(at_least(625, words, behind, LEAST_WALL, **place))
    return found


def _bearing(design: SizedDesign, part: Part) -> frozenset[frozenset[str]]:
    """Pairs of holes that are meant to meet: that of a seated screw, and that of what it bears on."""
    own = f"{part.name}."
    screws = {one.seat.removeprefix(own) for one in design.seats if one.figure == "thread_dia"}
    fitted = {one.hole.removeprefix(own) for one in design.fits if one.hole.startswith(own)}
    return frozenset(frozenset((screw, hole)) for screw in screws for hole in fitted)


def _between(part: Part, shape: PlateShape, meant: frozenset[frozenset[str]]) -> list[Finding | None]:
    found: list[Finding | None] = []
    lines = [_line(hole, shape) for hole in shape.holes]
    for one, other in combinations(lines, 2):
        apart = _distance(one, other) - one.radius - other.radius
        wanted = wall_wanted(2 * min(one.radius, other.radius))
        names = f"{one.hole.name} and {other.hole.name}"
        if apart < 0 and frozenset((one.hole.name, other.hole.name)) in meant:
            continue
        if apart < 0:
            found.append(
                Finding(
                    626,
                    "caution",
                    f"{names} run {-apart:.2f} mm into each other inside the plate.",
                    part.name,
                    one.hole.name,
                    figure=f"{apart:.2f} mm",
                    bound="0 mm",
                    remedy=REMEDY,
                    source="geometry of the part",
                )
            )
        else:
            words = f"Little metal between {names}"
            place = {"part": part.name, "feature": one.hole.name, "remedy": REMEDY}
            found.append(at_least(614, words, apart, wanted, **place))
    return found


def _line(hole: PlateHole, shape: PlateShape) -> _Line:
    dia = drawn_hole(hole.dia, hole.thread)
    long, wide, thick = shape.length.value, shape.width.value, shape.thickness.value
    deep = drilled_depth(hole, shape)
    if hole.depth is not None:
        deep = min(deep + point_length(dia), face_size(shape, hole.face).depth)
    x, y = hole.x, hole.y
    start, way = {
        "top": ((x, y, 0.0), (0, 0, 1)),
        "bottom": ((long - x, y, thick), (0, 0, -1)),
        "front": ((x, 0.0, thick - y), (0, 1, 0)),
        "back": ((long - x, wide, thick - y), (0, -1, 0)),
        "left": ((0.0, wide - x, thick - y), (1, 0, 0)),
        "right": ((long, x, thick - y), (-1, 0, 0)),
    }[hole.face]
    end = (start[0] + way[0] * deep, start[1] + way[1] * deep, start[2] + way[2] * deep)
    return _Line(hole, start, end, dia / 2)


def _distance(one: _Line, other: _Line) -> float:
    """Least distance of two axes, each along one of the plate's own directions [mm]."""
    apart = 0.0
    for low_a, high_a, low_b, high_b in (
        (*sorted((a, b)), *sorted((c, d)))
        for a, b, c, d in zip(one.start, one.end, other.start, other.end, strict=True)
    ):
        apart += max(0.0, low_b - high_a, low_a - high_b) ** 2
    return math.sqrt(apart)
