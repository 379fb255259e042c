"""The features of a part with their figures filled in.

Part frame of a turned part: the axis is z, face A lies at z = 0, face B at
z = length; every z is a distance from face A [mm]. Diameters are diameters.
Plates: x along the length, y along the width, from the lower left corner of
the named face seen from outside; depths go into the plate.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Literal

Face = Literal["A", "B"]


@dataclass(frozen=True)
class Dim:
    """A figure on a part [mm] and what it may be when made.

    ``zone`` is the ISO 286 zone or the text of the limits as drawn ("H7",
    "+0.05/0"); ``smallest`` and ``largest`` [mm] are None for a figure that
    falls under the general tolerance. ``name`` is the size as ``tommybar
    record`` calls it: part.size.
    """

    value: float
    name: str = ""
    zone: str = ""
    smallest: float | None = None
    largest: float | None = None
    because: str = ""  # why the limits are what they are, e.g. re-targeted from a measured mate

    @property
    def target(self) -> float:
        """What to aim at: the middle of the limits, or the figure itself [mm]."""
        if self.smallest is None or self.largest is None:
            return self.value
        return (self.smallest + self.largest) / 2

    @property
    def toleranced(self) -> bool:
        """Whether limits of its own are given."""
        return self.smallest is not None and self.largest is not None


@dataclass(frozen=True)
class Knurl:
    """A knurled band: straight or diamond, pitch [mm]."""

    pattern: Literal["straight", "diamond"]
    pitch: float


@dataclass(frozen=True)
class Cylinder:
    """An outside cylinder from ``start`` to ``end`` (z from face A) [mm].

    ``edge_start`` and ``edge_end`` are 45-degree chamfers at its ends, where
    they are free edges [mm]; ``thread`` a designation when it is a screw.
    """

    name: str
    dia: Dim
    start: float
    end: float
    edge_start: float = 0.0
    edge_end: float = 0.0
    thread: str = ""
    knurl: Knurl | None = None
    finish: str = ""


@dataclass(frozen=True)
class Cone:
    """An outside cone between two diameters [mm]."""

    name: str
    start: float
    end: float
    start_dia: float
    end_dia: float


@dataclass(frozen=True)
class Groove:
    """An outside groove or undercut down to a floor diameter [mm]."""

    name: str
    start: float
    end: float
    floor: float


@dataclass(frozen=True)
class Bore:
    """A hole on the axis, entered from ``face``, ``depth`` deep from that face [mm].

    ``through`` bores run from face to face. ``bottom`` "drill" leaves a
    118-degree tip below ``depth``. A counterbore is a second, shorter Bore.
    ``after`` names a joint after which the size is finished ("press").
    """

    name: str
    dia: Dim
    face: Face
    depth: float
    through: bool
    bottom: Literal["flat", "drill"] = "flat"
    thread: str = ""
    edge: float = 0.0
    after: str = ""


@dataclass(frozen=True)
class Recess:
    """A ring-shaped recess turned in a face, between two diameters [mm]."""

    name: str
    face: Face
    inside: float
    outside: float
    depth: float
    corner: float = 0.0


@dataclass(frozen=True)
class CircleHoles:
    """Equal holes along the axis on a pitch circle [mm, deg].

    They run between z ``start`` and ``end`` (what metal stands there).
    """

    name: str
    dia: Dim
    count: int
    circle: float
    start_angle: float
    start: float
    end: float
    thread: str = ""


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


@dataclass(frozen=True)
class TurnedShape:
    """A part turned about one axis, with the holes that are drilled in it."""

    length: Dim
    outside: tuple[Cylinder | Cone, ...]
    grooves: tuple[Groove, ...] = ()
    bores: tuple[Bore, ...] = ()
    recesses: tuple[Recess, ...] = ()
    circle_holes: tuple[CircleHoles, ...] = ()
    cross_holes: tuple[CrossHole, ...] = ()


PlateFace = Literal["top", "bottom", "front", "back", "left", "right"]


@dataclass(frozen=True)
class PlateHole:
    """A hole in a face of a plate or block, at x, y on that face [mm].

    ``depth`` is None for a hole right through; for a blind tapped hole it is
    the depth of full thread. ``sink_dia``/``sink_depth`` give a counterbore.
    """

    name: str
    face: PlateFace
    x: float
    y: float
    dia: Dim
    depth: float | None = None
    thread: str = ""
    sink_dia: float = 0.0
    sink_depth: float = 0.0


@dataclass(frozen=True)
class PlateShape:
    """A rectangular plate or block: length (x), width (y), thickness [mm]."""

    length: Dim
    width: Dim
    thickness: Dim
    corner: float = 0.0  # radius of the four corners in plan [mm]
    holes: tuple[PlateHole, ...] = field(default=())


Shape = TurnedShape | PlateShape
