"""Whether a tool gets at a screw: what stands in its columns, and how far its arm swings.

Pieces are meshes whose corners lie on the true circles. A slab of each is
looked at along the screw's axis: its outline is exact for what is drawn out
along that axis and for lands of revolution about a line along it, but for the
chords, which lie within 0.06 % of the radius of them (96 to a turn).
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

import numpy as np

from tommybar.assembly.bodies import own_body, standing
from tommybar.assembly.driving_tools import OFFSET, Arm, Column, DrivingTool
from tommybar.assembly.links import Piece
from tommybar.mechanics.free_swing import free_swing
from tommybar.shapes.bought import BoughtShape
from tommybar.shapes.features import Shape
from tommybar.shapes.solids.frames import Frame, Vector, back, within

if TYPE_CHECKING:
    from shapely import Geometry

FACETS = 96
NEAR = 0.02  # what a tool may want more than there is: chords, and faces that touch [mm]
LEAST = 1e-3  # corners of an outline this near one another are one [mm]


@dataclass(frozen=True)
class Obstacle:
    """A piece as it stands in a screw's frame, z out of the metal along its axis."""

    piece: Piece
    mesh: Any
    box: tuple[float, ...]


@dataclass(frozen=True)
class Obstruction:
    """What keeps a tool from its work: a gap beside the axis [mm], or a swing [deg]."""

    tool: str
    what: str  # which part of the tool: "its jaws"; "" for its swing
    piece: Piece
    figure: float
    bound: float
    near: bool  # it lies so close that not even a slender tool of the kind gets in
    at: Vector  # where, in the screw's frame [mm]

    @property
    def swings(self) -> bool:
        """Whether the tool goes on, and cannot be turned far enough."""
        return not self.what


def obstacle(piece: Piece, shape: Shape | BoughtShape, at: Frame, screw: Frame) -> Obstacle:
    """A piece that stands at ``at``, told in the frame of a screw."""
    mesh = standing(own_body(shape, FACETS), within(back(screw), at))
    return Obstacle(piece, mesh, tuple(mesh.bounding_box()))


def obstructed(tool: DrivingTool, obstacles: Sequence[Obstacle]) -> Obstruction | None:
    """The first thing that keeps a tool from the screw; None when it gets there and turns."""
    shut: list[tuple[float, float]] = []  # directions of the arm that its jaws do not allow
    for column in tool.columns:
        found = in_column(tool.name, column, obstacles)
        if found is None:
            continue
        allowed = _arm_past(column, obstacles) if column.mouth and tool.arm else None
        if allowed is None or tool.arm is None or allowed[1] - allowed[0] < tool.arm.swing:
            return found
        shut.append((allowed[1], allowed[0] + 360.0))
    return _cannot_swing(tool.name, tool.arm, obstacles, shut) if tool.arm else None


def _arm_past(column: Column, obstacles: Sequence[Obstacle]) -> tuple[float, float] | None:
    """Directions of the arm at which all that stands in the jaws' circle stands before their mouth [deg].

    A point at distance r and angle a is before a mouth that looks towards m
    when r cos(a - m) is no less than the jaws reach, f: |a - m| <= acos(f / r).
    The mouth looks away from the arm, OFFSET to either side of it.
    """
    from shapely import Point

    disc = Point(0.0, 0.0).buffer(column.radius - NEAR, quad_segs=32)
    low, high, first = -180.0, 180.0, None
    for one in obstacles:
        outline = _outline(one, column.low, column.high, column.radius, column.hollow)
        met = outline.intersection(disc) if outline is not None else disc.difference(disc)
        for part in getattr(met, "geoms", [met]):
            corners = np.asarray(part.exterior.coords) if part.area > 0 else np.empty((0, 2))
            for x, y in corners:
                far, angle = math.hypot(x, y), math.degrees(math.atan2(y, x))
                if far < column.mouth:
                    return None
                half = math.degrees(math.acos(min(1.0, column.mouth / far)))
                first = angle if first is None else first
                off = (angle - first + 180.0) % 360.0 - 180.0
                low, high = max(low, off - half), min(high, off + half)
    if first is None or high - low < 2 * OFFSET:
        return None
    return first + low + OFFSET - 180.0, first + high - OFFSET - 180.0


