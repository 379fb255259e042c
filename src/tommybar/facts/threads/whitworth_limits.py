"""BS 84: limits of Whitworth and BSF threads, from its formulas."""

from __future__ import annotations

from math import sqrt
from pathlib import Path

from tommybar.facts.table import read_table
from tommybar.facts.threads.limit_pair import ExternalLimits, InternalLimits, Pair
from tommybar.facts.threads.thread import INCH, Thread
from tommybar.refusals import Refusal

_TABLE = Path(__file__).parent / "whitworth_tolerances.toml"
_ALLOWANCE_UP_TO = 0.75  # [in] larger bolts have none


def effective_tolerance(one: Thread) -> float:
    """Effective diameter tolerance of the medium class, from which others are taken.

        T = 0.002 D^(1/3) + 0.003 sqrt(L) + 0.005 sqrt(p)   [in]

    Parameters
    ----------
    one : Thread
        A BSW or BSF thread

    Returns
    -------
    float
        Tolerance T for one diameter of engagement [mm]

    Examples
    --------
    >>> from tommybar.facts.threads import thread
    >>> round(effective_tolerance(thread("1/4 BSW")) / 25.4, 4)
    0.0039

    References
    ----------
    .. [1] BS 84:1956 (from memory).
    """
    figures = read_table(_TABLE).figures
    diameter, pitch = one.major / INCH, one.pitch / INCH
    tolerance: float = (
        figures["cube"] * diameter ** (1 / 3)
        + figures["length"] * sqrt(diameter)
        + figures["pitch"] * sqrt(pitch)
    )
    return tolerance * INCH


def whitworth_external(one: Thread, tolerance_class: str) -> ExternalLimits:
    """Limits of a BSW or BSF external thread.

    Parameters
    ----------
    one : Thread
        A BSW or BSF thread
    tolerance_class : str
        "close", "medium" or "free"

    Returns
    -------
    ExternalLimits
        Limits to 0.0001 in [mm]

    Raises
    ------
    Refusal
        If the class is unknown.

    Examples
    --------
    >>> from tommybar.facts.threads import thread
    >>> round(whitworth_external(thread("1/4 BSW"), "medium").major[1] / 25.4, 4)
    0.2488

    References
    ----------
    .. [1] BS 84:1956 (from memory).
    """
    figures = read_table(_TABLE).figures
    classes = figures["external"]
    if tolerance_class not in classes:
        raise Refusal(
            f'"{tolerance_class}" is no class of {one.designation} bolts.', f"BS 84 has {', '.join(classes)}."
        )
    row = classes[tolerance_class]
    basic = effective_tolerance(one)
    spread = row["pitch_diameter"] * basic
    allowance = row["allowance"] * basic if one.major / INCH <= _ALLOWANCE_UP_TO + 1e-9 else 0.0
    crest = spread + figures["major_pitch"] * sqrt(one.pitch / INCH) * INCH
    top, middle = one.major - allowance, one.pitch_diameter - allowance
    return ExternalLimits(
        tolerance_class,
        major=_pair(top - crest, top),
        pitch_diameter=_pair(middle - spread, middle),
        allowance=allowance,
        source=read_table(_TABLE).source,
    )


def whitworth_internal(one: Thread, tolerance_class: str) -> InternalLimits:
    """Limits of a BSW or BSF internal thread.

    Parameters
    ----------
    one : Thread
        A BSW or BSF thread
    tolerance_class : str
        "medium" or "normal"

    Returns
    -------
    InternalLimits
        Limits to 0.0001 in [mm]

    Raises
    ------
    Refusal
        If the class is unknown.

    Examples
    --------
    >>> from tommybar.facts.threads import thread
    >>> [round(d / 25.4, 3) for d in whitworth_internal(thread("1/4 BSW"), "medium").minor]
    [0.186, 0.203]

    References
    ----------
    .. [1] BS 84:1956 (from memory).
    """
    figures = read_table(_TABLE).figures
    classes = figures["internal"]
    if tolerance_class not in classes:
        raise Refusal(
            f'"{tolerance_class}" is no class of {one.designation} nuts.', f"BS 84 has {', '.join(classes)}."
        )
    fixed = next(row["fixed"] for row in figures["minor_fixed"] if INCH / one.pitch >= row["from_tpi"] - 1e-9)
    minor_spread = figures["minor_slope"] * one.pitch + fixed * INCH
    spread = classes[tolerance_class]["pitch_diameter"] * effective_tolerance(one)
    return InternalLimits(
        tolerance_class,
        minor=_pair(one.minor, one.minor + minor_spread),
        pitch_diameter=_pair(one.pitch_diameter, one.pitch_diameter + spread),
        major_least=one.major,
        source=read_table(_TABLE).source,
    )


def _pair(least: float, most: float) -> Pair:
    return round(round(least / INCH, 4) * INCH, 6), round(round(most / INCH, 4) * INCH, 6)
