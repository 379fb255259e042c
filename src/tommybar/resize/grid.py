"""The grid that scaled sizes are rounded to, so that dials and drawings read well."""

from __future__ import annotations

from math import floor
from typing import Literal

INCH = 25.4
NUDGE = 1e-9  # lets 13.749999999 count as the tie that it is


def step(value: float, units: Literal["mm", "in"] = "mm") -> float:
    """The grid at a figure [mm]: 0.5 from 3 up and 0.1 below; in inches 1/64 from 1/8 up and 0.005 below.

    >>> step(13.6), step(2.4), step(25.4, "in") == 25.4 / 64
    (0.5, 0.1, True)
    """
    if units == "in":
        return INCH / 64 if value >= INCH / 8 - NUDGE else INCH * 0.005
    return 0.5 if value >= 3 - NUDGE else 0.1


def on_grid(value: float, units: Literal["mm", "in"] = "mm") -> float:
    """The nearest figure on the grid; a tie goes up, towards thicker walls and wider clearances [mm].

    >>> on_grid(13.6), on_grid(54.4), on_grid(3.25), on_grid(1.36)
    (13.5, 54.5, 3.5, 1.4)
    """
    grid = step(value, units)
    return _clean(max(1, floor(value / grid + 0.5 + NUDGE)) * grid)


def neighbour(value: float, units: Literal["mm", "in"] = "mm") -> float:
    """The grid figure on the other side of the exact one [mm].

    >>> neighbour(13.6), neighbour(54.4), neighbour(34.0)
    (14.0, 54.0, 34.5)
    """
    nearest, grid = on_grid(value, units), step(value, units)
    other = nearest + grid if value >= nearest - NUDGE else nearest - grid
    return _clean(max(other, grid))


def _clean(value: float) -> float:
    return round(value, 9)
