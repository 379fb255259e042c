"""Preferred numbers of ISO 3: the rounded geometric series R5, R10, R20 and R40."""

from __future__ import annotations

import math
from functools import cache
from pathlib import Path

from tommybar.facts.table import Source, Table, read_table
from tommybar.refusals import Refusal

SERIES = ("R5", "R10", "R20", "R40")


def preferred_numbers(series: str) -> tuple[float, ...]:
    """Numbers of a basic series from 1 up to below 10.

    Parameters
    ----------
    series : {"R5", "R10", "R20", "R40"}
        Name of the series [-]

    Returns
    -------
    tuple of float
        Its numbers; multiples by 10 belong to it as well [-]

    Raises
    ------
    Refusal
        If the series is unknown.

    Examples
    --------
    >>> preferred_numbers("R5")
    (1.0, 1.6, 2.5, 4.0, 6.3)

    References
    ----------
    .. [1] ISO 3:1973 (R5 seen in public reprints, R10 to R40 from memory).
    """
    return tuple(_table().figures["R40"][:: 40 // _count(series)])


def series_ratio(series: str) -> float:
    """Exact ratio of neighbours in a series before rounding.

    Parameters
    ----------
    series : {"R5", "R10", "R20", "R40"}
        Name of the series [-]

    Returns
    -------
    float
        10^(1/5), 10^(1/10), ... [-]

    Raises
    ------
    Refusal
        If the series is unknown.

    Examples
    --------
    >>> round(series_ratio("R5"), 4)
    1.5849

    References
    ----------
    .. [1] ISO 17:1973 (seen in a public preface).
    """
    return float(10 ** (1 / _count(series)))


def coarsest_series(number: float) -> str:
    """Coarsest series that holds a preferred number.

    Parameters
    ----------
    number : float
        A preferred number of any decade, above 0 [-]

    Returns
    -------
    str
        "R5", "R10", "R20" or "R40" [-]

    Raises
    ------
    Refusal
        If it is no preferred number.

    Examples
    --------
    >>> coarsest_series(25.0), coarsest_series(0.315)
    ('R5', 'R10')

    References
    ----------
    .. [1] ISO 3:1973 (R5 seen in public reprints, R10 to R40 from memory).
    """
    if number > 0:
        mantissa = number / 10 ** math.floor(math.log10(number) + 1e-12)
        for series in SERIES:
            if any(math.isclose(mantissa, one, rel_tol=1e-9) for one in preferred_numbers(series)):
                return series
    raise Refusal(
        f"{number:g} is not a preferred number of ISO 3.", "The nearest one is given by nearest_preferred."
    )


def nearest_preferred(number: float, series: str = "R10") -> float:
    """Number of a series that is nearest by ratio.

    Parameters
    ----------
    number : float
        Any figure above 0 [-]
    series : str, optional
        Name of the series [-]

    Returns
    -------
    float
        The nearest number of that series [-]

    Raises
    ------
    Refusal
        If the figure is not above nought or the series unknown.

    Examples
    --------
    >>> nearest_preferred(37.0), nearest_preferred(9.9, "R5")
    (40.0, 10.0)

    References
    ----------
    .. [1] ISO 3:1973 (R5 seen in public reprints, R10 to R40 from memory).
    """
    if not (math.isfinite(number) and number > 0):
        raise Refusal(f"The figure is {number:g}; it must be above 0.", "Give a figure above 0.")
    decade = 10.0 ** math.floor(math.log10(number))
    candidates = [one * decade for one in preferred_numbers(series)] + [10 * decade]
    best = min(candidates, key=lambda one: abs(math.log(one / number)))
    return float(f"{best:.6g}")


def irregular_numbers() -> tuple[float, ...]:
    """Numbers of R40 that are rounded higher than the even run of the series.

    Parameters
    ----------
    None

    Returns
    -------
    tuple of float
        Irregular values [-]

    Examples
    --------
    >>> irregular_numbers()
    (3.0, 6.0)

    References
    ----------
    .. [1] ISO 3:1973 (seen in a public reprint).
    """
    return tuple(_table().figures["irregular"])


def source() -> Source:
    """Where the figures of this module come from.

    Parameters
    ----------
    None

    Returns
    -------
    Source
        Title, year, tables and how they were checked [-]

    Examples
    --------
    >>> source().title
    'ISO 3 and ISO 17'

    References
    ----------
    .. [1] The [source] head of preferred_numbers.toml.
    """
    return _table().source


@cache
def _table() -> Table:
    return read_table(Path(__file__).with_name("preferred_numbers.toml"))


def _count(series: str) -> int:
    if series not in SERIES:
        raise Refusal(f'"{series}" is not a basic series of ISO 3; it has {", ".join(SERIES)}.', "Take R10.")
    return int(series[1:])
