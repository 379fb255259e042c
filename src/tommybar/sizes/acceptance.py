"""Accepting a measured size: guard bands, and which instrument can judge a tolerance at all.

Uncertainty here is standard uncertainty u (one standard deviation); the
expanded uncertainty U is twice that.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from statistics import NormalDist

from tommybar.refusals import Refusal

GOOD, USUAL, LAST_RESORT, HOPELESS = 0.10, 0.20, 0.33, 0.40  # U / tolerance


@dataclass(frozen=True)
class Acceptance:
    """The zone in which a measured size may be accepted."""

    guard_mm: float  # taken off at each limit
    smallest: float  # mm
    largest: float  # mm; below ``smallest`` when nothing can be accepted

    @property
    def possible(self) -> bool:
        """Whether any measured size can be accepted at all."""
        return self.smallest <= self.largest

    def accepts(self, measured_mm: float) -> bool:
        """Whether a measured size lies in the zone."""
        return self.smallest <= measured_mm <= self.largest


@dataclass(frozen=True)
class InstrumentVerdict:
    """Whether an instrument can judge a tolerance."""

    ratio: float  # expanded uncertainty to tolerance [-]
    word: str  # "good", "usual", "last resort", "too coarse", "no use"
    can_judge: bool


def acceptance_zone(
    smallest: float, largest: float, uncertainty_mm: float, confidence: float = 0.95
) -> Acceptance:
    """Zone of measured sizes that show a part to be within its limits.

    A guard band g = z u is taken off at each limit; z is 1.645 at 95 %.

    Parameters
    ----------
    smallest, largest : float
        Limits of the size [mm]
    uncertainty_mm : float
        Standard uncertainty u of the measurement, 0 or more [mm]
    confidence : float, optional
        Wanted one-sided probability of being within, 0.5 to below 1 [-]

    Returns
    -------
    Acceptance
        Guard band and the two ends of the zone [mm]

    Raises
    ------
    Refusal
        If the limits are crossed or a figure is outside its range.

    Notes
    -----
    Editions before 2017 take g = U = 2 u. The rule proves conformity; to
    reject a part on the same footing the band is added outside.

    Examples
    --------
    >>> zone = acceptance_zone(11.982, 12.0, 0.002)
    >>> round(zone.guard_mm, 4), round(zone.smallest, 4), round(zone.largest, 4)
    (0.0033, 11.9853, 11.9967)

    References
    ----------
    .. [1] ISO 14253-1:2017 (from memory); JCGM 106:2012 (from memory).
    """
    _check(smallest, largest, uncertainty_mm)
    if not 0.5 <= confidence < 1:
        raise Refusal(
            f"The confidence is {confidence:g}; it must be at least 0.5 and below 1.", "Give 0.95 as a rule."
        )
    guard = NormalDist().inv_cdf(confidence) * uncertainty_mm
    return Acceptance(guard, smallest + guard, largest - guard)


def conformance_probability(
    measured_mm: float, smallest: float, largest: float, uncertainty_mm: float
) -> float:
    """Probability that the true size lies within its limits, given what was measured.

    Parameters
    ----------
    measured_mm : float
        Measured size [mm]
    smallest, largest : float
        Limits of the size [mm]
    uncertainty_mm : float
        Standard uncertainty u of the measurement, above 0 [mm]

    Returns
    -------
    float
        Probability, 0 to 1 [-]

    Raises
    ------
    Refusal
        If the limits are crossed or the uncertainty is not above nought.

    Notes
    -----
    The error of the measurement is taken as normal and nothing is assumed
    about how the parts themselves scatter.

    Examples
    --------
    >>> round(conformance_probability(11.9835, 11.982, 12.0, 0.002), 3)
    0.773

    References
    ----------
    .. [1] JCGM 106:2012 (from memory).
    """
    _check(smallest, largest, uncertainty_mm)
    if not uncertainty_mm > 0:
        raise Refusal("The uncertainty is 0 mm; it must be above 0.", "Give that of the instrument.")
    spread = NormalDist(0.0, uncertainty_mm)
    return spread.cdf(largest - measured_mm) - spread.cdf(smallest - measured_mm)


def instrument_verdict(tolerance_mm: float, uncertainty_mm: float) -> InstrumentVerdict:
    """Whether an instrument can judge a tolerance, from U / T.

    Parameters
    ----------
    tolerance_mm : float
        Whole width of the tolerance T, above 0 [mm]
    uncertainty_mm : float
        Standard uncertainty u of one careful reading, 0 or more [mm]

    Returns
    -------
    InstrumentVerdict
        Ratio U / T with U = 2 u, its word, and whether it can judge [-]

    Raises
    ------
    Refusal
        If a figure is outside its range.

    Notes
    -----
    Up to 0.1 good, up to 0.2 usual, up to 0.33 a last resort; from there up
    to 0.4 it is too coarse, and above 0.4 almost no zone of acceptance is
    left.

    Examples
    --------
    >>> instrument_verdict(0.018, 0.002).word, instrument_verdict(0.012, 0.0025).can_judge
    ('last resort', False)

    References
    ----------
    .. [1] Source: common practice for the bounds; the ratio as in
       ISO 14253-1 (from memory).
    """
    if not (math.isfinite(tolerance_mm) and tolerance_mm > 0):
        raise Refusal(f"The tolerance is {tolerance_mm:g} mm; it must be above 0.", "Give its whole width.")
    _check(0.0, tolerance_mm, uncertainty_mm)
    ratio = 2 * uncertainty_mm / tolerance_mm
    for bound, word in ((GOOD, "good"), (USUAL, "usual"), (LAST_RESORT, "last resort")):
        if ratio <= bound + 1e-9:
            return InstrumentVerdict(ratio, word, True)
    return InstrumentVerdict(ratio, "too coarse" if ratio <= HOPELESS + 1e-9 else "no use", False)


def _check(smallest: float, largest: float, uncertainty_mm: float) -> None:
    if not smallest <= largest:
        raise Refusal(
            f"The limits are {smallest:g} and {largest:g} mm; the first must not be above the second.",
            "Give the smaller limit first.",
        )
    if not (math.isfinite(uncertainty_mm) and uncertainty_mm >= 0):
        raise Refusal(
            f"The uncertainty is {uncertainty_mm:g} mm; it must be 0 or more.", "Give it in millimetres."
        )
