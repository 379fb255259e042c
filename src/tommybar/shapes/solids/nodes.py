"""What a construction is made of: bodies of revolution, prisms, coils, and how they are put together."""

from __future__ import annotations

import math
from dataclasses import dataclass
from itertools import pairwise

from tommybar.shapes.solids.frames import HERE, Frame, Vector
from tommybar.shapes.solids.rings import Ring, box

BEYOND = 1.0  # cutting bodies run past a face by this much, so that no skin stays [mm]
RAMP = 0.5  # turns over which the pitch of a coil changes


@dataclass(frozen=True)
class Turn:
    """A ring of (radius, z) turned about the frame's z, from its x by ``angle`` [mm, deg]."""

    ring: Ring
    at: Frame = HERE
    angle: float = 360.0


@dataclass(frozen=True)
class Prism:
    """A ring of (x, y) of the frame drawn out along its z from 0 to ``height`` [mm]."""

    ring: Ring
    height: float
    at: Frame = HERE


@dataclass(frozen=True)
class Coil:
    """Round wire wound on a mean ``radius`` about the frame's z, from z = 0 and its x [mm].

    ``runs`` are stretches of (turns, pitch) one after another; ``leg`` is
    straight wire that goes on at both ends the way the coil points there.
    """

    radius: float
    wire: float
    runs: tuple[tuple[float, float], ...]
    left: bool = False
    at: Frame = HERE
    leg: float = 0.0

    def path(self, steps: int) -> list[tuple[Vector, Vector, Vector]]:
        """Points of the wire's middle line, its direction there, and the direction away from the axis."""
        hand = -1.0 if self.left else 1.0
        whole = sum(turns for turns, _ in self.runs)
        count = max(8, math.ceil(whole * steps))
        stops = [whole * n / count for n in range(count + 1)]
        slopes = [self._pitch_at(turn) for turn in stops]
        highs = [0.0]
        for (turn, after), (a, b) in zip(pairwise(stops), pairwise(slopes), strict=True):
            highs.append(highs[-1] + (a + b) / 2 * (after - turn))
        places = list(zip(stops, highs, strict=True))
        found: list[tuple[Vector, Vector, Vector]] = []
        for (turn, high), rise in zip(places, slopes, strict=True):
            c, s = math.cos(math.tau * turn), hand * math.sin(math.tau * turn)
            round_ = math.tau * self.radius
            size = math.hypot(round_, rise)
            along = (-hand * round_ * s / size, hand * round_ * c / size, rise / size)
            found.append(((self.radius * c, self.radius * s, high), along, (c, s, 0.0)))
        if self.leg <= 0:
            return found
        count = max(2, math.ceil(self.leg / self.wire))
        shares = [self.leg * (n + 1) / count for n in range(count)]
        first, last = found[0], found[-1]
        before = [(_on(first, -far), first[1], first[2]) for far in reversed(shares)]
        return [*before, *found, *((_on(last, far), last[1], last[2]) for far in shares)]

    def _pitch_at(self, turn: float) -> float:
        """Pitch at a place; from one run to the next it changes evenly over half a turn."""
        begun, value = 0.0, self.runs[0][1]
        for (turns, pitch), (_, following) in pairwise(self.runs):
            begun += turns
            share = min(1.0, max(0.0, (turn - begun) / RAMP + 0.5))
            value += share * (following - pitch)
        return value


def _on(place: tuple[Vector, Vector, Vector], far: float) -> Vector:
    """A point some way on along a direction."""
    spot, along, _ = place
    return spot[0] + far * along[0], spot[1] + far * along[1], spot[2] + far * along[2]


@dataclass(frozen=True)
class Join:
    """Bodies made one."""

    members: tuple[Node, ...]


@dataclass(frozen=True)
class Less:
    """A body with others cut out of it."""

    body: Node
    cuts: tuple[Node, ...]


@dataclass(frozen=True)
class Common:
    """What two bodies have in common."""

    first: Node
    second: Node


@dataclass(frozen=True)
class Placed:
    """A body carried to another place."""

    body: Node
    at: Frame


Node = Placed | Turn | Prism | Coil | Join | Less | Common


def less(body: Node, cuts: list[Node]) -> Node:
    """A body with cuts, or the body itself where there are none."""
    return Less(body, tuple(cuts)) if cuts else body


def rod(dia: float, start: float, end: float, at: Frame = HERE) -> Turn:
    """A round bar along the frame's z [mm]."""
    return Turn(box(0.0, start, dia / 2, end), at)
