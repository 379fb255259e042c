"""New limits for the mate of a part that has been measured."""

from __future__ import annotations

import math
from typing import Literal

from tommybar.facts.fits.limits import Limits
from tommybar.refusals import Refusal
from tommybar.sizes.fits import Fit


def mate_limits(measured_mm: float, fit: Fit, made: Literal["hole", "shaft"]) -> tuple[float, float]:
    """Limits of the member not made yet that keep the clearance band of the fit.

    With the hole made, shaft = hole - clearance; with the shaft made,
    hole = shaft + clearance. The whole band is then the mate's own tolerance,
    because the member already made has none left.

    Parameters
    ----------
    measured_mm : float
        Measured size of the member that is made, above 0 [mm]
    fit : Fit
        The fit that was drawn [um]
    made : {"hole", "shaft"}
        Which member has been measured [-]

    Returns
    -------
    tuple of float
        Smallest and largest size of the mate [mm]

    Raises
    ------
    Refusal
        If the measured size is not a figure above nought, or leaves no mate.

    Notes
    -----
    The uncertainty of the measured size is not taken off here: narrow the
    band by the guard band of sizes.acceptance at both ends.

    Examples
    --------
    A bore drawn 10 H7/g6 came out at 10.022 instead of 10.000 to 10.015.

    >>> from tommybar.sizes.fits import fit_of
    >>> [round(size, 3) for size in mate_limits(10.022, fit_of(10, "H7/g6"), made="hole")]
    [9.993, 10.017]

    References
    ----------
    .. [1] Source: the definition of clearance (ISO 286-1:2010), solved for
       the other member.
    """
    if not (math.isfinite(measured_mm) and measured_mm > 0):
        raise Refusal(
            f"The measured size is {measured_mm:g} mm; a size must be above 0 mm.",
            "Enter the diameter that was measured.",
        )
    least, greatest = fit.min_clearance_um / 1000, fit.max_clearance_um / 1000
    if made == "hole":
        smallest, largest = measured_mm - greatest, measured_mm - least
    elif made == "shaft":
        smallest, largest = measured_mm + least, measured_mm + greatest
    else:
        raise Refusal(
            f'"{made}" is not a member of a fit; it is a hole or a shaft.', 'Write "hole" or "shaft".'
        )
    if smallest <= 0:
        raise Refusal(
            f"The mate would be {smallest:g} mm; a measured {made} of {measured_mm:g} mm leaves no mate for "
            f"{fit.text}.",
            "Check the measured size.",
        )
    return smallest, largest


def departure_um(measured_mm: float, limits: Limits) -> float:
    """How far a measured size lies outside its limits.

    Parameters
    ----------
    measured_mm : float
        Measured size [mm]
    limits : Limits
        Limits that were drawn [mm]

    Returns
    -------
    float
        Above nought: too large; below nought: too small; 0: within [um]

    Examples
    --------
    >>> from tommybar.facts.fits.iso286 import limits_of_size
    >>> round(departure_um(10.022, limits_of_size(10, "H7")), 3)
    7.0

    References
    ----------
    .. [1] Source: first principles.
    """
    if measured_mm > limits.largest:
        return (measured_mm - limits.largest) * 1000
    if measured_mm < limits.smallest:
        return (measured_mm - limits.smallest) * 1000
    return 0.0
