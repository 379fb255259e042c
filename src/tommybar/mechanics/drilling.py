"""Torque and thrust of drills. Three published ways differ by a factor of two: report a band."""

from __future__ import annotations

import math
from typing import Literal

from tommybar.mechanics.bounds import must_be_above, must_be_within
from tommybar.mechanics.cutting import specific_cutting_force

# Chisel-edge factors A, B, J: Machinery's Handbook, 31st ed., p. 1152 (seen).
CHISEL = {"standard": (1.085, 1.355, 0.030), "split": (1.000, 1.100, 0.001)}


def drill_thrust_and_torque(
    work_factor: float,
    diameter: float,
    feed: float,
    point: Literal["standard", "split"] = "standard",
    wear: float = 1.0,
) -> tuple[float, float]:
    """Thrust and torque of a twist drill by the handbook's power rule.

        T = 0.05 K f^0.8 d^0.8 B W + 0.007 K d^2 J W     M = K f^0.8 d^1.8 A W / 40000

    Parameters
    ----------
    work_factor : float
        Work material factor K: steel of 200 HB 24000, free-machining steel
        18000, most brass 14000, leaded brass and most aluminium 7000, above 0 [-]
    diameter : float
        Diameter d, above 0 [mm]
    feed : float
        Feed f, above 0 [mm/rev]
    point : {"standard", "split"}, optional
        Point: chisel edge of 0.18 d, or split to 0.03 d
    wear : float, optional
        W: 1 sharp to 1.5 worn [-]

    Returns
    -------
    tuple of float
        Thrust T [N] and torque M [N m]

    Raises
    ------
    Refusal
        If a figure is outside its range.

    Examples
    --------
    >>> [round(one, 2) for one in drill_thrust_and_torque(24000, 8.0, 0.12)]
    [1896.32, 5.04]

    References
    ----------
    .. [1] Machinery's Handbook, 31st ed., p. 1152: formulas and chisel-edge
       factors seen; material factors from memory.
    """
    must_be_above("work material factor", work_factor, 0.0, "")
    must_be_above("diameter", diameter, 0.0, "mm")
    must_be_above("feed", feed, 0.0, "mm/rev")
    must_be_within("wear factor", wear, 1.0, 2.0, "")
    a, b, j = CHISEL[point]
    thrust = 0.05 * work_factor * feed**0.8 * diameter**0.8 * b * wear
    thrust += 0.007 * work_factor * diameter**2 * j * wear
    torque = work_factor * feed**0.8 * diameter**1.8 * a * wear / 40000
    return thrust, torque


def drill_thrust_and_torque_by_maker(
    material_factor: float, diameter: float, feed: float
) -> tuple[float, float]:
    """Thrust and torque of a twist drill by a tool maker's rule.

        T = 570 K d f^0.85        M = K d^2 (0.630 + 16.84 f) / 100

    Parameters
    ----------
    material_factor : float
        K: grey iron 1.0 to 1.9, aluminium 1.0, low-carbon steel 2.2,
        free-cutting steel 1.4, alloy steel 2.1 to 2.4, above 0 [-]
    diameter : float
        Diameter d, above 0 [mm]
    feed : float
        Feed f, above 0 [mm/rev]

    Returns
    -------
    tuple of float
        Thrust T [N] and torque M [N m]

    Raises
    ------
    Refusal
        If a figure is not above nought.

    Examples
    --------
    >>> [round(one, 2) for one in drill_thrust_and_torque_by_maker(1.42, 6.0, 0.1)]
    [685.98, 1.18]

    References
    ----------
    .. [1] A cutting-tool maker's technical reference (seen).
    """
    must_be_above("material factor", material_factor, 0.0, "")
    must_be_above("diameter", diameter, 0.0, "mm")
    must_be_above("feed", feed, 0.0, "mm/rev")
    thrust = 570 * material_factor * diameter * feed**0.85
    return thrust, material_factor * diameter**2 * (0.630 + 16.84 * feed) / 100


def lip_torque(kc11: float, mc: float, diameter: float, feed: float, point_angle: float = 118.0) -> float:
    """Torque of a drill's lips alone: a lower bound.

        h = (f/2) sin(sigma/2)        M = kc f d^2 / 8000

    Parameters
    ----------
    kc11, mc : float
        As for ``specific_cutting_force`` [MPa, -]
    diameter : float
        Diameter d, above 0 [mm]
    feed : float
        Feed f, above 0 [mm/rev]
    point_angle : float, optional
        Included angle sigma of the point, 60 to 180 [deg]

    Returns
    -------
    float
        Torque M; 1.3 to 1.5 times as much in practice [N m]

    Raises
    ------
    Refusal
        If a figure is outside its range.

    Examples
    --------
    >>> round(lip_torque(kc11=780, mc=0.18, diameter=6.0, feed=0.1), 3)
    0.619

    References
    ----------
    .. [1] VDI-Z 94 (1952), specific cutting force (from memory).
    """
    must_be_above("diameter", diameter, 0.0, "mm")
    must_be_above("feed", feed, 0.0, "mm/rev")
    must_be_within("point angle", point_angle, 60.0, 180.0, "deg")
    thickness = feed / 2 * math.sin(math.radians(point_angle / 2))
    return specific_cutting_force(kc11, mc, thickness) * feed * diameter**2 / 8000


def pull_in_ratio(rake: float, friction: float) -> float:
    """Thrust of a lip over its cutting force; below nought the drill pulls itself in.

        F_t / F_c = tan(atan(mu) - rake)

    Parameters
    ----------
    rake : float
        Rake at the corner: 25 to 30 for a standard helix, 0 when stoned [deg]
    friction : float
        Friction mu of chip on lip, 0.2 to 0.3 in brass [-]

    Returns
    -------
    float
        Ratio [-]

    Raises
    ------
    Refusal
        If a figure is outside its range.

    Examples
    --------
    >>> round(pull_in_ratio(rake=25.0, friction=0.3), 3)
    -0.146

    References
    ----------
    .. [1] Force circle of orthogonal cutting (from memory).
    """
    must_be_within("rake", rake, -30.0, 60.0, "deg")
    must_be_within("friction", friction, 0.0, 2.0, "")
    return math.tan(math.atan(friction) - math.radians(rake))
