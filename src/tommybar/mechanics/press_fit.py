"""Press and shrink fits: pressure, holding force and stress of thick rings."""

from __future__ import annotations

import math
from dataclasses import dataclass

from tommybar.mechanics.bounds import must_be_above, must_be_within


@dataclass(frozen=True)
class PressFit:
    """A press fit as it sits."""

    pressure: float  # [MPa]
    force: float  # to slide it [N]
    torque: float  # to turn it [N m]
    hub_hoop: float  # hoop stress at the hub's bore [MPa]
    hub_mises: float  # equivalent stress there [MPa]
    bore_closes: float  # how much the inner part's bore closes, on diameter [mm]


def press_fit(
    diameter: float,
    interference: float,
    length: float,
    hub_outside: float,
    hub_modulus: float,
    hub_poisson: float,
    inner_modulus: float,
    inner_poisson: float,
    inner_bore: float = 0.0,
    friction: float = 0.12,
) -> PressFit:
    """Pressure, force and stress of a press fit of two plain rings.

        p = delta / (d [(1/Eo)((Do^2+d^2)/(Do^2-d^2) + nuo) + (1/Ei)((d^2+di^2)/(d^2-di^2) - nui)])

    Parameters
    ----------
    diameter : float
        Joint diameter d, above 0 [mm]
    interference : float
        On diameter, after flattening of roughness, 0 or more [mm]
    length : float
        Length engaged, above 0 [mm]
    hub_outside : float
        Outside diameter of the hub, above d; the smallest along a stepped
        hub for stress [mm]
    hub_modulus, inner_modulus : float
        Moduli of elasticity, above 0 [MPa]
    hub_poisson, inner_poisson : float
        Poisson's ratios, 0 to 0.5 [-]
    inner_bore : float, optional
        Bore of the inner part, 0 to below d [mm]
    friction : float, optional
        0.06 to 0.12 oiled, 0.12 to 0.18 dry [-]

    Returns
    -------
    PressFit
        Pressure and stresses [MPa], force [N], torque [N m], closing [mm]

    Raises
    ------
    Refusal
        If a figure is outside its range.

    Notes
    -----
    Elastic. Pressing in takes one to two times the sliding force.

    Examples
    --------
    >>> fit = press_fit(10.0, 0.012, 12.0, 24.0, 100000.0, 0.34, 205000.0, 0.3)
    >>> round(fit.pressure, 1), round(fit.force)
    (57.1, 2583)

    References
    ----------
    .. [1] Lame's thick rings, any machine-design text (from memory); checked
       with radial finite elements.
    """
    must_be_above("joint diameter", diameter, 0.0, "mm")
    must_be_within("interference", interference, 0.0, 0.01 * diameter, "mm")
    must_be_above("length", length, 0.0, "mm")
    must_be_above("outside diameter of the hub", hub_outside, diameter, "mm")
    must_be_within("bore of the inner part", inner_bore, 0.0, 0.999 * diameter, "mm")
    for name, modulus in (("hub", hub_modulus), ("inner part", inner_modulus)):
        must_be_above(f"modulus of the {name}", modulus, 0.0, "MPa")
    for name, nu in (("hub", hub_poisson), ("inner part", inner_poisson)):
        must_be_within(f"Poisson's ratio of the {name}", nu, 0.0, 0.5, "")
    must_be_within("friction", friction, 0.0, 1.0, "")
    d2, o2, i2 = diameter**2, hub_outside**2, inner_bore**2
    outer = ((o2 + d2) / (o2 - d2) + hub_poisson) / hub_modulus
    inner = ((d2 + i2) / (d2 - i2) - inner_poisson) / inner_modulus
    pressure = interference / (diameter * (outer + inner))
    force = friction * math.pi * diameter * length * pressure
    return PressFit(
        pressure,
        force,
        force * diameter / 2000,
        pressure * (o2 + d2) / (o2 - d2),
        pressure * math.sqrt(3 * o2**2 + d2**2) / (o2 - d2),
        2 * pressure * d2 / (d2 - i2) / inner_modulus * inner_bore,
    )


def shrink_temperature(diameter: float, interference: float, clearance: float, expansion: float) -> float:
    """Rise of temperature at which a hub slips over its shaft.

        dT = (delta + clearance) / (alpha d)

    Parameters
    ----------
    diameter : float
        Joint diameter, above 0 [mm]
    interference : float
        On diameter, 0 or more [mm]
    clearance : float
        Wanted while it is hot, about 1 in 1000 of d, 0 or more [mm]
    expansion : float
        Coefficient of expansion, above 0 [1e-6/K]

    Returns
    -------
    float
        Rise of temperature [K]

    Raises
    ------
    Refusal
        If a figure is outside its range.

    Notes
    -----
    Not above 250 C for steel, 120 to 150 C for aluminium and hard brass.

    Examples
    --------
    >>> round(shrink_temperature(20.0, 0.03, 0.02, 11.5), 1)
    217.4

    References
    ----------
    .. [1] Definition of the coefficient; the clearance is common practice, no source.
    """
    must_be_above("joint diameter", diameter, 0.0, "mm")
    must_be_within("interference", interference, 0.0, 0.05 * diameter, "mm")
    must_be_within("clearance", clearance, 0.0, 0.05 * diameter, "mm")
    must_be_above("coefficient of expansion", expansion, 0.0, "1e-6/K")
    return (interference + clearance) / (expansion * 1e-6 * diameter)
