"""Holes that a screw passes through."""

from __future__ import annotations

from pathlib import Path

from tommybar.facts.fasteners.size_row import row_of_size
from tommybar.facts.table import Source, read_table
from tommybar.refusals import Refusal, nearest

_TABLE = Path(__file__).parent / "clearance.toml"
CLEARANCES = ("fine", "medium", "coarse")


def clearance_hole(size: str, fit: str = "medium") -> float:
    """Diameter of a clearance hole for a screw.

    Parameters
    ----------
    size : str
        "M1" to "M20"; a fine thread counts as its diameter
    fit : str, optional
        "fine" (H12), "medium" (H13) or "coarse" (H14)

    Returns
    -------
    float
        Diameter of the hole [mm]

    Raises
    ------
    Refusal
        If the size is not in the table or the fit has another name.

    Examples
    --------
    >>> clearance_hole("M5", "medium"), clearance_hole("M6", "fine")
    (5.5, 6.4)

    References
    ----------
    .. [1] ISO 273:1979 (M1 to M16 seen in a public table).
    """
    if fit not in CLEARANCES:
        raise Refusal(
            f'There is no "{fit}" clearance; ISO 273 has fine, medium and coarse.', nearest(fit, CLEARANCES)
        )
    row = row_of_size(read_table(_TABLE).figures["holes"], size, "clearance hole")
    return float(row[fit])


def clearance_source() -> Source:
    """The source of the clearance holes, as its data file states it.

    Parameters
    ----------
    None

    Returns
    -------
    Source
        Title, year, table and how it was checked [words]

    Examples
    --------
    >>> clearance_source().title
    'ISO 273'

    References
    ----------
    .. [1] ISO 273:1979.
    """
    return read_table(_TABLE).source
