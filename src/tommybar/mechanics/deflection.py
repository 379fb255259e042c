"""How far a bar bends under the radial force of a cut, and what that does to the diameter."""

from __future__ import annotations

import math
from typing import Literal

from tommybar.mechanics.bounds import must_be_above, must_be_within
from tommybar.refusals import Refusal

Support = Literal["cantilever", "chuck_centre", "centres"]


def second_moment(diameter: float, bore: float = 0.0) -> float:
    """Second moment of area of a round bar or tube.

        I = pi (D^4 - d^4) / 64

    Parameters
    ----------
    diameter : float
        Outside diameter D, above 0 [mm]
    bore : float, optional
        Bore d, from 0 to below D [mm]

    Returns
    -------
    float
        Second moment I [mm4]

    Raises
    ------
    Refusal
        If a figure is outside its range.

    Examples
    --------
    >>> round(second_moment(10.0), 1)
    490.9

    References
    ----------
    .. [1] First principles.
    """
    must_be_above("diameter", diameter, 0.0, "mm")
    must_be_within("bore", bore, 0.0, diameter * 0.999, "mm")
    return math.pi * (diameter**4 - bore**4) / 64


def deflection(
    support: Support,
    force: float,
    at: float,
    length: float,
    diameter: float,
    modulus: float,
    bore: float = 0.0,
    tail_stiffness: float = math.inf,
) -> float:
    """How far the work gives way at the tool.

    cantilever: F a^3/3EI. chuck and centre: a^3 b^2 (3L + b) / (12 EI L^3)
    with b = L - a, or a spring at the tail. between centres: a^2 b^2 / 3EIL.

    Parameters
    ----------
    support : {"cantilever", "chuck_centre", "centres"}
        How it is held
    force : float
        Radial force, 0 or more [N]
    at : float
        Distance a of the tool from the chuck (or the driven centre), from 0
        to the length [mm]
    length : float
        Free length L, above 0 [mm]
    diameter : float
        Diameter, above 0 [mm]
    modulus : float
        Modulus of elasticity E, above 0 [MPa]
    bore : float, optional
        Bore of a tube [mm]
    tail_stiffness : float, optional
        Stiffness of the tailstock; chuck and centre only [N/mm]

    Returns
    -------
    float
        Deflection at the tool; the diameter comes out larger by twice as much [mm]

    Raises
    ------
    Refusal
        If a figure is outside its range.

    Notes
    -----
    A slim bar of one diameter held rigidly in the chuck. The tangential force
    changes the radius only by its square over the diameter and is left out.

    Examples
    --------
    A 12 mm steel bar, 60 mm out, 80 N at its end: 28 um, so 0.055 on diameter.

    >>> round(1000 * deflection("cantilever", 80.0, 60.0, 60.0, 12.0, 205000.0), 1)
    27.6

    References
    ----------
    .. [1] Roark's Formulas for Stress and Strain, beam tables (from memory);
       checked with beam elements.
    """
    must_be_within("force", force, 0.0, 1e6, "N")
    must_be_above("length", length, 0.0, "mm")
    must_be_within("place of the tool", at, 0.0, length, "mm")
    must_be_above("modulus of elasticity", modulus, 0.0, "MPa")
    stiff = modulus * second_moment(diameter, bore)
    a, b, L = at, length - at, length
    if support == "cantilever":
        return force * a**3 / (3 * stiff)
    if support == "centres":
        return force * a**2 * b**2 / (3 * stiff * L)
    if support == "chuck_centre":
        if tail_stiffness != math.inf:
            must_be_above("stiffness of the tailstock", tail_stiffness, 0.0, "N/mm")
        lift = a**2 * (3 * L - a) / (6 * stiff)
        reaction = lift / (L**3 / (3 * stiff) + 1 / tail_stiffness)
        return force * (a**3 / (3 * stiff) - reaction * lift)
    raise Refusal(
        f'The support is "{support}"; it must be cantilever, chuck_centre or centres.',
        "Say how the work is held.",
    )


def spring_passes(compliance: float, stiffness_of_cut: float, depth: float, passes: int = 1) -> float:
    """Metal that stays on the radius because work and tool spring, after so many equal settings.

    With q = C K the cut gives way until its own force holds it:

        left = depth (q / (1 + q))^passes

    Parameters
    ----------
    compliance : float
        Give C of work and tool together, 0 or more [mm/N]
    stiffness_of_cut : float
        K: radial force for one millimetre of depth, 0 or more [N/mm]
    depth : float
        Depth of cut that is set, 0 or more [mm]
    passes : int, optional
        1 for the first cut; each spring pass adds one

    Returns
    -------
    float
        What is left on the radius [mm]

    Raises
    ------
    Refusal
        If a figure is outside its range.

    Notes
    -----
    Below the least chip thickness the tool rubs and the rest stays.

    Examples
    --------
    >>> round(1000 * spring_passes(0.00025, 700.0, 0.2), 1)
    29.8

    References
    ----------
    .. [1] Own derivation, checked numerically.
    """
    must_be_within("compliance", compliance, 0.0, 10.0, "mm/N")
    must_be_within("stiffness of the cut", stiffness_of_cut, 0.0, 1e6, "N/mm")
    must_be_within("depth of cut", depth, 0.0, 100.0, "mm")
    must_be_within("number of passes", passes, 1, 100, "")
    q = compliance * stiffness_of_cut
    return float(depth * (q / (1 + q)) ** passes)
