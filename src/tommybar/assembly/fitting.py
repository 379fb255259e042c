"""Ways in which one link can place a piece against another that stands already."""

from __future__ import annotations

import itertools
import math
from dataclasses import dataclass

from tommybar.assembly.axes import Axis
from tommybar.assembly.links import Joined, Link
from tommybar.shapes.solids.frames import (
    HERE,
    Frame,
    Vector,
    back,
    direction,
    frame,
    point,
    shifted,
    turned,
    within,
)

OVER: Frame = frame((1, 0, 0), (0, -1, 0), (0, 0, -1))  # turned over about x
NEAR = 0.02  # places nearer than this coincide [mm]


@dataclass(frozen=True)
class Way:
    """One way a link allows: the frame of ``second`` told from ``first``, and what is left open in words."""

    second: Frame
    open: str = ""


@dataclass(frozen=True)
class Meeting:
    """How a hole and a land of two placed pieces really meet: off their common axis, and the gaps at stops."""

    aside: float  # [mm]
    askew: float  # sine of the angle between the axes
    gaps: tuple[float, ...]  # below 0 where metal would stand in metal [mm]


def ways(link: Link, faces: bool = False) -> tuple[Way, ...]:
    """The ways of a link, the likeliest first; when ``faces`` say where along, either way up is kept."""
    if link.kind == "screw":
        return _screwed(link.pairs)
    if link.kind == "screw head":
        hole = link.pairs[0].hole
        return (Way(within(hole.at, within(shifted(z=hole.high), OVER))),)
    if link.kind == "belt":
        return _belted(link)
    if link.kind == "face":
        return _on_face(link)
    return _coaxial(link.pairs[0], link.engaged, link.centred, faces)


def _belted(link: Link) -> tuple[Way, ...]:
    """Two pulleys side by side, in the directions of the quarters and both ways round."""
    one, other = link.pairs[0].hole, link.pairs[0].shaft
    words = "the belt does not say to which side" if link.towards is None else ""
    found = []
    for over in (HERE, OVER):
        for quarter in (0.0, 90.0, 180.0, 270.0) if link.towards is None else (link.towards,):
            aside = within(turned(quarter), within(shifted(x=link.apart), turned(-quarter)))
            middle = within(within(aside, shifted(z=(other.low + other.high) / 2)), over)
            own = within(one.at, shifted(z=(one.low + one.high) / 2))
            first = within(within(other.at, middle), back(own))
            found.append(Way(back(first), words))
    return tuple(found)


def _on_face(link: Link) -> tuple[Way, ...]:
    """Middle of a face on the middle of the other, each quarter of a turn."""
    one, other = link.pairs[0].hole.at, link.pairs[0].shaft.at
    over = HERE if link.level else OVER
    found = []
    for quarter in (0.0, 90.0, 180.0, 270.0):
        # the first face from the second: ``apart`` out of it, turned over so that they look at one another
        first = within(other, within(shifted(z=link.apart), within(turned(quarter), within(over, back(one)))))
        found.append(Way(back(first), "nothing says where on that face"))
    return tuple(found)


def _coaxial(pair: Joined, engaged: float, centred: bool = False, faces: bool = False) -> tuple[Way, ...]:
    """A land in a hole: against each stop that they have, or in the middle when they have none."""
    hole, land = pair.hole, pair.shaft
    found: list[tuple[int, float, float, str]] = []  # order, which way up, shift of the hole along the land
    for up in (1.0, -1.0):
        low, high = (hole.low, hole.high) if up > 0 else (-hole.high, -hole.low)
        low_stop, high_stop = (hole.low_stop, hole.high_stop) if up > 0 else (hole.high_stop, hole.low_stop)
        low_open, high_open = (hole.low_open, hole.high_open) if up > 0 else (hole.high_open, hole.low_open)
        entry = hole.entry if up > 0 else {"low": "high", "high": "low", "": ""}[hole.entry]
        stops: list[tuple[int, float]] = []
        if centred:
            found.append((3, up, (land.low + land.high) / 2 - (low + high) / 2, ""))
            continue
        if land.low_stop and low_stop and land.high_open:
            deep = land.low - low
            if not high_open:  # a floor that it meets before its shoulder does
                deep = max(deep, land.high + land.beyond_high - high)
            stops.append((int(entry == "high"), deep))
        if land.high_stop and high_stop and land.low_open:
            deep = land.high - high
            if not low_open:
                deep = min(deep, land.low - land.beyond_low - low)
            stops.append((int(entry == "low"), deep))
        if not high_open and low_open and land.high_open and not land.low_stop:
            stops.append((2, land.high + land.beyond_high - high))
        if not low_open and high_open and land.low_open and not land.high_stop:
            stops.append((2, land.low - land.beyond_low - low))
        if engaged > 0:
            stops = [one for one in stops if abs(_shared(land, low + one[1], high + one[1]) - engaged) < 0.05]
            if not stops and high_open and land.low_open:
                stops.append((3, land.low + engaged - high))
            elif not stops and low_open and land.high_open:
                stops.append((3, land.high - engaged - low))
        found += [(order, up, shift, "") for order, shift in stops]
        if not stops:
            middle = (land.low + land.high) / 2 - (low + high) / 2
            slack = abs(land.long - hole.long)
            words = f"nothing says where along {slack:.4g} mm" if slack > NEAR else ""
            found.append((3, up, middle, words))
    bearing = any(order < 3 for order, *_ in found)
    result = []
    for order, up, shift, words in sorted(found, key=lambda one: one[0]):
        if bearing and order == 3 and not faces:
            continue  # where it can bear on something it does
        turn = within(shifted(z=shift), HERE if up > 0 else OVER)
        # a point of the hole's axis stands at turn(point) on the land's axis
        first_from_second = within(land.at, within(turn, back(hole.at)))
        result.append(Way(back(first_from_second), words))
    return tuple(result)


