"""Turning parts: energy, rim speed, the stress field of a flat disc, holes, bursting speed."""

from __future__ import annotations

import math
from dataclasses import dataclass

from tommybar.mechanics.bounds import must_be_above, must_be_within


@dataclass(frozen=True)
class DiscStress:
    """Stress and growth at one radius of a turning disc."""

    radial: float  # [MPa]
    hoop: float  # [MPa]
    growth: float  # outward [mm]


def rotation_energy(inertia: float, speed: float) -> float:
    """Energy of a turning body.

        E = I omega^2 / 2

    Parameters
    ----------
    inertia : float
        Moment of inertia about its axis, 0 or more [g mm2]
    speed : float
        Speed, 0 or more [rev/min]

    Returns
    -------
    float
        Energy E [J]

    Raises
    ------
    Refusal
        If a figure is outside its range.

    Notes
    -----
    For scale, 10 J is 1 kg dropped 1 m. No energy is claimed here to be safe
    without a guard.

    Examples
    --------
    1 kg m2 at 60/2 pi rev/min turns with 1 rad/s, half a joule:

    >>> round(rotation_energy(1e9, 30 / math.pi), 3)
    0.5

    References
    ----------
    .. [1] First principles.
    """
    must_be_within("moment of inertia", inertia, 0.0, 1e15, "g mm2")
    must_be_within("speed", speed, 0.0, 1e6, "rev/min")
    return inertia * 1e-9 * (speed * math.pi / 30) ** 2 / 2


def rim_speed(diameter: float, speed: float) -> float:
    """Speed of a turning rim.

        v = pi d n / 60000

    Parameters
    ----------
    diameter : float
        Outside diameter d, above 0 [mm]
    speed : float
        Speed n, 0 or more [rev/min]

    Returns
    -------
    float
        Rim speed v [m/s]

    Raises
    ------
    Refusal
        If a figure is outside its range.

    Examples
    --------
    >>> round(rim_speed(90.0, 240.0), 2)
    1.13

    References
    ----------
    .. [1] First principles.
    """
    must_be_above("diameter", diameter, 0.0, "mm")
    must_be_within("speed", speed, 0.0, 1e6, "rev/min")
    return math.pi * diameter * speed / 60000


def disc_stress(
    at: float,
    bore_radius: float,
    radius: float,
    speed: float,
    density: float,
    poisson: float,
    modulus: float,
) -> DiscStress:
    """Stress and growth at a radius of a flat disc, solid or with a bore.

    Solid:   s_r = (3+nu)/8 q (b^2 - r^2)
    Bored:   s_r = (3+nu)/8 q (a^2 + b^2 - a^2 b^2/r^2 - r^2)
             s_t = (3+nu)/8 q (a^2 + b^2 + a^2 b^2/r^2) - (1+3nu)/8 q r^2
    with q = rho omega^2; growth u = r (s_t - nu s_r) / E.

    Parameters
    ----------
    at : float
        Radius r, from the bore to the rim [mm]
    bore_radius : float
        a; 0 for a solid disc [mm]
    radius : float
        Outer radius b, above a [mm]
    speed : float
        Speed, 0 or more [rev/min]
    density : float
        Density, above 0 [g/cm3]
    poisson : float
        Poisson's ratio, 0 to 0.5 [-]
    modulus : float
        Modulus of elasticity, above 0 [MPa]

    Returns
    -------
    DiscStress
        Radial and hoop stress [MPa], growth [mm]

    Raises
    ------
    Refusal
        If a figure is outside its range.

    Notes
    -----
    Thin discs of even thickness. A boss on a disc is stressed more than a
    stepped-disc formula says; taking the whole wheel as a flat disc of its
    largest radius is on the safe side.

    Examples
    --------
    Brass, 100 mm across with a 10 mm bore, at 10 000 rev/min:

    >>> round(disc_stress(5.0, 5.0, 50.0, 10000.0, 8.5, 0.34, 100000.0).hoop, 1)
    19.5

    References
    ----------
    .. [1] Mechanics of Materials 2, ch. 4 (formulas seen).
    """
    must_be_within("bore radius", bore_radius, 0.0, 1e5, "mm")
    must_be_above("outer radius", radius, bore_radius, "mm")
    must_be_within("radius asked for", at, bore_radius, radius, "mm")
    must_be_within("speed", speed, 0.0, 1e6, "rev/min")
    must_be_above("density", density, 0.0, "g/cm3")
    must_be_within("Poisson's ratio", poisson, 0.0, 0.5, "")
    must_be_above("modulus of elasticity", modulus, 0.0, "MPa")
    q = density * 1e-9 * (speed * math.pi / 30) ** 2  # [MPa/mm2]
    outer, inner = (3 + poisson) / 8 * q, (1 + 3 * poisson) / 8 * q
    bore = bore_radius**2 * radius**2 / at**2 if bore_radius > 0 else 0.0
    radial = outer * (bore_radius**2 + radius**2 - bore - at**2)
    hoop = outer * (bore_radius**2 + radius**2 + bore) - inner * at**2
    return DiscStress(radial, hoop, at * (hoop - poisson * radial) / modulus)


