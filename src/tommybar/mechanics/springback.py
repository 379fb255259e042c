"""How far bent metal opens when it is let go: the former that a radius wants."""

from __future__ import annotations

import math

from tommybar.mechanics.bounds import must_be_above
from tommybar.refusals import Refusal

CORE_MOST = 0.5  # share of the thickness that may stay elastic for the formula to hold


def former_radius(
    radius: float, thickness: float, yield_strength: float, modulus: float, *, wire: bool = False
) -> float:
    """Radius to which metal must be bent so that it springs back to a wanted radius.

    A section bent far beyond yield carries its plastic moment, and letting go
    takes the elastic curvature of that moment away again:

        1 / R0 = 1 / R + c Y / (E t)

    with c = 3 for strip (M = w t^2 Y / 4, I = w t^3 / 12) and
    c = 32 / (3 pi) = 3.395 for round wire (M = d^3 Y / 6, I = pi d^4 / 64).

    Parameters
    ----------
    radius : float
        Wanted radius R of the middle of the metal, let go [mm]
    thickness : float
        Thickness t of the strip, or diameter of the wire [mm]
    yield_strength : float
        Yield strength Y [MPa]
    modulus : float
        Modulus of elasticity E [MPa]
    wire : bool
        Whether the section is round

    Returns
    -------
    float
        Radius R0 of the middle of the metal on the former [mm]

    Raises
    ------
    Refusal
        If more than half of the thickness would stay elastic.

    Notes
    -----
    Of the thickness the share 2 R0 Y / (E t) stays elastic; up to half of it
    the moment is at most 8 % below the plastic one. Metal that hardens as it
    is bent springs back more: a trial turn settles it.

    Examples
    --------
    Strip of 1 mm with Y / E = 1/1000 to a radius of 50 mm: 1/R0 = 0.02 + 0.003.

    >>> round(former_radius(50.0, 1.0, 200.0, 200000.0), 3)
    43.478

    References
    ----------
    .. [1] First principles of elastic, perfectly plastic bending; for strip it is the first term of
       Ri/Rf = 4 (Ri Y / E t)^3 - 3 (Ri Y / E t) + 1, printed in textbooks of manufacturing (from memory).
    """
    must_be_above("The radius", radius, 0.0, "mm")
    must_be_above("The thickness", thickness, 0.0, "mm")
    must_be_above("The yield strength", yield_strength, 0.0, "MPa")
    must_be_above("The modulus", modulus, 0.0, "MPa")
    share = _plastic(wire) * yield_strength / (modulus * thickness)
    bent = 1.0 / (1.0 / radius + share)
    core = 2 * bent * yield_strength / (modulus * thickness)
    if core > CORE_MOST:
        raise Refusal(
            f"Bent to {bent:.4g} mm, {core:.0%} of the thickness of {thickness:g} mm stays elastic; "
            f"the formula holds up to {CORE_MOST:.0%}.",
            "Roll it by trial: tighten the former until the piece springs back to size.",
        )
    return bent


def _plastic(wire: bool) -> float:
    return 32 / (3 * math.pi) if wire else 3.0
