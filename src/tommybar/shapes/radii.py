"""How thick a turned part is at one place along its axis, from its features alone."""

from __future__ import annotations

import math

from tommybar.shapes.curves import ArcPiece
from tommybar.shapes.features import (
    Arc,
    Bore,
    BoreTaper,
    Eccentric,
    FaceGroove,
    Groove,
    Land,
    Recess,
    TurnedShape,
)
from tommybar.shapes.inside import drawn_bore
from tommybar.shapes.metal import land_figures
from tommybar.shapes.outside import arc_of
from tommybar.shapes.ring_cuts import groove_ring


def outside_radius(shape: TurnedShape, z: float) -> float:
    """Radius of the outside at z from face A, grooves counted [mm]; at a step the smaller one.

    An eccentric land counts as the circle that it swings in.
    """
    found = [land_radius(body, z) for body in shape.outside if body.start - 1e-9 <= z <= body.end + 1e-9]
    found += [_groove(g, shape, z) for g in shape.grooves if g.start - 1e-9 <= z <= g.end + 1e-9]
    return min(found, default=0.0)


def least_radius(shape: TurnedShape, z: float) -> float:
    """Distance from the axis to the nearest point of the outside at z from face A [mm]."""
    near = [
        body.dia.target / 2 - body.throw
        for body in shape.outside
        if isinstance(body, Eccentric) and body.start - 1e-9 <= z <= body.end + 1e-9
    ]
    return min([outside_radius(shape, z), *near])


def land_radius(body: Land, z: float) -> float:
    """Radius of a land at z, its edges and corners left out [mm]."""
    if isinstance(body, Arc):
        return _on_arc(arc_of(body), z)
    start, end = land_figures(body, "target")
    return (start + (z - body.start) / (body.end - body.start) * (end - start)) / 2


def _on_arc(arc: ArcPiece, z: float) -> float:
    """Radius of a curved land's arc at z [mm]."""
    low, high = sorted((arc.start[0], arc.end[0]))
    off = min(max(z, low), high) - arc.centre[0]
    root = math.sqrt(max(0.0, arc.radius**2 - off * off))
    return arc.centre[1] + (-root if arc.ccw else root)


def _groove(groove: Groove, shape: TurnedShape, z: float) -> float:
    """Radius that a groove leaves at z [mm]; its corners count as sharp."""
    if groove.form == "square":
        return groove.floor / 2
    heights = []
    for piece in groove_ring(groove, shape, "target"):
        (a, b), (c, d) = piece.start, piece.end
        if isinstance(piece, ArcPiece):
            heights.append(_on_arc(piece, z))
        elif min(a, c) - 1e-9 <= z <= max(a, c) + 1e-9 and abs(c - a) > 1e-9:
            heights.append(b + (z - a) / (c - a) * (d - b))
    return min(heights, default=groove.floor / 2)


def bore_radius(shape: TurnedShape, z: float) -> float:
    """Radius of the widest bore at z from face A, tapers and inside grooves counted; 0 where it is solid [mm]."""
    found = [0.0]
    for bore in shape.bores:
        low, high = bore_span(bore, shape)
        if low <= z <= high:
            found.append(drawn_bore(bore) / 2)
    for taper in shape.bore_tapers:
        low, high = taper_span(taper, shape)
        if low <= z <= high:
            share = (z - low) / (high - low) if taper.face == "A" else (high - z) / (high - low)
            found.append((taper.mouth + share * (taper.end_dia - taper.mouth)) / 2)
    found += [one.floor / 2 for one in shape.bore_grooves if one.start <= z <= one.end]
    return max(found)


def bore_span(bore: Bore, shape: TurnedShape) -> tuple[float, float]:
    """From where to where a bore's full diameter runs, z from face A [mm]."""
    length = shape.length.value
    if bore.through:
        return 0.0, length
    return (0.0, bore.depth) if bore.face == "A" else (length - bore.depth, length)


def taper_span(taper: BoreTaper, shape: TurnedShape) -> tuple[float, float]:
    """From where to where a conical bore runs, z from face A [mm]."""
    near, far = taper.start, taper.start + taper.depth
    length = shape.length.value
    return (near, far) if taper.face == "A" else (length - far, length - near)


def thinnest_wall(shape: TurnedShape, bore: Bore) -> tuple[float, float]:
    """Least wall round a bore and where it is, z from face A [mm]."""
    low, high = bore_span(bore, shape)
    places = {low, high}
    for body in shape.outside:
        places |= {body.start, body.end}
    for groove in shape.grooves:
        places |= {groove.start, (groove.start + groove.end) / 2, groove.end}
    for inner in shape.bore_grooves:
        places |= {inner.start, inner.end} if inner.on == bore.name else set()
    places |= {place for body in shape.outside if isinstance(body, Arc) for place in _hollow(body)}
    radius = drawn_bore(bore) / 2
    best = (math.inf, low)
    for z in sorted(place for place in places if low <= place <= high):
        for near in (z - 1e-6, z + 1e-6):
            if low <= near <= high:
                inside = max([radius, *(g.floor / 2 for g in shape.bore_grooves if g.start <= near <= g.end)])
                best = min(best, (least_radius(shape, near) - inside, z))
    sunk: list[Recess | FaceGroove] = [*shape.recesses, *shape.face_grooves]
    for recess in sunk:  # the hub left inside a ring-shaped recess
        if recess.inside / 2 > radius:
            floor = recess.depth if recess.face == "A" else shape.length.value - recess.depth
            if low - 1e-9 <= floor <= high + 1e-9:
                best = min(best, (recess.inside / 2 - radius, floor))
    return best


def _hollow(body: Arc) -> list[float]:
    """Where a hollow land is thinnest between its ends."""
    arc = arc_of(body)
    return [arc.centre[0]] if body.bulge == "in" and body.start < arc.centre[0] < body.end else []
