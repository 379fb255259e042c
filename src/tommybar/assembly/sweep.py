"""What moves past what: gaps between moving pieces and those that stand still, over the whole movement.

A whole turn needs no steps: a point of a moving piece sweeps the circle of
its radius and height about the axis, so two pieces come nearest in the plane
of (height, radius), in which each is the area that its surface takes at any
angle. A part of a turn and a slide are followed in steps, each no longer than
the gap that stands before it, so that nothing can be passed between steps.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from tommybar.assembly.axes import axis_of
from tommybar.assembly.bodies import allowed, bodies_of, standing
from tommybar.assembly.links import Link, Piece, links_of
from tommybar.assembly.placing import Assembly, Placement, assembled
from tommybar.design.joints import SweepRelation
from tommybar.design.model import SizedDesign
from tommybar.shapes.features import TurnedShape
from tommybar.shapes.profile import profile
from tommybar.shapes.solids.frames import Frame, back, shifted, turned, within

FACETS = 96
SIDE = 2.0  # longest side of a triangle that is carried into the plane of height and radius [mm]
LEAST_STEP = 0.02  # a step is at least this long at the outermost point [mm]
MOST_STEPS = 2000
THIN = 0.02  # overlap in the plane that fits and chords may make [mm]


@dataclass(frozen=True)
class Clearance:
    """How near a moving piece comes to one that stands still.

    ``gap`` is the least distance [mm], 0 when they meet; it may be up to
    ``bound`` less than worked out, for what lies between chords and steps.
    ``at`` is where along the movement [deg or mm]; None over a whole turn,
    where every angle counts. ``meets`` says that they would strike. In a part
    of a turn or a slide a gap of 1 mm or the one wanted is the most that is
    looked for.
    """

    moving: Piece
    fixed: Piece
    gap: float
    wanted: float
    bound: float
    meets: bool
    at: float | None = None


def sweep_relations(design: SizedDesign) -> tuple[SweepRelation, ...]:
    """The design's sweeps, and one for each purpose whose parts turn together and that no sweep names."""
    found = list(design.sweeps)
    for purpose in design.purposes:
        if any(set(purpose.turns) <= set(one.moving) for one in found):
            continue
        axis = _longest_turned(design, purpose.turns)
        if axis:
            found.append(SweepRelation(tuple(purpose.turns), axis, (), 0.0))
    return tuple(found)


def _longest_turned(design: SizedDesign, names: Sequence[str]) -> str:
    """The longest land of the longest turned part among some, as the axis they turn about."""
    shafts = [part for part in design.parts if part.name in names and isinstance(part.shape, TurnedShape)]
    if not shafts:
        return ""
    shaft = max(
        shafts, key=lambda part: part.shape.length.value if isinstance(part.shape, TurnedShape) else 0.0
    )
    assert isinstance(shaft.shape, TurnedShape)
    land = max(shaft.shape.outside, key=lambda one: one.end - one.start)
    return f"{shaft.name}.{land.name}"


def clearances(
    design: SizedDesign, whole: Assembly | None = None, wanted_only: bool = False
) -> tuple[Clearance, ...]:
    """The gaps of all sweeps of a design, the least first.

    Pieces that a fit or a thread joins bear on one another and count only
    when they would strike. With ``wanted_only`` a whole turn tells only what
    strikes, and gaps up to a little over the one that the design wants: that
    is quicker, since most pieces never come near.
    """
    whole = whole or assembled(design)
    links = links_of(design)
    found: list[Clearance] = []
    for sweep in sweep_relations(design):
        found += _of_sweep(sweep, design, whole, links, wanted_only)
    return tuple(sorted(found, key=lambda one: (one.gap, one.moving, one.fixed)))


@dataclass(frozen=True)
class Movement:
    """What moves together: which pieces, about or along the z axis of ``at``, over which travel [deg or mm]."""

    sweep: SweepRelation
    at: Frame
    pieces: tuple[Piece, ...]


def movements(design: SizedDesign, whole: Assembly) -> tuple[Movement, ...]:
    """Every movement of a design whose axis and pieces are placed.

    Pieces that are said to move and are screwed to what stands still are left out.
    """
    links = links_of(design)
    found = []
    for sweep in sweep_relations(design):
        at = _axis(sweep.axis, design, whole)
        fixed = [one for one in whole.placements if one.part not in sweep.moving]
        moved = [
            (one.part, one.instance)
            for one in whole.placements
            if one.part in sweep.moving and not _screwed_to(one, fixed, links)
        ]
        if at is not None and moved:
            found.append(Movement(sweep, at, tuple(moved)))
    return tuple(found)


