"""What a holding reaches of a part: the jobs that can be done in one grip."""

from __future__ import annotations

from dataclasses import dataclass

from tommybar.making.contours import falls, in_front, land_contour
from tommybar.making.grips import Option
from tommybar.making.inside_tools import faces_reached
from tommybar.making.jobs import Job, comes_out, largest, span_in_card
from tommybar.making.reaming import standing_out
from tommybar.making.valley_edges import FILE_ROOM, FILE_UP, PAST, point_fits, stub_of, valley_beside
from tommybar.making.valley_edges import JAW_ROOM as POINT_ROOM
from tommybar.shapes.features import Arc, Cylinder, Face, Land, TurnedShape
from tommybar.shop.model import Shop, Tool

IN_THE_FACE = frozenset({"bore", "bore edge", "recess", "face groove", "cup", "bore taper", "bore groove"})
JAW_ROOM = 1.0  # from the last cut of a shoulder to the jaws; common practice, no source [mm]
BLADE_ROOM = 2.0  # the same for a grooving tool, or a chamfering tool at the face [mm]
FLANK_ROOM = 5.0  # the same for a chamfering tool at a shoulder: half its width [mm]
HOLDER_ROOM = 0.8  # between a blade's holder and what stands beside its cut; common practice, no source [mm]
EDGE_CLEAR = 0.5  # from an edge's inner end to the jaws; common practice, no source [mm]
PLUNGE_COST = 25.0  # of the search, for a land that a knife would turn better from the other end
STEM_GAIN = 5.0  # of the search, for a slender stem that stays in the grip of its disc
THINNEST = 1.0  # radius under which a plunged land would break off; common practice, no source [mm]
SLENDER = 3.0  # length over diameter from which a stem is slender; common practice, no source
PARTED_ROOM = 4.0  # behind a land that is plunged beside the jaws: the blade's own width and daylight [mm]


@dataclass(frozen=True)
class Blades:
    """Width and reach of every blade that plunges from outside [mm], and the tools that groove a bore."""

    sizes: tuple[tuple[float, float], ...] = ()
    inside: tuple[Tool, ...] = ()
    points: tuple[float, ...] = ()  # half the width of every pointed chamfering tool [mm]

    def reach_into(self, deep: float, wide: float) -> bool:
        """Whether one of them gets so deep into a gap so wide."""
        return any(w <= wide + 1e-6 and reach >= deep + HOLDER_ROOM - 1e-6 for w, reach in self.sizes)


def blades_of(shop: Shop) -> Blades:
    """The blades in a shop's drawer."""
    return Blades(
        tuple((t.width, t.reach) for t in shop.tools if t.kind in ("parting", "groove")),
        tuple(t for t in shop.tools if t.kind == "inside groove"),
        tuple(t.shank / 2 for t in shop.tools if t.kind == "chamfer"),
    )


def by_blade(shape: TurnedShape, land: Land, option: Option) -> float:
    """How deep a blade must go for a land, from what stands in front of it; 0 where a knife turns it [mm]."""
    contour = land_contour(land, shape.length.value, option.free)
    front = in_front(shape, land, option.free)
    if falls(contour):
        return max(front, contour.largest) - contour.least
    return max(0.0, front - contour.least) if front > contour.points[0][1] + 1e-6 else 0.0


def plunging_cost(shape: TurnedShape, option: Option, names: frozenset[str]) -> float:
    """What it costs that a blade cuts lands which a knife could from the other end.

    A slender stem behind a disc is the exception: plunged out last, it stands
    in the grip in which the disc was turned, and nothing pushes on it after.
    """
    low = set(valleys(shape))
    cost = 0.0
    for land in shape.outside:
        if land.name not in names or land.name in low or by_blade(shape, land, option) <= 0:
            continue
        stem = land.end - land.start >= SLENDER * largest(land)
        cost += -STEM_GAIN if stem and by_blade(shape, land, option) >= largest(land) else PLUNGE_COST
    return cost


def _blocked(job: Job, shape: TurnedShape, option: Option) -> bool:
    """Whether something larger stands between the feature and the free face."""
    length = shape.length.value
    near, _ = span_in_card(job.start, job.end, length, option.free)
    mine = next(f for f in shape.outside if f.name == job.feature)
    for other in shape.outside:
        other_near, _ = span_in_card(other.start, other.end, length, option.free)
        if other_near > near + 1e-6 and largest(other) > largest(mine) + 1e-6:
            return True
    return False


