"""A hole and a shaft that belong together: clearance, kind, and the word for it."""

from __future__ import annotations

import re
from dataclasses import dataclass

from tommybar.facts.fits.iso286 import limits_of_size
from tommybar.facts.fits.limits import Limits
from tommybar.facts.fits.zones import is_hole
from tommybar.refusals import Refusal

_PAIR = re.compile(r"\s*([A-Za-z]+\s*\d+)\s*[/-]\s*([A-Za-z]+\s*\d+)\s*")


@dataclass(frozen=True)
class Fit:
    """A hole and a shaft of one nominal size.

    Clearance is hole less shaft, so interference is negative clearance.
    ``kind`` is "clearance", "transition" or "interference".
    """

    hole: Limits
    shaft: Limits
    min_clearance_um: float  # um
    max_clearance_um: float  # um
    kind: str

    @property
    def text(self) -> str:
        """The fit as it is written on a drawing, for example "8 H7/g6"."""
        return f"{self.hole.nominal:g} {self.hole.zone}/{self.shaft.zone}"


def fit_of(nominal: float, pair: str) -> Fit:
    """Fit of a hole and a shaft from their tolerance classes.

    Least clearance = smallest hole - largest shaft; greatest clearance =
    largest hole - smallest shaft.

    Parameters
    ----------
    nominal : float
        Nominal size of both, over 0 up to and including 120 [mm]
    pair : str
        Class of the hole, then of the shaft, for example "H7/g6" [-]

    Returns
    -------
    Fit
        Both limits, least and greatest clearance, below nought where there is
        interference [um]

    Raises
    ------
    Refusal
        If the pair is not a hole and a shaft, or outside the table.

    Examples
    --------
    >>> fit = fit_of(8.0, "H7/g6")
    >>> fit.min_clearance_um, fit.max_clearance_um, fit.kind
    (5.0, 29.0, 'clearance')

    References
    ----------
    .. [1] ISO 286-1:2010, definitions of fits (seen in public reprints).
    """
    match = _PAIR.fullmatch(pair)
    if not match:
        raise Refusal(
            f'"{pair}" is not a fit; ISO 286 writes the class of the hole, a stroke, and that of the shaft.',
            'Write it like "H7/g6".',
        )
    first, second = match[1], match[2]
    if not is_hole(first) or is_hole(second):
        raise Refusal(
            f'"{pair}" is not a hole and a shaft; ISO 286 writes holes with capitals, and the hole first.',
            'Write it like "H7/g6".',
        )
    return fit_between(limits_of_size(nominal, first), limits_of_size(nominal, second))


def fit_between(hole: Limits, shaft: Limits) -> Fit:
    """Fit of a hole and a shaft whose limits are given, however they were come by.

    Parameters
    ----------
    hole, shaft : Limits
        Limits of the two members; their nominal sizes may differ [mm, um]

    Returns
    -------
    Fit
        Both limits, least and greatest clearance [um]

    Examples
    --------
    >>> fit_between(Limits(8.0, "drilled", 0.0, 50.0), Limits(7.9, "turned", -10.0, 10.0)).min_clearance_um
    90.0

    References
    ----------
    .. [1] ISO 286-1:2010, definitions of fits (seen in public reprints).
    """
    apart = round((hole.nominal - shaft.nominal) * 1000, 6)
    least = apart + hole.lower_um - shaft.upper_um
    greatest = apart + hole.upper_um - shaft.lower_um
    if least >= 0:
        kind = "clearance"
    elif greatest <= 0:
        kind = "interference"
    else:
        kind = "transition"
    return Fit(hole, shaft, least, greatest, kind)
