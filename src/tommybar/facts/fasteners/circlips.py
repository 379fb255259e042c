"""Circlips and their grooves."""

from __future__ import annotations

import re
from dataclasses import dataclass
from pathlib import Path

from tommybar.facts.table import Source, read_table
from tommybar.refusals import Refusal

_TABLE = Path(__file__).parent / "circlips.toml"
_STANDARD = {"shaft": "DIN 471", "bore": "DIN 472"}


@dataclass(frozen=True)
class Circlip:
    """A circlip and the groove it needs."""

    standard: str
    kind: str  # "shaft" or "bore"
    diameter: float  # of the shaft or bore [mm]
    thickness: float  # of the ring [mm]
    groove_diameter: tuple[float, float]  # smallest, largest [mm]
    groove_width: float  # least (H13) [mm]
    edge: float  # least land between the groove and the end [mm]
    source: Source


def circlip(designation: str) -> Circlip:
    """A circlip by the diameter of its shaft or bore.

    Parameters
    ----------
    designation : str
        "8 shaft" or "22 bore"

    Returns
    -------
    Circlip
        Ring thickness, groove diameter and width, least land [mm]

    Raises
    ------
    Refusal
        If it is not written so, or the table has no such size.

    Examples
    --------
    >>> one = circlip("8 shaft")
    >>> one.groove_diameter, one.groove_width, one.edge
    ((7.54, 7.6), 0.9, 0.6)

    References
    ----------
    .. [1] DIN 471 (shafts of 3 to 11 mm seen), DIN 472 (bores of 8 to 18 mm
       seen, both in public tables); the rest from memory.
    """
    found = re.fullmatch(r"\s*(\d+(?:\.\d+)?)\s*(?:mm)?\s*(shaft|bore)\s*", designation, re.IGNORECASE)
    if found is None:
        raise Refusal(f'"{designation}" is no circlip.', 'Give it as "8 shaft" or "22 bore".')
    diameter, kind = float(found[1]), found[2].lower()
    table = read_table(_TABLE)
    rows = {float(row["diameter"]): row for row in table.figures[kind]}
    if diameter not in rows:
        close = sorted(rows, key=lambda one: abs(one - diameter))[:2]
        raise Refusal(
            f"There is no circlip for a {kind} of {diameter:g} mm in {_STANDARD[kind]} "
            f"({min(rows):g} to {max(rows):g} mm here).",
            f"The nearest are {close[0]:g} and {close[1]:g} mm.",
        )
    row = rows[diameter]
    groove, tolerance = float(row["groove"]), float(row["groove_tolerance"])
    limits = (groove - tolerance, groove) if kind == "shaft" else (groove, groove + tolerance)
    return Circlip(
        standard=_STANDARD[kind],
        kind=kind,
        diameter=diameter,
        thickness=float(row["thickness"]),
        groove_diameter=(round(limits[0], 3), round(limits[1], 3)),
        groove_width=float(row["groove_width"]),
        edge=float(row["edge"]),
        source=table.source,
    )
