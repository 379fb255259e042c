"""Which inside grooving tool gets at a groove in a bore: its width, its reach, the bore it enters, how deep it cuts."""

from __future__ import annotations

import itertools
from dataclasses import replace

from tommybar.shapes.features import BoreGroove, Face, TurnedShape
from tommybar.shapes.radii import bore_radius
from tommybar.shop.model import Tool

ROOM = 0.5  # between the tool's holder and the face, and left of its reach; common practice, no source [mm]
NEAR_WALL = 1e-6


def groove_depths(groove: BoreGroove, length: float, face: Face) -> tuple[float, float]:
    """From where to where a groove lies, below that face [mm]."""
    if face == "A":
        return groove.start, groove.end
    return length - groove.end, length - groove.start


def narrowest_on_the_way(shape: TurnedShape, groove: BoreGroove, face: Face) -> float:
    """Smallest bore between a face and the far side of a groove [mm]; 0 where metal stands in the way."""
    plain = replace(shape, bore_grooves=())
    length = shape.length.value
    low, high = (0.0, groove.end) if face == "A" else (groove.start, length)
    marks = {low, high}
    for bore in shape.bores:
        end = 0.0 if bore.through else bore.depth if bore.face == "A" else length - bore.depth
        marks.add(end)
    for taper in shape.bore_tapers:
        for deep in (taper.start, taper.start + taper.depth):
            marks.add(deep if taper.face == "A" else length - deep)
    places = sorted(z for z in marks if low - NEAR_WALL <= z <= high + NEAR_WALL)
    seen = [2 * bore_radius(plain, (a + b) / 2) for a, b in itertools.pairwise(places)]
    for a, b in itertools.pairwise(places):
        seen += [2 * bore_radius(plain, a + NEAR_WALL), 2 * bore_radius(plain, b - NEAR_WALL)]
    return min(seen, default=0.0)


def wall_there(shape: TurnedShape, groove: BoreGroove) -> float:
    """Diameter of the bore beside a groove, the smaller of its two sides [mm]."""
    plain = replace(shape, bore_grooves=())
    return 2 * min(bore_radius(plain, groove.start + NEAR_WALL), bore_radius(plain, groove.end - NEAR_WALL))


def unfit(tool: Tool, shape: TurnedShape, groove: BoreGroove, face: Face) -> str:
    """What keeps an inside grooving tool from a groove, with its figures; empty when it does it."""
    _, far = groove_depths(groove, shape.length.value, face)
    mouth = narrowest_on_the_way(shape, groove, face)
    wide, deep = groove.end - groove.start, (groove.floor - mouth) / 2
    if tool.width > wide + NEAR_WALL:
        return f"{tool.width:g} wide, the groove {wide:g}"
    if tool.smallest_bore > mouth + NEAR_WALL:
        return f"needs a bore of {tool.smallest_bore:g}, it goes in through {mouth:g}"
    if tool.cuts_deep < deep - NEAR_WALL:
        return f"cuts {tool.cuts_deep:g} deep, {deep:.2f} is wanted"
    if tool.reach < far + ROOM - NEAR_WALL:
        return f"reaches {tool.reach:g}, {far + ROOM:.1f} is wanted"
    return ""


def faces_reached(tools: tuple[Tool, ...], shape: TurnedShape, groove: BoreGroove) -> tuple[Face, ...]:
    """Faces from which one of the tools cuts a groove; none where no tool does it."""
    bore = next(one for one in shape.bores if one.name == groove.on)
    faces: tuple[Face, ...] = ("A", "B") if bore.through else (bore.face,)
    return tuple(face for face in faces if any(not unfit(one, shape, groove, face) for one in tools))
