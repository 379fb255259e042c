"""Edges that look into a valley, and whether a pointed tool finds room there.

A free edge towards a larger land is reached from neither end by turning the
part round. A tool with a 90-degree point has two flanks: the left one
chamfers what looks towards the tailstock, the right one what looks towards
the chuck, in the same grip, where the valley has room for the point.
"""

from __future__ import annotations

from tommybar.making.contours import land_contour
from tommybar.making.grips import Option
from tommybar.making.jobs import Job, in_card
from tommybar.shapes.features import Cylinder, Face, TurnedShape

PAST = 0.2  # the tool's point beyond the chamfer's lower end; common practice, no source [mm]
CLEAR = 0.3  # between the tool and what stands beside it; common practice, no source [mm]
FILE_UP = 2.0  # rounding up to which a file does it alone; common practice, no source [mm]
FILE_ROOM = 8.0  # width of a valley that a file gets into; common practice, no source [mm]
JAW_ROOM = 1.0  # between the tool's left side and the jaws; common practice, no source [mm]


def stub_of(option: Option) -> float:
    """Radius of the stub that stands behind a part until it is cut off; 0 where the part has none [mm]."""
    return option.dia / 2 if option.ending else 0.0


def valley_beside(
    shape: TurnedShape, job: Job, free: Face, stub: float = 0.0
) -> tuple[float, float, float, tuple[str, ...]] | None:
    """What an edge looks into: width, floor radius, radius of what stands across, and the lands of the floor [mm].

    None where the edge is open to the end of the part, or looks at something
    that stands higher at once. A ``stub`` of that radius behind the part
    closes the valley there [mm].
    """
    length = shape.length.value
    land = next(one for one in shape.outside if one.name == job.feature)
    assert isinstance(land, Cylinder)
    radius = land.dia.value / 2
    away = -1.0 if job.side != free else 1.0  # towards the chuck, or towards the free end
    at = in_card(job.start, length, free)
    others = [(one.name, land_contour(one, length, free)) for one in shape.outside if one.name != job.feature]
    ahead = sorted(
        ((name, c) for name, c in others if away * (c.points[0][0] + c.points[-1][0] - 2 * at) > 0),
        key=lambda pair: away * pair[1].points[0][0],
    )
    lands: list[str] = []
    wide, floor = 0.0, 0.0
    for name, contour in ahead:
        if contour.largest > radius - job.size - PAST:
            return (wide, floor, contour.largest, tuple(lands)) if lands else None
        wide += contour.points[0][0] - contour.points[-1][0]
        floor = max(floor, contour.largest)
        lands.append(name)
    return (wide, floor, stub, tuple(lands)) if lands and away < 0 and stub > radius - job.size else None


def point_fits(shape: TurnedShape, job: Job, free: Face, half: float, stub: float = 0.0) -> bool:
    """Whether a point of that half width goes into the valley that an edge looks into [mm]."""
    seen = valley_beside(shape, job, free, stub)
    if seen is None:
        return False
    wide, floor, across, _ = seen
    land = next(one for one in shape.outside if one.name == job.feature)
    assert isinstance(land, Cylinder)
    lowest = land.dia.value / 2 - job.size - PAST
    return lowest >= floor + CLEAR and wide >= PAST + min(half, across - lowest) + CLEAR
