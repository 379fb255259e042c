"""What grooves in the outside and in the faces take away from the half-section, as exact rings."""

from __future__ import annotations

import math

from tommybar.refusals import Refusal
from tommybar.shapes.curves import ON, ArcPiece, Line, Piece, Point, Ring, closed
from tommybar.shapes.features import Cylinder, FaceGroove, Groove, Recess, TurnedShape
from tommybar.shapes.metal import Metal
from tommybar.shapes.outside import CLOSE

BEYOND = 1.0  # cutting shapes run past a face by this much, so that no skin stays [mm]


def chain(points: list[Point], rounds: dict[int, float]) -> Ring:
    """A closed ring of straight sides, the corners in ``rounds`` rounded by their radii; counter-clockwise."""
    count = len(points)
    pieces: list[Piece] = []
    joints: list[tuple[Point, Point, Point | None]] = []
    for n, p in enumerate(points):
        radius = rounds.get(n, 0.0)
        if radius <= 0:
            joints.append((p, p, None))
            continue
        a, b = points[n - 1], points[(n + 1) % count]
        u = ((a[0] - p[0]) / math.dist(a, p), (a[1] - p[1]) / math.dist(a, p))
        v = ((b[0] - p[0]) / math.dist(b, p), (b[1] - p[1]) / math.dist(b, p))
        half = math.acos(max(-1.0, min(1.0, u[0] * v[0] + u[1] * v[1]))) / 2
        back = radius / math.tan(half)
        w = (u[0] + v[0], u[1] + v[1])
        out = radius / math.sin(half) / math.hypot(*w)
        joints.append(
            (
                (p[0] + back * u[0], p[1] + back * u[1]),
                (p[0] + back * v[0], p[1] + back * v[1]),
                (p[0] + out * w[0], p[1] + out * w[1]),
            )
        )
    for n, (start, end, centre) in enumerate(joints):
        if centre is not None:
            pieces.append(ArcPiece(start, end, centre, ccw=True))
        after = joints[(n + 1) % count][0]
        if math.dist(end, after) > ON:
            pieces.append(Line(end, after))
    return tuple(pieces)


def mirrored(ring: Ring, length: float) -> Ring:
    """A ring drawn from face A, entered from face B instead."""
    turned: list[Piece] = []
    for piece in reversed(ring):
        start, end = (length - piece.end[0], piece.end[1]), (length - piece.start[0], piece.start[1])
        if isinstance(piece, ArcPiece):
            turned.append(ArcPiece(start, end, (length - piece.centre[0], piece.centre[1]), piece.ccw))
        else:
            turned.append(Line(start, end))
    return tuple(turned)


def surface_radius(shape: TurnedShape, z: float) -> float:
    """Radius of the land at z as drawn, edges and grooves left out; at a step the larger one [mm]."""
    found = [0.0]
    for body in shape.outside:
        if body.start - CLOSE <= z <= body.end + CLOSE:
            if isinstance(body, Cylinder):
                found.append(body.dia.value / 2)
            else:
                share = (z - body.start) / (body.end - body.start)
                found.append((body.start_dia + share * (body.end_dia - body.start_dia)) / 2)
    return max(found)


