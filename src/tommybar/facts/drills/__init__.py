"""Drills: sizes by name and series, points, reaming, centre drills, countersinks, cutters."""

from tommybar.facts.drills.points import point_length
from tommybar.facts.drills.reaming import (
    ReamingAllowance,
    ReamingDrill,
    reamer_limits,
    reaming_allowance,
    reaming_drill,
)
from tommybar.facts.drills.sizes import SERIES, DrillSize, drill_size, drills_of_series, nearest_drills

__all__ = [
    "SERIES",
    "DrillSize",
    "ReamingAllowance",
    "ReamingDrill",
    "drill_size",
    "drills_of_series",
    "nearest_drills",
    "point_length",
    "reamer_limits",
    "reaming_allowance",
    "reaming_drill",
]
