"""Setting the lathe for a cone: slide, tailstock, sine bar, and what goes wrong."""

from __future__ import annotations

import math

from tommybar.refusals import Refusal, nearest

REFERENCES = ("axis", "cross axis")


def slide_setting(half_angle: float, reference: str = "axis") -> float:
    """Reading of the top slide's scale for a cone.

    Scales of one lathe start with the slide along the axis, of another with
    the slide square to it: the same cone reads 30 on one and 60 on the other.

    Parameters
    ----------
    half_angle : float
        Angle between side and axis, 0 to below 90 [deg]
    reference : str
        Where the scale reads 0: "axis" (slide along the bed) or "cross axis" [-]

    Returns
    -------
    float
        Scale reading [deg]

    Raises
    ------
    Refusal
        If the angle or the reference cannot be.

    Examples
    --------
    >>> slide_setting(30.0), slide_setting(10.0, "cross axis")
    (30.0, 80.0)

    References
    ----------
    source: geometry (first principles).
    """
    _check_angle(half_angle)
    if reference not in REFERENCES:
        raise Refusal(
            f'The reference is "{reference}"; slide scales read 0 along the axis or along the cross axis.',
            nearest(reference, REFERENCES) or 'Say "axis" or "cross axis".',
        )
    return half_angle if reference == "axis" else 90.0 - half_angle


def slant_travel(length: float, half_angle: float) -> float:
    """Travel of the swivelled slide along the side of a cone.

        s = L / cos(alpha/2)

    Parameters
    ----------
    length : float
        Length L of the cone along the axis, 0 or more [mm]
    half_angle : float
        Angle between side and axis, 0 to below 90 [deg]

    Returns
    -------
    float
        Slant travel [mm]

    Raises
    ------
    Refusal
        If a figure is outside its range.

    Examples
    --------
    >>> round(slant_travel(20.0, 30.0), 3)
    23.094

    References
    ----------
    source: geometry (first principles).
    """
    _check_angle(half_angle)
    _check_length(length, "length of the cone")
    return length / math.cos(math.radians(half_angle))


def tail_set_over(taper_on_diameter: float, work_length: float) -> float:
    """How far the tailstock is set over for a slender cone between centres.

        v = T L / 2

    Parameters
    ----------
    taper_on_diameter : float
        Change of diameter T for each mm, above 0 and up to 0.2 [mm/mm]
    work_length : float
        Whole length L of the work between centres, 0 or more [mm]

    Returns
    -------
    float
        Set-over [mm]

    Raises
    ------
    Refusal
        If a figure is outside its range.

    Notes
    -----
    L is the whole work, not the cone on it. Steeper than 0.2 the centres no
    longer bear on their cones; ball centres help below that.

    Examples
    --------
    0.6 in/ft on work of 10 in:

    >>> round(tail_set_over(0.05, 254.0) / 25.4, 3)
    0.25

    References
    ----------
    source: handbook rule (from memory); v = L T / 2, error below 0.3 % here.
    """
    if not 0 < taper_on_diameter <= 0.2:
        raise Refusal(
            f"The taper is {taper_on_diameter:g} mm a mm; setting over serves above 0 and up to 0.2.",
            "Swivel the top slide instead.",
        )
    _check_length(work_length, "length of the work")
    return taper_on_diameter * work_length / 2


def sine_bar_stack(angle: float, bar_length: float = 100.0) -> float:
    """Height of the gauge blocks under one roller of a sine bar.

        h = L sin(alpha)

    Parameters
    ----------
    angle : float
        Angle to set, 0 to 60 [deg]; the included angle to measure a cone's
        upper side level, the half angle when the axis lies level
    bar_length : float
        Distance L between rollers, above 0 [mm]

    Returns
    -------
    float
        Stack [mm]

    Raises
    ------
    Refusal
        If a figure is outside its range.

    Notes
    -----
    Above 60 deg a small error of the stack makes a large one of the angle.

    Examples
    --------
    >>> sine_bar_stack(30.0, 100.0).__round__(6)
    50.0

    References
    ----------
    source: geometry (first principles).
    """
    if not 0.0 <= angle <= 60.0:
        raise Refusal(
            f"The angle is {angle:g} deg; a sine bar serves from 0 to 60 deg.",
            "Set the complement from the other side.",
        )
    if not (math.isfinite(bar_length) and bar_length > 0):
        raise Refusal(f"The sine bar is {bar_length:g} mm; it must be above 0.", "Usual: 100, 125, 200 mm.")
    return bar_length * math.sin(math.radians(angle))


def indicator_reading(slide_travel: float, half_angle: float) -> float:
    """What an indicator shows when the swivelled slide runs along a parallel bar, or along the cone's axis.

        r = s sin(alpha/2)

    Parameters
    ----------
    slide_travel : float
        Travel s of the slide, 0 or more [mm]
    half_angle : float
        Angle between slide and bar, 0 to below 90 [deg]

    Returns
    -------
    float
        Change of reading [mm]

    Raises
    ------
    Refusal
        If a figure is outside its range.

    Examples
    --------
    >>> round(indicator_reading(25.0, 1.43066), 4)
    0.6242

    References
    ----------
    source: geometry (first principles).
    """
    _check_angle(half_angle)
    _check_length(slide_travel, "travel of the slide")
    return slide_travel * math.sin(math.radians(half_angle))


def diameter_error_off_centre(diameter: float, height: float) -> float:
    """How much too large a diameter comes out with the tool off centre height.

        2 (sqrt(r^2 + h^2) - r)

    Parameters
    ----------
    diameter : float
        Diameter the dial is set for, above 0 [mm]
    height : float
        How far the edge lies above or below centre [mm]

    Returns
    -------
    float
        Extra diameter [mm]

    Raises
    ------
    Refusal
        If a figure is not finite or the diameter is not above nought.

    Notes
    -----
    On a cone the error grows towards the small end, so the side comes out
    hollow: the reason why a taper tool must stand exactly at centre.

    Examples
    --------
    >>> round(diameter_error_off_centre(10.0, 1.0), 3)
    0.198

    References
    ----------
    source: geometry (first principles).
    """
    if not (math.isfinite(diameter) and diameter > 0 and math.isfinite(height)):
        raise Refusal(
            f"The diameter is {diameter:g} mm and the height {height:g} mm; the diameter must be above 0.",
            "Give both in mm.",
        )
    radius = diameter / 2
    return 2 * (math.hypot(radius, height) - radius)


def _check_angle(half_angle: float) -> None:
    if not 0.0 <= half_angle < 90.0:
        raise Refusal(
            f"The half angle is {half_angle:g} deg; it must be 0 to below 90.", "Halve the included angle."
        )


def _check_length(length: float, what: str) -> None:
    if not (math.isfinite(length) and length >= 0):
        raise Refusal(f"The {what} is {length:g} mm; it must be 0 or more.", "Give it in mm.")