def stress_at_hole(field: DiscStress) -> float:
    """Peak stress at the edge of a small hole in a turning disc.

        peak = 3 s_max - s_min

    Parameters
    ----------
    field : DiscStress
        Stress of the disc without holes at the pitch circle [MPa]

    Returns
    -------
    float
        Peak stress at the edge of the hole [MPa]

    Notes
    -----
    Within 5 % of plane finite elements while the metal between holes is at
    least 2.5 hole radii; 17 % low when it is one hole radius.

    Examples
    --------
    >>> round(stress_at_hole(disc_stress(26.0, 5.0, 50.0, 10000.0, 8.5, 0.34, 100000.0)), 1)
    18.9

    References
    ----------
    .. [1] Kirsch; Peterson's Stress Concentration Factors (from memory);
       checked with plane finite elements.
    """
    high, low = max(field.radial, field.hoop), min(field.radial, field.hoop)
    return 3 * high - low


def average_hoop_stress(bore_radius: float, radius: float, speed: float, density: float) -> float:
    """Hoop stress of a flat disc averaged over its half-section.

        s = rho omega^2 (a^2 + a b + b^2) / 3

    Parameters
    ----------
    bore_radius : float
        a, 0 or more [mm]
    radius : float
        b, above a [mm]
    speed : float
        Speed, 0 or more [rev/min]
    density : float
        Density, above 0 [g/cm3]

    Returns
    -------
    float
        Average hoop stress [MPa]

    Raises
    ------
    Refusal
        If a figure is outside its range.

    Examples
    --------
    >>> round(average_hoop_stress(5.0, 50.0, 10000.0, 8.5), 2)
    8.62

    References
    ----------
    .. [1] First principles: half a disc against its cut.
    """
    must_be_within("bore radius", bore_radius, 0.0, 1e5, "mm")
    must_be_above("outer radius", radius, bore_radius, "mm")
    must_be_within("speed", speed, 0.0, 1e6, "rev/min")
    must_be_above("density", density, 0.0, "g/cm3")
    a, b = bore_radius, radius
    return density * 1e-9 * (speed * math.pi / 30) ** 2 * (a * a + a * b + b * b) / 3


def bursting_speed(
    bore_radius: float, radius: float, density: float, tensile_strength: float, factor: float = 0.8
) -> float:
    """Speed at which the average hoop stress reaches a share of the strength.

        s_average(n) = factor R_m

    Parameters
    ----------
    bore_radius, radius : float
        a and b, a from 0 to below b [mm]
    density : float
        Density, above 0 [g/cm3]
    tensile_strength : float
        R_m, above 0 [MPa]
    factor : float, optional
        Share of R_m that a ductile disc reaches, over 0 to 1 [-]

    Returns
    -------
    float
        Bursting speed [rev/min]

    Raises
    ------
    Refusal
        If a figure is outside its range.

    Notes
    -----
    Run at no more than half of it. Holes: multiply the stress by gross over
    net section. Not a design of a guard.

    Examples
    --------
    >>> round(bursting_speed(5.0, 50.0, 8.5, 360.0))
    57795

    References
    ----------
    .. [1] Average hoop stress criterion (from memory); half of the bursting
       speed is common practice, no source.
    """
    must_be_above("tensile strength", tensile_strength, 0.0, "MPa")
    must_be_above("factor", factor, 0.0, "")
    must_be_within("factor", factor, 0.0, 1.0, "")
    at_1000 = average_hoop_stress(bore_radius, radius, 1000.0, density)
    return 1000.0 * math.sqrt(factor * tensile_strength / at_1000)


def fragment_speed(bore_radius: float, radius: float, speed: float) -> float:
    """Speed at which a third of a disc flies off.

        v = omega r_c,   r_c = (sin(60 deg)/(pi/3)) (2/3)(b^3 - a^3)/(b^2 - a^2)

    Parameters
    ----------
    bore_radius, radius : float
        a and b, a from 0 to below b [mm]
    speed : float
        Speed, 0 or more [rev/min]

    Returns
    -------
    float
        Speed of the fragment's centre of mass [m/s]

    Raises
    ------
    Refusal
        If a figure is outside its range.

    Examples
    --------
    >>> round(fragment_speed(5.0, 50.0, 10000.0), 1)
    29.1

    References
    ----------
    .. [1] First principles.
    """
    must_be_within("bore radius", bore_radius, 0.0, 1e5, "mm")
    must_be_above("outer radius", radius, bore_radius, "mm")
    must_be_within("speed", speed, 0.0, 1e6, "rev/min")
    a, b = bore_radius, radius
    centre = math.sin(math.pi / 3) / (math.pi / 3) * 2 / 3 * (b**3 - a**3) / (b**2 - a**2)
    return speed * math.pi / 30 * centre / 1000


def unbalance_of_runout(mass: float, runout: float) -> float:
    """Unbalance of a body that turns off its own axis.

        U = m TIR / 2

    Parameters
    ----------
    mass : float
        Mass, 0 or more [g]
    runout : float
        Run-out of the body, TIR, 0 or more [mm]

    Returns
    -------
    float
        Unbalance U [g mm]

    Raises
    ------
    Refusal
        If a figure is outside its range.

    Notes
    -----
    A bound, when the whole body is off; a rim alone counts with its own mass.

    Examples
    --------
    >>> unbalance_of_runout(650.0, 0.02)
    6.5

    References
    ----------
    .. [1] First principles.
    """
    must_be_within("mass", mass, 0.0, 1e9, "g")
    must_be_within("run-out", runout, 0.0, 1e3, "mm")
    return mass * runout / 2
