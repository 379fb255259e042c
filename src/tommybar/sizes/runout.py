"""Run-out stacks: eccentricities of several set-ups add as vectors, not as figures.

Each term is an eccentricity (half a run-out) of fixed size and a direction
that is not known. What is shown by an indicator is the run-out: twice the
eccentricity.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache

from tommybar.refusals import Refusal

# equal shares into which the spread of a part sum is cut; twice as many move a quantile by < 0.01 %
ATOMS = 1024
NEGLIGIBLE = 1e-7  # share of the largest term below which a term is left out


@dataclass(frozen=True)
class RunoutStack:
    """What a stack of eccentricities comes to."""

    rms_um: float  # root of the sum of squares [um]
    worst_um: float  # all in one direction [um]
    quantile_um: float  # not exceeded in the share asked for; never above the worst [um]
    share: float  # that share [-]

    @property
    def runout_um(self) -> float:
        """Run-out on an indicator (TIR), not exceeded in the share asked for [um]."""
        return 2 * self.quantile_um


def runout_stack(eccentricities_um: Sequence[float], share: float = 0.95) -> RunoutStack:
    """Eccentricity that several set-ups of unknown direction come to together.

    Parameters
    ----------
    eccentricities_um : sequence of float
        Eccentricity of each set-up, half of its run-out, 0 or more [um]
    share : float, optional
        Share of cases that must lie within, between 0 and 1 [-]

    Returns
    -------
    RunoutStack
        Root of the sum of squares, worst case and exact quantile [um]

    Raises
    ------
    Refusal
        If a term is below nought or the share outside 0 to 1.

    Notes
    -----
    Features cut in one set-up share its error: leave that error out of the
    stack between them. An error that repeats (jaw and work marked) is no
    random term either.

    Examples
    --------
    >>> stack = runout_stack([40.0, 10.0, 5.0])
    >>> round(stack.quantile_um, 1), stack.worst_um
    (53.2, 55.0)

    References
    ----------
    .. [1] Source: geometry; random walk in the plane (from memory), checked
       against simulation.
    """
    terms = _terms(eccentricities_um)
    _check_share(share)
    worst = math.fsum(terms)
    rms = math.sqrt(math.fsum(term * term for term in terms))
    return RunoutStack(rms, worst, min(eccentricity_quantile(terms, share), worst), share)


def eccentricity_quantile(eccentricities_um: Sequence[float], share: float = 0.95) -> float:
    """Eccentricity not exceeded in a share of cases, all directions being equally likely.

    Two terms have the closed form sqrt(a^2 + b^2 - 2 a b cos(pi p)). With
    more, the spread of the sum of the larger ones is cut into equal shares
    and the next term added to each.

    Parameters
    ----------
    eccentricities_um : sequence of float
        Eccentricity of each set-up, 0 or more [um]
    share : float, optional
        Share of cases, between 0 and 1 [-]

    Returns
    -------
    float
        Quantile of the eccentricity of the sum [um]

    Raises
    ------
    Refusal
        If a term is below nought or the share outside 0 to 1.

    Examples
    --------
    >>> round(eccentricity_quantile([40.0, 25.0], 0.95), 2)
    64.81

    References
    ----------
    .. [1] Source: geometry (law of cosines); the general case is checked
       against simulation.
    """
    _check_share(share)
    given = _terms(eccentricities_um)
    least = NEGLIGIBLE * max(given, default=0.0)
    terms = sorted((term for term in given if term > least), reverse=True)
    if len(terms) < 2:
        return math.fsum(terms)
    first, second, *rest = terms
    if not rest:
        return _two_quantile(first, second, share)
    return _many_quantile(tuple(terms), share)


def rayleigh_eccentricity(eccentricities_um: Sequence[float], share: float = 0.95) -> float:
    """Quick estimate of the quantile of many similar terms, capped at the worst case.

    Parameters
    ----------
    eccentricities_um : sequence of float
        Eccentricity of each set-up, 0 or more [um]
    share : float, optional
        Share of cases, between 0 and 1 [-]

    Returns
    -------
    float
        rms sqrt(-ln(1 - p)), never above the sum of all terms [um]

    Raises
    ------
    Refusal
        If a term is below nought or the share outside 0 to 1.

    Notes
    -----
    Good only with four or more similar terms; with few it lies above the
    exact quantile.

    Examples
    --------
    >>> round(rayleigh_eccentricity([25, 25, 10, 5]), 2), rayleigh_eccentricity([40, 10, 5])
    (64.18, 55.0)

    References
    ----------
    .. [1] Source: Rayleigh distribution as limit of the random walk (from
       memory).
    """
    terms = _terms(eccentricities_um)
    _check_share(share)
    rms = math.sqrt(math.fsum(term * term for term in terms))
    return min(rms * math.sqrt(-math.log(1 - share)), math.fsum(terms))


def offset_eccentricity(known_um: float, deviation_um: float, share: float = 0.95) -> float:
    """Quantile of a known offset together with many small random errors.

    Parameters
    ----------
    known_um : float
        Known offset, 0 or more [um]
    deviation_um : float
        Standard deviation of the random errors along each axis, above 0 [um]
    share : float, optional
        Share of cases, between 0 and 1 [-]

    Returns
    -------
    float
        Quantile of the eccentricity (Rice distribution) [um]

    Raises
    ------
    Refusal
        If a figure is outside its range.

    Examples
    --------
    >>> round(offset_eccentricity(20.0, 10.0), 2)
    38.26

    References
    ----------
    .. [1] Source: Rice distribution (from memory), checked against simulation.
    """
    _terms([known_um])
    _check_share(share)
    if not deviation_um > 0:
        raise Refusal(
            f"The standard deviation is {deviation_um:g} um; it must be above 0.",
            "Without random errors the offset itself is the answer.",
        )
    from scipy.special import chndtrix

    return deviation_um * math.sqrt(float(chndtrix(share, 2.0, (known_um / deviation_um) ** 2)))


@lru_cache(maxsize=4096)
def _many_quantile(terms: tuple[float, ...], share: float) -> float:
    """Quantile of three or more terms, largest first; a planner asks for the same stack many times."""
    from tommybar.sizes.vector_sum import quantile_of_sum

    return quantile_of_sum(terms, share, ATOMS)


def _two_quantile(first: float, second: float, share: float) -> float:
    square = first**2 + second**2 - 2 * first * second * math.cos(math.pi * share)
    return math.sqrt(max(0.0, square))


def _terms(eccentricities_um: Sequence[float]) -> list[float]:
    terms = [float(term) for term in eccentricities_um]
    for term in terms:
        if not (math.isfinite(term) and term >= 0):
            raise Refusal(
                f"An eccentricity is {term:g} um; it must be a figure of 0 or more.",
                "Give half of the run-out that the indicator shows.",
            )
    return terms


def _check_share(share: float) -> None:
    if not 0 < share < 1:
        raise Refusal(f"The share is {share:g}; it must lie between 0 and 1.", "Give 0.95 as a rule.")
