"""ISO 286: limits of size from a nominal size and a tolerance class.

The printed tables rule, not the formulas they were once rounded from. A
letter gives how far the zone stands from the nominal size, a grade how wide
it is. Capitals are holes, small letters shafts.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING

from tommybar.facts.fits.limits import Limits as Limits
from tommybar.facts.fits.zones import grade_number, split_zone
from tommybar.facts.table import Source, Table, read_table
from tommybar.refusals import Refusal

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

LARGEST_SIZE = 120.0  # mm; the table we carry ends here


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
    >>> source().title, source().year
    ('ISO 286-1', '2010')

    References
    ----------
    .. [1] The [source] head of iso286.toml.
    """
    return _table().source


def tolerance_grade(nominal: float, grade: int | str) -> int:
    """Width of a standard tolerance grade at a nominal size.

    Parameters
    ----------
    nominal : float
        Nominal size, over 0 up to and including 120 [mm]
    grade : int or str
        Grade 5 to 12, as a number or as "IT7" [-]

    Returns
    -------
    int
        Standard tolerance, as printed [um]

    Raises
    ------
    Refusal
        If the size or the grade lies outside the table.

    Notes
    -----
    A bound belongs to the step below it: 30 mm stands in "18 to 30".

    Examples
    --------
    >>> tolerance_grade(30.0, 7), tolerance_grade(30.001, "IT7")
    (21, 25)

    References
    ----------
    .. [1] ISO 286-1:2010, Table 1 (seen in public reprints).
    """
    number = grade_number(grade)
    grades = _table().figures["grades"]
    return int(grades[f"IT{number}"][_step(nominal, grades["steps"])])


def limits_of_size(nominal: float, zone: str) -> Limits:
    """Limits of a hole or shaft of a nominal size in a tolerance class.

    The letter places one edge of the zone, the grade gives its width. Holes
    mirror the shaft of the same letter, but K, M, N (up to IT8) and P to U
    (up to IT7) are moved by delta = ITn - IT(n-1), so that H7/p6 and P7/h6
    give the same interference.

    Parameters
    ----------
    nominal : float
        Nominal size, over 0 up to and including 120 [mm]
    zone : str
        Letter C D E F G H JS K M N P R S U, or the same small for a shaft,
        with grade 5 to 12, for example "H7" or "g6" [-]

    Returns
    -------
    Limits
        Lower and upper deviation [um]; smallest, largest and middle size [mm]

    Raises
    ------
    Refusal
        If size, letter or grade lies outside the table, or if the standard
        has no such zone (K9 over 3 mm).

    Notes
    -----
    JS and js are printed as plus and minus half the grade. Halves of a
    micrometre are kept (the 1988 edition allowed rounding them away).

    Examples
    --------
    >>> shaft = limits_of_size(16.0, "g6")
    >>> shaft.lower_um, shaft.upper_um
    (-17.0, -6.0)
    >>> round(limits_of_size(12.0, "P7").largest, 3)
    11.989

    References
    ----------
    .. [1] ISO 286-1:2010, Tables 1 to 5; ISO 286-2:2010 (seen in public
       reprints, letters c to h partly from memory).
    """
    letter, grade = split_zone(zone)
    width = tolerance_grade(nominal, grade)
    name = f"{letter}{grade}"
    if letter in ("JS", "js"):
        return Limits(float(nominal), name, -width / 2, width / 2)
    edge = fundamental_deviation(nominal, zone)
    below, above = _sides(letter, edge, width)
    return Limits(float(nominal), name, float(below), float(above))


