"""Float loops: the gap that a chain of lengths leaves, and the length that is made last.

A loop is a sum of lengths with signs: what widens the gap counts plus, what
fills it counts minus.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from tommybar.refusals import Refusal

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray


@dataclass(frozen=True)
class Link:
    """One length of a loop, with its limits; a measured length has two equal limits."""

    name: str
    times: float  # +1 widens the gap, -1 fills it, -2 two pieces of it [-]
    smallest: float  # mm
    largest: float  # mm

    @property
    def middle(self) -> float:
        """Length half way between its limits [mm]."""
        return (self.smallest + self.largest) / 2


def worst_case_gap(links: Sequence[Link]) -> tuple[float, float]:
    """Smallest and largest gap that parts within their limits can leave.

    Parameters
    ----------
    links : sequence of Link
        Lengths of the loop with their signs [mm]

    Returns
    -------
    tuple of float
        Smallest and largest gap; below nought the parts do not go in [mm]

    Examples
    --------
    >>> frame, wheel = Link("gap", +1, 20.0, 20.05), Link("wheel", -1, 19.8, 19.9)
    >>> [round(gap, 3) for gap in worst_case_gap([frame, wheel])]
    [0.1, 0.25]

    References
    ----------
    .. [1] Source: first principles (sum of the extremes).
    """
    ends = [sorted((link.times * link.smallest, link.times * link.largest)) for link in links]
    return math.fsum(low for low, _ in ends), math.fsum(high for _, high in ends)


def root_sum_square_gap(links: Sequence[Link], deviations: float = 3.0) -> tuple[float, float]:
    """Gap to be expected when sizes scatter independently and evenly about the middle.

    Each half tolerance is taken as ``deviations`` standard deviations of a
    normal spread, and the gap is given to the same number of them.

    Parameters
    ----------
    links : sequence of Link
        Lengths of the loop with their signs [mm]
    deviations : float, optional
        Standard deviations in a half tolerance, above 0 [-]

    Returns
    -------
    tuple of float
        Lower and upper end of the expected gap [mm]

    Notes
    -----
    It does not hold for a single set of parts made by one person on one
    machine, who works towards the same end of every tolerance: use the worst
    case for one-off work.

    Examples
    --------
    >>> loop = [Link("a", +1, 9.97, 10.03), Link("b", -1, 9.86, 9.94)]
    >>> [round(gap, 3) for gap in root_sum_square_gap(loop)]
    [0.05, 0.15]

    References
    ----------
    .. [1] Source: variance of a sum of independent terms.
    """
    if not deviations > 0:
        raise Refusal(f"The number of deviations is {deviations:g}; it must be above 0.", "Give 3 as a rule.")
    middle = math.fsum(link.times * link.middle for link in links)
    half = math.sqrt(math.fsum((link.times * (link.largest - link.smallest) / 2) ** 2 for link in links))
    return middle - half, middle + half


def sampled_gaps(links: Sequence[Link], count: int = 20_000, seed: int = 1) -> NDArray[np.float64]:
    """Gaps of loops put together from parts drawn evenly from within their limits.

    Parameters
    ----------
    links : sequence of Link
        Lengths of the loop with their signs [mm]
    count : int, optional
        How many sets of parts are drawn, above 0 [-]
    seed : int, optional
        Start of the sequence, so that it can be repeated [-]

    Returns
    -------
    array, shape (count,)
        Gaps, smallest first [mm]

    Notes
    -----
    A link that stands for two pieces ("-2 washers") is drawn once: both
    pieces are of one size. List two links if they are made apart.

    Examples
    --------
    >>> gaps = sampled_gaps([Link("a", +1, 10.0, 10.1), Link("b", -1, 9.8, 9.9)], count=1000)
    >>> bool(0.1 <= gaps[0] and gaps[-1] <= 0.3)
    True

    References
    ----------
    .. [1] Source: Monte Carlo method of JCGM 101:2008 (from memory).
    """
    import numpy

    if count < 1:
        raise Refusal(f"The count of draws is {count}; it must be above 0.", "Give 20000 as a rule.")
    draw = numpy.random.default_rng(seed)
    total = numpy.zeros(count)
    for link in links:
        total += link.times * draw.uniform(link.smallest, link.largest, count)
    total.sort()
    return total


def last_made_limits(others: Sequence[Link], times: float, gap: tuple[float, float]) -> tuple[float, float]:
    """Limits of the length that is made last, so that the gap comes right whatever the others are.

    Parameters
    ----------
    others : sequence of Link
        All other lengths of the loop; measured ones with equal limits [mm]
    times : float
        Sign and number of the length made last, not 0 [-]
    gap : tuple of float
        Smallest and largest gap wanted [mm]

    Returns
    -------
    tuple of float
        Smallest and largest size of the length made last [mm]

    Raises
    ------
    Refusal
        If the others together vary by more than the float allows.

    Examples
    --------
    Frame 30.02 and wheel 27.95 are measured; two washers take up the rest:

    >>> made = [Link("frame", +1, 30.02, 30.02), Link("wheel", -1, 27.95, 27.95)]
    >>> [round(size, 3) for size in last_made_limits(made, -2, (0.05, 0.2))]
    [0.935, 1.01]

    References
    ----------
    .. [1] Source: first principles; the worst case solved for one length.
    """
    if times == 0:
        raise Refusal("The length made last counts 0 times in the loop; it must count.", "Give +1 or -1.")
    wanted_low, wanted_high = gap
    low, high = worst_case_gap(others)
    ends = ((wanted_low - low), (wanted_high - high))
    if ends[0] > ends[1] + 1e-12:
        raise Refusal(
            f"The other lengths vary by {high - low:.3f} mm together; the float wanted "
            f"({wanted_low:g} to {wanted_high:g} mm) allows {wanted_high - wanted_low:.3f} mm.",
            "Measure them and give what they are, or allow more float.",
        )
    smallest, largest = sorted((ends[0] / times, ends[1] / times))
    if largest <= 0:
        raise Refusal(
            f"The length made last would be {largest:.3f} mm at most; the others already overfill the loop.",
            "Check the signs of the loop, or shorten one of the others.",
        )
    return smallest, largest
