"""Drills: sizes by name and series, points, reaming, centre drills, countersinks, cutters."""

from tommybar.facts.drills.centre_drills import CentreDrill, centre_drill, centre_drills_of_form
from tommybar.facts.drills.cutters import countersink_depth, countersink_diameters, end_mill_diameters
from tommybar.facts.drills.lengths import DrillLength, drill_length
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
    "CentreDrill",
    "DrillLength",
    "DrillSize",
    "ReamingAllowance",
    "ReamingDrill",
    "centre_drill",
    "centre_drills_of_form",
    "countersink_depth",
    "countersink_diameters",
    "drill_length",
    "drill_size",
    "drills_of_series",
    "end_mill_diameters",
    "nearest_drills",
    "point_length",
    "reamer_limits",
    "reaming_allowance",
    "reaming_drill",
]
