"""ASME B1.1: limits of Unified threads, from its formulas and its rounding."""

from __future__ import annotations

from decimal import ROUND_HALF_EVEN, Decimal
from math import sqrt
from pathlib import Path

from tommybar.facts.table import read_table
from tommybar.facts.threads.limit_pair import ExternalLimits, InternalLimits, Pair
from tommybar.facts.threads.thread import INCH, Thread, printed
from tommybar.refusals import Refusal

_TABLE = Path(__file__).parent / "unified_tolerances.toml"
_NUMBER_SIZE = 0.138  # [in] from #6 up the table prints the nut's minor diameter to 0.001


def pitch_tolerance(one: Thread) -> float:
    """Pitch diameter tolerance of class 2A, from which all others are taken.

        Td2 = 0.0015 D^(1/3) + 0.0015 sqrt(Le) + 0.015 P^(2/3)   [in]

    Parameters
    ----------
    one : Thread
        A Unified thread

    Returns
    -------
    float
        Tolerance, to the six places that the standard works with [in]

    Notes
    -----
    Le is the length of engagement: the diameter for UNC and UNF, nine pitches
    for UNEF.

    Examples
    --------
    >>> from tommybar.facts.threads import thread
    >>> pitch_tolerance(thread("1/4-20 UNC"))
    0.003731

    References
    ----------
    .. [1] ASME B1.1-2003 (seen in a public reprint).
    """
    figures = read_table(_TABLE).figures
    diameter, pitch = one.major / INCH, one.pitch / INCH
    length = figures["extra_fine_length"] * pitch if one.series == "UNEF" else diameter
    tolerance: float = (
        figures["cube"] * diameter ** (1 / 3)
        + figures["root"] * sqrt(length)
        + figures["pitch"] * pitch ** (2 / 3)
    )
    return round(tolerance, 6)


def _figures(side: str, tolerance_class: str, one: Thread) -> dict[str, float]:
    table: dict[str, dict[str, float]] = read_table(_TABLE).figures[side]
    if tolerance_class not in table:
        raise Refusal(
            f'"{tolerance_class}" is no tolerance class for {one.designation}; ASME B1.1 has 1A to 3A for '
            "screws, 1B to 3B for nuts.",
            "2A and 2B are the usual ones.",
        )
    return table[tolerance_class]


def unified_external(one: Thread, tolerance_class: str) -> ExternalLimits:
    """Limits of a Unified external thread.

    Parameters
    ----------
    one : Thread
        A Unified thread
    tolerance_class : str
        "1A", "2A" or "3A"

    Returns
    -------
    ExternalLimits
        Limits, rounded to 0.0001 in as the standard prints them [mm]

    Raises
    ------
    Refusal
        If the class is unknown.

    Examples
    --------
    >>> from tommybar.facts.threads import thread
    >>> limits = unified_external(thread("1/4-20 UNC"), "2A")
    >>> [round(size / 25.4, 4) for size in limits.pitch_diameter]
    [0.2127, 0.2164]

    References
    ----------
    .. [1] ASME B1.1-2003; formulas seen, rounding from memory (agrees with the
       printed limits that were seen).
    """
    figures = _figures("external", tolerance_class, one)
    basic = pitch_tolerance(one)
    allowance = _half_to_even(figures["allowance"] * printed(basic, 4))
    pitch_spread = printed(figures["pitch_diameter"] * basic, 4)
    major_spread = printed(figures["major"] * (one.pitch / INCH) ** (2 / 3), 4)
    major = printed(one.major / INCH, 4) - allowance
    pitch_diameter = printed(one.pitch_diameter / INCH, 4) - allowance
    return ExternalLimits(
        tolerance_class,
        major=_pair(major - major_spread, major),
        pitch_diameter=_pair(pitch_diameter - pitch_spread, pitch_diameter),
        allowance=allowance * INCH,
        source=read_table(_TABLE).source,
    )


def unified_internal(one: Thread, tolerance_class: str) -> InternalLimits:
    """Limits of a Unified internal thread.

    Parameters
    ----------
    one : Thread
        A Unified thread
    tolerance_class : str
        "1B", "2B" or "3B"

    Returns
    -------
    InternalLimits
        Limits, rounded as the standard prints them: 0.0001 in, but 0.001 in
        from #6 up for the least minor diameter, and of 1B and 2B for the
        greatest too [mm]

    Raises
    ------
    Refusal
        If the class is unknown.

    Examples
    --------
    >>> from tommybar.facts.threads import thread
    >>> limits = unified_internal(thread("1/4-20 UNC"), "2B")
    >>> [round(size / 25.4, 4) for size in limits.minor]
    [0.196, 0.207]

    References
    ----------
    .. [1] ASME B1.1-2003; formulas seen for 2B, bounds of the minor diameter
       and rounding from memory.
    """
    figures = _figures("internal", tolerance_class, one)
    spread = printed(figures["pitch_diameter"] * pitch_tolerance(one), 4)
    pitch_diameter = printed(one.pitch_diameter / INCH, 4)
    least = printed(one.minor / INCH, 4)
    most = least + printed(minor_tolerance(one, tolerance_class), 4)
    if one.major / INCH >= _NUMBER_SIZE - 1e-9:
        least = printed(least, 3)
        most = most if tolerance_class == "3B" else printed(most, 3)
    return InternalLimits(
        tolerance_class,
        minor=_pair(least, most),
        pitch_diameter=_pair(pitch_diameter, pitch_diameter + spread),
        major_least=one.major,
        source=read_table(_TABLE).source,
    )


def minor_tolerance(one: Thread, tolerance_class: str) -> float:
    """Tolerance of the minor diameter of a Unified internal thread.

    Parameters
    ----------
    one : Thread
        A Unified thread
    tolerance_class : str
        "1B", "2B" or "3B"

    Returns
    -------
    float
        Tolerance before rounding [in]

    Notes
    -----
    1B and 2B below 1/4 in, and 3B throughout: 0.05 P^(2/3) + 0.03 P/D - 0.002,
    at most 0.394 P, at least 0.25 P - 0.4 P^2 (3B: 0.23 P - 1.5 P^2, or 0.12 P
    for pitches coarser than 1/13 in). 1B and 2B from 1/4 in up:
    0.25 P - 0.4 P^2.

    Examples
    --------
    >>> from tommybar.facts.threads import thread
    >>> round(minor_tolerance(thread("#2-56"), "2B"), 4)
    0.007

    References
    ----------
    .. [1] ASME B1.1-2003 (from memory; agrees with the printed limits of #0
       to 1/2 in that were seen).
    """
    diameter, pitch = one.major / INCH, one.pitch / INCH
    coarse: float = 0.25 * pitch - 0.4 * pitch**2
    if tolerance_class != "3B" and diameter >= 0.25 - 1e-9:
        return coarse
    small: float = 0.05 * pitch ** (2 / 3) + 0.03 * pitch / diameter - 0.002
    floor: float = coarse
    if tolerance_class == "3B":
        floor = 0.12 * pitch if pitch > 1 / 13 + 1e-9 else 0.23 * pitch - 1.5 * pitch**2
    return max(min(small, 0.394 * pitch), floor)


def _half_to_even(value: float) -> float:
    """The standard's rounding of an allowance, which it takes from the printed 2A tolerance."""
    return float(Decimal(repr(round(value, 9))).quantize(Decimal("0.0001"), ROUND_HALF_EVEN))


def _pair(least: float, most: float) -> Pair:
    return round(round(least, 4) * INCH, 6), round(round(most, 4) * INCH, 6)
