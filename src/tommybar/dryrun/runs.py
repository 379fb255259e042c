"""What a dry run says of a card: the shape after each step, gaps, what is left.

Shapes are tuples of rings in the card frame: ((z, r), ...) [mm], plain data so
that a Plan can be kept and compared.
"""

from __future__ import annotations

from dataclasses import dataclass

from tommybar.findings import Finding

Ring = tuple[tuple[float, float], ...]


@dataclass(frozen=True)
class StepRun:
    """One step on geometry: the work after it, and what it took [mm3]."""

    key: str
    after: tuple[Ring, ...]  # exterior rings of the work, card frame
    removed: tuple[Ring, ...]
    removed_volume: float


@dataclass(frozen=True)
class CardRun:
    """One card on geometry."""

    part: str
    card: int
    before: tuple[Ring, ...]
    steps: tuple[StepRun, ...]
    finished: tuple[Ring, ...]  # the finished part in this card's frame
    keep_out: tuple[tuple[str, Ring], ...]  # jaws and the like, upper half (r >= 0)
    smallest_gap: float  # [mm]; -1 when no tool move was seen
    gap_where: str
    separated_volume: float  # parted or sawn off and put aside [mm3]


@dataclass(frozen=True)
class PartRun:
    """All lathe cards of a part, one after another."""

    part: str
    cards: tuple[CardRun, ...]
    blank_volume: float
    removed_volume: float
    left_volume: float  # the work at the end, with what stands over the finished part
    surplus_volume: float  # left above the finished section [mm3]
    missing_volume: float  # cut away that should stand [mm3]
    findings: tuple[Finding, ...]
