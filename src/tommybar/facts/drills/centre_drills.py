"""Centre drills: forms A, B and R, and the older inch sizes."""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction
from pathlib import Path

from tommybar.facts.table import Source, read_table
from tommybar.refusals import Refusal

INCH = 25.4  # [mm]
_METRIC = Path(__file__).parent / "centre_drills.toml"
_INCH = Path(__file__).parent / "inch_centre_drills.toml"
_FORMS = ("A", "B", "R")


@dataclass(frozen=True)
class CentreDrill:
    """A centre drill and the hole it makes."""

    name: str  # "A 2.5", "BS3", "#4"
    pilot: float  # [mm]
    shank: float  # [mm]
    mouth: float | None  # widest diameter of the centre hole; None where no table gives it [mm]
    pilot_name: str  # as the trade writes it: "2.5" or "3/64"
    shank_name: str
    source: Source


def _fraction(text: str) -> float:
    return float(Fraction(text)) * INCH


def centre_drill(name: str) -> CentreDrill:
    """A centre drill by its name.

    Parameters
    ----------
    name : str
        Form and pilot in mm such as "A 2.5", or "BS3" (BS 328), or "#4"
        (American plain type)

    Returns
    -------
    CentreDrill
        Pilot, shank and mouth [mm]

    Raises
    ------
    Refusal
        If there is no such centre drill; those of its kind are named.

    Examples
    --------
    >>> one = centre_drill("A 2.5")
    >>> one.shank, one.mouth
    (6.3, 5.3)
    >>> centre_drill("BS1").pilot_name
    '3/64'

    References
    ----------
    .. [1] ISO 866, ISO 2540, ISO 2541, ISO 6411; BS 328-2; ASME B94.11M (all
       from memory).
    """
    word = name.strip().upper()
    if found := re.fullmatch(r"(?:FORM\s*|TYPE\s*)?([ABR])\s*(\d+(?:\.\d+)?)(?:\s*MM)?", word):
        return _metric(found[1], float(found[2]))
    table = read_table(_INCH)
    rows = {row["size"]: row for kind in ("BS", "plain") for row in table.figures[kind]}
    plain = re.sub(r"\s+", "", word)
    if plain not in rows:
        raise Refusal(
            f'There is no centre drill "{name}"; there are {", ".join(rows)} '
            "and forms A, B, R by their pilot.",
            'Give it like "A 2.5".',
        )
    row = rows[plain]
    return CentreDrill(
        name=plain,
        pilot=_fraction(row["pilot"]),
        shank=_fraction(row["body"]),
        mouth=None,
        pilot_name=row["pilot"],
        shank_name=row["body"],
        source=table.source,
    )


def _metric(form: str, pilot: float) -> CentreDrill:
    table = read_table(_METRIC)
    rows = {float(row["pilot"]): row for row in table.figures[form]}
    if pilot not in rows:
        raise Refusal(
            f"Form {form} has no pilot of {pilot:g} mm; it has {', '.join(f'{one:g}' for one in rows)}.",
            "Choose one of these.",
        )
    row = rows[pilot]
    return CentreDrill(
        name=f"{form} {pilot:g}",
        pilot=pilot,
        shank=float(row["shank"]),
        mouth=float(row["mouth"]),
        pilot_name=f"{pilot:g}",
        shank_name=f"{row['shank']:g}",
        source=table.source,
    )


def centre_drills_of_form(form: str) -> tuple[CentreDrill, ...]:
    """Every centre drill of one form, smallest first.

    Parameters
    ----------
    form : str
        "A", "B" or "R"

    Returns
    -------
    tuple of CentreDrill
        The centre drills, lengths in [mm]

    Raises
    ------
    Refusal
        If the form has another name.

    Examples
    --------
    >>> [one.pilot for one in centre_drills_of_form("B")][:3]
    [1.0, 1.25, 1.6]

    References
    ----------
    .. [1] ISO 866, ISO 2540, ISO 2541 (from memory).
    """
    if form not in _FORMS:
        raise Refusal(f'There is no form "{form}" of centre drill.', "The forms are A, B and R.")
    return tuple(_metric(form, float(row["pilot"])) for row in read_table(_METRIC).figures[form])
