"""Position of holes in a pattern: what the table, its screws and the drill let us promise.

True position T is a diameter: twice the distance of a hole from where it
should be.
"""

from __future__ import annotations

import math
from collections.abc import Callable

from tommybar.refusals import Refusal


def axis_deviation(
    resolution_um: float, backlash_half_um: float = 0.0, screw_um: float = 0.0, wander_um: float = 0.0
) -> float:
    """Standard deviation of a hole along each axis.

    sigma^2 = resolution^2/12 + (half backlash)^2/3 + screw^2 + wander^2

    Parameters
    ----------
    resolution_um : float
        Step of the dial or read-out, 0 or more [um]
    backlash_half_um : float, optional
        Half width of the backlash that is left; 0 if every hole is approached
        from the same side, the whole backlash if reversed blindly [um]
    screw_um : float, optional
        Standard deviation of the lead screw's error [um]
    wander_um : float, optional
        Standard deviation of the drill's wander [um]

    Returns
    -------
    float
        Standard deviation along each axis [um]

    Raises
    ------
    Refusal
        If a figure is below nought.

    Examples
    --------
    >>> round(axis_deviation(5.0, 0.0, 5.0, 15.0), 3)
    15.877

    References
    ----------
    .. [1] Source: variance of even and normal errors, first principles.
    """
    for name, figure in (
        ("resolution", resolution_um),
        ("half backlash", backlash_half_um),
        ("screw error", screw_um),
        ("wander", wander_um),
    ):
        if not (math.isfinite(figure) and figure >= 0):
            raise Refusal(f"The {name} is {figure:g} um; it must be 0 or more.", "Give it in micrometres.")
    return math.sqrt(resolution_um**2 / 12 + backlash_half_um**2 / 3 + screw_um**2 + wander_um**2)


def true_position(deviation_um: float, share: float = 0.95, holes: int = 1) -> float:
    """True position that one hole, or every one of several, keeps to each other.

    T = 2 sigma sqrt(-2 ln(1 - p)); for all N holes p becomes p^(1/N).

    Parameters
    ----------
    deviation_um : float
        Standard deviation along each axis, 0 or more [um]
    share : float, optional
        Share of patterns, between 0 and 1 [-]
    holes : int, optional
        How many holes must all lie within, 1 or more [-]

    Returns
    -------
    float
        True position T, a diameter [um]

    Raises
    ------
    Refusal
        If a figure is outside its range.

    Examples
    --------
    >>> round(true_position(15.877, 0.95), 2), round(true_position(15.877, 0.95, holes=6), 2)
    (77.73, 98.04)

    References
    ----------
    .. [1] ISO 1101, meaning of the tolerance (from memory); Rayleigh
       distribution.
    """
    _check(deviation_um, share, holes)
    return 2 * deviation_um * math.sqrt(-2 * math.log(1 - share ** (1 / holes)))


def true_position_to_datum(
    deviation_um: float, centre_deviation_um: float, share: float = 0.95, holes: int = 1
) -> float:
    """True position of a whole pattern to its datum, the centre having been found with an error.

    The error of the centre is common to all holes: it is drawn once, not once
    for each hole, and leaves the spacing between holes alone.

    Parameters
    ----------
    deviation_um : float
        Standard deviation of each hole along each axis, above 0 [um]
    centre_deviation_um : float
        Standard deviation of the found centre along each axis, 0 or more [um]
    share : float, optional
        Share of patterns, between 0 and 1 [-]
    holes : int, optional
        How many holes must all lie within, 1 or more [-]

    Returns
    -------
    float
        True position T to the datum, a diameter [um]

    Raises
    ------
    Refusal
        If a figure is outside its range.

    Examples
    --------
    >>> round(true_position_to_datum(16.0, 10.0, holes=6))
    116

    References
    ----------
    .. [1] Source: own integral over the common shift (Rayleigh) of the share
       of each hole (Rice); checked against simulation.
    """
    _check(deviation_um, share, holes)
    _check(centre_deviation_um, share, holes)
    if centre_deviation_um == 0:
        return true_position(deviation_um, share, holes)
    if not deviation_um > 0:
        raise Refusal("The deviation of a hole is 0 um; it must be above 0.", "Give that of the drill.")
    import numpy
    from scipy.special import chndtr

    shares = (numpy.arange(2000) + 0.5) / 2000
    shifts = centre_deviation_um * numpy.sqrt(-2 * numpy.log(1 - shares))
    away = (shifts / deviation_um) ** 2

    def within(reach: float) -> float:
        return float(numpy.mean(chndtr((reach / deviation_um) ** 2, 2.0, away) ** holes))

    return 2 * _solve(within, share, 12 * (deviation_um + centre_deviation_um) * math.sqrt(holes))


def true_position_polar(
    radius_mm: float, angle_deviation_arcmin: float, radial_deviation_um: float, share: float = 0.95
) -> float:
    """True position of a hole set by a rotary table: angle and radius err apart.

    Parameters
    ----------
    radius_mm : float
        Radius of the hole circle, above 0 [mm]
    angle_deviation_arcmin : float
        Standard deviation of the angle, above 0 [arcmin]
    radial_deviation_um : float
        Standard deviation of the radius, above 0 [um]
    share : float, optional
        Share of holes, between 0 and 1 [-]

    Returns
    -------
    float
        True position T, a diameter [um]

    Raises
    ------
    Refusal
        If a figure is outside its range.

    Examples
    --------
    >>> round(true_position_polar(26.0, 2.0, 12.0), 1)
    67.3

    References
    ----------
    .. [1] Source: own integral over the direction of the error, two normal
       deviations at right angles; one minute of arc moves 0.291 um per mm.
    """
    for figure, name, unit in (
        (radius_mm, "radius", "mm"),
        (angle_deviation_arcmin, "deviation of the angle", "arcmin"),
        (radial_deviation_um, "deviation of the radius", "um"),
    ):
        if not (math.isfinite(figure) and figure > 0):
            raise Refusal(f"The {name} is {figure:g} {unit}; it must be above 0.", "Give what it really is.")
    _check(radial_deviation_um, share, 1)
    tangential = radius_mm * 1000 * math.radians(angle_deviation_arcmin / 60)
    import numpy

    angles = (numpy.arange(720) + 0.5) / 720 * numpy.pi
    precision = (numpy.cos(angles) / tangential) ** 2 + (numpy.sin(angles) / radial_deviation_um) ** 2
    product = tangential * radial_deviation_um

    def within(reach: float) -> float:
        beyond = numpy.mean(numpy.exp(-(reach**2) * precision / 2) / precision) / product
        return 1 - float(beyond)

    return 2 * _solve(within, share, 12 * (tangential + radial_deviation_um))


def _check(deviation_um: float, share: float, holes: int) -> None:
    if not (math.isfinite(deviation_um) and deviation_um >= 0):
        raise Refusal(f"A deviation is {deviation_um:g} um; it must be 0 or more.", "Give it in micrometres.")
    if not 0 < share < 1:
        raise Refusal(f"The share is {share:g}; it must lie between 0 and 1.", "Give 0.95 as a rule.")
    if holes < 1:
        raise Refusal(f"The count of holes is {holes}; it must be 1 or more.", "Give how many are drilled.")


def _solve(within: Callable[[float], float], share: float, high: float) -> float:
    low = 0.0
    for _ in range(60):
        middle = (low + high) / 2
        if within(middle) < share:
            low = middle
        else:
            high = middle
    return (low + high) / 2
