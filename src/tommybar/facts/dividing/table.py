"""Rotary table: degrees, minutes and seconds on handwheel and vernier."""

from __future__ import annotations

import math
from dataclasses import dataclass

from tommybar.facts.dividing.bounds import check_bounds
from tommybar.refusals import Refusal


@dataclass(frozen=True)
class TableSetting:
    """Where the table stands for one division, as its scales read."""

    n: int
    angle: float  # exact [deg]
    degrees: int
    minutes: int
    seconds: float  # on the vernier [arc second]
    turns: int  # of the handwheel from nought
    error: float  # set less exact [deg]


def table_settings(divisions: int, ratio: int = 90, resolution: float = 10.0) -> tuple[TableSetting, ...]:
    """Scale readings of a rotary table for even divisions.

    Each division is reckoned from nought, so that rounding never gathers.

    Parameters
    ----------
    divisions : int
        Number of divisions, 1 to 10000 [-]
    ratio : int
        Turns of the handwheel for one turn of the table, 1 to 360 [-]
    resolution : float
        Finest step that the vernier reads, 1 to 3600 [arc second]

    Returns
    -------
    tuple[TableSetting, ...]
        One for each division from nought on, with its error [deg], which is at
        most half the resolution

    Raises
    ------
    Refusal
        If a figure is outside its range.

    Examples
    --------
    >>> second = table_settings(7)[1]
    >>> second.degrees, second.minutes, second.seconds, second.turns
    (51, 25, 40.0, 12)
    >>> round(second.error * 3600, 2)
    -2.86

    References
    ----------
    source: degrees, minutes and seconds by definition; a 90:1 table moves 4
    degrees a turn (first principles).
    """
    check_bounds(divisions, ratio)
    if not (math.isfinite(resolution) and 1.0 <= resolution <= 3600.0):
        raise Refusal(
            f"The vernier reads {resolution:g} arc seconds; it must be 1 to 3600.",
            "A usual vernier reads 10 arc seconds, a plain wheel 60 or 120.",
        )
    settings = []
    for index in range(divisions):
        exact = 360.0 * index / divisions
        seconds = round(exact * 3600.0 / resolution) * resolution
        degrees, left = divmod(seconds, 3600.0)
        minutes, rest = divmod(left, 60.0)
        settings.append(
            TableSetting(
                n=index + 1,
                angle=exact,
                degrees=int(degrees),
                minutes=int(minutes),
                seconds=rest,
                turns=int(seconds * ratio // (360 * 3600)),
                error=seconds / 3600.0 - exact,
            )
        )
    return tuple(settings)