def in_column(tool: str, column: Column, obstacles: Sequence[Obstacle]) -> Obstruction | None:
    """The piece that stands nearest the axis within a column, when it stands in it."""
    from shapely import Point
    from shapely.ops import nearest_points

    best: Obstruction | None = None
    for one in obstacles:
        outline = _outline(one, column.low, column.high, column.radius, column.hollow)
        if outline is None:
            continue
        gap = float(outline.distance(Point(0.0, 0.0)))
        if gap < column.radius - NEAR and (best is None or gap < best.figure):
            spot = nearest_points(outline, Point(0.0, 0.0))[0]
            at = _lowest(one, float(spot.x), float(spot.y), column.low, column.high)
            best = Obstruction(
                tool, column.what, one.piece, gap, column.radius, gap < column.least - NEAR, at
            )
    return best


def _cannot_swing(
    tool: str, arm: Arm, obstacles: Sequence[Obstacle], shut: Sequence[tuple[float, float]]
) -> Obstruction | None:
    from shapely import Point
    from shapely.ops import nearest_points

    middle = Point(0.0, 0.0)
    reach = middle.buffer(arm.length - arm.width / 2, quad_segs=32)
    blocked: list[tuple[float, float]] = list(shut)
    worst: tuple[float, Piece, Vector] | None = None
    for one in obstacles:
        outline = _outline(one, arm.low, arm.high, arm.length, arm.hollow)
        if outline is None:
            continue
        shadow = outline.buffer(arm.width / 2 - NEAR, quad_segs=8).intersection(reach)
        mine = [_stretch(part) for part in getattr(shadow, "geoms", [shadow]) if part.area > 0]
        blocked += mine
        taken = 360.0 - free_swing(mine)[0]
        if mine and (worst is None or taken > worst[0]):
            spot = nearest_points(outline, middle)[0]
            worst = taken, one.piece, _lowest(one, float(spot.x), float(spot.y), arm.low, arm.high)
    free, _ = free_swing(blocked)
    if worst is None or free >= arm.swing - 1e-6:
        return None
    return Obstruction(tool, "", worst[1], free, arm.swing, False, worst[2])


def _stretch(part: Any) -> tuple[float, float]:
    """From which to which angle an area lies, seen from the axis [deg]; a whole turn when it goes round it."""
    from shapely import Point

    if part.covers(Point(0.0, 0.0)):
        return 0.0, 360.0
    corners = np.asarray(part.exterior.coords)
    angles = np.degrees(np.arctan2(corners[:, 1], corners[:, 0]))
    steps = (np.diff(angles) + 180.0) % 360.0 - 180.0
    along = angles[0] + np.concatenate(([0.0], np.cumsum(steps)))
    if abs(along[-1] - along[0]) > 180.0:
        return 0.0, 360.0
    return float(along.min()), float(along.max())


def _outline(one: Obstacle, low: float, high: float, reach: float, hollow: float) -> Geometry | None:
    """The outline of a slab of a piece along the axis, its faces left out; None when it lies out of reach."""
    from shapely import Point

    low, high = low + NEAR, high - NEAR
    x0, y0, z0, x1, y1, z1 = one.box
    aside = math.hypot(max(x0, -x1, 0.0), max(y0, -y1, 0.0))
    if high <= low or z1 <= low or z0 >= high or aside >= reach:
        return None
    slab = one.mesh.trim_by_plane((0.0, 0.0, 1.0), low).trim_by_plane((0.0, 0.0, -1.0), -high)
    found = area_of(slab.project().to_polygons())
    if hollow:
        found = found.difference(Point(0.0, 0.0).buffer(hollow, quad_segs=24))
    return None if found.is_empty else found


def area_of(rings: Sequence[Any]) -> Any:
    """Rings of a slice as one area: what runs counter-clockwise is metal, what runs clockwise a hole in it."""
    from shapely import Polygon

    area: Any = Polygon()
    sized = [(Polygon(ring), _signed(ring)) for ring in rings if len(ring) > 2]
    for ring, signed in sorted(sized, key=lambda each: -abs(each[1])):  # islands come after their holes
        whole = ring if ring.is_valid else ring.buffer(0.0)
        area = area.union(whole) if signed > 0 else area.difference(whole)
    return area


def _signed(ring: Any) -> float:
    x, y = np.asarray(ring)[:, 0], np.asarray(ring)[:, 1]
    return float(np.sum(x * np.roll(y, -1) - y * np.roll(x, -1)) / 2)


def _lowest(one: Obstacle, x: float, y: float, low: float, high: float) -> Vector:
    """A point of the piece over a spot of the outline: the lowest in the slab."""
    from manifold3d import Manifold

    post = Manifold.cylinder(high - low, 0.05, 0.05, 12).translate((x, y, low))
    met = post ^ one.mesh
    z = float(met.bounding_box()[2]) if not met.is_empty() else (low + high) / 2
    return round(x, 4) + 0.0, round(y, 4) + 0.0, round(z, 4) + 0.0
