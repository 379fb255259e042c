"""One thing that must hold: a figure of the design against a bound."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

TINY = 1e-6  # a bound is met when it is missed by less [mm]

Key = tuple[str, str, str]
Kind = Literal["limit", "wall", "relation", "must", "between", "drawable", "tool"]


@dataclass(frozen=True)
class Asked:
    """A figure that must not be above its bound (or, with ``least``, not below) [mm].

    ``what`` and ``part`` together name it: the same thing asked at another
    scale bears the same key.
    """

    kind: Kind
    what: str
    part: str
    figure: float
    bound: float
    least: bool = False
    who: str = ""  # who sets the bound: "outside jaws", "shop file", "design"
    remedy: str = ""

    @property
    def key(self) -> Key:
        """What names it at every scale."""
        return self.kind, self.what, self.part

    @property
    def slack(self) -> float:
        """By how much it holds; below 0 when it is broken [mm]."""
        return self.figure - self.bound if self.least else self.bound - self.figure

    @property
    def holds(self) -> bool:
        """Whether it is met."""
        return self.slack >= -TINY
