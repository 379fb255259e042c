"""The axis of a feature by which a part is joined to another, in the part's own frame."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from typing import Literal

from tommybar.shapes.bought import BoughtShape
from tommybar.shapes.features import (
    Bore,
    BoreTaper,
    CentreHole,
    CircleHoles,
    CrossHole,
    Cup,
    PlateHole,
    PlateShape,
    RolledRing,
    Shape,
    SheetShape,
    SpringShape,
    TurnedShape,
    WireShape,
)
from tommybar.shapes.plates import drilled_depth
from tommybar.shapes.radii import bore_radius, outside_radius
from tommybar.shapes.solids.frames import HERE, Frame, frame, point, shifted, turned, within
from tommybar.shapes.solids.legs import sheet_stretches, wire_stretches
from tommybar.shapes.solids.plate import hole_frame


@dataclass(frozen=True)
class Axis:
    """An axis and the stretch of it that a feature takes.

    The axis is z of ``at``; the feature runs from ``low`` to ``high`` along it
    [mm]. ``low_stop`` and ``high_stop`` say whether something may bear there:
    a shoulder larger than a land, the face round a hole. ``low_open`` and
    ``high_open`` say whether something may go in or on there; ``entry`` at which
    end a hole is drilled from, where the design says it. ``beyond_low`` and
    ``beyond_high``: how far the part goes on past a land that may go in there,
    such as the point of a pin; that is what meets a floor [mm].
    """

    at: Frame
    low: float
    high: float
    inside: bool  # a hole rather than a land
    low_stop: bool = False
    high_stop: bool = False
    low_open: bool = True
    high_open: bool = True
    entry: Literal["", "low", "high"] = ""
    beyond_low: float = 0.0
    beyond_high: float = 0.0

    @property
    def long(self) -> float:
        """Length of the feature along its axis [mm]."""
        return self.high - self.low


def axis_of(shape: Shape | BoughtShape | None, name: str, number: int = 0) -> Axis | None:
    """The axis of the feature of that name, ``number`` of equal holes; None when it has no axis of its own."""
    if isinstance(shape, TurnedShape):
        return _of_turned(shape, name, number)
    if isinstance(shape, SheetShape):
        return _of_sheet(shape, name)
    if isinstance(shape, SpringShape | RolledRing | WireShape):
        return _of_wound(shape, name)
    if isinstance(shape, PlateShape):
        hole = next((one for one in shape.holes if one.name == name), None)
        return _of_plate_hole(hole, shape) if hole else None
    return None


def _of_sheet(shape: SheetShape, name: str) -> Axis | None:
    """A hole of sheet, where the bends have carried it."""
    flat = PlateShape(shape.length, shape.width, shape.thickness, 0.0, shape.holes, shape.outline)
    hole = next((one for one in shape.holes if one.name == name), None)
    if hole is None:
        return None
    found = _of_plate_hole(hole, flat)
    x = found.at[3]
    leg = [one for one in sheet_stretches(shape) if one.start <= x][-1]
    return replace(found, at=within(leg.at, within(shifted(-leg.start), found.at)))


def _of_wound(shape: SpringShape | RolledRing | WireShape, name: str) -> Axis | None:
    """The middle line of a spring or ring, of its outside or inside; a leg of wire, its ends free to go in."""
    if isinstance(shape, WireShape):
        legs = wire_stretches(shape)
        number = int(name.removeprefix("leg_")) if name.removeprefix("leg_").isdecimal() else 1
        leg = legs[number - 1]
        along = frame((0, 1, 0), (0, 0, 1), (1, 0, 0))
        first, last = number == 1, number == len(legs)
        return Axis(within(leg.at, along), 0.0, leg.end - leg.start, False, low_open=first, high_open=last)
    long = shape.width if isinstance(shape, RolledRing) else shape.free
    return Axis(HERE, 0.0, long, name == "inside", True, True)


def axis_of_bought(shape: BoughtShape, inside: bool) -> Axis:
    """The axis of a bought part that sits in a bore (outside) or on a land (inside)."""
    sizes = dict(shape.sizes)
    if shape.kind == "ball":
        return Axis(HERE, -sizes["dia"] / 2, sizes["dia"] / 2, inside)
    names = ("length", "width", "thickness", "height", "wide", "section")
    long = next((sizes[name] for name in names if name in sizes), 1.0)
    return Axis(HERE, 0.0, long, inside, inside, inside)


def is_round(shape: Shape | BoughtShape | None, axis: Axis) -> bool:
    """Whether a part is round about an axis of its own, but for holes."""
    if isinstance(shape, PlateShape):
        middle = point(axis.at, (0.0, 0.0, 0.0))
        half = shape.length.value / 2
        disc = shape.outline is not None and shape.outline.form == "disc"
        return disc and math.dist(middle[:2], (half, half)) < 1e-6 and abs(axis.at[10]) > 1 - 1e-9
    return isinstance(shape, TurnedShape | BoughtShape) and axis.at == HERE


def count_of(shape: Shape | BoughtShape | None, name: str) -> int:
    """How many equal holes the feature of that name has; 1 for anything else."""
    if isinstance(shape, TurnedShape):
        return next((one.count for one in shape.circle_holes if one.name == name), 1)
    return 1


def _of_plate_hole(hole: PlateHole, shape: PlateShape) -> Axis:
    deep = drilled_depth(hole, shape)
    through = hole.depth is None
    return Axis(hole_frame(hole, shape), -deep, 0.0, True, through, True, through, True, "high")


def _of_turned(shape: TurnedShape, name: str, number: int) -> Axis | None:
    lands = sorted(shape.outside, key=lambda one: one.start)
    for n, land in enumerate(lands):
        if land.name == name:
            dia = max(land.start_dia, land.end_dia)
            before = lands[n - 1].end_dia > dia + 1e-6 if n else False
            after = lands[n + 1].start_dia > dia + 1e-6 if n + 1 < len(lands) else False
            first = not before and land.start_dia <= land.end_dia  # the slimmer end goes in first
            last = not after and land.end_dia <= land.start_dia
            first = first and all(max(one.start_dia, one.end_dia) <= dia + 1e-6 for one in lands[:n])
            last = last and all(max(one.start_dia, one.end_dia) <= dia + 1e-6 for one in lands[n + 1 :])
            low, high = land.start - lands[0].start, lands[-1].end - land.end
            return Axis(
                HERE,
                land.start,
                land.end,
                False,
                before,
                after,
                first,
                last,
                beyond_low=low if first else 0.0,
                beyond_high=high if last else 0.0,
            )
    for bore in shape.bores:
        if bore.name == name:
            return _of_bore(bore, shape)
    for holes in shape.circle_holes:
        if holes.name == name:
            return _of_circle(holes, number)
    for cross in shape.cross_holes:
        if cross.name == name:
            return _of_cross(cross, shape)
    ends: tuple[Cup | CentreHole | BoreTaper, ...] = (*shape.cups, *shape.centres, *shape.bore_tapers)
    for end in ends:
        if end.name == name:
            return _of_end(end, shape)
    return None


def _of_bore(bore: Bore, shape: TurnedShape) -> Axis:
    """A bore: it begins at the face, or at the floor of a wider one that is sunk there."""
    length = shape.length.value

    def mouth(face: str) -> float:
        return max(
            (
                one.depth
                for one in shape.bores
                if one.face == face and not one.through and one.dia.value > bore.dia.value
            ),
            default=0.0,
        )

    if bore.through:
        return Axis(HERE, mouth("A"), length - mouth("B"), True, True, True)
    if bore.face == "A":
        return Axis(HERE, mouth("A"), bore.depth, True, True, False, True, False)
    return Axis(HERE, length - bore.depth, length - mouth("B"), True, False, True, False, True)


def _of_circle(holes: CircleHoles, number: int) -> Axis:
    at = within(turned(-holes.start_angle - 360 * number / holes.count), shifted(x=holes.circle / 2))
    low_open = holes.face == "A" or not holes.blind
    high_open = holes.face == "B" or not holes.blind
    entry: Literal["low", "high"] = "low" if holes.face == "A" else "high"
    return Axis(at, holes.start, holes.end, True, low_open, high_open, low_open, high_open, entry)


def _surface(shape: TurnedShape, hole: CrossHole, towards: float) -> float:
    """How far from the axis a cross hole comes to the surface: at its land, or at a flat that looks that way [mm]."""
    out = outside_radius(shape, hole.z)
    for flats in shape.flats:
        if flats.start - 1e-6 <= hole.z <= flats.end + 1e-6:
            turn = (towards - flats.angle) % (360 / flats.count)
            if min(turn, 360 / flats.count - turn) < 1e-6:
                out = min(out, flats.level)
    return out


def _of_cross(hole: CrossHole, shape: TurnedShape) -> Axis:
    out, back = _surface(shape, hole, hole.angle), _surface(shape, hole, hole.angle + 180)
    at = within(turned(-hole.angle), frame((0, 1, 0), (0, 0, 1), (1, 0, 0), (0.0, hole.offset, hole.z)))
    if hole.depth is not None:
        return Axis(at, out - hole.depth, out, True, False, True, False, True)
    through = hole.walls == 2
    if hole.into and not through:  # what is screwed or pushed in bears on what fills the bore
        floor = bore_radius(shape, hole.z)
        return Axis(at, floor, out, True, False, True, False, True, "high")
    return Axis(at, -back if through else 0.0, out, True, through, True, through, True, "high")


def _of_end(end: Cup | CentreHole | BoreTaper, shape: TurnedShape) -> Axis:
    """A cup, centre or taper in a face: a short axis at that face, open to the outside."""
    deep = 1.0
    if isinstance(end, BoreTaper):
        deep = end.depth
    elif isinstance(end, Cup):
        deep = end.mouth / 2 / math.tan(math.radians(end.included / 2))
    if end.face == "A":
        return Axis(HERE, 0.0, deep, True, True, False, True, False)
    length = shape.length.value
    return Axis(HERE, length - deep, length, True, False, True, False, True)
