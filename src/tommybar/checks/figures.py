"""A worked-out figure for the cover or the checks page, with its source."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Figure:
    """One figure: what it is of, its value and unit, how it was worked out, and from which source."""

    what: str
    part: str
    value: float
    unit: str
    decimals: int
    how: str  # the formula with its figures
    source: str
