"""The outside of a turned part: cylinders and cones in order, their edges and grooves."""

from __future__ import annotations

from shapely import Polygon, box
from shapely.ops import unary_union

from tommybar.refusals import Refusal
from tommybar.shapes.features import Cylinder, Groove, Land, TurnedShape
from tommybar.shapes.metal import Metal, cylinder_figure

CLOSE = 1e-6  # lengths nearer than this are the same place [mm]


def outside_section(shape: TurnedShape, metal: Metal) -> Polygon:
    """Half of the outside form, from the axis out, before anything is bored or recessed."""
    bodies = _in_order(shape)
    pieces: list[Polygon] = []
    for n, body in enumerate(bodies):
        if not isinstance(body, Cylinder):
            corners = [
                (body.start, 0.0),
                (body.end, 0.0),
                (body.end, body.end_dia / 2),
                (body.start, body.start_dia / 2),
            ]
            pieces.append(Polygon(corners))
            continue
        before = _radius_at_end(bodies[n - 1], metal) if n else 0.0
        after = _radius_at_start(bodies[n + 1], metal) if n + 1 < len(bodies) else 0.0
        pieces.append(_cylinder(body, cylinder_figure(body, metal) / 2, before, after))
    section = unary_union(pieces)
    for groove in shape.grooves:
        section = section.difference(_groove(groove, shape))
    return section


def _in_order(shape: TurnedShape) -> tuple[Land, ...]:
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


def _cylinder(body: Cylinder, radius: float, before: float, after: float) -> Polygon:
    """One cylinder with a 45-degree chamfer at each end that is a free edge."""
    if radius <= 0:
        raise Refusal(f"{body.name} is {2 * radius:g} mm in diameter; it must be above 0 mm.")
    first = _edge(body, body.edge_start, radius - before)
    last = _edge(body, body.edge_end, radius - after)
    if first + last > body.end - body.start + CLOSE:
        raise Refusal(
            f"The edges of {body.name} take {first:g} and {last:g} mm; "
            f"it is {body.end - body.start:g} mm long.",
            "Give smaller edges.",
        )
    corners = [
        (body.start, 0.0),
        (body.end, 0.0),
        (body.end, radius - last),
        (body.end - last, radius),
        (body.start + first, radius),
        (body.start, radius - first),
    ]
    return Polygon(corners)


def _edge(body: Cylinder, edge: float, step: float) -> float:
    """The chamfer at one end; 0 where the neighbour is as large, so that no free edge is there."""
    if edge <= 0 or step <= CLOSE:
        return 0.0
    if edge > step + CLOSE:
        raise Refusal(
            f"The edge of {body.name} is {edge:g} mm; the step there is {step:g} mm high.",
            "Give an edge no larger than the step.",
        )
    return edge


def _groove(groove: Groove, shape: TurnedShape) -> Polygon:
    """What a groove takes away."""
    length = shape.length.value
    if not -CLOSE <= groove.start < groove.end <= length + CLOSE:
        raise Refusal(
            f"{groove.name} runs from {groove.start:g} to {groove.end:g} mm; "
            f"it must lie between 0 and {length:g} mm.",
            "Move it onto the part.",
        )
    if groove.floor <= 0:
        raise Refusal(f"{groove.name} has a floor diameter of {groove.floor:g} mm; it must be above 0 mm.")
    return box(groove.start, groove.floor / 2, groove.end, 1e4)


def _radius_at_start(body: Land, metal: Metal) -> float:
    return cylinder_figure(body, metal) / 2 if isinstance(body, Cylinder) else body.start_dia / 2


def _radius_at_end(body: Land, metal: Metal) -> float:
    return cylinder_figure(body, metal) / 2 if isinstance(body, Cylinder) else body.end_dia / 2
