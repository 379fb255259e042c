"""The speed at which a shaft with a disc whips."""

from __future__ import annotations

import math
from typing import Literal

from tommybar.mechanics.bounds import must_be_above, must_be_within
from tommybar.mechanics.deflection import second_moment

OWN_MASS = {"simply": 17 / 35, "cantilever": 33 / 140}  # share of the shaft's mass that swings along


def shaft_stiffness(
    support: Literal["simply", "cantilever"], length: float, at: float, diameter: float, modulus: float
) -> float:
    """Sideways stiffness of a shaft at its disc.

    Two bearings that let it tilt: 3EIL/(a^2 b^2); overhung: 3EI/a^3.

    Parameters
    ----------
    support : {"simply", "cantilever"}
        Two bearings, or overhung from one that holds it straight
    length : float
        Length L between bearings, above 0 [mm]
    at : float
        Distance a of the disc from a bearing, over 0, up to L [mm]
    diameter : float
        Diameter of the shaft, above 0 [mm]
    modulus : float
        Modulus of elasticity, above 0 [MPa]

    Returns
    -------
    float
        Stiffness [N/mm]

    Raises
    ------
    Refusal
        If a figure is outside its range.

    Examples
    --------
    >>> round(shaft_stiffness("simply", 120.0, 60.0, 6.0, 205000.0), 1)
    362.3

    References
    ----------
    .. [1] Beam tables (from memory).
    """
    must_be_above("length", length, 0.0, "mm")
    must_be_above("place of the disc", at, 0.0, "mm")
    must_be_above("modulus of elasticity", modulus, 0.0, "MPa")
    stiff = modulus * second_moment(diameter)
    if support == "cantilever":
        must_be_within("place of the disc", at, 0.0, length, "mm")
        return 3 * stiff / at**3
    must_be_within("place of the disc", at, 0.0, 0.999 * length, "mm")
    return 3 * stiff * length / (at**2 * (length - at) ** 2)


def critical_speed(
    support: Literal["simply", "cantilever"],
    length: float,
    at: float,
    diameter: float,
    modulus: float,
    disc_mass: float,
    density: float = 0.0,
) -> float:
    """First critical speed of a shaft with one disc, bearings taken as rigid.

        n = (30/pi) sqrt(k / (m + share of the shaft))

    Parameters
    ----------
    support, length, at, diameter, modulus : float
        As for ``shaft_stiffness`` [mm, MPa]
    disc_mass : float
        Mass of the disc, above 0 [g]
    density : float, optional
        Density of the shaft; 0 leaves its own mass out [g/cm3]

    Returns
    -------
    float
        Critical speed [rev/min]

    Raises
    ------
    Refusal
        If a figure is outside its range.

    Notes
    -----
    Stay below half of it with a wheel that is not balanced on its shaft. The
    disc's own stiffening by turning is left out; soft bearings lower it.

    Examples
    --------
    >>> round(critical_speed("simply", 120.0, 60.0, 6.0, 205000.0, 650.0, 7.85))
    7059

    References
    ----------
    .. [1] Rayleigh's share of the shaft's mass (from memory); checked with
       beam elements.
    """
    must_be_above("mass of the disc", disc_mass, 0.0, "g")
    must_be_within("density", density, 0.0, 30.0, "g/cm3")
    shaft = density / 1000 * math.pi * diameter**2 / 4 * length
    moving = (disc_mass + OWN_MASS[support] * shaft) / 1e6  # [t], with N and mm
    return 30 / math.pi * math.sqrt(shaft_stiffness(support, length, at, diameter, modulus) / moving)
