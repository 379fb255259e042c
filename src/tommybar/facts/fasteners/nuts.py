"""Nuts and washers."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from tommybar.facts.fasteners.size_row import row_of_size
from tommybar.facts.table import Source, read_table
from tommybar.facts.threads import thread
from tommybar.refusals import Refusal, nearest

_NUTS = Path(__file__).parent / "nuts.toml"
_WASHERS = Path(__file__).parent / "washers.toml"
NUTS = ("ISO 4032", "ISO 4035")
WASHERS = ("ISO 7089", "ISO 7092", "ISO 7093")
BA_ACROSS_FLATS = 1.75  # across flats of a BA nut or head, per major diameter


@dataclass(frozen=True)
class Nut:
    """A hexagon nut."""

    standard: str
    size: str
    across_flats: float  # [mm]
    height: float  # greatest [mm]
    source: Source


@dataclass(frozen=True)
class Washer:
    """A plain washer."""

    standard: str
    size: str
    inside: float  # [mm]
    outside: float  # [mm]
    thickness: float  # [mm]
    source: Source


def nut(size: str, standard: str = "ISO 4032") -> Nut:
    """A hexagon nut.

    Parameters
    ----------
    size : str
        "M1.6" to "M20"
    standard : str, optional
        "ISO 4032" normal or "ISO 4035" thin

    Returns
    -------
    Nut
        Across flats and height [mm]

    Raises
    ------
    Refusal
        If the size or the standard is not in the table.

    Examples
    --------
    >>> one = nut("M6")
    >>> one.across_flats, one.height
    (10.0, 5.2)

    References
    ----------
    .. [1] ISO 4032:2012 (seen in a public reprint), ISO 4035:2012 (from memory).
    """
    if standard not in NUTS:
        raise Refusal(
            f'There are no nuts "{standard}"; the tables hold {", ".join(NUTS)}.', nearest(standard, NUTS)
        )
    table = read_table(_NUTS)
    row = row_of_size(table.figures[standard], size, f"{standard} nut")
    return Nut(standard, row["size"], float(row["across_flats"]), float(row["height"]), table.source)


def washer(size: str, standard: str = "ISO 7089") -> Washer:
    """A plain washer.

    Parameters
    ----------
    size : str
        "M1.6" to "M20"
    standard : str, optional
        "ISO 7089" normal, "ISO 7092" small or "ISO 7093" large

    Returns
    -------
    Washer
        Inside and outside diameter, thickness [mm]

    Raises
    ------
    Refusal
        If the size or the standard is not in the table.

    Examples
    --------
    >>> one = washer("M6")
    >>> one.inside, one.outside, one.thickness
    (6.4, 12.0, 1.6)

    References
    ----------
    .. [1] ISO 7089:2000 (seen in a public table), ISO 7092:2000 and ISO
       7093-1:2000 (from memory).
    """
    if standard not in WASHERS:
        raise Refusal(
            f'There are no washers "{standard}"; the tables hold {", ".join(WASHERS)}.',
            nearest(standard, WASHERS),
        )
    table = read_table(_WASHERS)
    row = row_of_size(table.figures[standard], size, f"{standard} washer")
    return Washer(
        standard,
        row["size"],
        float(row["inside"]),
        float(row["outside"]),
        float(row["thickness"]),
        table.source,
    )


def spanner_across_flats(designation: str) -> float:
    """Size of the spanner for a nut.

    Parameters
    ----------
    designation : str
        A metric size with a nut of ISO 4032, or a BA size

    Returns
    -------
    float
        Across flats [mm]

    Raises
    ------
    Refusal
        If the series has no nuts in the tables.

    Examples
    --------
    >>> spanner_across_flats("M6"), round(spanner_across_flats("2 BA"), 2)
    (10.0, 8.22)

    References
    ----------
    .. [1] ISO 4032:2012 (seen in a public reprint); BS 57 / BS 93 proportions, 1.75 times
       the major diameter (seen in a public article).
    """
    one = thread(designation)
    if one.series == "BA":
        return BA_ACROSS_FLATS * one.major
    return nut(one.designation).across_flats
