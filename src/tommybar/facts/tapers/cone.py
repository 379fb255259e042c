"""A cone, however its steepness is said."""

from __future__ import annotations

import math
import re
from dataclasses import dataclass

from tommybar.refusals import Refusal

MM_PER_INCH = 25.4

_FIGURE = r"(\d+(?:\.\d+)?)"
_RATIO = re.compile(rf"^{_FIGURE}\s*[:/]\s*{_FIGURE}$")
_PER_FOOT = re.compile(rf"^{_FIGURE}(?:\s*/\s*{_FIGURE})?\s*in\s*/\s*ft$")
_DEGREES = re.compile(rf"^{_FIGURE}\s*deg$")


@dataclass(frozen=True)
class Taper:
    """A cone; sizes are 0 where the taper has no size of its own."""

    name: str
    taper_on_diameter: float  # change of diameter for each mm of length [mm/mm]
    large_end: float  # diameter at the gauge line [mm]
    small_end: float  # [mm]
    length: float  # from the one to the other, along the axis [mm]
    source: str
    note: str = ""

    @property
    def half_angle(self) -> float:
        """Angle between the side and the axis [deg]."""
        return half_angle(self.taper_on_diameter)

    @property
    def included_angle(self) -> float:
        """Angle between the two sides [deg]."""
        return 2 * self.half_angle

    @property
    def one_in(self) -> float:
        """The x of "1 : x" [-]."""
        return 1 / self.taper_on_diameter

    @property
    def per_foot(self) -> float:
        """Change of diameter in inches for each foot [in/ft]."""
        return 12 * self.taper_on_diameter


def half_angle(taper_on_diameter: float) -> float:
    """Angle between the side of a cone and its axis.

        alpha / 2 = arctan(T / 2)

    Parameters
    ----------
    taper_on_diameter : float
        Change of diameter T for each mm of length, above 0 [mm/mm]

    Returns
    -------
    float
        Half angle [deg]

    Raises
    ------
    Refusal
        If the taper is not a finite figure above nought.

    Examples
    --------
    >>> round(half_angle(1 / 10), 6)
    2.862405

    References
    ----------
    source: ISO 1119 by geometry (first principles).
    """
    if not (math.isfinite(taper_on_diameter) and taper_on_diameter > 0):
        raise Refusal(
            f"The taper is {taper_on_diameter:g} mm of diameter a mm; it must be above 0.",
            "Give it as 1:20, as 0.6 in/ft, or as an angle.",
        )
    return math.degrees(math.atan(taper_on_diameter / 2))


def cone(text: str) -> Taper:
    """A cone from its steepness in words.

    Parameters
    ----------
    text : str
        "1:10", "7:24", "0.6 in/ft", "1/4 in/ft", or the included angle "60 deg" [-]

    Returns
    -------
    Taper
        A taper without sizes: taper on diameter [mm/mm]

    Raises
    ------
    Refusal
        If it cannot be read or the angle is not between 0 and 180 deg.

    Examples
    --------
    >>> cone("1:20").taper_on_diameter
    0.05
    >>> round(cone("1/2 in/ft").included_angle, 4)
    2.387
    >>> round(cone("60 deg").half_angle, 6)
    30.0

    References
    ----------
    source: ISO 1119 and the foot of 12 inches (definitions).
    """
    plain = " ".join(text.casefold().replace(",", ".").split())
    steepness = 0.0
    if match := _RATIO.match(plain):
        steepness = _quotient(match[1], match[2])
    elif match := _PER_FOOT.match(plain):
        steepness = _quotient(match[1], match[2] or "1") / 12
    elif match := _DEGREES.match(plain):
        included = float(match[1])
        if 0 < included < 180:
            steepness = 2 * math.tan(math.radians(included / 2))
    if steepness <= 0:
        raise Refusal(
            f'The taper is "{text}"; it must be a ratio, a taper per foot or an angle below 180 deg.',
            'Write it like 1:20, "0.6 in/ft" or "60 deg".',
        )
    return Taper(plain, steepness, 0.0, 0.0, 0.0, "as given; angle by geometry (first principles)")


def _quotient(top: str, bottom: str) -> float:
    return float(top) / float(bottom) if float(bottom) else 0.0
