"""The outside of the metal in the chuck as it stands, in the card frame."""

from __future__ import annotations

import itertools
from dataclasses import dataclass


@dataclass(frozen=True)
class Workpiece:
    """Outside diameters along the axis, from the free end towards the chuck.

    ``spans`` are (near, far, dia) with near > far [mm, card frame], touching
    each other; the first near is the rough free face.
    """

    spans: tuple[tuple[float, float, float], ...]

    @property
    def top(self) -> float:
        """Where the free face stands now [mm]."""
        return self.spans[0][0]

    @property
    def bottom(self) -> float:
        """Where the metal ends towards the chuck [mm]."""
        return self.spans[-1][1]

    def largest(self, near: float, far: float) -> float:
        """Largest diameter between two places, near > far [mm]."""
        return max(
            (dia for top, low, dia in self.spans if top > far + 1e-6 and low < near - 1e-6), default=0.0
        )

    def faced(self, z: float) -> Workpiece:
        """Cut square at z: everything nearer is gone."""
        kept = [(min(near, z), far, dia) for near, far, dia in self.spans if far < z - 1e-9]
        return Workpiece(tuple(kept))

    def ended(self, z: float) -> Workpiece:
        """Parted at z: everything towards the chuck is gone."""
        kept = [(near, max(far, z), dia) for near, far, dia in self.spans if near > z + 1e-9]
        return Workpiece(tuple(kept))

    def turned(self, near: float, far: float, dia: float) -> Workpiece:
        """Turned down to a diameter between two places [mm]."""
        cuts: list[tuple[float, float, float]] = []
        for top, low, has in self.spans:
            marks = sorted({top, low, *(z for z in (near, far) if low < z < top)}, reverse=True)
            for one, other in itertools.pairwise(marks):
                inside = one <= near + 1e-9 and other >= far - 1e-9
                cuts.append((one, other, min(has, dia) if inside else has))
        joined: list[tuple[float, float, float]] = []
        for one, other, has in cuts:
            if joined and abs(joined[-1][2] - has) < 1e-9:
                joined[-1] = (joined[-1][0], other, has)
            else:
                joined.append((one, other, has))
        return Workpiece(tuple(joined))

    def reversed(self, length: float) -> Workpiece:
        """Turned end for end: the other finished face becomes z = 0 [mm]."""
        return Workpiece(
            tuple((-length - far, -length - near, dia) for near, far, dia in reversed(self.spans))
        )