def valleys(shape: TurnedShape) -> tuple[str, ...]:
    """Outside features with something larger on either side: a right-hand tool reaches them from neither end."""
    sizes = [largest(feature) for feature in shape.outside]
    length = shape.length.value
    return tuple(
        feature.name
        for n, feature in enumerate(shape.outside)
        if (
            max(sizes[:n], default=0.0) > sizes[n] + 1e-6
            and max(sizes[n + 1 :], default=0.0) > sizes[n] + 1e-6
        )
        or (isinstance(feature, Arc) and _humped(feature, length))
        or _pinched(shape, n, sizes)
    )


def _humped(arc: Arc, length: float) -> bool:
    """Whether a curve falls whichever end is free."""
    return falls(land_contour(arc, length, "A")) and falls(land_contour(arc, length, "B"))


def _pinched(shape: TurnedShape, n: int, sizes: list[float]) -> bool:
    """Whether a cone or curve narrows towards something larger, so that no end shows it rising."""
    land = shape.outside[n]
    if isinstance(land, Cylinder):
        return False
    length = shape.length.value
    seen_a, seen_b = land_contour(land, length, "A"), land_contour(land, length, "B")
    from_a = not falls(seen_a) and max(sizes[:n], default=0.0) <= 2 * seen_a.points[0][1] + 1e-6
    from_b = not falls(seen_b) and max(sizes[n + 1 :], default=0.0) <= 2 * seen_b.points[0][1] + 1e-6
    return not from_a and not from_b


def _edge_room(near: float) -> float:
    return BLADE_ROOM if near > -1e-6 else FLANK_ROOM


def _plunged(
    job: Job, shape: TurnedShape, option: Option, have: set[str], blades: Blades, far: float
) -> bool:
    """Whether a blade reaches a land, once everything larger in front of it is finished."""
    length = shape.length.value
    land = next(f for f in shape.outside if f.name == job.feature)
    if isinstance(land, Cylinder) and (land.thread or land.knurl):
        return False
    contour = land_contour(land, length, option.free)
    from_z = contour.apex if in_front(shape, land, option.free) <= 0 else contour.points[0][0]
    if min(r for z, r in contour.points if z <= from_z + 1e-9) < THINNEST:
        return False  # what stands in front would break off
    deep = by_blade(shape, land, option)
    near, _ = span_in_card(job.start, job.end, length, option.free)
    ahead = [
        other.name
        for other in shape.outside
        if span_in_card(other.start, other.end, length, option.free)[0] > near + 1e-6
    ]
    room = PARTED_ROOM if far <= -length + 1e-6 and not option.ending else BLADE_ROOM
    return (
        all(name in have for name in ahead)
        and blades.reach_into(deep, job.end - job.start)
        and option.spigot == 0
        and (option.seat > 0 or far >= option.jaw_front + room - 1e-6)
    )


def _reaches(
    job: Job, shape: TurnedShape, option: Option, have: set[str], blades: Blades, late: bool
) -> bool:
    length = shape.length.value
    near, far = span_in_card(job.start, job.end, length, option.free)
    arbor = option.spigot > 0
    on_stub = arbor or option.seat > 0
    if (option.only and job.kind not in option.only) or job.feature in option.leaves:
        return False
    if option.dog is not None and job.kind in ("face", "centre", *IN_THE_FACE):
        return False  # a centre stands in either end
    if option.centre > 0 and job.kind in IN_THE_FACE and job.side in ("", option.free):
        return False  # the centre stands in the way
    if job.kind == "face":
        return job.side == option.free and (not arbor or option.plug)
    if job.kind == "outside":
        if job.as_supplied or job.feature == option.surface:
            return False
        land = next(f for f in shape.outside if f.name == job.feature)
        if by_blade(shape, land, option) > 0:
            by_choice = late and option.centre == 0  # on slender work that a centre carries a blade grabs
            return (by_choice or job.feature in valleys(shape)) and _plunged(
                job, shape, option, have, blades, far
            )
        if _blocked(job, shape, option):
            return False
        return on_stub or far >= option.jaw_front + JAW_ROOM - 1e-6
    if job.kind == "groove":
        outside = {f.name for f in shape.outside if f.start - 1e-6 <= job.start and job.end <= f.end + 1e-6}
        return bool(outside & have) and (on_stub or far >= option.jaw_front + BLADE_ROOM - 1e-6)
    if job.kind == "round" and job.side != option.free:
        return _filed_behind(job, shape, option, have)
    if job.kind == "edge" and job.side != option.free:
        return _in_valley(job, shape, option, have, blades)
    if job.kind in ("edge", "round"):
        return (
            job.side == option.free
            and job.feature in have
            and near >= option.jaw_front + max(_edge_room(near), job.size + EDGE_CLEAR) - 1e-6
        )
    if arbor:
        recess = next((r for r in shape.recesses if r.name == job.feature), None)
        return recess is not None and job.side == option.free and recess.inside >= option.spigot
    if job.kind == "bore edge":
        return job.side == option.free and job.feature in have
    if job.kind == "bore groove":
        return _grooved(job, shape, option, have, blades)
    if job.kind == "bore" and not job.side and _too_deep(job, shape, option.free):
        return False
    return job.side in ("", option.free)  # bores and recesses