def _shared(land: Axis, low: float, high: float) -> float:
    return max(0.0, min(land.high, high) - max(land.low, low))


def meeting(pair: Joined, first: Frame, second: Frame) -> Meeting:
    """How a pair meets when ``first`` (with the hole) and ``second`` stand in these frames."""
    told = within(back(within(second, pair.shaft.at)), within(first, pair.hole.at))
    aside = math.hypot(told[3], told[7])
    askew = math.hypot(told[2], told[6])
    up = 1.0 if told[10] > 0 else -1.0
    low, high = (pair.hole.low, pair.hole.high) if up > 0 else (-pair.hole.high, -pair.hole.low)
    low, high = low + told[11], high + told[11]
    gaps = []
    if pair.shaft.low_stop:
        gaps.append(low - pair.shaft.low)
    if pair.shaft.high_stop:
        gaps.append(pair.shaft.high - high)
    return Meeting(aside, askew, tuple(gaps))


def apart_in_stack(stack: tuple[Axis, Axis], first: Frame, second: Frame) -> float:
    """How far two lands that a loop counts one after the other stand apart, or in one another [mm]."""
    told = within(back(within(second, stack[1].at)), within(first, stack[0].at))
    up = 1.0 if told[10] > 0 else -1.0
    ends = sorted((told[11] + up * stack[0].low, told[11] + up * stack[0].high))
    return abs(max(ends[0] - stack[1].high, stack[1].low - ends[1]))


def _screwed(pairs: tuple[Joined, ...]) -> tuple[Way, ...]:
    """Faces together and holes over holes; where a pattern allows several ways, each of them."""
    into_first = [_entering(pair.hole) for pair in pairs]  # where the screw leaves, and which way it goes
    into_second = [_receiving(pair.shaft) for pair in pairs]
    if len(pairs) == 1:
        (a, d), (b, e) = into_first[0], into_second[0]
        u, v = _square(d), _square(e)
        base = _carrying(a, d, u, b, e, v)
        spin = [within(_about(b, e, quarter), base) for quarter in (0, 90, 180, 270)]
        return tuple(Way(back(one), "one screw does not say how it is turned") for one in spin)
    found: list[Way] = []
    orders = (
        list(itertools.permutations(range(len(pairs))))
        if len(pairs) <= 4
        else [
            tuple((k + way * n) % len(pairs) for n in range(len(pairs)))
            for way in (1, -1)
            for k in range(len(pairs))
        ]
    )
    for order in orders:
        (a, d), (b, e) = into_first[0], into_second[order[0]]
        across = _towards(a, into_first[1][0])
        other = _towards(b, into_second[order[1]][0])
        if across is None or other is None:
            continue
        first = _carrying(a, d, across, b, e, other)
        off = max(
            _aside(point(first, into_first[n][0]), into_second[order[n]][0], e) for n in range(len(pairs))
        )
        if off <= NEAR and all(_far(first, one.second) for one in found):
            found.append(Way(first))
    return tuple(Way(back(one.second)) for one in found)


def _entering(hole: Axis) -> tuple[Vector, Vector]:
    """Where a screw leaves a clearance hole, and its direction."""
    if hole.high_open:
        return point(hole.at, (0, 0, hole.low)), direction(hole.at, (0, 0, -1))
    return point(hole.at, (0, 0, hole.high)), direction(hole.at, (0, 0, 1))


def _receiving(hole: Axis) -> tuple[Vector, Vector]:
    """Where a screw comes into the next hole, and the direction in which it goes on."""
    if hole.high_open:
        return point(hole.at, (0, 0, hole.high)), direction(hole.at, (0, 0, -1))
    return point(hole.at, (0, 0, hole.low)), direction(hole.at, (0, 0, 1))


def _carrying(a: Vector, d: Vector, u: Vector, b: Vector, e: Vector, v: Vector) -> Frame:
    """The frame that carries point a, direction d and the direction u square to it onto b, e and v."""
    own = frame(u, _cross(d, u), d, a)
    other = frame(v, _cross(e, v), e, b)
    return within(other, back(own))


def _about(at: Vector, axis: Vector, angle: float) -> Frame:
    """A turn about an axis through a point [deg]."""
    u = _square(axis)
    own = frame(u, _cross(axis, u), axis, at)
    return within(within(own, turned(angle)), back(own))


def _square(d: Vector) -> Vector:
    """A direction square to d: across it and as near x as it can be."""
    for x in ((1.0, 0.0, 0.0), (0.0, 1.0, 0.0)):
        along = sum(x[n] * d[n] for n in range(3))
        u = tuple(x[n] - along * d[n] for n in range(3))
        size = math.sqrt(sum(v * v for v in u))
        if size > 0.5:
            return u[0] / size, u[1] / size, u[2] / size
    return 0.0, 0.0, 1.0


def _towards(a: Vector, b: Vector) -> Vector | None:
    size = math.dist(a, b)
    return ((b[0] - a[0]) / size, (b[1] - a[1]) / size, (b[2] - a[2]) / size) if size > NEAR else None


def _cross(a: Vector, b: Vector) -> Vector:
    return a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]


def _aside(p: Vector, q: Vector, axis: Vector) -> float:
    """How far p lies from the line through q along an axis [mm]."""
    w = (p[0] - q[0], p[1] - q[1], p[2] - q[2])
    c = _cross(w, axis)
    return math.sqrt(c[0] ** 2 + c[1] ** 2 + c[2] ** 2)


def _far(one: Frame, other: Frame) -> bool:
    return max(abs(a - b) for a, b in zip(one, other, strict=True)) > 1e-6
