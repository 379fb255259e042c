"""The two limits of a size, whatever they were read from."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Limits:
    """The two limits between which a size must lie.

    ``nominal`` is in mm; the deviations are in um from the nominal size and
    ``lower_um`` is never above ``upper_um``.
    """

    nominal: float  # mm
    zone: str  # "H7", "g6", or the text it was read from
    lower_um: float  # um
    upper_um: float  # um

    @property
    def smallest(self) -> float:
        """Smallest size allowed [mm]."""
        return self.nominal + self.lower_um / 1000

    @property
    def largest(self) -> float:
        """Largest size allowed [mm]."""
        return self.nominal + self.upper_um / 1000

    @property
    def middle(self) -> float:
        """Size half way between the limits: what to aim at [mm]."""
        return self.nominal + (self.lower_um + self.upper_um) / 2000

    @property
    def width_um(self) -> float:
        """Width of the tolerance zone [um]."""
        return self.upper_um - self.lower_um
