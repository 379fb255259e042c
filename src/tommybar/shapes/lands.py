"""Features of the outside of a turned part: lands in order from face A to face B, and grooves in them."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from tommybar.shapes.dim import Dim, Face


@dataclass(frozen=True)
class Knurl:
    """A knurled band: straight or diamond, pitch [mm]."""

    pattern: Literal["straight", "diamond"]
    pitch: float


@dataclass(frozen=True)
class Cylinder:
    """An outside cylinder from ``start`` to ``end`` (z from face A) [mm].

    ``edge_start`` and ``edge_end`` are chamfers at its ends, where they are
    free edges, measured along the axis [mm], at ``edge_angle`` to the axis
    [deg]; ``round_start`` and ``round_end`` are rounded edges there instead.
    ``corner_start`` and ``corner_end`` are the radii in the corner where it
    runs against a larger neighbour [mm]. ``thread`` is a designation when it
    is a screw, ``full`` the length of full thread when that is less than the
    whole land, ``left`` a left-hand thread.
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
    edge_angle: float = 45.0
    round_start: float = 0.0
    round_end: float = 0.0
    corner_start: float = 0.0
    corner_end: float = 0.0
    full: float = 0.0
    left: bool = False
    edge_end_angle: float | None = (
        None  # of the chamfer at its B end, where it is another than edge_angle [deg]
    )

    @property
    def start_dia(self) -> float:
        """Diameter at its A end, as drawn [mm]."""
        return self.dia.value

    @property
    def end_dia(self) -> float:
        """Diameter at its B end, as drawn [mm]."""
        return self.dia.value


@dataclass(frozen=True)
class Cone:
    """An outside cone between two diameters [mm]; one of them 0 makes a point.

    ``given`` says which three of large diameter D, small diameter d, length
    L and half angle a the drawing states; ``taper`` a standard taper
    ("Morse 2"); ``limits`` those of its large diameter, if any.
    """

    name: str
    start: float
    end: float
    start_dia: float
    end_dia: float
    given: Literal["D d L", "D L a", "d L a", "D d a"] = "D d L"
    taper: str = ""
    limits: Dim | None = None


@dataclass(frozen=True)
class Arc:
    """A curved land: a circular arc in the half-section between two diameters [mm].

    ``radius`` is that of the arc; "out" bulges away from the axis (dome,
    ball, crown, rounded end), "in" is hollow (cove, fillet land). ``form``
    is what the trade calls it, for words, tools and the drawing.
    """

    name: str
    start: float
    end: float
    start_dia: float
    end_dia: float
    radius: float
    bulge: Literal["out", "in"]
    form: Literal["dome", "ball", "crown", "cove", "ogee", "fillet", "tip"] = "dome"


@dataclass(frozen=True)
class Eccentric:
    """A cylinder whose own axis lies ``throw`` beside the part's, at ``angle`` seen from face A [mm, deg]."""

    name: str
    dia: Dim
    start: float
    end: float
    throw: float
    angle: float = 0.0

    @property
    def start_dia(self) -> float:
        """Diameter of the circle that it swings in [mm]."""
        return self.dia.value + 2 * self.throw

    @property
    def end_dia(self) -> float:
        """Diameter of the circle that it swings in [mm]."""
        return self.dia.value + 2 * self.throw


@dataclass(frozen=True)
class Groove:
    """An outside groove or undercut down to a floor diameter [mm]; ``corner`` is the radius in its floor."""

    name: str
    start: float
    end: float
    floor: float
    corner: float = 0.0
    form: Literal["square", "round", "vee"] = "square"


Land = Cylinder | Cone | Arc | Eccentric


@dataclass(frozen=True)
class FaceGroove:
    """A narrow ring groove in a face, between two diameters [mm]."""

    name: str
    face: Face
    inside: float
    outside: float
    depth: float
