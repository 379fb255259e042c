"""Deep-groove ball bearings."""

from __future__ import annotations

import re
from dataclasses import dataclass
from pathlib import Path

from tommybar.facts.fasteners.size_row import range_row, row_of_size
from tommybar.facts.table import Source, read_table

_TABLE = Path(__file__).parent / "bearings.toml"


@dataclass(frozen=True)
class Bearing:
    """A deep-groove ball bearing with the normal tolerances of its rings."""

    number: str
    bore: float  # [mm]
    outside: float  # [mm]
    width: float  # open [mm]
    width_shielded: float  # with shields or seals on both sides [mm]
    bore_deviation: tuple[float, float]  # lower, upper [um]
    outside_deviation: tuple[float, float]  # lower, upper [um]
    width_deviation: tuple[float, float]  # lower, upper [um]
    radial_play: tuple[float, float]  # least, most, unmounted [um]
    source: Source


def bearing(number: str) -> Bearing:
    """A deep-groove ball bearing by its number.

    Parameters
    ----------
    number : str
        "608", "688", "6001" ...; suffixes for shields and play are passed over

    Returns
    -------
    Bearing
        Bore, outside diameter and width [mm], deviations and play [um]

    Raises
    ------
    Refusal
        If the number is not in the table.

    Examples
    --------
    >>> one = bearing("608-2Z")
    >>> one.bore, one.outside, one.width, one.outside_deviation
    (8.0, 22.0, 7.0, (-9.0, 0.0))

    References
    ----------
    .. [1] ISO 15:2017 sizes (many seen in public tables); ISO 492 normal
       class (seen) and ISO 5753-1 normal play (from memory).
    """
    plain = number.strip()
    if found := re.match(r"(\d{3,4})(?:[- /]?(?:2?Z+|2?RS\w*|C3|CN))*$", plain, re.IGNORECASE):
        plain = found[1]
    table = read_table(_TABLE)
    row = row_of_size(table.figures["sizes"], plain, "deep-groove bearing")
    bore, outside, width = float(row["bore"]), float(row["outside"]), float(row["width"])
    bore_row = range_row(table.figures["bore_tolerance"], bore, "The bore", "ISO 492 here")
    outside_row = range_row(table.figures["outside_tolerance"], outside, "The outside", "ISO 492 here")
    play = range_row(table.figures["radial_play"], bore, "The bore", "ISO 5753-1 here")
    return Bearing(
        number=plain,
        bore=bore,
        outside=outside,
        width=width,
        width_shielded=float(row.get("shielded", width)),
        bore_deviation=(float(bore_row["lower"]), 0.0),
        outside_deviation=(float(outside_row["lower"]), 0.0),
        width_deviation=(float(table.figures["width_lower"]), 0.0),
        radial_play=(float(play["least"]), float(play["most"])),
        source=table.source,
    )


def bearings_for_shaft(diameter: float) -> tuple[Bearing, ...]:
    """Every bearing of the table that fits a shaft, smallest outside first.

    Parameters
    ----------
    diameter : float
        Shaft diameter [mm]

    Returns
    -------
    tuple of Bearing
        The bearings; none if no bore is that size [mm]

    Examples
    --------
    >>> [one.number for one in bearings_for_shaft(8.0)]
    ['688', '698', '608', '628']

    References
    ----------
    .. [1] ISO 15:2017 (many sizes seen in public tables).
    """
    rows = read_table(_TABLE).figures["sizes"]
    found = [bearing(row["size"]) for row in rows if abs(row["bore"] - diameter) < 1e-9]
    return tuple(sorted(found, key=lambda one: (one.outside, one.width)))
