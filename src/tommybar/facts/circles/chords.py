"""Straight distances between holes of a circle: what dividers can check."""

from __future__ import annotations

import math

from tommybar.facts.circles.holes import check_circle
from tommybar.refusals import Refusal


def chord(count: int, pitch_circle_diameter: float, apart: int = 1) -> float:
    """Straight distance between the centres of two holes of a circle.

        c = D sin(180 k / n)

    Parameters
    ----------
    count : int
        Number of holes n, 2 to 1000 [-]
    pitch_circle_diameter : float
        Diameter D, above 0 [mm]
    apart : int
        How many holes k further on the second one lies, 1 to n - 1; half of n
        gives the widest [-]

    Returns
    -------
    float
        Distance between centres [mm]

    Raises
    ------
    Refusal
        If a figure is outside its range.

    Examples
    --------
    >>> round(chord(6, 50.0), 6)
    25.0
    >>> round(chord(5, 40.0, apart=2), 4)
    38.0423

    References
    ----------
    .. [1] Machinery's Handbook, lengths of chords for a circle of diameter 1
       (printed factors agree to 6 figures); the formula is first principles.
    """
    check_circle(count, pitch_circle_diameter)
    if not 1 <= apart < count:
        raise Refusal(
            f"The holes are {apart} apart on a circle of {count}; they must be 1 to {count - 1} apart.",
            "Count the steps from one hole to the other.",
        )
    return pitch_circle_diameter * math.sin(math.pi * apart / count)
