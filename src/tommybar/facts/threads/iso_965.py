"""ISO 965-1: tolerance classes of ISO metric threads, from the printed tables."""

from __future__ import annotations

import re
from collections.abc import Mapping
from pathlib import Path
from typing import Any

from tommybar.facts.table import read_table
from tommybar.facts.threads.limit_pair import ExternalLimits, InternalLimits
from tommybar.facts.threads.thread import Thread
from tommybar.refusals import Refusal

_TABLE = Path(__file__).parent / "iso_965.toml"
_SYMBOLS = {
    "internal_minor": "TD1",
    "external_major": "Td",
    "internal_pitch": "TD2",
    "external_pitch": "Td2",
}


def _row(table: str, one: Thread) -> Mapping[str, Any]:
    """The row of a table for this pitch and, where the table has them, this range of diameters."""
    for row in read_table(_TABLE).figures[table]:
        inside = "over" not in row or row["over"] < one.major <= row["up_to"]
        if inside and abs(row["pitch"] - one.pitch) < 1e-9:
            found: Mapping[str, Any] = row
            return found
    raise Refusal(
        f"{one.designation} has a pitch of {one.pitch:g} mm; ISO 965-1 gives no tolerance for that pitch at "
        f"{one.major:g} mm diameter.",
        "Use a coarse pitch, or make the pair to fit each other.",
    )


def metric_tolerance(one: Thread, table: str, grade: int) -> float:
    """One tolerance of ISO 965-1.

    Parameters
    ----------
    one : Thread
        An ISO metric thread
    table : str
        "internal_minor" (TD1), "external_major" (Td), "internal_pitch" (TD2)
        or "external_pitch" (Td2)
    grade : int
        Tolerance grade, 3 to 9 as the table has them

    Returns
    -------
    float
        The tolerance as printed [um]

    Raises
    ------
    Refusal
        If the table has no such pitch or grade.

    Examples
    --------
    >>> from tommybar.facts.threads import thread
    >>> metric_tolerance(thread("M3"), "external_pitch", 6)
    75.0

    References
    ----------
    .. [1] ISO 965-1:2013 tables 2 to 5 (from memory, checked against public
       reprints as the data file says). The printed tables rule, not the
       formulas they were smoothed from.
    """
    if table not in _SYMBOLS:
        raise Refusal(f'ISO 965-1 has no table "{table}".', f"The tables are {', '.join(_SYMBOLS)}.")
    row = _row(table, one)
    if str(grade) not in row:
        have = ", ".join(key for key in row if key.isdigit())
        raise Refusal(
            f"{one.designation} has no {_SYMBOLS[table]} of grade {grade}; ISO 965-1 gives grades {have} "
            f"for a pitch of {one.pitch:g} mm.",
            "Choose one of these grades.",
        )
    return float(row[str(grade)])


def fundamental_deviation(one: Thread, position: str) -> float:
    """How far a tolerance position stays clear of the basic profile.

    Parameters
    ----------
    one : Thread
        An ISO metric thread
    position : str
        "e", "f", "g", "h" for external threads, "G", "H" for internal ones

    Returns
    -------
    float
        es (0 or below) for external, EI (0 or above) for internal threads [um]

    Raises
    ------
    Refusal
        If the position is unknown or is not given for this pitch.

    Examples
    --------
    >>> from tommybar.facts.threads import thread
    >>> fundamental_deviation(thread("M6"), "g")
    -26.0

    References
    ----------
    .. [1] ISO 965-1:2013 table 1 (from memory; g seen for M2.5 to M12).
    """
    if position in ("h", "H"):
        return 0.0
    row = _row("deviations", one)
    letter = "g" if position == "G" else position
    if letter not in row or position not in ("e", "f", "g", "G"):
        have = [key for key in ("e", "f", "g") if key in row]
        raise Refusal(
            f'ISO 965-1 gives no position "{position}" for a pitch of {one.pitch:g} mm.',
            f"It gives {', '.join(have)} and h outside, G and H inside.",
        )
    return float(row[letter]) * (1 if position.isupper() else -1)


