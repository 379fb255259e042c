"""Limits as people write them: "8 H7", "14 H7/p6", "10 sliding", "12 +0.02/-0.01", "9.98 to 10.01"."""

from __future__ import annotations

import re

from tommybar.facts.fits.iso286 import limits_of_size
from tommybar.facts.fits.limits import Limits
from tommybar.facts.fits.preferred import preferred_fit
from tommybar.facts.fits.zones import is_hole
from tommybar.facts.keyed import number
from tommybar.refusals import Refusal
from tommybar.sizes.fits import Fit, fit_of

MM_PER_INCH = 25.4
_NUMBER = r"\d+(?:\.\d*)?|\.\d+"
_SIGNED = rf"[+-]?\s*(?:{_NUMBER})"
_INCH = r"(?:inch\b|in\b|\")"
_HEAD = re.compile(rf"\s*(?P<size>{_NUMBER})?\s*(?:mm\b)?\s*(?P<rest>.*?)\s*(?:mm)?\s*$")
_INCH_HEAD = re.compile(
    rf"\s*(?P<size>(?:\d+\s+)?\d+/\d+|{_NUMBER})\s*{_INCH}\s*(?P<rest>.*?)\s*(?:(?<![A-Za-z]){_INCH})?\s*$"
)
_ZONE = re.compile(r"[A-Za-z]{1,2}\s*\d{1,2}")
_PAIR = re.compile(r"[A-Za-z]{1,2}\s*\d{1,2}\s*[/-]\s*[A-Za-z]{1,2}\s*\d{1,2}")
_EVEN = re.compile(rf"(?:\u00b1|\+/-|\+-)\s*(?P<both>{_NUMBER})")
_TWO = re.compile(rf"(?P<one>{_SIGNED})\s*(?:/|,|\s)\s*(?P<two>{_SIGNED})")
_RANGE = re.compile(
    rf"\s*(?P<low>{_NUMBER})\s*(?:to|\.\.|-|–)\s*(?P<high>{_NUMBER})\s*(?P<unit>mm|{_INCH})?\s*"
)


def limits_from_text(text: str, nominal: float | None = None) -> Limits:
    """Limits of one size from the words a drawing gives them.

    Parameters
    ----------
    text : str
        A tolerance class ("8 H7"), two deviations ("12 +0.02/-0.01"), an even
        tolerance ("12 +/-0.05") or two limits ("9.98 to 10.01") [mm]; all
        figures are inches if the size is marked so ("3/8 in +0.001/0")
    nominal : float, optional
        Nominal size where the text does not name one [mm]

    Returns
    -------
    Limits
        Nominal size [mm] and its two deviations [um]

    Raises
    ------
    Refusal
        If the text cannot be read, names no size, or names another size.

    Examples
    --------
    >>> limits_from_text("8 H7").upper_um, limits_from_text("+0.02/-0.01", nominal=12.0).lower_um
    (15.0, -10.0)
    >>> limits_from_text("9.98 to 10.01").middle
    9.995

    References
    ----------
    .. [1] ISO 129-1 and ISO 286-1 for the ways of writing (from memory).
    """
    both = _RANGE.fullmatch(text)
    if both:
        unit = 1.0 if both["unit"] in (None, "mm") else MM_PER_INCH
        return _from_range(text, float(both["low"]) * unit, float(both["high"]) * unit, nominal)
    size, rest, unit = _size_and_rest(text, nominal)
    if _ZONE.fullmatch(rest):
        return limits_of_size(size, rest)
    even = _EVEN.fullmatch(rest)
    if even:
        half = round(float(even["both"]) * unit * 1000, 6)
        return Limits(size, rest, -half, half)
    two = _TWO.fullmatch(rest)
    if two and any(sign in rest for sign in "+-"):
        deviations = sorted(
            round(float(two[name].replace(" ", "")) * unit * 1000, 6) + 0.0 for name in ("one", "two")
        )
        return Limits(size, rest, deviations[0], deviations[1])
    raise Refusal(
        f'"{text}" cannot be read as limits.',
        'Write a class ("8 H7"), deviations ("12 +0.02/-0.01", "12 +/-0.05") or limits ("9.98 to 10.01").',
    )


def fit_from_text(text: str, nominal: float | None = None) -> Fit:
    """Fit of a hole and a shaft from the words a drawing or a person gives it.

    Parameters
    ----------
    text : str
        A pair of classes ("14 H7/p6") or a trade word ("14 press") [-]
    nominal : float, optional
        Nominal size where the text does not name one [mm]

    Returns
    -------
    Fit
        Both limits, least and greatest clearance [um]

    Raises
    ------
    Refusal
        If the text cannot be read or names no size.

    Examples
    --------
    >>> fit_from_text("14 H7/p6").max_clearance_um, fit_from_text("press", nominal=14.0).text
    (0.0, '14 H7/p6')

    References
    ----------
    .. [1] ISO 286-1:2010; trade words as in facts/fits/preferred.toml (source
       there).
    """
    size, rest, _ = _size_and_rest(text, nominal)
    if _PAIR.fullmatch(rest):
        return fit_of(size, rest)
    if _ZONE.fullmatch(rest):
        mate = "shaft" if is_hole(rest) else "hole"
        raise Refusal(
            f'"{text}" names only one member; a fit needs the class of the {mate} as well.',
            f'Write "{rest}/g6" or another pair.'
            if mate == "shaft"
            else f'Write "H7/{rest}" or another pair.',
        )
    return fit_of(size, preferred_fit(rest).hole_based)


def _size_and_rest(text: str, nominal: float | None) -> tuple[float, str, float]:
    """Nominal size in mm, what follows it, and mm in the unit of its deviations."""
    inches = _INCH_HEAD.match(text)
    match = inches or _HEAD.match(text)
    unit = MM_PER_INCH if inches else 1.0
    size = number(match["size"], "nominal size") * unit if match and match["size"] else None
    rest = match["rest"] if match else ""
    if size is None and nominal is None:
        raise Refusal(f'"{text}" names no size.', 'Put the nominal size in mm before it, like "8 H7".')
    if not rest:
        raise Refusal(f'"{text}" names no limits.', 'Put a class behind the size, like "8 H7".')
    if size is not None and nominal is not None and abs(size - nominal) > 1e-9:
        raise Refusal(
            f'"{text}" names {size:g} mm, but the size it belongs to is {nominal:g} mm.',
            "Leave the size out of the text, or make both the same.",
        )
    return (size if size is not None else float(nominal or 0.0)), rest, unit


def _from_range(text: str, low: float, high: float, nominal: float | None) -> Limits:
    if low > high:
        raise Refusal(f'"{text}": the first limit is above the second.', "Write the smaller limit first.")
    size = nominal if nominal is not None else round((low + high) / 2, 6)
    return Limits(size, text.strip(), round((low - size) * 1000, 6), round((high - size) * 1000, 6))
