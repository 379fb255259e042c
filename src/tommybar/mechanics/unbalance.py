"""Unbalance that a rotor may have, and the hole that takes it away."""

from __future__ import annotations

import math

from tommybar.mechanics.bounds import must_be_above, must_be_within


def permissible_eccentricity(grade_mm_s: float, speed_rpm: float) -> float:
    """Permissible specific unbalance: how far the mass may lie off the axis.

        e = 1000 G / omega

    Parameters
    ----------
    grade_mm_s : float
        Balance quality grade G, above 0 [mm/s]
    speed_rpm : float
        Highest running speed, above 0 [rev/min]

    Returns
    -------
    float
        Permissible eccentricity, the same figure in g mm/kg [um]

    Raises
    ------
    Refusal
        If a figure is not above nought.

    Notes
    -----
    For rigid rotors, running below about half of the critical speed.

    Examples
    --------
    >>> round(permissible_eccentricity(2.5, 3000.0), 3)
    7.958

    References
    ----------
    .. [1] ISO 21940-11:2016, definition of the grade (from memory).
    """
    must_be_above("grade", grade_mm_s, 0.0, "mm/s")
    must_be_above("speed", speed_rpm, 0.0, "rev/min")
    return 1000 * grade_mm_s / (speed_rpm * math.pi / 30)


def permissible_unbalance(grade_mm_s: float, mass_kg: float, speed_rpm: float) -> float:
    """Permissible residual unbalance of a rotor.

        U = 1000 G m / omega

    Parameters
    ----------
    grade_mm_s : float
        Balance quality grade G, above 0 [mm/s]
    mass_kg : float
        Mass of the rotor, above 0 [kg]
    speed_rpm : float
        Highest running speed, above 0 [rev/min]

    Returns
    -------
    float
        Permissible residual unbalance, all planes together [g mm]

    Raises
    ------
    Refusal
        If a figure is not above nought.

    Notes
    -----
    The rule of thumb 9549 G m / n is the same with pi worked out.

    Examples
    --------
    >>> round(permissible_unbalance(6.3, 1.0, 3000.0), 3)
    20.054

    References
    ----------
    .. [1] ISO 21940-11:2016 (from memory).
    """
    must_be_above("mass", mass_kg, 0.0, "kg")
    return mass_kg * permissible_eccentricity(grade_mm_s, speed_rpm)


def flat_hole_depth(unbalance_gmm: float, radius_mm: float, drill_mm: float, density_g_cm3: float) -> float:
    """Depth of a flat-bottomed hole that takes away an unbalance.

        z = U / (r rho pi d^2 / 4)

    Parameters
    ----------
    unbalance_gmm : float
        Unbalance to be taken away, 0 or more [g mm]
    radius_mm : float
        Radius at which the hole is drilled, above 0 [mm]
    drill_mm : float
        Diameter of the drill, above 0 [mm]
    density_g_cm3 : float
        Density of the rotor, above 0 [g/cm3]

    Returns
    -------
    float
        Depth at full diameter [mm]

    Raises
    ------
    Refusal
        If a figure is outside its range.

    Notes
    -----
    A drill leaves a cone below the full diameter, which takes more away.

    Examples
    --------
    >>> round(flat_hole_depth(10.0, 20.0, 6.0, 7.85), 3)
    2.253

    References
    ----------
    .. [1] Source: first principles (mass times radius).
    """
    must_be_within("unbalance", unbalance_gmm, 0.0, 1e9, "g mm")
    must_be_above("radius", radius_mm, 0.0, "mm")
    must_be_above("drill", drill_mm, 0.0, "mm")
    must_be_above("density", density_g_cm3, 0.0, "g/cm3")
    return unbalance_gmm / (radius_mm * density_g_cm3 / 1000 * math.pi * drill_mm**2 / 4)
