"""Metal that must stay between holes, walls and edges, and clearances that relations need.

Only what leaves no part at all is asked here; what is merely less than usual
(a tapped hole near an edge, a thin bush) is told by the checks.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations
from math import hypot, pi, sin

from tommybar.design.model import Part, SizedDesign
from tommybar.facts.fasteners import clearance_hole
from tommybar.facts.threads import thread
from tommybar.refusals import Refusal
from tommybar.resize.allowances import least_wall, tapped_wall
from tommybar.resize.asked import Asked
from tommybar.shapes.blind_holes import left_behind
from tommybar.shapes.features import CircleHoles, Cylinder, PlateHole, PlateShape, TurnedShape

RULE = "1.5 mm, or 0.15 of the hole"


def walls(sized: SizedDesign) -> Iterator[Asked]:
    """Every wall of every part, and every clearance hole against its screw."""
    for part in sized.parts:
        if isinstance(part.shape, TurnedShape):
            yield from _round_tapped_bores(part, part.shape)
            yield from _behind_blind_bores(part, part.shape)
            for holes in part.shape.circle_holes:
                yield from _beside_circle(part, part.shape, holes)
        elif isinstance(part.shape, PlateShape):
            yield from _plate(part, part.shape)
    yield from _clearances(sized)


def hole_size(hole: CircleHoles | PlateHole) -> float:
    """Diameter of the hole, of the thread when it is tapped [mm]."""
    return thread(hole.thread).major if hole.thread else hole.dia.value


def _least_outside(shape: TurnedShape, start: float, end: float) -> float:
    return min(
        (
            one.dia.value if isinstance(one, Cylinder) else min(one.start_dia, one.end_dia)
            for one in shape.outside
            if one.start < end - 1e-6 and one.end > start + 1e-6
        ),
        default=0.0,
    )


def _round_tapped_bores(part: Part, shape: TurnedShape) -> Iterator[Asked]:
    length = shape.length.value
    for bore in shape.bores:
        if not bore.thread:
            continue
        start, end = (0.0, bore.depth) if bore.face == "A" else (length - bore.depth, length)
        major = thread(bore.thread).major
        yield Asked(
            "wall",
            f"metal round the thread {bore.name}",
            part.name,
            (_least_outside(shape, start, end) - major) / 2,
            tapped_wall(major),
            True,
            who="half the thread's diameter",
            remedy="A groove and circlip, a cross pin, or a stud with a head instead.",
        )


def _behind_blind_bores(part: Part, shape: TurnedShape) -> Iterator[Asked]:
    """A tap's lead and a drill's tip do not grow less with the part: at a small scale they come out behind."""
    for bore in shape.bores:
        left = None if bore.through else left_behind(shape, bore)
        if left is not None:
            yield Asked(
                "wall",
                f"metal behind {bore.name} with its lead and tip",
                part.name,
                left,
                0.0,
                True,
                who="the tap's lead and the drill's tip",
                remedy="Make it shallower, give it a flat bottom, or write through: true.",
            )


def _beside_circle(part: Part, shape: TurnedShape, holes: CircleHoles) -> Iterator[Asked]:
    size, radius = hole_size(holes), holes.circle / 2
    needed = least_wall(size)
    outer = _least_outside(shape, holes.start, holes.end) / 2
    inner = max((bore.dia.value / 2 for bore in shape.bores), default=0.0)
    for recess in shape.recesses:
        if recess.inside / 2 < radius < recess.outside / 2:
            inner, outer = max(inner, recess.inside / 2), min(outer, recess.outside / 2)
    name, rule = holes.name, RULE
    if inner:
        yield Asked("wall", f"metal inside {name}", part.name, radius - size / 2 - inner, needed, True, rule)
    yield Asked("wall", f"metal outside {name}", part.name, outer - radius - size / 2, needed, True, rule)
    if holes.count > 1:
        between = holes.circle * sin(pi / holes.count) - size
        yield Asked("wall", f"metal between {name}", part.name, between, needed, True, rule)


def _plate(part: Part, shape: PlateShape) -> Iterator[Asked]:
    long, wide, thick = shape.length.value, shape.width.value, shape.thickness.value
    extents = {"top": (long, wide), "bottom": (long, wide), "front": (long, thick), "back": (long, thick)}
    for hole in shape.holes:
        across, up = extents.get(hole.face, (wide, thick))
        size = hole_size(hole)
        edge = min(hole.x, across - hole.x, hole.y, up - hole.y)
        name = f"{hole.face} {hole.name}"
        yield Asked("wall", f"edge of {name}", part.name, edge - size / 2, least_wall(size), True, RULE)
    for one, other in combinations(shape.holes, 2):
        if one.face != other.face:
            continue
        sizes = hole_size(one), hole_size(other)
        apart = hypot(one.x - other.x, one.y - other.y) - sum(sizes) / 2
        what = f"metal between {one.face} {one.name} and {other.name}"
        yield Asked("wall", what, part.name, apart, least_wall(max(sizes)), True, RULE)


def _clearances(sized: SizedDesign) -> Iterator[Asked]:
    """A clearance hole lies between the fine and the coarse series of its screw."""
    holes = {}
    for part in sized.parts:
        for group in ("circle_holes", "cross_holes", "holes", "bores"):
            for hole in getattr(part.shape, group, ()):
                holes[f"{part.name}.{hole.name}"] = (part.name, hole.dia.value)
    for screw in sized.screws:
        try:
            fine, coarse = (clearance_hole(screw.screw, fit) for fit in ("fine", "coarse"))
        except Refusal:
            continue
        for name in screw.through:
            if name in holes:
                part_name, dia = holes[name]
                who = f"ISO 273 for {screw.screw}"
                yield Asked("relation", f"fine clearance of {name}", part_name, dia, fine, True, who)
                yield Asked("relation", f"coarse clearance of {name}", part_name, dia, coarse, False, who)
