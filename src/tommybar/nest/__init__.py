"""Blanks onto the rack and onto what can be bought."""

from tommybar.nest.cutlist import BuyLine, Cut, CutList, SawnBar
from tommybar.nest.nested import nest

__all__ = ["BuyLine", "Cut", "CutList", "SawnBar", "nest"]
