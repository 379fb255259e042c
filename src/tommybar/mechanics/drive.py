"""What the motor can give the spindle, and the deepest cut it allows."""

from __future__ import annotations

import math
from typing import Literal

from tommybar.mechanics.bounds import must_be_above, must_be_within
from tommybar.mechanics.cutting import cutting_force


def spindle_torque(
    power: float,
    speed: float,
    efficiency: float = 0.75,
    drive: Literal["belt", "variable"] = "belt",
    base_speed: float = 0.0,
) -> float:
    """Torque that a drive gives at the spindle.

    Belt or gear steps give constant power, M = eta P / (2 pi n). A variable
    drive below its base speed gives constant torque: its power falls with n.

    Parameters
    ----------
    power : float
        Rated power P of the motor, above 0 [W]
    speed : float
        Spindle speed n, above 0 [rev/min]
    efficiency : float, optional
        Share that reaches the spindle, 0.7 to 0.85 with two belts and cold
        grease [-]
    drive : {"belt", "variable"}, optional
        Kind of drive
    base_speed : float, optional
        Spindle speed at which a variable drive has its rated power [rev/min]

    Returns
    -------
    float
        Torque M at the spindle [N m]

    Raises
    ------
    Refusal
        If a figure is outside its range.

    Examples
    --------
    >>> round(spindle_torque(370.0, 350.0), 2)
    7.57
    >>> round(spindle_torque(370.0, 350.0, drive="variable", base_speed=1400.0), 2)
    1.89

    References
    ----------
    .. [1] First principles; efficiency is common practice, no source.
    """
    must_be_above("power", power, 0.0, "W")
    must_be_above("spindle speed", speed, 0.0, "rev/min")
    must_be_within("efficiency", efficiency, 0.0, 1.0, "")
    has = power
    if drive == "variable":
        must_be_above("base speed", base_speed, 0.0, "rev/min")
        has = power * min(1.0, speed / base_speed)
    return efficiency * has * 30 / (math.pi * speed)


def deepest_cut(
    torque: float, diameter: float, kc11: float, mc: float, feed: float, approach_angle: float = 90.0
) -> float:
    """Depth of cut at which the spindle's torque is used up.

    Parameters
    ----------
    torque : float
        Torque at the spindle, above 0 [N m]
    diameter : float
        Diameter being cut, above 0 [mm]
    kc11, mc, feed, approach_angle : float
        As for ``cutting_force`` [MPa, -, mm/rev, deg]

    Returns
    -------
    float
        Depth of cut a_p, off the radius [mm]

    Raises
    ------
    Refusal
        If a figure is outside its range.

    Examples
    --------
    >>> round(deepest_cut(7.571, 60.0, kc11=2220, mc=0.14, feed=0.1, approach_angle=75.0), 2)
    0.82

    References
    ----------
    .. [1] ``cutting_force``, which is linear in the depth.
    """
    must_be_above("torque", torque, 0.0, "N m")
    must_be_above("diameter", diameter, 0.0, "mm")
    return torque * 2000 / diameter / cutting_force(kc11, mc, feed, 1.0, approach_angle)