def fundamental_deviation(nominal: float, zone: str) -> float:
    """Deviation of that edge of a zone which lies nearer the nominal size.

    Parameters
    ----------
    nominal : float
        Nominal size, over 0 up to and including 120 [mm]
    zone : str
        Letter and grade, for example "K7"; not JS or js [-]

    Returns
    -------
    float
        es of shafts c to h and ei of shafts k to u; EI of holes C to H and ES
        of holes K to U [um]

    Raises
    ------
    Refusal
        If size, letter or grade lies outside the table, or for JS and js,
        which have no edge of their own.

    Examples
    --------
    >>> fundamental_deviation(90.0, "K7"), fundamental_deviation(90.0, "k6")
    (10.0, 3.0)

    References
    ----------
    .. [1] ISO 286-1:2010, Tables 2 to 5 (seen in public reprints, letters c
       to h partly from memory).
    """
    letter, grade = split_zone(zone)
    if letter in ("JS", "js"):
        raise Refusal(
            f'The zone "{zone}" lies evenly about the nominal size; ISO 286-1 gives it no single deviation.',
            "Ask for its limits of size.",
        )
    deviations = _table().figures["deviations"]
    step = _step(nominal, deviations["steps"])
    small = letter.lower()
    if small in deviations["es"]:
        value = float(deviations["es"][small][step])
        return value if letter.islower() else 0.0 - value
    value = float(deviations["ei"][small][step])
    if letter.islower():
        return value if small != "k" or grade <= 7 else 0.0
    return _upper_edge_of_hole(nominal, letter, grade, value)


def limits_of_sizes(nominals: Sequence[float] | NDArray[np.float64], zone: str) -> NDArray[np.float64]:
    """Limits of many sizes in one tolerance class at once.

    Parameters
    ----------
    nominals : array, shape (n,)
        Nominal sizes, each over 0 up to and including 120 [mm]
    zone : str
        Letter and grade, for example "H7" [-]

    Returns
    -------
    array, shape (n, 2)
        Lower and upper deviation of each size [um]

    Raises
    ------
    Refusal
        If any size, the letter or the grade lies outside the table.

    Examples
    --------
    >>> limits_of_sizes([6.0, 16.0], "h6").tolist()
    [[-8.0, 0.0], [-11.0, 0.0]]

    References
    ----------
    .. [1] ISO 286-1:2010 and ISO 286-2:2010, as for a single size (source as
       there).
    """
    import numpy

    sizes = numpy.asarray(nominals, dtype=float)
    outside = ~((sizes > 0) & (sizes <= LARGEST_SIZE))
    if outside.any():
        raise _outside_sizes(float(sizes[outside][0]))
    bounds = _table().figures["deviations"]["steps"]
    wanted = numpy.unique(numpy.searchsorted(bounds, sizes, side="left"))
    by_step = numpy.full((len(bounds), 2), numpy.nan)
    for step in wanted:
        limits = limits_of_size(bounds[step], zone)
        by_step[step] = (limits.lower_um, limits.upper_um)
    found: NDArray[np.float64] = by_step[numpy.searchsorted(bounds, sizes, side="left")]
    return found


@cache
def _table() -> Table:
    return read_table(Path(__file__).with_name("iso286.toml"))


def _step(nominal: float, bounds: Sequence[float]) -> int:
    if nominal > 0:
        for step, bound in enumerate(bounds):
            if nominal <= bound:
                return step
    raise _outside_sizes(nominal)


def _outside_sizes(nominal: float) -> Refusal:
    return Refusal(
        f"The nominal size is {nominal:g} mm; the table of ISO 286-1 that is carried here runs over 0 mm "
        f"and up to {LARGEST_SIZE:g} mm.",
        "Give a size in this range, or write the two limits out in figures.",
    )


def _sides(letter: str, edge: float, width: float) -> tuple[float, float]:
    below_line = letter.lower() in ("c", "d", "e", "f", "g", "h")
    if letter.islower():
        return (edge - width, edge) if below_line else (edge, edge + width)
    return (edge, edge + width) if below_line else (edge - width, edge)


def _upper_edge_of_hole(nominal: float, letter: str, grade: int, shaft_ei: float) -> float:
    """ES of holes K to U: the mirrored shaft, moved by delta in the fine grades."""
    finest = 8 if letter in ("K", "M", "N") else 7
    if grade <= finest:
        grades = _table().figures["grades"]
        step = _step(nominal, grades["steps"])
        delta = 0.0 if step == 0 else grades[f"IT{grade}"][step] - grades[f"IT{grade - 1}"][step]
        return delta - shaft_ei
    if letter == "K" and nominal > 3:
        raise Refusal(
            f"The hole zone K{grade} does not exist at {nominal:g} mm; "
            "ISO 286-1 has K only up to IT8 over 3 mm.",
            f"Choose K8 or finer, or JS{grade}.",
        )
    if letter == "N" and nominal > 3:
        return 0.0
    return 0.0 - shaft_ei
