"""Materials a home shop meets: figures, names, hazards, look-alikes, and which may run together."""

from tommybar.facts.materials.catalogue import cutting_group, material, material_names
from tommybar.facts.materials.likeness import Likeness, density_of_piece, likely_materials
from tommybar.facts.materials.pairs import Pairing, may_run_together
from tommybar.facts.materials.record import CuttingGroup, Material, Temper

__all__ = [
    "CuttingGroup",
    "Likeness",
    "Material",
    "Pairing",
    "Temper",
    "cutting_group",
    "density_of_piece",
    "likely_materials",
    "material",
    "material_names",
    "may_run_together",
]
