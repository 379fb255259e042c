"""Chatter and parting: figures for ranking one set-up against another."""

from __future__ import annotations

from tommybar.mechanics.bounds import must_be_above, must_be_within


def chatter_width(stiffness: float, damping: float, specific_force: float) -> float:
    """Width of cut below which a springy set-up never chatters.

        b = 2 k zeta (1 + zeta) / K_s

    Parameters
    ----------
    stiffness : float
        Stiffness k of the weakest member, above 0 [N/mm]
    damping : float
        Damping ratio zeta, 0.02 to 0.05 usual, over 0 to 1 [-]
    specific_force : float
        Specific cutting force K_s, above 0 [MPa]

    Returns
    -------
    float
        Width of cut b [mm]

    Raises
    ------
    Refusal
        If a figure is outside its range.

    Notes
    -----
    One mode, no damping by the flank: slow parting runs at many times this.
    A ranking, not a limit.

    Examples
    --------
    >>> round(chatter_width(10000.0, 0.03, 2500.0), 3)
    0.247

    References
    ----------
    .. [1] Regenerative chatter theory, any machining-dynamics text (from memory).
    """
    must_be_above("stiffness", stiffness, 0.0, "N/mm")
    must_be_above("damping ratio", damping, 0.0, "")
    must_be_within("damping ratio", damping, 0.0, 1.0, "")
    must_be_above("specific cutting force", specific_force, 0.0, "MPa")
    return 2 * stiffness * damping * (1 + damping) / specific_force


def blade_stiffness(width: float, height: float, overhang: float, modulus: float) -> float:
    """Stiffness of a parting blade at its edge.

        k = E w H^3 / (4 L^3)

    Parameters
    ----------
    width : float
        Blade width w, above 0 [mm]
    height : float
        Blade height H, above 0 [mm]
    overhang : float
        Overhang L, above 0 [mm]
    modulus : float
        Modulus of elasticity E, above 0 [MPa]

    Returns
    -------
    float
        Stiffness k; half the overhang is eight times as stiff [N/mm]

    Raises
    ------
    Refusal
        If a figure is not above nought.

    Examples
    --------
    >>> round(blade_stiffness(2.0, 12.0, 20.0, 205000.0))
    22140

    References
    ----------
    .. [1] Beam tables (from memory).
    """
    must_be_above("width", width, 0.0, "mm")
    must_be_above("height", height, 0.0, "mm")
    must_be_above("overhang", overhang, 0.0, "mm")
    must_be_above("modulus of elasticity", modulus, 0.0, "MPa")
    return modulus * width * height**3 / (4 * overhang**3)
