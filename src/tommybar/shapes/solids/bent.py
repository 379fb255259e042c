"""Sheet, strip and wire as constructions: flats, bends, rings, coils, legs."""

from __future__ import annotations

import math

from shapely import LineString, Polygon

from tommybar.refusals import Refusal
from tommybar.shapes.developed import spring_runs
from tommybar.shapes.features import PlateShape, RolledRing, SheetShape, SpringShape, WireShape
from tommybar.shapes.outlines import plate_loop
from tommybar.shapes.solids.frames import HERE, Frame, cosine, frame, shifted, sine, turned, within
from tommybar.shapes.solids.nodes import Coil, Common, Join, Node, Placed, Prism, Turn, rod
from tommybar.shapes.solids.plate import plate_part
from tommybar.shapes.solids.rings import box, chorded, circle, of_pieces


def sheet_part(shape: SheetShape) -> Node:
    """A bent strip: its left end lies flat at the origin, z up through its thickness."""
    flat_shape = PlateShape(shape.length, shape.width, shape.thickness, 0.0, shape.holes, shape.outline)
    flat = plate_part(flat_shape)
    if not shape.bends:
        return flat
    length, t = shape.length.value, shape.thickness.value
    wide = shape.width.value
    members: list[Node] = []
    at: Frame = HERE
    start = 0.0
    for bend in sorted(shape.bends, key=lambda one: one.at):
        low, high = _across(flat_shape, bend.at, bend.name)
        members += _flat_stretch(flat, start, bend.at, wide, t, at)
        angle = math.radians(abs(bend.angle))
        members.append(_bend(bend.angle, bend.radius, t, low, high, within(at, shifted(bend.at - start))))
        at = within(within(at, shifted(bend.at - start)), _after(bend.angle, bend.radius, t))
        start = bend.at + angle * (bend.radius + shape.neutral * t)
    members += _flat_stretch(flat, start, length, wide, t, at)
    return Join(tuple(members))


def _flat_stretch(flat: Node, start: float, end: float, wide: float, t: float, at: Frame) -> list[Node]:
    """A stretch of the flat blank, where the bends before it have carried it."""
    if end - start < 1e-9:
        return []
    stretch = Prism(box(start, -1.0, end, wide + 1.0), t + 2.0, shifted(z=-1.0))
    return [Placed(Common(flat, stretch), within(at, shifted(-start)))]


def _across(shape: PlateShape, x: float, name: str) -> tuple[float, float]:
    """From where to where the blank reaches across at a bend."""
    outline = Polygon(chorded(of_pieces(plate_loop(shape)), 360, keep_area=False))
    cut = outline.intersection(LineString([(x, -1.0), (x, shape.width.value + 1.0)]))
    if cut.geom_type != "LineString" or cut.is_empty:
        raise Refusal(
            f"{name} begins {x:g} mm along the blank, where the blank is not one strip.",
            "Move the bend, or the cut-out there.",
        )
    return cut.bounds[1], cut.bounds[3]


def _bend(angle: float, radius: float, t: float, low: float, high: float, at: Frame) -> Node:
    """The bent stretch itself, from the end of the flat before it."""
    if angle > 0:
        ring = box(radius, -high, radius + t, -low)
        own = frame((0, 0, -1), (1, 0, 0), (0, -1, 0), (0, 0, t + radius))
    else:
        ring = box(radius, low, radius + t, high)
        own = frame((0, 0, 1), (1, 0, 0), (0, 1, 0), (0, 0, -radius))
    return Turn(ring, within(at, own), abs(angle))


def _after(angle: float, radius: float, t: float) -> Frame:
    """Where the flat after a bend begins, told from the end of the flat before it."""
    c, s = cosine(angle), sine(angle)
    up = t + radius if angle > 0 else -radius
    return frame((c, 0, s), (0, 1, 0), (-s, 0, c), (up * s, 0, up - up * c))


def ring_part(shape: RolledRing) -> Node:
    """A rolled ring about z; its gap, measured along the middle of the metal, looks towards x."""
    inner = shape.inside.target / 2
    middle = inner + shape.thickness / 2
    gap = math.degrees(shape.gap / middle)
    if shape.round:
        ring = circle(shape.thickness / 2, middle, shape.thickness / 2)
    else:
        ring = box(inner, 0.0, inner + shape.thickness, shape.width)
    return Turn(ring, turned(gap / 2), 360.0 - gap)


def spring_part(shape: SpringShape) -> Node:
    """A coil of round wire about z, which ends where it is cut; the legs of a torsion spring are straight.

    The dead coils of a compression spring lie close; what is ground off its
    ends and the hooks of an extension spring are not drawn.
    """
    wire = shape.wire
    radius = (shape.outside.target - wire) / 2
    leg = shape.leg if shape.kind == "torsion" else 0.0
    return Coil(radius, wire, spring_runs(shape), shape.left, shifted(z=wire / 2), leg)


def wire_part(shape: WireShape) -> Node:
    """Bent wire in the plane of x and y; the first leg runs along x from the origin."""
    dia = shape.dia.target
    members: list[Node] = []
    at: Frame = HERE
    along = frame((0, 1, 0), (0, 0, 1), (1, 0, 0))
    for n, leg in enumerate(shape.legs):
        if leg > 0:
            members.append(rod(dia, 0.0, leg, within(at, along)))
        at = within(at, shifted(leg))
        if n < len(shape.bends):
            inside, angle = shape.bends[n]
            radius, left = inside + dia / 2, 1.0 if angle > 0 else -1.0
            own = within(at, frame((0, -left, 0), (1, 0, 0), (0, 0, left), (0, left * radius, 0)))
            members.append(Turn(circle(dia / 2, radius, 0.0), own, abs(angle)))
            c, s = cosine(angle), sine(angle)
            spot = (radius * s * left, left * radius * (1 - c), 0.0)
            at = within(at, frame((c, s, 0), (-s, c, 0), (0, 0, 1), spot))
    return Join(tuple(members)) if len(members) > 1 else members[0]
