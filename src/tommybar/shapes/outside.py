"""The outside of a turned part as an exact outline: lands in order with their edges and corners."""

from __future__ import annotations

import math

from tommybar.refusals import Refusal
from tommybar.shapes.curves import ON, ArcPiece, Line, Piece, Point, Ring
from tommybar.shapes.features import Arc, Cylinder, Land, TurnedShape
from tommybar.shapes.metal import Metal, cylinder_figure, land_figures

CLOSE = 1e-6  # lengths nearer than this are the same place [mm]


def outside_ring(shape: TurnedShape, metal: Metal) -> Ring:
    """Half of the outside form, from the axis out, before grooves and anything else; counter-clockwise."""
    bodies = in_order(shape)
    runs: list[list[Piece]] = []
    for n, body in enumerate(bodies):
        before = land_figures(bodies[n - 1], metal)[1] / 2 if n else 0.0
        after = land_figures(bodies[n + 1], metal)[0] / 2 if n + 1 < len(bodies) else 0.0
        runs.append(_run(body, metal, before, after))
    top: list[Piece] = []
    at: Point = (0.0, 0.0)
    for run in runs:
        if math.dist(at, run[0].start) > ON:
            top.append(Line(at, run[0].start))
        top += run
        at = run[-1].end
    length = bodies[-1].end
    if at[1] > ON:
        top.append(Line(at, (length, 0.0)))
    else:
        top[-1] = top[-1].between(top[-1].start, (length, 0.0))
    return tuple(piece.reversed() for piece in reversed([*top, Line((length, 0.0), (0.0, 0.0))]))


def in_order(shape: TurnedShape) -> tuple[Land, ...]:
    """The outside features, refused when they leave a gap, overlap, or miss an end face."""
    bodies = tuple(sorted(shape.outside, key=lambda body: body.start))
    length = shape.length.value
    if not bodies:
        raise Refusal("The part has no outside feature; it needs at least one.", "Give a cylinder or cone.")
    at, last = 0.0, "face A"
    for body in bodies:
        if body.end - body.start <= CLOSE:
            raise Refusal(
                f"{body.name} runs from {body.start:g} to {body.end:g} mm; it must be longer than 0 mm.",
                "Check its length, or the sizes it is worked out from.",
            )
        if abs(body.start - at) > CLOSE:
            raise Refusal(
                f"{body.name} starts {body.start:g} mm from face A; it must start where {last} ends, "
                f"at {at:g} mm.",
                "Outside features follow one another without a gap.",
            )
        at, last = body.end, body.name
    if abs(at - length) > CLOSE:
        raise Refusal(
            f"The outside ends with {last} at {at:g} mm; the part is {length:g} mm long.",
            "Make the lengths of the outside features add up to the part's length.",
        )
    return bodies


def arc_of(body: Arc) -> ArcPiece:
    """A curved land's arc, from its A end to its B end."""
    start: Point = (body.start, body.start_dia / 2)
    end: Point = (body.end, body.end_dia / 2)
    half = math.dist(start, end) / 2
    if body.radius < half - CLOSE:
        raise Refusal(
            f"{body.name} has a radius of {body.radius:g} mm; its ends lie {2 * half:.4g} mm apart, "
            f"so that it must be at least {half:.4g} mm.",
            "Make the radius larger, or the land shorter.",
        )
    out = body.bulge == "out"
    off = math.sqrt(max(0.0, (body.radius - half) * (body.radius + half)))
    u, v = (end[0] - start[0]) / (2 * half), (end[1] - start[1]) / (2 * half)
    side = 1.0 if out else -1.0  # the centre lies below the chord when the land bulges out
    middle = ((start[0] + end[0]) / 2, (start[1] + end[1]) / 2)
    centre = (middle[0] + side * off * v, middle[1] - side * off * u)
    over = [p for p in (start, end) if (p[1] < centre[1] - CLOSE if out else p[1] > centre[1] + CLOSE)]
    if over:
        limit = 2 * centre[1]
        raise Refusal(
            f"{body.name} ends at {2 * over[0][1]:g} mm in diameter; its arc of {body.radius:g} mm turns back "
            f"{'below' if out else 'above'} {limit:.4g} mm.",
            "Give a larger radius, or another length.",
        )
    return ArcPiece(start, end, centre, ccw=not out)


def _run(body: Land, metal: Metal, before: float, after: float) -> list[Piece]:
    """One land's outline from its A end to its B end; ``before`` and ``after`` are its neighbours' radii."""
    if isinstance(body, Arc):
        return [arc_of(body)]
    if not isinstance(body, Cylinder):
        start_dia, end_dia = land_figures(body, metal)
        return [Line((body.start, start_dia / 2), (body.end, end_dia / 2))]
    radius = cylinder_figure(body, metal) / 2
    if radius <= 0:
        raise Refusal(f"{body.name} is {2 * radius:g} mm in diameter; it must be above 0 mm.")
    first = _end(body, radius, before, metal, at_start=True)
    last = [piece.reversed() for piece in reversed(_end(body, radius, after, metal, at_start=False))]
    start = first[-1].end if first else (body.start, radius)
    end = last[0].start if last else (body.end, radius)
    if start[0] > end[0] + CLOSE:
        raise Refusal(
            f"The edges of {body.name} take {start[0] - body.start:g} and {body.end - end[0]:g} mm; "
            f"it is {body.end - body.start:g} mm long.",
            "Give smaller edges.",
        )
    flat: list[Piece] = [Line(start, end)] if end[0] - start[0] > ON else []
    return [*first, *flat, *last]


def _end(body: Cylinder, radius: float, beside: float, metal: Metal, at_start: bool) -> list[Piece]:
    """Chamfer, round or corner at one end, from the end on; nothing where there is none."""
    edge, rounded, corner = (
        (body.edge_start, body.round_start, body.corner_start)
        if at_start
        else (body.edge_end, body.round_end, body.corner_end)
    )
    z, inwards = (body.start, 1.0) if at_start else (body.end, -1.0)
    step = radius - beside
    if step > CLOSE and rounded > 0:
        _refuse_large(body, rounded, rounded, step)
        centre = (z + inwards * rounded, radius - rounded)
        return [ArcPiece((z, radius - rounded), (z + inwards * rounded, radius), centre, not at_start)]
    if step > CLOSE and edge > 0:
        angle = body.edge_angle if at_start or body.edge_end_angle is None else body.edge_end_angle
        drop = edge if angle == 45 else edge * math.tan(math.radians(angle))
        _refuse_large(body, edge, drop, step)
        return [Line((z, radius - drop), (z + inwards * edge, radius))]
    if step < -CLOSE and corner > 0 and metal != "least":
        if corner > -step + CLOSE:
            raise Refusal(
                f"The corner radius of {body.name} is {corner:g} mm; the shoulder there is {-step:g} mm high.",
                "Give a corner no larger than the shoulder.",
            )
        centre = (z + inwards * corner, radius + corner)
        return [ArcPiece((z, radius + corner), (z + inwards * corner, radius), centre, at_start)]
    return []


def _refuse_large(body: Cylinder, edge: float, drop: float, step: float) -> None:
    if drop > step + CLOSE:
        deep = "" if drop == edge else f" and {drop:.4g} mm deep"
        raise Refusal(
            f"The edge of {body.name} is {edge:g} mm{deep}; the step there is {step:g} mm high.",
            "Give an edge no larger than the step.",
        )