def groove_ring(groove: Groove, shape: TurnedShape, metal: Metal) -> Ring:
    """What an outside groove takes away: square with corners, a round, or a vee.

    A round one as deep as half its width or more has a half-round floor and
    straight walls; a shallower one is the arc through its two edges and its
    floor. Radii and flanks are worked out from the figures as drawn.
    """
    length = shape.length.value
    start, end, floor = groove.start, groove.end, groove.floor / 2
    if not -CLOSE <= start < end <= length + CLOSE:
        raise Refusal(
            f"{groove.name} runs from {start:g} to {end:g} mm; it must lie between 0 and {length:g} mm.",
            "Move it onto the part.",
        )
    if floor <= 0:
        raise Refusal(f"{groove.name} has a floor diameter of {groove.floor:g} mm; it must be above 0 mm.")
    over = max(*(_largest(body) for body in shape.outside), floor) + BEYOND
    if groove.form == "square":
        if groove.corner * 2 > end - start + CLOSE:
            raise Refusal(
                f"The corner radius of {groove.name} is {groove.corner:g} mm; it is {end - start:g} mm wide.",
                "Give a corner of at most half the width.",
            )
        corner = 0.0 if metal == "least" else groove.corner
        points = [(start, floor), (end, floor), (end, over), (start, over)]
        return chain(points, {0: corner, 1: corner})
    middle, half = (start + end) / 2, (end - start) / 2
    surface = min(surface_radius(shape, start + CLOSE), surface_radius(shape, end - CLOSE))
    deep = surface - floor
    if deep <= 0:
        raise Refusal(
            f"{groove.name} has a floor diameter of {groove.floor:g} mm; the land is {2 * surface:g} mm.",
            "Give a smaller floor.",
        )
    if groove.form == "vee":
        return closed([(middle, floor), (end, surface), (end, over), (start, over), (start, surface)])
    if deep >= half:
        low, high = (start, floor + half), (end, floor + half)
        arc = ArcPiece(low, high, (middle, floor + half), ccw=True)
    else:
        radius = (half * half + deep * deep) / (2 * deep)
        low, high = (start, surface), (end, surface)
        arc = ArcPiece(low, high, (middle, floor + radius), ccw=True)
    return (
        arc,
        *(Line(a, b) for a, b in ((high, (end, over)), ((end, over), (start, over)), ((start, over), low))),
    )


def _largest(body: object) -> float:
    """Half of the largest figure by which a land may stand out, well above what it does [mm]."""
    dims = [getattr(body, name, 0.0) or 0.0 for name in ("start_dia", "end_dia", "radius")]
    limits = getattr(getattr(body, "dia", None), "largest", None) or 0.0
    return max(*dims, limits)


def face_groove_ring(groove: FaceGroove, length: float) -> Ring:
    """What a ring groove in a face takes away."""
    return recess_ring(
        Recess(groove.name, groove.face, groove.inside, groove.outside, groove.depth), length, True
    )


def recess_ring(recess: Recess, length: float, sharp: bool) -> Ring:
    """What a face recess takes away; ``sharp`` leaves out the corner radius at its floor."""
    inner, outer, deep = recess.inside / 2, recess.outside / 2, recess.depth
    if not 0 <= inner < outer:
        raise Refusal(
            f"{recess.name} runs from {recess.inside:g} to {recess.outside:g} mm in diameter; "
            "the outer one must be the larger.",
            "Exchange or correct them.",
        )
    if not 0 < deep < length:
        raise Refusal(
            f"{recess.name} is {deep:g} mm deep; it must leave metal of the part's {length:g} mm.",
            "Make it shallower.",
        )
    lean = [math.tan(math.radians(one)) for one in (recess.inside_draft, recess.outside_draft)]
    floor = (inner + deep * lean[0], outer - deep * lean[1])
    if floor[0] >= floor[1]:
        raise Refusal(
            f"The walls of {recess.name} lean in to {2 * floor[0]:.4g} and {2 * floor[1]:.4g} mm at its floor; "
            "the outer one must stay the larger.",
            "Give less draft, or make it shallower.",
        )
    corner = recess.corner
    room = min(deep, (floor[1] - floor[0]) / 2 if inner else floor[1])
    if corner > room:
        raise Refusal(
            f"The corner of {recess.name} is {corner:g} mm; its floor and walls have room for {room:g} mm.",
            "Give a smaller corner radius.",
        )
    corner = 0.0 if sharp else corner
    mouth = (inner - BEYOND * lean[0], outer + BEYOND * lean[1])
    points = [(-BEYOND, max(mouth[0], 0.0)), (deep, floor[0]), (deep, floor[1]), (-BEYOND, mouth[1])]
    if mouth[0] < 0 < inner:
        at = deep - floor[0] / lean[0]
        points = [(-BEYOND, 0.0), (at, 0.0), *points[1:]]
    wall = len(points) - 2
    rounds = {wall: corner, wall - 1: corner} if inner else {wall: corner}
    ring = chain(points, rounds)
    return ring if recess.face == "A" else mirrored(ring, length)
