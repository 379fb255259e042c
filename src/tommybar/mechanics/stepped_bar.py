"""How far a bar of several diameters gives way, held in a chuck, with or without a tailstock centre."""

from __future__ import annotations

import math

from tommybar.mechanics.bounds import must_be_above, must_be_within
from tommybar.mechanics.deflection import second_moment
from tommybar.refusals import Refusal

Lengths = tuple[tuple[float, float, float], ...]  # (length, diameter, bore) from the driven end outwards [mm]


def whole_length(lengths: Lengths) -> float:
    """How long a bar of several pieces is.

    Parameters
    ----------
    lengths : tuple of tuple of float
        Length, diameter and bore of each piece, lengths and diameters above 0,
        each bore smaller than its diameter [mm]

    Returns
    -------
    float
        Sum of the lengths [mm]

    Raises
    ------
    Refusal
        If there is no piece, or a figure of one is outside its range.

    Examples
    --------
    20 of one diameter and 40 of another are 60:

    >>> whole_length(((20.0, 12.0, 0.0), (40.0, 10.0, 4.0)))
    60.0

    References
    ----------
    .. [1] First principles.
    """
    if not lengths:
        raise Refusal("The bar has no length.", "Give at least one piece: length, diameter and bore.")
    whole = 0.0
    for long, dia, bore in lengths:
        must_be_above("length", long, 0.0, "mm")
        must_be_above("diameter", dia, 0.0, "mm")
        must_be_within("bore", bore, 0.0, dia * 0.999, "mm")
        whole += long
    return whole


def stepped_give(
    lengths: Lengths, at: float, modulus: float, centre: bool = False, tail_stiffness: float = math.inf
) -> float:
    """How far a stepped bar gives way under one newton at the tool.

    By unit loads: with f(a, b) = integral of (a - x)(b - x) / E I(x) from the
    chuck to the nearer of the two,

        cantilever: f(a, a)        with a centre at L: f(a, a) - f(a, L)^2 / (f(L, L) + 1 / k)

    Parameters
    ----------
    lengths : tuple of tuple of float
        Length, diameter and bore of each piece, from the chuck outwards [mm]
    at : float
        Distance of the tool from the chuck, from 0 to the whole length [mm]
    modulus : float
        Modulus of elasticity E, above 0 [MPa]
    centre : bool, optional
        Whether a tailstock centre holds the free end
    tail_stiffness : float, optional
        Stiffness k of the tailstock [N/mm]

    Returns
    -------
    float
        Give at the tool; the diameter comes out larger by twice as much [mm/N]

    Raises
    ------
    Refusal
        If a figure is outside its range, or there is no length at all.

    Notes
    -----
    Slim pieces held rigidly in the chuck; shear and the chuck's own give are
    left out, so a real machine gives more.

    Examples
    --------
    A 12 mm bar in two pieces gives like one: 80 N at 60 mm, 27.6 um [1]_.

    >>> round(80e3 * stepped_give(((20.0, 12.0, 0.0), (40.0, 12.0, 0.0)), 60.0, 205000.0), 1)
    27.6

    References
    ----------
    .. [1] Mohr's integral, any text on strength of materials; the example as
       in ``deflection``.
    """
    whole = whole_length(lengths)
    must_be_within("place of the tool", at, 0.0, whole + 1e-9, "mm")
    must_be_above("modulus of elasticity", modulus, 0.0, "MPa")
    own = _unit(lengths, at, at, modulus)
    if not centre:
        return own
    if tail_stiffness != math.inf:
        must_be_above("stiffness of the tailstock", tail_stiffness, 0.0, "N/mm")
    return own - _unit(lengths, at, whole, modulus) ** 2 / (
        _unit(lengths, whole, whole, modulus) + 1 / tail_stiffness
    )


def _unit(lengths: Lengths, a: float, b: float, modulus: float) -> float:
    end, x, total = min(a, b), 0.0, 0.0
    for long, dia, bore in lengths:
        low, high = x, min(x + long, end)
        x += long
        if high <= low:
            continue

        def stem(z: float) -> float:
            return a * b * z - (a + b) * z**2 / 2 + z**3 / 3

        total += (stem(high) - stem(low)) / (modulus * second_moment(dia, bore))
    return total


def alike_diameter(lengths: Lengths) -> float:
    """Diameter of the plain bar that is as long and gives as much at its end.

        d = (64 L^3 / (3 pi sum of integrals))^(1/4), the modulus cancels

    Parameters
    ----------
    lengths : tuple of tuple of float
        Length, diameter and bore of each piece, from the chuck outwards [mm]

    Returns
    -------
    float
        Diameter; its length over it is how slender the stepped bar is [mm]

    Raises
    ------
    Refusal
        If a figure is outside its range, or there is no length at all.

    Examples
    --------
    Thick at the chuck helps most, but a thin end still counts.

    >>> round(alike_diameter(((20.0, 20.0, 0.0), (20.0, 10.0, 0.0))), 1)
    15.4

    References
    ----------
    .. [1] From ``stepped_give`` and the plain cantilever F L^3 / 3 E I.
    """
    whole = sum(long for long, _, _ in lengths)
    give = stepped_give(lengths, whole, 1.0)
    return float((64 * whole**3 / (3 * math.pi * give)) ** 0.25)
