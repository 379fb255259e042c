"""Dividing a circle: dividing head with plates, and rotary table with vernier."""

from tommybar.facts.dividing.compound import CompoundIndexing, compound_indexings
from tommybar.facts.dividing.head import (
    Indexing,
    degrees_a_turn,
    index_angle,
    index_divisions,
    plain_indexings,
)
from tommybar.facts.dividing.places import CrankPlace, crank_places
from tommybar.facts.dividing.plates import plate_set, plates_of
from tommybar.facts.dividing.table import TableSetting, table_settings

__all__ = [
    "CompoundIndexing",
    "CrankPlace",
    "Indexing",
    "TableSetting",
    "compound_indexings",
    "crank_places",
    "degrees_a_turn",
    "index_angle",
    "index_divisions",
    "plain_indexings",
    "plate_set",
    "plates_of",
    "table_settings",
]
