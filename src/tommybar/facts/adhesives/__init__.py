"""Adhesives and solders by class: gaps, strengths, temperatures, as ranges."""

from tommybar.facts.adhesives.bonding import Adhesive, adhesive, adhesive_names
from tommybar.facts.adhesives.joints import (
    axial_holding_force,
    bonded_disc_torque,
    holding_torque,
    joint_strength,
)
from tommybar.facts.adhesives.solders import Solder, solder, solder_names

__all__ = [
    "Adhesive",
    "Solder",
    "adhesive",
    "adhesive_names",
    "axial_holding_force",
    "bonded_disc_torque",
    "holding_torque",
    "joint_strength",
    "solder",
    "solder_names",
]
