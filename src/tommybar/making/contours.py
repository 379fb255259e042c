"""The outside of a finished part as a card sees it: points along its curves, and how thick it is between two places."""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import lru_cache

from tommybar.making.jobs import in_card, span_in_card
from tommybar.shapes.features import Arc, Face, Groove, Land, TurnedShape
from tommybar.shapes.metal import land_figures
from tommybar.shapes.outside import arc_of
from tommybar.shapes.radii import land_radius, outside_radius

CHORD = 0.002  # how far a straight move may lie off a curve [mm]
MOST_POINTS = 400


@dataclass(frozen=True)
class Contour:
    """Places (z, r) along a stretch of the outside, from the free face towards the chuck [mm, card frame]."""

    points: tuple[tuple[float, float], ...]

    def most(self, near: float, far: float) -> float:
        """Largest radius between two places of the stretch, near above far [mm]."""
        found = [r for z, r in self.points if far - 1e-9 <= z <= near + 1e-9]
        return max(*found, self.at(near), self.at(far)) if found else max(self.at(near), self.at(far))

    def at(self, z: float) -> float:
        """Radius at a place; beyond the ends that of the end [mm]."""
        before = self.points[0]
        for place in self.points:
            if place[0] <= z + 1e-12:
                if before[0] - place[0] < 1e-12:
                    return max(before[1], place[1])
                share = min(1.0, max(0.0, (before[0] - z) / (before[0] - place[0])))
                return before[1] + share * (place[1] - before[1])
            before = place
        return self.points[-1][1]

    @property
    def apex(self) -> float:
        """Where the stretch is thickest, nearest the free face [mm]."""
        return max(self.points, key=lambda place: (round(place[1], 6), place[0]))[0]

    @property
    def largest(self) -> float:
        """Largest radius [mm]."""
        return max(r for _, r in self.points)

    @property
    def least(self) -> float:
        """Smallest radius [mm]."""
        return min(r for _, r in self.points)


def chords_needed(radius: float, turn: float) -> int:
    """How many straight moves follow an arc of that radius through ``turn`` within the chord error [rad]."""
    each = 2 * math.acos(max(0.0, 1 - CHORD / max(radius, CHORD)))
    return max(4, min(MOST_POINTS, math.ceil(abs(turn) / each)))


@lru_cache(maxsize=2048)
def land_contour(land: Land, length: float, free: Face) -> Contour:
    """The stretch of one land, its arc followed in straight moves."""
    if isinstance(land, Arc):
        arc = arc_of(land)
        count = chords_needed(arc.radius, arc.sweep)
        places = [arc.at(n / count) for n in range(count + 1)]
    else:
        first, last = land_figures(land, "target")
        places = [(land.start, first / 2), (land.end, last / 2)]
    seen = sorted(((in_card(z, length, free), r) for z, r in places), key=lambda place: -place[0])
    return Contour(tuple(seen))


def groove_contour(shape: TurnedShape, groove: Groove, free: Face) -> Contour:
    """The floor of a groove of any form."""
    count = 2 * chords_needed(
        max(groove.end - groove.start, groove.floor) / 2, math.pi
    )  # a point in its middle
    step = (groove.end - groove.start) / count
    inner = 1e-7  # stay off the walls of the groove, where the land beside it counts
    places = [
        min(max(groove.start + n * step, groove.start + inner), groove.end - inner) for n in range(count + 1)
    ]
    length = shape.length.value
    seen = sorted(((in_card(z, length, free), outside_radius(shape, z)) for z in places), key=lambda p: -p[0])
    return Contour(tuple(seen))


def in_front(shape: TurnedShape, land: Land, free: Face) -> float:
    """Largest radius between a land and the free face [mm]; 0 where it is the first."""
    length = shape.length.value
    near, _ = span_in_card(land.start, land.end, length, free)
    return max(
        (
            land_contour(other, length, free).largest
            for other in shape.outside
            if other.name != land.name and span_in_card(other.start, other.end, length, free)[0] > near + 1e-6
        ),
        default=0.0,
    )


def beside(shape: TurnedShape, land: Land, free: Face) -> tuple[float, float]:
    """Radii that stand against a land's end at the free side and at the chuck's side; 0 at an end face [mm]."""
    ahead = [land_radius(one, land.start) for one in shape.outside if abs(one.end - land.start) < 1e-6]
    after = [land_radius(one, land.end) for one in shape.outside if abs(one.start - land.end) < 1e-6]
    pair = (max(ahead, default=0.0), max(after, default=0.0))
    return pair if free == "A" else (pair[1], pair[0])


def falls(contour: Contour) -> bool:
    """Whether it gets thinner anywhere on its way to the chuck, where a right-hand knife does not reach."""
    low = -math.inf
    for _, r in contour.points:
        if r < low - 1e-6:
            return True
        low = max(low, r)
    return False
