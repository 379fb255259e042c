"""Chamfers and rounds along the outline of a plate's face, as one cut for each side of it."""

from __future__ import annotations

import math

from tommybar.refusals import Refusal
from tommybar.shapes.features import PlateEdge
from tommybar.shapes.solids.frames import Frame, frame
from tommybar.shapes.solids.nodes import BEYOND, Node, Prism, Turn
from tommybar.shapes.solids.rings import Corner, Ring, arc_of, counter_clockwise, polygon


def edge_cuts(edge: PlateEdge, ring: Ring, thickness: float) -> list[Node]:
    """What an edge takes away; at a sharp corner of the outline two cuts meet in a mitre."""
    found: list[Node] = []
    for n, corner in enumerate(ring):
        after = ring[(n + 1) % len(ring)]
        if math.hypot(after[0] - corner[0], after[1] - corner[1]) < 1e-9:
            continue
        if corner[2]:
            found.append(_round_an_arc(edge, corner, after, thickness))
        else:
            found.append(_along(edge, ring, n, thickness))
    return found


def _section(edge: PlateEdge, beyond: float = BEYOND) -> Ring:
    """The cut's section: u inwards from the outline, v down from the face."""
    c = edge.size
    if edge.round:
        return (
            (-beyond, -beyond, 0),
            (c, -beyond, 0),
            (c, 0, -math.tan(math.pi / 8)),
            (0, c, 0),
            (-beyond, c, 0),
        )
    return polygon([(-beyond, -beyond), (c, -beyond), (c, 0), (0, c), (-beyond, c)])


def _along(edge: PlateEdge, ring: Ring, n: int, thickness: float) -> Node:
    """Along one straight side, and into a hollow corner as far as its mitre."""
    start, end = ring[n], ring[(n + 1) % len(ring)]
    long = math.hypot(end[0] - start[0], end[1] - start[1])
    x, y = (end[0] - start[0]) / long, (end[1] - start[1]) / long
    before, after = _hollow(ring, n, edge.size), _hollow(ring, (n + 1) % len(ring), edge.size)
    spot = (start[0] - before * x, start[1] - before * y)
    # own x inwards, own y down into the plate, own z along the side (backwards for the top face)
    at: Frame
    if edge.face == "top":
        spot = (end[0] + after * x, end[1] + after * y)
        at = frame((-y, x, 0), (0, 0, -1), (-x, -y, 0), (*spot, thickness))
    else:
        at = frame((-y, x, 0), (0, 0, 1), (x, y, 0), (*spot, 0.0))
    return Prism(_section(edge), long + before + after, at)


def _hollow(ring: Ring, n: int, size: float) -> float:
    """How far a cut runs past corner n: to the mitre when the corner is hollow and sharp, else not at all."""
    before, here, after = ring[n - 1], ring[n], ring[(n + 1) % len(ring)]
    if before[2] or here[2]:
        return 0.0
    into = math.atan2(here[1] - before[1], here[0] - before[0])
    out = math.atan2(after[1] - here[1], after[0] - here[0])
    turn = (out - into + math.pi) % math.tau - math.pi
    return size * math.tan(-turn / 2) if turn < -1e-9 else 0.0


def _round_an_arc(edge: PlateEdge, start: Corner, end: Corner, thickness: float) -> Node:
    """Round the middle of an arc of the outline."""
    u, v, radius, first, swept = arc_of(start, end)
    outward = swept > 0  # metal lies inside the arc
    down = -1.0 if edge.face == "top" else 1.0
    beyond = BEYOND if outward else min(BEYOND, radius * 0.999)
    if outward and edge.size > radius:
        raise Refusal(
            f"{edge.name} is {edge.size:g} mm; it follows an arc of {radius:g} mm radius.",
            "Give an edge no larger than the arc it follows.",
        )
    face = thickness if edge.face == "top" else 0.0
    ring = counter_clockwise(
        tuple(
            (
                radius - a if outward else radius + a,
                face + down * b,
                -bulge if outward == (down > 0) else bulge,
            )
            for a, b, bulge in _section(edge, beyond)
        )
    )
    begin = first if outward else first + swept
    c, s = math.cos(begin), math.sin(begin)
    return Turn(ring, frame((c, s, 0), (-s, c, 0), (0, 0, 1), (u, v, 0.0)), math.degrees(abs(swept)))
