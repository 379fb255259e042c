"""Stress in turning rings and flat discs from their own mass."""

from __future__ import annotations

import math

from tommybar.refusals import Refusal


def solid_disc_stress(radius_mm: float, speed_rpm: float, density_kg_m3: float, poisson: float) -> float:
    """Largest stress in a flat disc without a bore: at its centre, the same in all directions.

        sigma = (3 + nu)/8 rho omega^2 b^2

    Parameters
    ----------
    radius_mm : float
        Outer radius b, above 0 [mm]
    speed_rpm : float
        Speed, 0 or more [rev/min]
    density_kg_m3 : float
        Density, above 0 [kg/m3]
    poisson : float
        Poisson's ratio, 0 to 0.5 [-]

    Returns
    -------
    float
        Radial and hoop stress at the centre [MPa]

    Raises
    ------
    Refusal
        If a figure is outside its range.

    Notes
    -----
    For thin discs of even thickness.

    Examples
    --------
    >>> round(solid_disc_stress(25.0, 10000.0, 7850.0, 0.3), 4)
    2.2194

    References
    ----------
    .. [1] Mechanics of Materials 2, chapter on rings and discs (seen).
    """
    return (3 + poisson) / 8 * _rim_pressure(radius_mm, speed_rpm, density_kg_m3, poisson)


def bored_disc_stress(
    radius_mm: float, speed_rpm: float, density_kg_m3: float, poisson: float, bore_radius_mm: float = 0.0
) -> float:
    """Largest stress in a flat disc with a bore: hoop stress at the edge of the bore.

        sigma = rho omega^2 / 4 ((3 + nu) b^2 + (1 - nu) a^2)

    Parameters
    ----------
    radius_mm : float
        Outer radius b, above 0 [mm]
    speed_rpm : float
        Speed, 0 or more [rev/min]
    density_kg_m3 : float
        Density, above 0 [kg/m3]
    poisson : float
        Poisson's ratio, 0 to 0.5 [-]
    bore_radius_mm : float, optional
        Radius a of the bore; 0 is the limit of a pin-hole [mm]

    Returns
    -------
    float
        Hoop stress at the bore [MPa]

    Raises
    ------
    Refusal
        If a figure is outside its range.

    Notes
    -----
    For thin discs of even thickness. Even a pin-hole doubles the stress at
    the centre of a solid disc.

    Examples
    --------
    >>> round(bored_disc_stress(25.0, 10000.0, 7850.0, 0.3), 4)
    4.4388

    References
    ----------
    .. [1] Mechanics of Materials 2, chapter on rings and discs (seen).
    """
    pressure = _rim_pressure(radius_mm, speed_rpm, density_kg_m3, poisson)
    if not 0 <= bore_radius_mm < radius_mm:
        raise Refusal(
            f"The bore radius is {bore_radius_mm:g} mm; it must be 0 or more and below the outer radius "
            f"{radius_mm:g} mm.",
            "Give radii, not diameters.",
        )
    return pressure / 4 * ((3 + poisson) + (1 - poisson) * (bore_radius_mm / radius_mm) ** 2)


def thin_ring_stress(radius_mm: float, speed_rpm: float, density_kg_m3: float) -> float:
    """Hoop stress in a thin turning ring.

        sigma = rho v^2

    Parameters
    ----------
    radius_mm : float
        Mean radius, above 0 [mm]
    speed_rpm : float
        Speed, 0 or more [rev/min]
    density_kg_m3 : float
        Density, above 0 [kg/m3]

    Returns
    -------
    float
        Hoop stress [MPa]

    Raises
    ------
    Refusal
        If a figure is outside its range.

    Examples
    --------
    >>> round(thin_ring_stress(25.0, 10000.0, 7850.0), 4)
    5.3803

    References
    ----------
    .. [1] Source: first principles (balance of half a ring).
    """
    return _rim_pressure(radius_mm, speed_rpm, density_kg_m3, 0.3)


def _rim_pressure(radius_mm: float, speed_rpm: float, density_kg_m3: float, poisson: float) -> float:
    """rho (omega r)^2 in MPa, after the figures have been looked at."""
    for figure, name, unit in (
        (radius_mm, "radius", "mm"),
        (density_kg_m3, "density", "kg/m3"),
    ):
        if not (math.isfinite(figure) and figure > 0):
            raise Refusal(f"The {name} is {figure:g} {unit}; it must be above 0.", "Give what it really is.")
    if not (math.isfinite(speed_rpm) and speed_rpm >= 0):
        raise Refusal(f"The speed is {speed_rpm:g} rev/min; it must be 0 or more.", "Give its size.")
    if not 0 <= poisson <= 0.5:
        raise Refusal(f"Poisson's ratio is {poisson:g}; it must lie from 0 to 0.5.", "Take 0.3 for metals.")
    rim_speed = speed_rpm * math.pi / 30 * radius_mm / 1000
    return density_kg_m3 * rim_speed**2 / 1e6
