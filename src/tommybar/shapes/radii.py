"""How thick a turned part is at one place along its axis, from its features alone."""

from __future__ import annotations

import math

from tommybar.shapes.features import Bore, Cylinder, Land, TurnedShape
from tommybar.shapes.inside import drawn_bore


def outside_radius(shape: TurnedShape, z: float) -> float:
    """Radius of the outside at z from face A, grooves counted [mm]; at a step the smaller one."""
    found = [_radius(body, z) for body in shape.outside if body.start - 1e-9 <= z <= body.end + 1e-9]
    found += [g.floor / 2 for g in shape.grooves if g.start - 1e-9 <= z <= g.end + 1e-9]
    return min(found, default=0.0)


def bore_radius(shape: TurnedShape, z: float) -> float:
    """Radius of the widest bore at z from face A; 0 where the part is solid [mm]."""
    return max(
        (
            drawn_bore(bore) / 2
            for bore in shape.bores
            if bore_span(bore, shape)[0] <= z <= bore_span(bore, shape)[1]
        ),
        default=0.0,
    )


def bore_span(bore: Bore, shape: TurnedShape) -> tuple[float, float]:
    """From where to where a bore's full diameter runs, z from face A [mm]."""
    length = shape.length.value
    if bore.through:
        return 0.0, length
    return (0.0, bore.depth) if bore.face == "A" else (length - bore.depth, length)


def thinnest_wall(shape: TurnedShape, bore: Bore) -> tuple[float, float]:
    """Least wall round a bore and where it is, z from face A [mm]."""
    low, high = bore_span(bore, shape)
    places = {low, high}
    for body in shape.outside:
        places |= {body.start, body.end}
    for groove in shape.grooves:
        places |= {groove.start, groove.end}
    radius = drawn_bore(bore) / 2
    best = (math.inf, low)
    for z in sorted(place for place in places if low <= place <= high):
        for near in (z - 1e-6, z + 1e-6):
            if low <= near <= high:
                best = min(best, (outside_radius(shape, near) - radius, z))
    for recess in shape.recesses:  # the hub left inside a ring-shaped recess
        if recess.inside / 2 > radius:
            floor = recess.depth if recess.face == "A" else shape.length.value - recess.depth
            if low - 1e-9 <= floor <= high + 1e-9:
                best = min(best, (recess.inside / 2 - radius, floor))
    return best


def _radius(body: Land, z: float) -> float:
    if isinstance(body, Cylinder):
        return body.dia.target / 2
    share = (z - body.start) / (body.end - body.start)
    return (body.start_dia + share * (body.end_dia - body.start_dia)) / 2
