"""How long twist drills are: the jobber series and the long series."""

from __future__ import annotations

from dataclasses import dataclass
from math import isfinite
from pathlib import Path

from tommybar.facts.lines import read_lines
from tommybar.refusals import Refusal

_FILE = Path(__file__).parent / "drill_lengths.toml"
JOBBER, LONG = "jobber", "long"


@dataclass(frozen=True)
class DrillLength:
    """Overall length of a drill and the length of its flutes, tip included [mm]."""

    overall: float
    flute: float


def drill_length(diameter: float, series: str = JOBBER) -> DrillLength:
    """Overall and flute length of a parallel-shank twist drill.

    Parameters
    ----------
    diameter : float
        Diameter of the drill, above 0 and up to 20 [mm]
    series : str, optional
        "jobber" or "long" [-]

    Returns
    -------
    DrillLength
        Overall and flute length [mm]

    Raises
    ------
    Refusal
        If the series does not go to that diameter.

    Examples
    --------
    >>> drill_length(3.3)
    DrillLength(overall=65, flute=36)
    >>> drill_length(3.3, "long").overall
    106

    References
    ----------
    .. [1] ISO 235 (jobber) and ISO 494 (long series), both from memory.
    """
    if series not in (JOBBER, LONG):
        raise Refusal(f'There is no drill series "{series}"; it must be {JOBBER} or {LONG}.')
    _, rows = read_lines(_FILE)
    if isfinite(diameter) and diameter > 0:
        for row in rows:
            if diameter <= row["upto"] + 1e-6:
                overall, flute = ("overall", "flute") if series == JOBBER else ("long_overall", "long_flute")
                if row[overall] > 0:
                    return DrillLength(row[overall], row[flute])
                break
    raise Refusal(
        f"No {series} drill of {diameter:g} mm is in the table; it goes up to {rows[-1]['upto']:g} mm.",
        "Measure the drill, or take another size.",
    )
