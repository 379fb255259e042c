"""What a shop has for work between centres and for slender work: dogs, tail centres, steadies."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Literal

# Half the angle of a centre's point, as of the centre holes of ISO 866 (from memory) [rad].
POINT = math.radians(30.0)


@dataclass(frozen=True)
class Dog:
    """A driving dog: the rounds it takes, and how much length of the work it covers [mm]."""

    smallest: float
    largest: float
    wide: float


@dataclass(frozen=True)
class TailCentre:
    """A centre of the tailstock with a 60-degree point.

    The cone goes up to the ``nose`` diameter, then the nose runs straight until
    ``long`` from the point, where the ``body`` begins [mm]. A half centre is
    ground away on the tool's side, so that a tool gets to the hole's mouth.
    """

    kind: Literal["dead", "running", "half"]
    nose: float
    long: float
    body: float


@dataclass(frozen=True)
class Steady:
    """A steady rest: fixed to the bed, or travelling with the carriage; the rounds it closes on [mm]."""

    kind: Literal["fixed", "travelling"]
    smallest: float
    largest: float
