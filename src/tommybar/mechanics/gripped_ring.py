"""A ring in a chuck: how far equal jaws press it out of round."""

from __future__ import annotations

import math
from dataclasses import dataclass

from tommybar.mechanics.bounds import must_be_above, must_be_within


@dataclass(frozen=True)
class RingUnderJaws:
    """What n equal jaws do to a thin ring."""

    moment_at_jaw: float  # bending moment [N m]
    moment_between: float  # [N m]
    in_at_jaw: float  # inward [mm]
    out_between: float  # outward [mm]
    out_of_round: float  # the sum: lobes of a bore that is bored true and let go [mm]
    bending_stress: float  # at the jaws [MPa]


def ring_under_jaws(
    jaws: int, whole_force: float, outside: float, inside: float, width: float, modulus: float
) -> RingUnderJaws:
    """Bending of a thin ring gripped by equal jaws, each pressing at one line.

    With q = pi/n and W the force of one jaw:

        M = (W R/2)(1/q - cot q)     and     (W R/2)(1/sin q - 1/q)
        in  = (W R^3/2EI)[(q/2 + sin q cos q/2)/sin^2 q - 1/q]
        out = (W R^3/4EI)[2/q - 1/sin q - q cos q/sin^2 q]

    Parameters
    ----------
    jaws : int
        Number of jaws n, 2 or more
    whole_force : float
        Sum of the forces of all jaws, 0 or more [N]
    outside, inside : float
        Diameters of the ring, outside the larger [mm]
    width : float
        Width along the axis, above 0 [mm]
    modulus : float
        Modulus of elasticity, above 0 [MPa]

    Returns
    -------
    RingUnderJaws
        Moments [N m], deflections [mm], stress [MPa]

    Raises
    ------
    Refusal
        If a figure is outside its range.

    Notes
    -----
    For thin rings, mean radius over 8 times the wall; see ``wrap_factor`` for
    thicker walls and jaws that fit round. A bore turned true in the chuck
    comes out with as many lobes as jaws; odd lobes do not show on a two-point
    gauge.

    Examples
    --------
    >>> ring = ring_under_jaws(3, 3000.0, 50.0, 44.0, 20.0, 205000.0)
    >>> round(1000 * ring.out_of_round, 1)
    42.5

    References
    ----------
    .. [1] Roark's Formulas for Stress and Strain, 8th ed., table 9.2 (from
       memory); checked with frame elements.
    """
    must_be_within("number of jaws", jaws, 2, 100, "")
    must_be_within("jaw force", whole_force, 0.0, 1e6, "N")
    must_be_above("inside diameter", inside, 0.0, "mm")
    must_be_above("outside diameter", outside, inside, "mm")
    must_be_above("width", width, 0.0, "mm")
    must_be_above("modulus of elasticity", modulus, 0.0, "MPa")
    q, each = math.pi / jaws, whole_force / jaws
    radius, wall = (outside + inside) / 4, (outside - inside) / 2
    stiff = modulus * width * wall**3 / 12
    s, c = math.sin(q), math.cos(q)
    at_jaw = each * radius / 2 * (1 / q - c / s)
    between = each * radius / 2 * (1 / s - 1 / q)
    inward = each * radius**3 / (2 * stiff) * ((q / 2 + s * c / 2) / s**2 - 1 / q)
    outward = each * radius**3 / (4 * stiff) * (2 / q - 1 / s - q * c / s**2)
    return RingUnderJaws(
        at_jaw / 1000, between / 1000, inward, outward, inward + outward, 6 * at_jaw / (width * wall**2)
    )


def wrap_factor(jaws: int, wrap: float, outside: float, inside: float) -> float:
    """How much of the thin ring's lobing is left with jaws that fit round, and a thick wall.

        [sin(n b) / (n sin b)] [1 + 1.4 (t/R)^2],  2b the wrap of one jaw

    Parameters
    ----------
    jaws : int
        Number of jaws n, 2 or more
    wrap : float
        Angle over which one jaw touches, above 0 and below 360/n [deg]
    outside, inside : float
        Diameters of the ring, outside the larger [mm]

    Returns
    -------
    float
        Factor on ``out_of_round`` [-]

    Raises
    ------
    Refusal
        If a figure is outside its range.

    Notes
    -----
    Within 3 % of plane finite elements for R/t from 1.6 to 12 and a wrap of 4
    to 100 degrees. Soft jaws of 100 degrees cut the lobing to a fifth.

    Examples
    --------
    >>> round(wrap_factor(3, 100.0, 50.0, 44.0), 2)
    0.22

    References
    ----------
    .. [1] Own fit to plane finite elements; checked on two geometries it was
       not fitted to.
    """
    must_be_within("number of jaws", jaws, 2, 100, "")
    must_be_above("wrap", wrap, 0.0, "deg")
    must_be_within("wrap", wrap, 0.0, 360 / jaws, "deg")
    must_be_above("inside diameter", inside, 0.0, "mm")
    must_be_above("outside diameter", outside, inside, "mm")
    b = math.radians(wrap / 2)
    thick = (outside - inside) / 2 / ((outside + inside) / 4)
    return math.sin(jaws * b) / (jaws * math.sin(b)) * (1 + 1.4 * thick**2)
