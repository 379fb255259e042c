"""Figures as a person types them at a look-up."""

from __future__ import annotations

import math
from fractions import Fraction

from tommybar.refusals import Refusal

MM_PER_INCH = Fraction("25.4")
UNITS = (
    ('"', MM_PER_INCH),
    ("inch", MM_PER_INCH),
    ("in", MM_PER_INCH),
    ("mm", Fraction(1)),
    ("deg", Fraction(1)),
)


def number(text: str, what: str) -> float:
    """A typed figure; inches, marked ``in`` or ``"``, and fractions such as ``3/8 in`` come back in mm.

    Parameters
    ----------
    text : str
        What was typed [-]
    what : str
        Name of the figure, for the refusal [-]

    Returns
    -------
    float
        The figure: lengths in [mm], anything else as typed

    Raises
    ------
    Refusal
        If it is no number.

    Examples
    --------
    >>> number("3/8 in", "diameter"), number("1 1/2 in", "diameter")
    (9.525, 38.1)
    >>> number("12.5", "diameter")
    12.5

    References
    ----------
    source: 1 in = 25.4 mm exactly (international inch, 1959).
    """
    plain = text.strip().casefold().replace(",", ".")
    factor = Fraction(1)
    for mark, times in UNITS:
        if plain.endswith(mark):
            plain, factor = plain.removesuffix(mark).strip(), times
            break
    top, slash, bottom = plain.partition("/")
    whole_part, _, numerator = top.strip().rpartition(" ")
    try:
        exact = Fraction(numerator) / (Fraction(bottom.strip()) if slash else 1)
        if whole_part:
            exact = exact + Fraction(whole_part) if slash else Fraction("none")
        figure = float(exact * factor)
    except (ValueError, ZeroDivisionError, OverflowError):
        figure = math.nan
    if not math.isfinite(figure):
        raise Refusal(f'The {what} is "{text}"; it must be a number.', "For example 12.5 or 3/8 in.")
    return figure


def whole(text: str, what: str) -> int:
    """A typed whole number.

    Parameters
    ----------
    text : str
        What was typed [-]
    what : str
        Name of the figure, for the refusal [-]

    Returns
    -------
    int
        The number [-]

    Raises
    ------
    Refusal
        If it is no whole number.

    Examples
    --------
    >>> whole("7", "divisions")
    7

    References
    ----------
    source: none needed, it is a reading.
    """
    if not text.strip().isdecimal():
        raise Refusal(f'The {what} is "{text}"; it must be a whole number.', "For example 7.")
    return int(text)
