"""Sheet, strip and wire as constructions: flats, bends, rings, coils, legs."""

from __future__ import annotations

import math

from shapely import LineString, Polygon

from tommybar.refusals import Refusal
from tommybar.shapes.developed import spring_runs
from tommybar.shapes.features import PlateShape, RolledRing, SheetShape, SpringShape, WireShape
from tommybar.shapes.outlines import plate_loop
from tommybar.shapes.solids.frames import Frame, frame, shifted, turned, within
from tommybar.shapes.solids.legs import sheet_stretches, wire_stretches
from tommybar.shapes.solids.nodes import Coil, Common, Join, Node, Placed, Prism, Turn, rod
from tommybar.shapes.solids.plate import plate_part
from tommybar.shapes.solids.rings import box, chorded, circle, of_pieces


def sheet_part(shape: SheetShape) -> Node:
    """A bent strip: its left end lies flat at the origin, z up through its thickness."""
    flat_shape = PlateShape(shape.length, shape.width, shape.thickness, 0.0, shape.holes, shape.outline)
    flat = plate_part(flat_shape)
    if not shape.bends:
        return flat
    t, wide = shape.thickness.value, shape.width.value
    members: list[Node] = []
    stretches = sheet_stretches(shape)
    for n, stretch in enumerate(stretches):
        members += _flat_stretch(flat, stretch.start, stretch.end, wide, t, stretch.at)
        if n < len(stretches) - 1:
            bend = sorted(shape.bends, key=lambda one: one.at)[n]
            low, high = _across(flat_shape, bend.at, bend.name)
            at = within(stretch.at, shifted(bend.at - stretch.start))
            members.append(_bend(bend.angle, bend.radius, t, low, high, at))
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
    along = frame((0, 1, 0), (0, 0, 1), (1, 0, 0))
    for n, stretch in enumerate(wire_stretches(shape)):
        leg = stretch.end - stretch.start
        if leg > 0:
            members.append(rod(dia, 0.0, leg, within(stretch.at, along)))
        if n < len(shape.bends):
            inside, angle = shape.bends[n]
            radius, left = inside + dia / 2, 1.0 if angle > 0 else -1.0
            own = frame((0, -left, 0), (1, 0, 0), (0, 0, left), (0, left * radius, 0))
            own = within(within(stretch.at, shifted(leg)), own)
            members.append(Turn(circle(dia / 2, radius, 0.0), own, abs(angle)))
    return Join(tuple(members)) if len(members) > 1 else members[0]
