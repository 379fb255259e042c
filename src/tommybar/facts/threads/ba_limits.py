"""BS 93: form and limits of BA threads, from its table and the rules of its annex B."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path
from typing import Any

from tommybar.facts.table import read_table
from tommybar.facts.threads.limit_pair import ExternalLimits, InternalLimits
from tommybar.facts.threads.thread import Thread
from tommybar.refusals import Refusal

_TABLE = Path(__file__).parent / "ba.toml"
_CLASSES = ("close", "normal")


def ba_tolerance(one: Thread, element: str, tolerance_class: str = "") -> float:
    """One tolerance of a BA thread.

    Parameters
    ----------
    one : Thread
        A BA thread
    element : str
        "major", "pitch_diameter" or "minor"
    tolerance_class : str, optional
        "close" or "normal" for a bolt; nothing for a nut

    Returns
    -------
    float
        Tolerance by the standard's rule, not rounded [mm]

    Raises
    ------
    Refusal
        If the class is not made in this size, or the element has no tolerance.

    Examples
    --------
    >>> from tommybar.facts.threads import thread
    >>> round(ba_tolerance(thread("2 BA"), "major", "normal"), 3)
    0.162

    References
    ----------
    .. [1] BS 93:2008 annex B (seen in a public reprint).
    """
    figures = read_table(_TABLE).figures
    rules = _external(one, tolerance_class) if tolerance_class else figures["internal"]
    if element not in rules:
        raise Refusal(
            f'BS 93 gives no tolerance for the "{element}" of {one.designation}.',
            f"It gives {', '.join(key for key in rules if key not in ('sizes', 'allowance'))}.",
        )
    slope, fixed = rules[element]
    return float(slope * one.pitch + fixed)


def ba_shortening(one: Thread) -> float:
    """How much the BA form cuts from each tip of its sharp triangle, as BS 93 prints it.

    Parameters
    ----------
    one : Thread
        A BA thread

    Returns
    -------
    float
        Shortening at crest and root [mm]

    Notes
    -----
    The printed factor is a unit of its seventh place above what 47.5 degrees
    gives; where table and formula differ the table rules.

    Examples
    --------
    >>> from tommybar.facts.threads import thread
    >>> ba_shortening(thread("0 BA"))
    0.2681683

    References
    ----------
    .. [1] BS 93:2008, basic form (seen in a public article).
    """
    return float(read_table(_TABLE).figures["shortening"]) * one.pitch


def _external(one: Thread, tolerance_class: str) -> Mapping[str, Any]:
    number = int(one.designation.split()[0])
    if tolerance_class in _CLASSES:
        classes: Mapping[str, Mapping[str, Any]] = read_table(_TABLE).figures["external"]
        for name, rules in classes.items():
            first, last = rules["sizes"]
            if name.split(",")[0] == tolerance_class and first <= number <= last:
                return rules
        raise Refusal(
            f"{one.designation} bolts have no {tolerance_class} class; BS 93 gives it for 0 to 10 BA.",
            'Use "normal".',
        )
    raise Refusal(f'"{tolerance_class}" is no class of BA bolts.', "BS 93 has close and normal.")


def ba_external(one: Thread, tolerance_class: str) -> ExternalLimits:
    """Limits of a BA external thread.

    Parameters
    ----------
    one : Thread
        A BA thread
    tolerance_class : str
        "close" or "normal"

    Returns
    -------
    ExternalLimits
        Limits to 0.001 [mm]

    Raises
    ------
    Refusal
        If the class is unknown or not made in this size.

    Examples
    --------
    >>> from tommybar.facts.threads import thread
    >>> ba_external(thread("0 BA"), "close").major
    (5.85, 6.0)

    References
    ----------
    .. [1] BS 93:2008 annex B (rules seen; the allowance of 0.025 mm for
       normal bolts of 0 to 10 BA seen in a handbook).
    """
    allowance = float(_external(one, tolerance_class)["allowance"])
    top, middle = one.major - allowance, one.pitch_diameter - allowance
    return ExternalLimits(
        tolerance_class,
        major=(round(top - ba_tolerance(one, "major", tolerance_class), 3), round(top, 3)),
        pitch_diameter=(
            round(middle - ba_tolerance(one, "pitch_diameter", tolerance_class), 3),
            round(middle, 3),
        ),
        allowance=allowance,
        source=read_table(_TABLE).source,
    )


def ba_internal(one: Thread) -> InternalLimits:
    """Limits of a BA internal thread; there is one class.

    Parameters
    ----------
    one : Thread
        A BA thread

    Returns
    -------
    InternalLimits
        Limits to 0.001 [mm]

    Examples
    --------
    >>> from tommybar.facts.threads import thread
    >>> ba_internal(thread("0 BA")).minor
    (4.8, 5.175)

    References
    ----------
    .. [1] BS 93:2008 annex B (seen in a public reprint).
    """
    return InternalLimits(
        "nut",
        minor=(one.minor, round(one.minor + ba_tolerance(one, "minor"), 3)),
        pitch_diameter=(
            one.pitch_diameter,
            round(one.pitch_diameter + ba_tolerance(one, "pitch_diameter"), 3),
        ),
        major_least=one.major,
        source=read_table(_TABLE).source,
    )
