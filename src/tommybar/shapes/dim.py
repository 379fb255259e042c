"""A figure on a part with what it may be when made, and the two faces of a turned part."""

from __future__ import annotations

from dataclasses import dataclass
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