def _grades(one: Thread, tolerance_class: str, letters: str, sample: str) -> tuple[int, str, int, str]:
    """Pitch diameter's grade and position, then the crest diameter's."""
    found = re.fullmatch(rf"(\d)([{letters}])(?:(\d)([{letters}]))?", tolerance_class)
    if found is None:
        raise Refusal(
            f'"{tolerance_class}" is no tolerance class for {one.designation}; ISO 965-1 writes a grade and '
            "a position.",
            f"Give it like {sample}.",
        )
    return int(found[1]), found[2], int(found[3] or found[1]), found[4] or found[2]


def metric_external(one: Thread, tolerance_class: str) -> ExternalLimits:
    """Limits of an ISO metric external thread.

    Parameters
    ----------
    one : Thread
        An ISO metric thread
    tolerance_class : str
        "6g", "4h", "6e", or "4g6g": pitch diameter first, then major diameter

    Returns
    -------
    ExternalLimits
        Smallest and largest major and pitch diameter [mm]

    Raises
    ------
    Refusal
        If the class is not written so, or ISO 965-1 has no figure for it.

    Examples
    --------
    >>> from tommybar.facts.threads import thread
    >>> metric_external(thread("M8x1"), "6g").major
    (7.794, 7.974)

    References
    ----------
    .. [1] ISO 965-1:2013; d + es - Td to d + es, d2 + es - Td2 to d2 + es.
    """
    grade, position, crest_grade, crest_position = _grades(one, tolerance_class, "efgh", '"6g" or "4g6g"')
    pitch_top = fundamental_deviation(one, position)
    crest_top = fundamental_deviation(one, crest_position)
    pitch_low = pitch_top - metric_tolerance(one, "external_pitch", grade)
    crest_low = crest_top - metric_tolerance(one, "external_major", crest_grade)
    return ExternalLimits(
        tolerance_class,
        major=(_at(one.major, crest_low), _at(one.major, crest_top)),
        pitch_diameter=(_at(one.pitch_diameter, pitch_low), _at(one.pitch_diameter, pitch_top)),
        allowance=-pitch_top / 1000,
        source=read_table(_TABLE).source,
    )


def metric_internal(one: Thread, tolerance_class: str) -> InternalLimits:
    """Limits of an ISO metric internal thread.

    Parameters
    ----------
    one : Thread
        An ISO metric thread
    tolerance_class : str
        "6H", "5H", "6G", or "4H5H": pitch diameter first, then minor diameter

    Returns
    -------
    InternalLimits
        Smallest and largest minor and pitch diameter [mm]

    Raises
    ------
    Refusal
        If the class is not written so, or ISO 965-1 has no figure for it.

    Examples
    --------
    >>> from tommybar.facts.threads import thread
    >>> metric_internal(thread("M8x1"), "6H").minor
    (6.917, 7.153)

    References
    ----------
    .. [1] ISO 965-1:2013; D1 + EI to D1 + EI + TD1, D2 + EI to D2 + EI + TD2.
    """
    grade, position, crest_grade, crest_position = _grades(one, tolerance_class, "GH", '"6H" or "4H5H"')
    pitch_low = fundamental_deviation(one, position)
    crest_low = fundamental_deviation(one, crest_position)
    pitch_top = pitch_low + metric_tolerance(one, "internal_pitch", grade)
    crest_top = crest_low + metric_tolerance(one, "internal_minor", crest_grade)
    return InternalLimits(
        tolerance_class,
        minor=(_at(one.minor, crest_low), _at(one.minor, crest_top)),
        pitch_diameter=(_at(one.pitch_diameter, pitch_low), _at(one.pitch_diameter, pitch_top)),
        major_least=_at(one.major, pitch_low),
        source=read_table(_TABLE).source,
    )


def _at(diameter: float, deviation: float) -> float:
    """A diameter with a deviation in um, rounded as the standard prints it."""
    return round(diameter + deviation / 1000, 3)
