"""Work between two centres: how far it gives way, and how the tailstock is moved until it turns parallel."""

from __future__ import annotations

import math

from tommybar.mechanics.bounds import must_be_above, must_be_within
from tommybar.mechanics.deflection import second_moment
from tommybar.mechanics.stepped_bar import Lengths, whole_length


def centres_give(lengths: Lengths, at: float, modulus: float) -> float:
    """How far a stepped bar between centres gives way under one newton at the tool.

    By unit loads, with the moment m(x) = (L - a) x / L before the tool and
    a (L - x) / L behind it:

        give = integral of m(x)^2 / E I(x) from 0 to L

    Parameters
    ----------
    lengths : tuple of tuple of float
        Length, diameter and bore of each piece, from the driven end outwards [mm]
    at : float
        Distance a of the tool from the driven end, from 0 to the whole length [mm]
    modulus : float
        Modulus of elasticity E, above 0 [MPa]

    Returns
    -------
    float
        Give at the tool, 0 at either centre; the diameter comes out larger by twice as much [mm/N]

    Raises
    ------
    Refusal
        If a figure is outside its range, or there is no length at all.

    Notes
    -----
    Centres that hold without give and do not hinder the bar from leaning in
    them; shear is left out.

    Examples
    --------
    A steel bar of 12 mm, 200 mm between centres, 80 N in its middle:
    80 x 200^3 / (48 x 205000 x 1017.9) = 64 um [1]_.

    >>> round(80e3 * centres_give(((200.0, 12.0, 0.0),), 100.0, 205000.0))
    64

    References
    ----------
    .. [1] Beam on two supports, F L^3 / 48 E I: any text on strength of materials.
    """
    whole = whole_length(lengths)
    must_be_within("place of the tool", at, 0.0, whole + 1e-9, "mm")
    must_be_above("modulus of elasticity", modulus, 0.0, "MPa")
    at = min(at, whole)
    left, right = (whole - at) / whole, at / whole
    x = total = 0.0
    for long, dia, bore in lengths:
        low, high = x, x + long
        x = high
        before = max(0.0, min(high, at) ** 3 - low**3) * left**2
        behind = max(0.0, (whole - max(low, at)) ** 3 - (whole - high) ** 3) * right**2
        total += (before + behind) / (3 * modulus * second_moment(dia, bore))
    return total


def alike_between_centres(lengths: Lengths) -> float:
    """Diameter of the plain bar that is as long and gives as much in its middle, both between centres.

        d = (4 L^3 / (3 pi give E))^(1/4), the modulus cancels

    Parameters
    ----------
    lengths : tuple of tuple of float
        Length, diameter and bore of each piece, from the driven end outwards [mm]

    Returns
    -------
    float
        Diameter; the length over it is how slender the bar is [mm]

    Raises
    ------
    Refusal
        If a figure is outside its range, or there is no length at all.

    Examples
    --------
    >>> round(alike_between_centres(((50.0, 12.0, 0.0), (50.0, 12.0, 0.0))), 6)
    12.0

    Thin ends count, though less than a thin middle: (8000 / 63.6 + 117000 / 1017.9) = 125000 / I, d = 10.1 [1]_.

    >>> round(alike_between_centres(((20.0, 6.0, 0.0), (60.0, 12.0, 0.0), (20.0, 6.0, 0.0))), 1)
    10.1

    References
    ----------
    .. [1] From ``centres_give`` and F L^3 / 48 E I.
    """
    whole = whole_length(lengths)
    return float((4 * whole**3 / (3 * math.pi * centres_give(lengths, whole / 2, 1.0))) ** 0.25)


def tail_shift(difference: float, apart: float, length: float) -> float:
    """How far the tailstock is moved across so that work between centres turns parallel.

    The axis leans by the shift over the whole length; the diameter changes by
    twice the lean over the length between the two places that are measured:

        s = difference L / (2 l)

    Parameters
    ----------
    difference : float
        Diameter at the tail end less that at the driven end [mm]
    apart : float
        Distance l between the two places measured, above 0, at most L [mm]
    length : float
        Whole length L of the work between centres, above 0 [mm]

    Returns
    -------
    float
        Shift of the tailstock towards the tool; away from it where negative [mm]

    Raises
    ------
    Refusal
        If a figure is outside its range.

    Examples
    --------
    0.04 larger at the tail, measured 100 apart on work 150 long:

    >>> round(tail_shift(0.04, 100.0, 150.0), 3)
    0.03

    Measured at both ends it is half of the difference:

    >>> tail_shift(0.04, 150.0, 150.0)
    0.02

    References
    ----------
    .. [1] Similar triangles; as the set-over of a taper, (D - d) L / (2 l), in
       any text on turning (from memory).
    """
    must_be_above("length between centres", length, 0.0, "mm")
    must_be_above("distance between the places measured", apart, 0.0, "mm")
    must_be_within("distance between the places measured", apart, 0.0, length + 1e-9, "mm")
    return difference * length / (2 * apart)
