"""Sizes of warm parts: growth, and the reading taken back to 20 C."""

from __future__ import annotations

import math

from tommybar.refusals import Refusal


def thermal_growth(length_mm: float, expansion_e6_k: float, warmer_k: float) -> float:
    """Growth of a length that is warmer than the reference temperature.

        dL = alpha L dT

    Parameters
    ----------
    length_mm : float
        Length or diameter at 20 C, 0 or more [mm]
    expansion_e6_k : float
        Linear expansion [1e-6/K]
    warmer_k : float
        How much warmer than 20 C; below nought is colder [K]

    Returns
    -------
    float
        Growth [um]

    Raises
    ------
    Refusal
        If the length is below nought or no figure.

    Examples
    --------
    >>> round(thermal_growth(25.0, 11.5, 10.0), 3)
    2.875

    References
    ----------
    .. [1] ISO 1:2022 for the reference temperature (from memory); the formula
       is the definition of linear expansion.
    """
    if not (math.isfinite(length_mm) and length_mm >= 0):
        raise Refusal(f"The length is {length_mm:g} mm; it must be 0 or more.", "Give the measured size.")
    return expansion_e6_k * 1e-6 * length_mm * 1000 * warmer_k


def size_when_cool(measured_mm: float, expansion_e6_k: float, warmer_k: float) -> float:
    """Size at 20 C of a part that was measured warm.

    Parameters
    ----------
    measured_mm : float
        Size measured while warm, 0 or more [mm]
    expansion_e6_k : float
        Linear expansion of the part [1e-6/K]
    warmer_k : float
        How much warmer than 20 C the part is; the instrument is at 20 C [K]

    Returns
    -------
    float
        Size at 20 C [mm]

    Raises
    ------
    Refusal
        If the size is below nought or no figure.

    Examples
    --------
    A brass bore reads 60.000 at 40 C:

    >>> round(size_when_cool(60.0, 20.5, 20.0), 3)
    59.975

    References
    ----------
    .. [1] Source: definition of linear expansion, solved for the cool size.
    """
    thermal_growth(measured_mm, expansion_e6_k, warmer_k)
    return measured_mm / (1 + expansion_e6_k * 1e-6 * warmer_k)
