"""Spread of a sum of vectors of known length and unknown direction."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

import numpy

if TYPE_CHECKING:
    from numpy.typing import NDArray


def quantile_of_sum(lengths: Sequence[float], share: float, atoms: int) -> float:
    """Length of the sum that is not exceeded in a share of cases.

    Parameters
    ----------
    lengths : sequence of float
        Lengths of three or more vectors, largest first [um]
    share : float
        Share of cases, between 0 and 1 [-]
    atoms : int
        Equal shares into which the spread of a part sum is cut [-]

    Returns
    -------
    float
        Quantile of the length of the sum [um]

    Examples
    --------
    >>> round(quantile_of_sum([40.0, 10.0, 5.0], 0.95, 512), 1)
    53.2

    References
    ----------
    .. [1] Source: law of cosines for each share; checked against simulation.
    """
    middles = (numpy.arange(atoms) + 0.5) / atoms
    first, second, *rest = lengths
    radii = numpy.sqrt(first**2 + second**2 - 2 * first * second * numpy.cos(numpy.pi * middles))
    for length in rest[:-1]:
        radii = _spread_again(radii, length, middles)
    return _bisect(radii, rest[-1], share)


def _share_within(radii: NDArray[numpy.float64], length: float, reach: float) -> float:
    """Share of cases in which a vector added to one of the radii ends within ``reach``."""
    cosine = (radii**2 + length**2 - reach**2) / (2 * radii * length)
    return float(numpy.mean(numpy.arccos(numpy.clip(cosine, -1, 1))) / numpy.pi)


def _bisect(radii: NDArray[numpy.float64], length: float, share: float) -> float:
    radii = numpy.maximum(radii, 1e-12)
    low, high = 0.0, float(radii[-1] + length)
    for _ in range(60):
        middle = (low + high) / 2
        if _share_within(radii, length, middle) < share:
            low = middle
        else:
            high = middle
    return (low + high) / 2


def _spread_again(
    radii: NDArray[numpy.float64], length: float, middles: NDArray[numpy.float64]
) -> NDArray[numpy.float64]:
    """Equal shares of the sum of each radius with one more vector, smallest first."""
    radii = numpy.maximum(radii, 1e-12)
    reaches = numpy.linspace(max(0.0, float(radii[0]) - length), float(radii[-1]) + length, 2 * middles.size)
    cosine = (radii[None, :] ** 2 + length**2 - reaches[:, None] ** 2) / (2 * radii[None, :] * length)
    shares = numpy.mean(numpy.arccos(numpy.clip(cosine, -1, 1)), axis=1) / numpy.pi
    return numpy.interp(middles, shares, reaches)