def _too_deep(job: Job, shape: TurnedShape, free: Face) -> bool:
    """Whether no drill of that size reaches through from this face, past a wide hole, and the other face is nearer."""
    bore = next(one for one in shape.bores if one.name == job.feature)
    here, there = (comes_out(bore, shape, face) for face in (free, "B" if free == "A" else "A"))
    return here > standing_out(bore.dia.value) and there < here - 1e-6


def _filed_behind(job: Job, shape: TurnedShape, option: Option, have: set[str]) -> bool:
    """Whether a small round edge that looks towards the chuck is filed in this grip: the valley behind it is open."""
    if job.size > FILE_UP or job.feature not in have or option.spigot > 0:
        return False
    seen = valley_beside(shape, job, option.free, stub_of(option))
    near, _ = span_in_card(job.start, job.end, shape.length.value, option.free)
    return (
        seen is not None
        and all(name in have for name in seen[3])
        and seen[0] >= FILE_ROOM
        and near - FILE_ROOM >= option.jaw_front + POINT_ROOM
    )


def _in_valley(job: Job, shape: TurnedShape, option: Option, have: set[str], blades: Blades) -> bool:
    """Whether an edge that looks towards the chuck is chamfered in this grip: into a valley that is open then."""
    land = next(one for one in shape.outside if one.name == job.feature)
    angle = land.edge_angle if isinstance(land, Cylinder) else 0.0
    if isinstance(land, Cylinder) and job.side == "B" and land.edge_end_angle is not None:
        angle = land.edge_end_angle
    stub = stub_of(option)
    seen = valley_beside(shape, job, option.free, stub)
    near, _ = span_in_card(job.start, job.end, shape.length.value, option.free)
    return (
        seen is not None
        and abs(angle - 45.0) < 0.5
        and job.feature in have
        and all(name in have for name in seen[3])
        and option.spigot == 0
        and any(
            point_fits(shape, job, option.free, half, stub)
            and near - PAST - half >= option.jaw_front + POINT_ROOM
            for half in blades.points
        )
    )


def _grooved(job: Job, shape: TurnedShape, option: Option, have: set[str], blades: Blades) -> bool:
    """Whether a groove in a bore is open to a tool; where none of the drawer does it, its card tells."""
    groove = next(one for one in shape.bore_grooves if one.name == job.feature)
    if groove.on not in have or option.surface == groove.on or job.side not in ("", option.free):
        return False
    from_there = faces_reached(blades.inside, shape, groove)
    return not from_there or option.free in from_there


def reached(
    option: Option,
    shape: TurnedShape,
    jobs: tuple[Job, ...],
    made: frozenset[str],
    blades: Blades,
    *,
    late: bool = False,
) -> frozenset[str]:
    """Names of the jobs that this grip adds to what is made already.

    Valleys are always left to a blade; ``late`` lets it also cut what a knife
    would turn from the other end.
    """
    have = set(made)
    again = True
    while again:
        again = False
        for job in jobs:
            if job.name not in have and _reaches(job, shape, option, have, blades, late):
                have.add(job.name)
                again = True
    return frozenset(have - made)
