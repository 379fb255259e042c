"""What is drilled, milled and sawn in a turned part, summed over slices across its axis.

A slice is a flat region of lines and arcs: rings of metal from the exact
half-section less the outline of every cutter there, so that where two cutters
meet, their common room is counted once. Its area and moments are exact; along
the axis they are summed by Gauss-Legendre between all places where the slice
changes its outline. Places that are not known beforehand are found by halving
until both sides' outlines are of one kind, and a stretch is halved until the
sums of 20 and of 12 points agree. Where slices are all alike one is enough.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from tommybar.shapes.along import corners_along, radii_at
from tommybar.shapes.curves import Ring
from tommybar.shapes.cutters import Cutter, circle_ring
from tommybar.shapes.cutting import difference
from tommybar.shapes.holes import stretch
from tommybar.shapes.moments import Moments, Plane, plane_moments

FINE, COARSE = 20, 12  # points of the sum that counts, and of the one it is compared with
AGREE = 1e-7  # share of the cutters' volume by which the two may differ; the finer is then far nearer
DEEPEST = 24  # halvings of one stretch at most
MOST = 6000  # slices after which no stretch is halved any more
NARROW = 1e-9  # a place is found when it is known so well [mm]


@dataclass(frozen=True)
class _Slice:
    """One slice: what the cutters take from it, and what its outline is made of."""

    taken: Plane
    kind: tuple[str, ...]


class Slices:
    """The slices of a part through some of its cutters."""

    def __init__(self, ring: Ring, cutters: Sequence[Cutter]) -> None:
        self._ring, self._cutters = ring, cutters
        self._left = MOST

    def at(self, z: float) -> _Slice:
        """The slice at z, which must be no corner's place."""
        self._left -= 1
        metal: list[Ring] = []
        for inner, outer in radii_at(self._ring, z):
            metal.append(circle_ring(0.0, 0.0, outer))
            if inner > 0:
                metal.append(tuple(p.reversed() for p in reversed(circle_ring(0.0, 0.0, inner))))
        left: Sequence[Ring] = metal
        for cutter in self._cutters:
            if cutter.start < z < cutter.end:
                for ring in cutter.rings(z):
                    left = difference(left, ring)
        before, after = plane_moments(metal), plane_moments(left)
        taken = Plane(
            before.area - after.area,
            before.x - after.x,
            before.y - after.y,
            before.xx - after.xx,
            before.yy - after.yy,
        )
        kind = tuple(sorted(_kind(ring) for ring in left))
        return _Slice(taken, kind)

    def taken(self) -> Moments:
        """All that the cutters take from the part."""
        low, high = min(c.start for c in self._cutters), max(c.end for c in self._cutters)
        along = corners_along(self._ring)
        low, high = max(low, along[0]), min(high, along[-1])
        places = {low, high, *along}
        for cutter in self._cutters:
            places.update((cutter.start, cutter.end, *cutter.splits))
        edges = _apart(sorted(z for z in places if low <= z <= high))
        total = Moments()
        rough = []
        for a, b in pairwise(edges):
            if self._steady(a, b):
                total += _prism(self.at((a + b) / 2).taken, a, b)
            else:
                rough.append((a, b, self._sum(a, b, COARSE)))
        scale = max(total.volume + sum(first.volume for _, _, first in rough), 1e-12)
        for a, b, first in rough:
            total += self._refined(a, b, first, scale, DEEPEST)
        return total

    def _steady(self, a: float, b: float) -> bool:
        """Whether every slice of a stretch is alike: then its sum is a prism's."""
        looks = [a + share * (b - a) for share in (0.01, 0.4, 0.99)]
        active = [cutter for cutter in self._cutters if cutter.start < looks[1] < cutter.end]
        first = radii_at(self._ring, looks[0])
        for z in looks[1:]:
            now = radii_at(self._ring, z)
            if len(now) != len(first) or any(
                abs(p - q) > NARROW
                for one, other in zip(now, first, strict=True)
                for p, q in zip(one, other, strict=True)
            ):
                return False
        return all(cutter.rings(looks[0]) == cutter.rings(z) for cutter in active for z in looks[1:])

    def _sum(self, a: float, b: float, points: int) -> Moments:
        total = Moments()
        for z, weight in stretch(a, b, points):
            total += _weighted(self.at(z).taken, z, weight)
        return total

    def _refined(self, a: float, b: float, coarse: Moments, scale: float, halvings: int) -> Moments:
        found = [(z, weight, self.at(z)) for z, weight in stretch(a, b, FINE)]
        if halvings and self._left > 0:
            for (z1, _, one), (z2, _, other) in pairwise(found):
                if one.kind != other.kind:
                    z = self._change(z1, z2, one.kind)
                    return self._two(a, z, b, scale, halvings)
        fine = Moments()
        for z, weight, one in found:
            fine += _weighted(one.taken, z, weight)
        if not halvings or self._left <= 0 or abs(fine.volume - coarse.volume) <= AGREE * scale:
            return fine
        return self._two(a, (a + b) / 2, b, scale, halvings)

    def _two(self, a: float, z: float, b: float, scale: float, halvings: int) -> Moments:
        total = Moments()
        for low, high in ((a, z), (z, b)):
            if high - low > NARROW * 10:
                total += self._refined(low, high, self._sum(low, high, COARSE), scale, halvings - 1)
        return total

    def _change(self, low: float, high: float, kind: tuple[str, ...]) -> float:
        """The place between two where the outline first is no longer of this kind."""
        while high - low > NARROW:
            middle = (low + high) / 2
            if self.at(middle).kind == kind:
                low = middle
            else:
                high = middle
        return (low + high) / 2


def _kind(ring: Ring) -> str:
    """What a ring is made of, in order, arcs that follow one another told once."""
    letters = [type(piece).__name__[0] for piece in ring]
    return "".join(sorted(a for n, a in enumerate(letters) if a == "L" or letters[n - 1] != "A"))


def _weighted(taken: Plane, z: float, weight: float) -> Moments:
    volume = weight * taken.area
    return Moments(
        volume,
        weight * taken.x,
        weight * taken.y,
        volume * z,
        weight * taken.xx,
        weight * taken.yy,
        volume * z * z,
    )


def _prism(taken: Plane, a: float, b: float) -> Moments:
    """A slice that stays the same from a to b."""
    long, first, second = b - a, (b * b - a * a) / 2, (b**3 - a**3) / 3
    return Moments(
        taken.area * long,
        taken.x * long,
        taken.y * long,
        taken.area * first,
        taken.xx * long,
        taken.yy * long,
        taken.area * second,
    )


def _apart(places: list[float]) -> list[float]:
    """Places in order without those that are the same but for rounding."""
    found = places[:1]
    for z in places[1:-1]:
        if z - found[-1] > 1e-9 and places[-1] - z > 1e-9:
            found.append(z)
    return [*found, *places[-1:]]
