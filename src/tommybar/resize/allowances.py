"""How much stock is larger than the part, and how much room and metal must stay."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from tommybar.facts.table import read_table

_TABLE = Path(__file__).parent / "allowances.toml"


def skin_allowance(skin: str) -> float:
    """Metal that comes off the diameter to get under the skin of the stock, at least [mm].

    >>> skin_allowance("sawn"), skin_allowance("drawn")
    (2.0, 0.5)
    """
    return float(_figures()["skin_mm"][skin])


def daylight() -> float:
    """Room between a turning blank and a slide under it, each side [mm]."""
    return float(_figures()["reach_mm"]["daylight"])


def recess_side_room() -> float:
    """How much wider than its tool the floor of a recess must be [mm]."""
    return float(_figures()["reach_mm"]["recess_side_room"])


def facing() -> float:
    """What both ends of a blank give for being faced clean [mm]."""
    return float(_figures()["reach_mm"]["faces"])


def least_wall(hole: float) -> float:
    """Metal that must stand between a hole and the nearest wall or hole [mm].

    >>> least_wall(8.0), round(least_wall(20.0), 3)
    (1.5, 3.0)
    """
    walls = _figures()["walls"]
    return float(max(walls["least_mm"], walls["of_hole"] * hole))


def tapped_wall(thread_dia: float) -> float:
    """Metal round an internal thread, at least [mm]."""
    return float(_figures()["walls"]["round_tapped"]) * thread_dia


def _figures() -> Any:
    return read_table(_TABLE).figures
