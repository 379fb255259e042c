"""Parts of sheet and wire: bent strip, rolled rings, springs, bent wire."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Literal

from tommybar.shapes.dim import Dim
from tommybar.shapes.prisms import Outline, PlateHole


@dataclass(frozen=True)
class Bend:
    """A bend straight across a strip [mm, deg].

    ``at`` is where the bend begins on the flat blank, from its left end
    (worked out from the legs); ``angle`` how far it is bent out of the flat,
    positive towards the top face; ``radius`` inside.
    """

    name: str
    at: float
    angle: float
    radius: float


@dataclass(frozen=True)
class SheetShape:
    """A flat blank of sheet, its holes, and the bends made in it after them [mm].

    ``legs`` are the outside lengths as the drawing gives them, between the
    tangent intersections; ``neutral`` is the share of the thickness, from the
    inside of a bend, at which the length does not change.
    """

    length: Dim  # of the flat blank
    width: Dim
    thickness: Dim
    outline: Outline | None = None
    holes: tuple[PlateHole, ...] = field(default=())
    bends: tuple[Bend, ...] = field(default=())
    legs: tuple[float, ...] = field(default=())
    neutral: float = 0.44


@dataclass(frozen=True)
class RolledRing:
    """A ring or open hoop rolled from strip or wire: inside diameter, section, gap [mm].

    ``joint`` says how the ends meet.
    """

    inside: Dim
    width: float  # along the axis; the wire's diameter for wire
    thickness: float
    round: bool = False  # of wire rather than strip
    gap: float = 0.0
    joint: Literal["open", "butt", "lap", "soldered"] = "open"


@dataclass(frozen=True)
class SpringShape:
    """A wound spring: wire and outside diameter, coils, free length [mm].

    ``ends`` of a compression spring are "open", "closed" or "ground"; an
    extension spring has "hooks", a torsion spring "legs" ``leg`` long each.
    """

    kind: Literal["compression", "extension", "torsion"]
    wire: float
    outside: Dim
    active: float
    total: float
    free: float
    ends: Literal["open", "closed", "ground", "hooks", "legs"] = "closed"
    leg: float = 0.0
    left: bool = False
    fitted: float = 0.0  # its length in its place; 0: not said


@dataclass(frozen=True)
class WireShape:
    """Round wire or rod bent in a plane: straight legs and the bends between them [mm, deg]."""

    dia: Dim
    legs: tuple[float, ...]  # straight lengths between tangent points
    bends: tuple[tuple[float, float], ...]  # inside radius, angle; one fewer than legs
