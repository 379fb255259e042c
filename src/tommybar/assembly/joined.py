"""What joins two pieces of an assembly: their features and how these belong together."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from tommybar.assembly.axes import Axis
from tommybar.design.model import SizedDesign

Piece = tuple[str, int]  # part, and which of its pieces, from 1
Kind = Literal["screw", "fit", "thread", "screw head", "belt", "face"]


@dataclass(frozen=True)
class Joined:
    """A hole of one piece about a land (or screw) of another, or before a tapped hole."""

    hole: Axis
    shaft: Axis
    words: str  # the two features as the design names them


@dataclass(frozen=True)
class Link:
    """Two pieces and the features that join them.

    "screw": ``first`` has the clearance holes and lies on ``second``, which has
    the threads or the next holes. "fit" and "thread": ``first`` has the hole.
    ``stack`` are lands of both that a loop counts one after the other.
    "screw head": ``second`` is a bought screw in the hole of ``first``. "face": the
    two axes begin in the middles of two faces and point out of their metal; the
    faces look at one another, or the same way when ``level``, ``apart`` [mm]. "belt": two
    pulleys in one plane, their axes ``apart``.
    """

    kind: Kind
    first: Piece
    second: Piece
    pairs: tuple[Joined, ...]
    lasting: str = ""  # "pressed", "bonded", "soldered": it does not come apart again
    engaged: float = 0.0  # length of thread in thread [mm]; 0: as far as it goes
    guessed: str = ""  # why it is taken to be so, where no relation says it
    stack: tuple[Axis, Axis] | None = None
    apart: float = 0.0
    level: bool = False
    towards: float | None = None  # where the first pulley of a belt stands about the second [deg]
    through: bool = False  # it goes loosely through, its head before the hole
    centred: bool = False  # middle on middle, and not against a stop


def pieces_of(design: SizedDesign) -> tuple[Piece, ...]:
    """Every piece of a design in order."""
    return tuple((part.name, n + 1) for part in design.parts for n in range(part.count))
