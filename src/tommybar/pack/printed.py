"""What a drawing says in figures, as data: each printed figure with the size of the part that it gives."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

PrintedKind = Literal[
    "length",  # from the datum along the axis, or along a side of a plate
    "diameter",
    "radius",
    "angle",
    "depth",
    "width",
    "chamfer",
    "thread",
    "count",
    "runout",
    "position",
    "finish",
    "form",  # no figure: a word that says what the feature is
]


@dataclass(frozen=True)
class PrintedDimension:
    """One figure of a sheet exactly as it is printed, and what it is of.

    ``words`` is the line of the sheet in which it stands; ``figure`` the part
    of that line which is the number, without sign and unit (of a form the
    word itself). ``value`` is the model's own figure [mm or deg], kept beside
    it so that a test can compare; nobody needs it to build the part.
    ``datum`` says from where it is measured ("face A", "face B", "axis",
    "corner", or another feature); ``start`` and ``end`` are the places
    between which it is measured, z from face A and r for turned parts, x and
    y from the datum corner for plates [mm].
    """

    kind: PrintedKind
    feature: str
    size: str
    words: str
    figure: str
    value: float = 0.0
    limits: tuple[str, str] | None = None
    unit: Literal["mm", "in", "deg", ""] = "mm"
    datum: str = ""
    start: tuple[float, float] | None = None
    end: tuple[float, float] | None = None
