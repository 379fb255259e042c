"""Features that are drilled, milled or sawn in a turned part, with their clocking.

Angles are seen from face A, counter-clockwise from the x axis of the part [deg].
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from tommybar.shapes.dim import Dim, Face


@dataclass(frozen=True)
class CircleHoles:
    """Equal holes along the axis on a pitch circle [mm, deg].

    They run between z ``start`` and ``end`` (what metal stands there).
    ``sink_dia``/``sink_depth`` give a counterbore at the face they are
    entered from.
    """

    name: str
    dia: Dim
    count: int
    circle: float
    start_angle: float
    start: float
    end: float
    thread: str = ""
    sink_dia: float = 0.0
    sink_depth: float = 0.0
    face: Face = "A"  # the face they are entered from
    blind: bool = (
        False  # they end inside the metal, with a drill tip below ``end`` (face A) or ``start`` (face B)
    )


@dataclass(frozen=True)
class CrossHole:
    """A hole across the axis at ``z``, at an angle seen from face A [mm, deg].

    ``walls`` 1 goes to the axis or bore, 2 right through. ``into`` names the
    bore that it is meant to break into (a grub screw, an oil hole).
    """

    name: str
    dia: Dim
    z: float
    angle: float = 0.0
    walls: Literal[1, 2] = 1
    thread: str = ""
    into: str = ""
    offset: float = 0.0  # of its axis beside the part's axis, to the left looking along the hole [mm]
    depth: float | None = (
        None  # blind, from the outside of the land; None goes to the axis, the bore or through
    )
    sink_dia: float = 0.0
    sink_depth: float = 0.0


@dataclass(frozen=True)
class Flats:
    """``count`` equal flats, each ``level`` from the axis, from ``start`` to ``end`` along it [mm].

    Two make a size across flats, four a square, six a hexagon; the first
    looks towards ``angle`` [deg]. ``across`` is the size across flats as
    drawn, or None for a single flat, which is measured over its depth.
    """

    name: str
    count: int
    level: float
    start: float
    end: float
    angle: float = 0.0
    across: Dim | None = None

    @property
    def aimed(self) -> float:
        """Distance from the axis that is aimed at: half the middle of the limits of its size across flats [mm]."""
        return self.level if self.across is None else self.across.target / 2


@dataclass(frozen=True)
class HeadSlot:
    """A slot straight across a face and its axis (a screwdriver slot) [mm, deg]."""

    name: str
    face: Face
    width: Dim
    depth: float
    angle: float = 0.0


@dataclass(frozen=True)
class CrossSlot:
    """A slot along the axis with half-round ends, right through one or both walls [mm, deg].

    ``start`` and ``end`` are its overall ends along the axis, from face A.
    """

    name: str
    start: float
    end: float
    width: Dim
    angle: float = 0.0
    walls: Literal[1, 2] = 2


@dataclass(frozen=True)
class Keyway:
    """A keyway in a shaft: ``depth`` below the top of the round [mm, deg].

    "sunk" ends in half rounds of its width, "sled" is cut with a disc of
    ``cutter`` diameter and runs out, "woodruff" is plunged with that disc at
    the middle of ``start`` and ``end``.
    """

    name: str
    start: float
    end: float
    width: Dim
    depth: float
    angle: float = 0.0
    form: Literal["sunk", "sled", "woodruff"] = "sunk"
    cutter: float = 0.0


@dataclass(frozen=True)
class BoreKeyway:
    """A keyway broached along a bore: ``depth`` over the bore's wall [mm, deg]."""

    name: str
    on: str
    width: Dim
    depth: float
    angle: float = 0.0


@dataclass(frozen=True)
class Slit:
    """A saw cut in one plane through the axis (or to it), from a face, ``depth`` along it [mm, deg].

    ``walls`` 1 cuts from the axis outwards on one side only; ``depth`` None
    runs the whole length.
    """

    name: str
    face: Face
    width: float
    depth: float | None = None
    angle: float = 0.0
    walls: Literal[1, 2] = 1


@dataclass(frozen=True)
class Engraving:
    """Lines of a scale cut round a land or in a face: so many divisions, their lengths, numbers or words.

    Its depth is that of a scribed line: it takes no metal in any sum.
    """

    name: str
    on: str
    divisions: int
    short: float
    long: float
    long_every: int = 0
    words: str = ""
    over: float = 360.0  # the angle (or the length on a plate) that the divisions fill


@dataclass(frozen=True)
class Rays:
    """Lines engraved on the top of a plate that radiate from a place, each from one radius to another [mm].

    ``angles`` are counted counter-clockwise from x [deg]; ``words`` is what stands
    beside each, on its left. Like all engraving it takes no metal in any sum.
    """

    name: str
    x: float
    y: float
    inner: float
    outer: float
    angles: tuple[float, ...]
    words: tuple[str, ...] = ()
