"""The cone at the end of a drill."""

from __future__ import annotations

from math import isfinite, radians, tan

from tommybar.refusals import Refusal


def point_length(diameter: float, point_angle: float = 118.0) -> float:
    """Length of a drill's point, from its tip to where it cuts full diameter.

    The point is a cone as wide as the drill, so

        l = d / (2 tan(angle / 2))

    which is 0.300 d at 118 degrees and 0.207 d at 135 degrees.

    Parameters
    ----------
    diameter : float
        Diameter of the drill, above 0 [mm]
    point_angle : float, optional
        Included angle of the point, above 0 and below 180 [deg]

    Returns
    -------
    float
        Length of the point [mm]

    Raises
    ------
    Refusal
        If the diameter or the angle is outside its range.

    Notes
    -----
    The chisel edge makes the real point a little shorter.

    Examples
    --------
    >>> round(point_length(10.0), 2)
    3.0
    >>> round(point_length(10.0, 135), 2)
    2.07

    References
    ----------
    .. [1] First principles; the factors 0.300 and 0.207 are trade practice,
       118 degrees is ISO 5419 (from memory).
    """
    if not (isfinite(diameter) and diameter > 0):
        raise Refusal(f"The drill's diameter is {diameter} mm; it must be above 0.", "Give its diameter.")
    if not 0 < point_angle < 180:
        raise Refusal(
            f"The point angle is {point_angle} deg; it must be above 0 and below 180.",
            "A standard drill has 118 deg.",
        )
    return diameter / (2 * tan(radians(point_angle) / 2))
