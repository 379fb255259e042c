"""The mill vice: what lies between its jaws, and whether it opens so far. The one rule that sizing and cards both use."""

from __future__ import annotations

from typing import Literal

from tommybar.shop.model import Mill

Side = Literal["top", "bottom", "front", "back", "left", "right"]
TINY = 1e-6


def between_jaws(face: Side, width: float, thickness: float) -> float:
    """What the jaws grip when a face of a plate is up [mm]: its width when it lies flat, its thickness when it stands."""
    return width if face in ("top", "bottom") else thickness


def opens(mill: Mill, gripped: float) -> bool:
    """Whether the vice opens so far [mm]."""
    return gripped <= mill.vice_opening + TINY


def must_be_gripped(face: Side) -> bool:
    """Whether a plate needs the vice with that face up: lying flat it can be clamped to the table, standing it cannot."""
    return face not in ("top", "bottom")