def _of_sweep(
    sweep: SweepRelation, design: SizedDesign, whole: Assembly, links: Sequence[Link], wanted_only: bool
) -> list[Clearance]:
    moving = [one for one in whole.placements if one.part in sweep.moving]
    fixed = [
        one
        for one in whole.placements
        if one.part not in sweep.moving and (not sweep.fixed or one.part in sweep.fixed)
    ]
    at = _axis(sweep.axis, design, whole)
    if at is None or not moving or not fixed:
        return []
    joined = {frozenset((link.first, link.second)) for link in links}
    moved = [one for one in moving if not _screwed_to(one, fixed, links)]
    if sweep.way == "turns" and abs(sweep.travel[1] - sweep.travel[0]) >= 360 - 1e-9:
        return _whole_turn(sweep, design, moved, fixed, at, joined, wanted_only)
    return _in_steps(sweep, design, moved, fixed, at, links, whole)


def _screwed_to(one: Placement, fixed: Sequence[Placement], links: Sequence[Link]) -> bool:
    """Whether a piece that is said to move is screwed down to one that is not; it is then left to the checks."""
    still = {(other.part, other.instance) for other in fixed}
    mine = (one.part, one.instance)
    return any(
        link.kind == "screw" and mine in (link.first, link.second) and {link.first, link.second} & still
        for link in links
    )


def _axis(name: str, design: SizedDesign, whole: Assembly) -> Frame | None:
    """The frame whose z is the axis of a feature, where its first piece stands."""
    part, _, feature = name.partition(".")
    place = whole.of(part)
    found = axis_of(design.part(part).shape, feature) if place else None
    return within(place.frame, found.at) if place and found else None


def _whole_turn(
    sweep: SweepRelation,
    design: SizedDesign,
    moving: Sequence[Placement],
    fixed: Sequence[Placement],
    at: Frame,
    joined: set[frozenset[Piece]],
    wanted_only: bool,
) -> list[Clearance]:
    bodies = bodies_of(design, [*moving, *fixed], FACETS)
    rooms = {piece: _room(standing(body.mesh, back(at))) for piece, body in bodies.items()}
    # what lies between chords is at most half a side for each of two pieces
    heeded = max(sweep.gap, 0.0) + SIDE if wanted_only else math.inf
    pairs = [
        ((one.part, one.instance), (other.part, other.instance))
        for one in moving
        for other in fixed
        if (one.part, one.instance) in rooms and (other.part, other.instance) in rooms
    ]
    pairs = [two for two in pairs if _to_box(rooms[two[0]][None], rooms[two[1]])[0] <= heeded]
    areas = {}
    for one in (*moving, *fixed):
        piece = (one.part, one.instance)
        others = [rooms[b if a == piece else a] for a, b in pairs if piece in (a, b)]
        if others:
            areas[piece] = _area(design, one, at, bodies[piece].mesh, np.array(others), heeded)
    found = []
    for first, second in pairs:
        (patches, bound_one), (others, bound_other) = areas[first], areas[second]
        if not len(patches) or not len(others):
            continue
        bound = bound_one + bound_other
        thick = _shared(patches, others)
        bearing = frozenset((first, second)) in joined
        meets = thick > THIN + (bound if bearing else 0.0)
        if not meets and (bearing or (wanted_only and sweep.gap <= 0)):
            continue
        gap = 0.0 if meets else _apart(patches, others)
        if gap <= heeded:
            found.append(Clearance(first, second, gap, sweep.gap, bound, meets))
    return found


def _room(mesh: Any) -> NDArray[np.float64]:
    """A box of (height, radius) that holds all that a piece can take, the axis along its z: low, high [mm]."""
    points = np.asarray(mesh.to_mesh64().vert_properties)[:, :3]
    low, high = points.min(axis=0), points.max(axis=0)
    aside = np.maximum(np.maximum(low[:2], -high[:2]), 0.0)  # from the axis to the box round the piece
    return np.array([low[2], math.hypot(*aside), high[2], float(np.hypot(points[:, 0], points[:, 1]).max())])


def _shared(one: Any, other: Any) -> float:
    """Mean thickness of what two areas share, each told as patches [mm]."""
    from shapely import STRtree, union_all

    pairs = STRtree(other).query(one, predicate="intersects")
    if pairs.shape[1] == 0:
        return 0.0
    both = union_all(one[np.unique(pairs[0])]).intersection(union_all(other[np.unique(pairs[1])]))
    return float(2 * both.area / both.length) if both.length > 0 else 0.0


def _apart(one: Any, other: Any) -> float:
    """Least distance of two areas, each told as patches [mm]."""
    from shapely import STRtree, bounds, distance, total_bounds

    to_other = _to_box(bounds(one), total_bounds(other))
    to_one = _to_box(bounds(other), total_bounds(one))
    # no patch farther from the other's box than some pair of patches is apart can be the nearest
    most = float(distance(one[np.argmin(to_other)], other).min()) + 1e-6
    near_one, near_other = one[to_other <= most], other[to_one <= most]
    _, far = STRtree(near_other).query_nearest(near_one, return_distance=True, all_matches=False)
    return float(far.min())


