"""ISO 228-1: limits of parallel pipe threads, from its table."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path
from typing import Any

from tommybar.facts.table import read_table
from tommybar.facts.threads.limit_pair import ExternalLimits, InternalLimits
from tommybar.facts.threads.thread import Thread
from tommybar.refusals import Refusal

_TABLE = Path(__file__).parent / "pipe.toml"
_FACTOR = {"A": 1.0, "B": 2.0}  # class B doubles the pitch diameter tolerance


def _row(one: Thread) -> Mapping[str, Any]:
    rows: list[Mapping[str, Any]] = read_table(_TABLE).figures["BSP"]
    return next(row for row in rows if f"{row['size']} BSP" == one.designation)


def pipe_external(one: Thread, tolerance_class: str) -> ExternalLimits:
    """Limits of a parallel external pipe thread.

    Parameters
    ----------
    one : Thread
        A BSP thread
    tolerance_class : str
        "A" or "B"

    Returns
    -------
    ExternalLimits
        Limits to 0.001 [mm]

    Raises
    ------
    Refusal
        If the class is unknown.

    Examples
    --------
    >>> from tommybar.facts.threads import thread
    >>> pipe_external(thread("G 1/8"), "A").pitch_diameter
    (9.04, 9.147)

    References
    ----------
    .. [1] ISO 228-1:2000 table 1 (from memory).
    """
    if tolerance_class not in _FACTOR:
        raise Refusal(f'"{tolerance_class}" is no class of {one.designation}.', "ISO 228-1 has A and B.")
    row = _row(one)
    spread = _FACTOR[tolerance_class] * row["pitch_tol"]
    return ExternalLimits(
        tolerance_class,
        major=(round(one.major - row["major_tol"], 3), one.major),
        pitch_diameter=(round(one.pitch_diameter - spread, 3), one.pitch_diameter),
        allowance=0.0,
        source=read_table(_TABLE).source,
    )


def pipe_internal(one: Thread) -> InternalLimits:
    """Limits of a parallel internal pipe thread; there is one class.

    Parameters
    ----------
    one : Thread
        A BSP thread

    Returns
    -------
    InternalLimits
        Limits to 0.001 [mm]

    Examples
    --------
    >>> from tommybar.facts.threads import thread
    >>> pipe_internal(thread("G 1/8")).minor
    (8.566, 8.848)

    References
    ----------
    .. [1] ISO 228-1:2000 table 1 (from memory).
    """
    row = _row(one)
    return InternalLimits(
        "internal",
        minor=(one.minor, round(one.minor + row["minor_tol"], 3)),
        pitch_diameter=(one.pitch_diameter, round(one.pitch_diameter + row["pitch_tol"], 3)),
        major_least=one.major,
        source=read_table(_TABLE).source,
    )
