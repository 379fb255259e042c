"""What a construction is made of: bodies of revolution, prisms, coils, and how they are put together."""

from __future__ import annotations

from dataclasses import dataclass

from tommybar.shapes.solids.frames import HERE, Frame
from tommybar.shapes.solids.rings import Ring, box


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

    ``runs`` are stretches of (turns, pitch) one after another.
    """

    radius: float
    wire: float
    runs: tuple[tuple[float, float], ...]
    left: bool = False
    at: Frame = HERE


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
