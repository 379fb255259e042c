"""What can be divided at all."""

from __future__ import annotations

from tommybar.refusals import Refusal

MOST_DIVISIONS = 10_000
HIGHEST_RATIO = 360


def check_bounds(divisions: int, ratio: int) -> None:
    """Refuse a number of divisions or a ratio that no head or table has.

    Parameters
    ----------
    divisions : int
        Number of divisions, 1 to 10000 [-]
    ratio : int
        Turns of the crank for one turn of the work, 1 to 360 [-]

    Returns
    -------
    None
        Nothing [-], when both are within bounds.

    Raises
    ------
    Refusal
        If either is outside.

    Examples
    --------
    >>> check_bounds(7, 40)

    References
    ----------
    source: bounds of ours, wider than any dividing head of a small shop.
    """
    if not 1 <= divisions <= MOST_DIVISIONS:
        raise Refusal(
            f"The number of divisions is {divisions}; it must be 1 to {MOST_DIVISIONS}.",
            "Count the divisions.",
        )
    if not 1 <= ratio <= HIGHEST_RATIO:
        raise Refusal(
            f"The ratio is {ratio}:1; dividing heads and rotary tables have 1:1 to {HIGHEST_RATIO}:1.",
            "Count crank turns for one turn of the work: mostly 40, 60 or 90.",
        )
