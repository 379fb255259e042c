"""Limits of size of a thread, as records."""

from __future__ import annotations

from dataclasses import dataclass

from tommybar.facts.table import Source
from tommybar.facts.threads.thread import Thread

Pair = tuple[float, float]  # smallest, largest [mm]


@dataclass(frozen=True)
class ExternalLimits:
    """Limits of an external thread (screw, stud)."""

    tolerance_class: str
    major: Pair  # [mm]
    pitch_diameter: Pair  # [mm]
    allowance: float  # how far the largest screw stays below the basic profile, on diameter [mm]
    source: Source


@dataclass(frozen=True)
class InternalLimits:
    """Limits of an internal thread (nut, tapped hole)."""

    tolerance_class: str
    minor: Pair  # [mm]
    pitch_diameter: Pair  # [mm]
    major_least: float  # smallest major diameter [mm]
    source: Source


@dataclass(frozen=True)
class ThreadLimits:
    """A thread with the limits of the sides that a tolerance class names."""

    thread: Thread
    tolerance_class: str
    external: ExternalLimits | None
    internal: InternalLimits | None