def _to_box(boxes: NDArray[np.float64], whole: NDArray[np.float64]) -> NDArray[np.float64]:
    """Distance of each of some boxes from one box [mm]."""
    aside = np.maximum(np.maximum(whole[:2] - boxes[:, 2:], boxes[:, :2] - whole[2:]), 0.0)
    return np.hypot(aside[:, 0], aside[:, 1])


def _area(
    design: SizedDesign,
    one: Placement,
    at: Frame,
    mesh: Any,
    others: NDArray[np.float64],
    heeded: float,
) -> tuple[Any, float]:
    """Patches of (height, radius) that a piece takes at any angle about an axis, and how true they are [mm].

    Of a piece that is not round about the axis only those are told that lie
    within ``heeded`` of the box of one of the others.
    """
    from shapely import Polygon, polygons

    told = within(back(at), one.frame)
    shape = design.part(one.part).shape
    if isinstance(shape, TurnedShape) and math.hypot(told[3], told[7]) < 1e-6 and abs(told[10]) > 1 - 1e-9:
        ring = [point for piece in profile(shape) for point in piece.chords()]
        return np.array([Polygon([(told[11] + math.copysign(z, told[10]), r) for z, r in ring])]), 1e-3
    own = standing(mesh, back(at)).refine_to_length(SIDE).to_mesh64()
    points = np.asarray(own.vert_properties)[:, :3]
    plane = np.stack([points[:, 2], np.hypot(points[:, 0], points[:, 1])], axis=1)
    corners = plane[np.asarray(own.tri_verts, dtype=np.int64)]
    a, b, c = corners[:, 0], corners[:, 1], corners[:, 2]
    twice = np.abs((b - a)[:, 0] * (c - a)[:, 1] - (b - a)[:, 1] * (c - a)[:, 0])
    boxes = np.concatenate([corners.min(axis=1), corners.max(axis=1)], axis=1)
    near = np.min([_to_box(boxes, other) for other in others], axis=0) <= heeded
    patches = polygons(np.concatenate([corners, corners[:, :1]], axis=1)[(twice > 1e-9) & near])
    nearest = float(plane[:, 1].min())
    # a straight side that passes the axis at radius r sags from its chord by at most s^2 / 8 r, or half of it
    return patches, min(SIDE * SIDE / (8 * max(nearest, 1e-9)), SIDE / 2)


def _in_steps(
    sweep: SweepRelation,
    design: SizedDesign,
    moving: Sequence[Placement],
    fixed: Sequence[Placement],
    at: Frame,
    links: Sequence[Link],
    whole: Assembly,
) -> list[Clearance]:
    """Each moving piece followed along its travel, as far at a time as its gap allows."""
    bodies = bodies_of(design, [*moving, *fixed], FACETS)
    frames = {(one.part, one.instance): one.frame for one in whole.placements}
    spared = {frozenset((one.first, one.second)) for one in allowed(links, frames, design)}
    joined = {frozenset((link.first, link.second)) for link in links}
    found = []
    for first in (body for piece, body in bodies.items() if piece[0] in sweep.moving):
        far = _farthest(standing(first.mesh, back(at)))
        for second in (body for piece, body in bodies.items() if piece[0] not in sweep.moving):
            pair = frozenset((first.piece, second.piece))
            if pair in spared or pair in joined:
                continue
            found.append(_followed(sweep, first.piece, first.mesh, second.piece, second.mesh, at, far))
    return found


def _followed(
    sweep: SweepRelation, first: Piece, mesh: Any, second: Piece, still: Any, at: Frame, far: float
) -> Clearance:
    place, end = sweep.travel
    reach = max(sweep.gap, 1.0)
    best, where, steps = math.inf, place, 0
    unit = math.degrees(1 / far) if sweep.way == "turns" else 1.0  # of travel for 1 mm at the outermost point
    while place <= end and steps < MOST_STEPS:
        own = turned(place) if sweep.way == "turns" else shifted(z=place)
        body = standing(mesh, within(within(at, own), back(at)))
        shared = body ^ still
        if not shared.is_empty() and 2 * shared.volume() / shared.surface_area() > THIN:
            return Clearance(first, second, 0.0, sweep.gap, LEAST_STEP, True, place)
        gap = float(body.min_gap(still, reach))
        if gap < best:
            best, where = gap, place
        if place >= end:
            break
        place = min(end, place + max(gap, LEAST_STEP) * unit)
        steps += 1
    if place < end:
        return Clearance(first, second, best, sweep.gap, math.inf, False, where)
    return Clearance(first, second, best, sweep.gap, LEAST_STEP, False, where)


def _farthest(mesh: Any) -> float:
    points = np.asarray(mesh.to_mesh64().vert_properties)[:, :2]
    return max(float(np.hypot(points[:, 0], points[:, 1]).max()), 1e-6)
