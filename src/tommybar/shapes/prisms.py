"""Features of plates and blocks.

x along the length, y along the width, from the lower left corner of the named
face seen from outside; depths go into the plate [mm].
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal, get_args

from tommybar.shapes.dim import Dim

PlateFace = Literal["top", "bottom", "front", "back", "left", "right"]
PLATE_FACES: tuple[PlateFace, ...] = get_args(PlateFace)
Side = Literal["front", "back", "left", "right"]


@dataclass(frozen=True)
class Corner:
    """A corner of an outline in plan, seen on the top face; ``radius`` rounds it [mm]."""

    x: float
    y: float
    radius: float = 0.0


@dataclass(frozen=True)
class Boss:
    """A rounded end about a place, usually that of a hole [mm]."""

    x: float
    y: float
    radius: float


@dataclass(frozen=True)
class Outline:
    """The outline of a plate in plan, when it is no rectangle.

    "polygon" joins ``corners`` in order, counter-clockwise, each rounded by
    its radius; "disc" is one boss; "bosses" wraps a band round its bosses,
    so that straight flanks run tangent from arc to arc. It lies inside the
    plate's length and width, which are its overall sizes.
    """

    form: Literal["polygon", "disc", "bosses"]
    corners: tuple[Corner, ...] = ()
    bosses: tuple[Boss, ...] = ()


@dataclass(frozen=True)
class PlateHole:
    """A hole in a face of a plate or block, at x, y on that face [mm].

    ``depth`` is None for a hole right through; for a blind tapped hole it is
    the depth of full thread. ``sink_dia``/``sink_depth`` give a counterbore,
    or a countersink when ``sink_angle`` [deg included] is given. ``tilt``
    leans the hole from the face's normal, towards ``towards`` on that face,
    counter-clockwise from its x [deg]; x and y are then where its axis meets
    the face, and ``flat`` says whether a flat is cut there first. ``place``
    is the diameter of its true-position zone [mm], 0 for the general tolerance.
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
    sink_angle: float = 0.0
    tilt: float = 0.0
    towards: float = 0.0
    flat: bool = False
    bottom: Literal["flat", "drill"] = "drill"
    place: float = 0.0
    left: bool = False


@dataclass(frozen=True)
class Slot:
    """A slot of one width in a face: open or with half-round ends [mm, deg].

    x, y is its middle; ``long`` is overall; ``angle`` from the face's x.
    ``depth`` None goes right through. An end that lies beyond the outline is open.
    """

    name: str
    face: PlateFace
    x: float
    y: float
    long: float
    width: Dim
    depth: float | None = None
    angle: float = 0.0


@dataclass(frozen=True)
class Pocket:
    """A rectangular pocket about its middle, with ``corner`` radius in plan [mm]; depth None goes through."""

    name: str
    face: PlateFace
    x: float
    y: float
    length: Dim
    width: Dim
    corner: float
    depth: float | None = None


@dataclass(frozen=True)
class PlateStep:
    """A step along one side of the top or bottom face: ``wide`` from that side, ``depth`` down [mm]."""

    name: str
    face: Literal["top", "bottom"]
    side: Side
    wide: Dim
    depth: Dim


@dataclass(frozen=True)
class Vee:
    """A vee groove right across a face, ``at`` from its left (or lower) edge [mm], included angle [deg].

    ``along`` is the axis of the face it runs along; ``width`` at the face.
    """

    name: str
    face: PlateFace
    along: Literal["x", "y"]
    at: float
    width: float
    included: float = 90.0


@dataclass(frozen=True)
class Dovetail:
    """A dovetail right across the top face [mm, deg]: a slot, or a tail left standing.

    ``at`` is its middle from the left (or lower) edge, ``narrow`` its width
    at the narrow side, ``angle`` of its flanks from the floor.
    """

    name: str
    along: Literal["x", "y"]
    at: float
    narrow: Dim
    depth: float
    angle: float = 60.0
    tail: bool = False


@dataclass(frozen=True)
class PlateEdge:
    """A chamfer at 45 degrees [mm] or a round along the outline of one face."""

    name: str
    face: Literal["top", "bottom"]
    size: float
    round: bool = False


@dataclass(frozen=True)
class PlateSlit:
    """A saw cut from a side through the whole thickness, to end at a hole or ``long`` in [mm]."""

    name: str
    side: Side
    at: float
    long: float
    width: float
