"""What a resize says: a row for every size, what binds, and a second choice."""

from __future__ import annotations

from dataclasses import dataclass

from tommybar.design.model import SizedDesign
from tommybar.findings import Finding


@dataclass(frozen=True)
class SizeRow:
    """One named size, before and after. Figures in ``unit``; threads are text in old and new.

    ``exact`` is what the scale alone would give; it equals ``old`` for sizes
    that are never scaled.
    """

    name: str
    old: float | str
    exact: float | str
    new: float | str
    unit: str  # "mm", "deg", "" (thread, count)
    follows: str  # class, or "worked out"
    why: str
    choices: tuple[str, ...] = ()  # values looked at and refused, with the figure that spoke against them


@dataclass(frozen=True)
class Bind:
    """A limit that keeps the scale from being larger (or smaller)."""

    what: str  # "swing over the cross-slide"
    part: str
    figure: float  # what the part would need at the scale chosen [mm]
    bound: float  # what the shop allows [mm]
    scale: float  # the scale at which this limit is met exactly
    binds: bool  # whether it is the one that decides
    least: bool = False  # the figure must not be below the bound, where it must else not be above


@dataclass(frozen=True)
class Resized:
    """One scale with its sizes."""

    scale: float
    rows: tuple[SizeRow, ...]
    limits: tuple[Bind, ...]  # every limit looked at, tightest first
    design: SizedDesign
    findings: tuple[Finding, ...]
    evaluations: int = 0
    exhausted: bool = True  # every combination of sizes at every larger scale was ruled out


@dataclass(frozen=True)
class Price:
    """What one limit costs: the scale that would be reached without it."""

    bind: Bind
    scale: float  # with the limit
    without: float  # without it
    words: str
