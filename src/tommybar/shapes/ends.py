"""Features of the inside and the faces of a turned part: bores, cups, countersinks, centres, recesses."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from tommybar.shapes.dim import Dim, Face


@dataclass(frozen=True)
class Bore:
    """A hole on the axis, entered from ``face``, ``depth`` deep from that face [mm].

    ``through`` bores run from face to face. ``bottom`` "drill" leaves a
    118-degree tip below ``depth``; ``corner`` is the radius round a flat
    floor. A counterbore is a second, shorter Bore. ``after`` names a joint
    after which the size is finished ("press"). ``full`` is the length of full
    thread when that is less than ``depth``, ``left`` a left-hand thread.
    """

    name: str
    dia: Dim
    face: Face
    depth: float
    through: bool
    bottom: Literal["flat", "drill", "ball"] = "flat"
    thread: str = ""
    edge: float = 0.0
    after: str = ""
    corner: float = 0.0
    full: float = 0.0
    left: bool = False


@dataclass(frozen=True)
class BoreTaper:
    """A conical bore on the axis from ``mouth`` diameter at ``start`` below the face to ``end_dia`` [mm].

    ``taper`` names a standard one ("Morse 2").
    """

    name: str
    face: Face
    start: float
    depth: float
    mouth: float
    end_dia: float
    taper: str = ""


@dataclass(frozen=True)
class Cup:
    """A conical cup or countersink in a face: its mouth diameter and included angle [mm, deg].

    ``relief`` and ``relief_depth`` are the small hole at its bottom, so that
    a point never touches there; ``on`` names the bore that a countersink
    opens, empty for a cup on its own.
    """

    name: str
    face: Face
    mouth: float
    included: float
    relief: float = 0.0
    relief_depth: float = 0.0
    on: str = ""


@dataclass(frozen=True)
class CentreHole:
    """A centre hole of ISO 866 form A, ISO 2540 form B or ISO 2541 form R by its pilot diameter [mm].

    ``keep`` as ISO 6411 says it: it "may" stay, it "must" stay, it "must not".
    """

    name: str
    face: Face
    form: Literal["A", "B", "R"]
    pilot: float
    keep: Literal["may", "must", "must not"] = "may"


@dataclass(frozen=True)
class BoreGroove:
    """A groove inside a bore, ``start`` to ``end`` from face A, out to a floor diameter [mm]."""

    name: str
    on: str
    start: float
    end: float
    floor: float


@dataclass(frozen=True)
class Recess:
    """A ring-shaped recess turned in a face, between two diameters at its mouth [mm].

    ``inside_draft`` and ``outside_draft`` lean its walls so that the floor
    is narrower than the mouth [deg from the axis].
    """

    name: str
    face: Face
    inside: float
    outside: float
    depth: float
    corner: float = 0.0
    inside_draft: float = 0.0
    outside_draft: float = 0.0
