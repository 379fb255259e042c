"""Change gears: trains for a pitch from an owned set, their error, and whether they mesh."""

from tommybar.facts.gears.lead import cut_pitch, lead_of, ratio_error
from tommybar.facts.gears.quadrant import Quadrant, mesh_faults
from tommybar.facts.gears.search import gear_set, gear_trains
from tommybar.facts.gears.train import Train, train_for

__all__ = [
    "Quadrant",
    "Train",
    "cut_pitch",
    "gear_set",
    "gear_trains",
    "lead_of",
    "mesh_faults",
    "ratio_error",
    "train_for",
]
