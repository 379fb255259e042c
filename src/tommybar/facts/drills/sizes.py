"""Drill sizes: metric, number, letter and fraction series, by name and by diameter."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from math import isfinite
from pathlib import Path

from tommybar.facts.table import Source, read_table
from tommybar.refusals import Refusal, nearest

SERIES = ("metric", "metric quarter", "number", "letter", "fraction")
INCH = 25.4  # [mm]
_HERE = Path(__file__).parent


@dataclass(frozen=True)
class DrillSize:
    """One drill that is made: what stands on its shank and what it measures."""

    name: str  # "5.1", "#7", "F" or "13/64"
    series: str  # one of SERIES
    diameter: float  # [mm]


def drill_source(series: str) -> Source:
    """The source of one series, as its data file states it.

    Parameters
    ----------
    series : str
        "metric", "metric quarter", "number" or "letter"

    Returns
    -------
    Source
        Title, year, table and how it was checked [words]

    Examples
    --------
    >>> drill_source("letter").title
    'ASME B94.11M, twist drills'

    References
    ----------
    .. [1] BS 328-1 and ASME B94.11M.
    """
    name = "metric_drills.toml" if series.startswith("metric") else "inch_drills.toml"
    return read_table(_HERE / name).source


@cache
def drills_of_series(series: str) -> tuple[DrillSize, ...]:
    """Every drill of one series, smallest first.

    Parameters
    ----------
    series : str
        "metric", "metric quarter", "number", "letter" or "fraction"

    Returns
    -------
    tuple of DrillSize
        The drills, diameters in [mm]

    Raises
    ------
    Refusal
        If the series has another name.

    Examples
    --------
    >>> drills_of_series("letter")[0]
    DrillSize(name='A', series='letter', diameter=5.9436)

    References
    ----------
    .. [1] BS 328-1 (metric ranges seen in a public article); ASME B94.11M
       (number and letter sizes seen in a public reprint); fractions are 1/64
       to 1 in by 1/64.
    """
    inch = read_table(_HERE / "inch_drills.toml").figures
    if series == "number":
        sizes = [(f"#{n}", value * INCH) for n, value in enumerate(inch["numbers"], start=1)]
    elif series == "letter":
        sizes = [(letter, value * INCH) for letter, value in inch["letters"].items()]
    elif series == "fraction":
        sizes = [(_fraction(k, 64), k * INCH / 64) for k in range(1, 65)]
    elif series in ("metric", "metric quarter"):
        runs = read_table(_HERE / "metric_drills.toml").figures[
            "preferred" if series == "metric" else "quarters"
        ]
        sizes = [
            (f"{size:g}", size)
            for run in runs
            for k in range(round((run["last"] - run["first"]) / run["step"]) + 1)
            for size in (round(run["first"] + k * run["step"] + add, 2) for add in run["add"])
        ]
    else:
        raise Refusal(
            f'There is no drill series "{series}"; the series are {", ".join(SERIES)}.',
            nearest(series, SERIES),
        )
    found = [DrillSize(name, series, round(diameter, 6)) for name, diameter in sizes]
    return tuple(sorted(found, key=lambda drill: drill.diameter))


def _fraction(numerator: int, denominator: int) -> str:
    """The name of a fraction drill; the last is "1 in", since "1" alone is a metric drill."""
    size = Fraction(numerator, denominator)
    return "1 in" if size == 1 else str(size)


@cache
def _by_name() -> dict[str, DrillSize]:
    return {drill.name: drill for series in SERIES for drill in drills_of_series(series)}


def _plain(name: str) -> str:
    """The name as the series lists write it: "no. 7" is "#7", "5.10 mm" is "5.1"."""
    word = name.strip()
    if number := re.fullmatch(r"(?:#|no\.?|nr\.?|number)\s*(\d+)", word, re.IGNORECASE):
        return f"#{int(number[1])}"
    if re.fullmatch(r"(?:letter\s*)?[a-zA-Z]", word):
        return word[-1].upper()
    if part := re.fullmatch(r'(\d+)\s*/\s*(\d+)\s*(?:in|")?', word):
        return _fraction(int(part[1]), int(part[2])) if int(part[2]) else word
    if re.fullmatch(r'1\s*(?:in|")', word):
        return _fraction(1, 1)
    if metric := re.fullmatch(r"(\d+(?:\.\d+)?|\.\d+)\s*(?:mm)?", word):
        return f"{float(metric[1]):g}"
    return word


def drill_size(name: str) -> DrillSize:
    """The drill that goes by a name.

    Parameters
    ----------
    name : str
        "#7" or "no. 7", "F", "13/64", or a metric size in mm such as "5.1"

    Returns
    -------
    DrillSize
        Name as the series writes it, series, diameter [mm]

    Raises
    ------
    Refusal
        If no drill of that name is made in these series; the nearest is offered.

    Examples
    --------
    >>> round(drill_size("#7").diameter, 3)
    5.105
    >>> drill_size("13/64").series
    'fraction'

    References
    ----------
    .. [1] ASME B94.11M and BS 328-1; see ``drills_of_series``.
    """
    word = _plain(name)
    known = _by_name()
    if word in known:
        return known[word]
    if re.fullmatch(r"\d+(\.\d+)?", word):
        near = nearest_drills(float(word), "metric", "metric quarter", count=2)
        offered = " and ".join(f"{drill.name} mm" for drill in near)
        raise Refusal(
            f"No {word} mm drill is in the metric series (0.2 to 25 mm).", f"The nearest are {offered}."
        )
    raise Refusal(
        f'There is no drill "{name}"; the series are #1 to #80, A to Z, 1/64 to 1 in and 0.2 to 25 mm.',
        nearest(word, known),
    )


def nearest_drills(diameter: float, *series: str, count: int = 4) -> tuple[DrillSize, ...]:
    """The drills nearest to a diameter, nearest first.

    Parameters
    ----------
    diameter : float
        Wanted diameter, above 0 [mm]
    *series : str
        Series to look in; all of them if none is given
    count : int, optional
        How many to give

    Returns
    -------
    tuple of DrillSize
        Nearest first; of two equally near the smaller comes first [mm]

    Raises
    ------
    Refusal
        If the diameter is not a finite number above 0.

    Examples
    --------
    >>> [drill.name for drill in nearest_drills(5.1, count=2)]
    ['5.1', '#7']

    References
    ----------
    .. [1] ASME B94.11M and BS 328-1; see ``drills_of_series``.
    """
    if not (isfinite(diameter) and diameter > 0):
        raise Refusal(f"The diameter is {diameter} mm; it must be above 0.", "Give the size of the hole.")
    drills: Iterable[DrillSize] = (drill for one in series or SERIES for drill in drills_of_series(one))
    order = sorted(drills, key=lambda drill: (round(abs(drill.diameter - diameter), 9), drill.diameter))
    return tuple(order[:count])
