"""What a holding reaches of a part: the jobs that can be done in one grip."""

from __future__ import annotations

from tommybar.making.grips import Option
from tommybar.making.jobs import Job, largest, span_in_card
from tommybar.shapes.features import TurnedShape

JAW_ROOM = 1.0  # from the last cut of a shoulder to the jaws; common practice, no source [mm]
BLADE_ROOM = 2.0  # the same for a grooving tool, or a chamfering tool at the face [mm]
FLANK_ROOM = 5.0  # the same for a chamfering tool at a shoulder: half its width [mm]


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
    return tuple(
        feature.name
        for n, feature in enumerate(shape.outside)
        if max(sizes[:n], default=0.0) > sizes[n] + 1e-6
        and max(sizes[n + 1 :], default=0.0) > sizes[n] + 1e-6
    )


def _edge_room(near: float) -> float:
    return BLADE_ROOM if near > -1e-6 else FLANK_ROOM


def _reaches(job: Job, shape: TurnedShape, option: Option, have: set[str]) -> bool:
    length = shape.length.value
    near, far = span_in_card(job.start, job.end, length, option.free)
    arbor = option.spigot > 0
    on_stub = arbor or option.seat > 0
    if job.kind == "face":
        return job.side == option.free and not arbor
    if job.kind == "outside":
        if job.as_supplied or job.feature == option.surface or _blocked(job, shape, option):
            return False
        return on_stub or far >= option.jaw_front + JAW_ROOM - 1e-6
    if job.kind == "groove":
        outside = {f.name for f in shape.outside if f.start - 1e-6 <= job.start and job.end <= f.end + 1e-6}
        return bool(outside & have) and (on_stub or far >= option.jaw_front + BLADE_ROOM - 1e-6)
    if job.kind == "edge":
        return (
            job.side == option.free
            and job.feature in have
            and near >= option.jaw_front + _edge_room(near) - 1e-6
        )
    if arbor:
        recess = next((r for r in shape.recesses if r.name == job.feature), None)
        return recess is not None and job.side == option.free and recess.inside >= option.spigot
    if job.kind == "bore edge":
        return job.side == option.free and job.feature in have
    return job.side in ("", option.free)  # bores and recesses


def reached(
    option: Option, shape: TurnedShape, jobs: tuple[Job, ...], made: frozenset[str]
) -> frozenset[str]:
    """Names of the jobs that this grip adds to what is made already."""
    have = set(made)
    again = True
    while again:
        again = False
        for job in jobs:
            if job.name not in have and _reaches(job, shape, option, have):
                have.add(job.name)
                again = True
    return frozenset(have - made)
