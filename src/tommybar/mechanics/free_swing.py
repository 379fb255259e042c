"""Over which angle a handle may swing between what stands in its way."""

from __future__ import annotations

from collections.abc import Sequence

from tommybar.mechanics.bounds import must_be_within


def free_swing(blocked: Sequence[tuple[float, float]]) -> tuple[float, float]:
    """The widest angle that nothing blocks, and where it begins.

    What stands between two angles blocks the handle there; the angles that
    are left are the gaps between the merged stretches, round the whole turn.

    Parameters
    ----------
    blocked : sequence of tuple of float
        Where each obstacle begins and ends, counter-clockwise, the end not
        below the beginning; any turn of the circle [deg]

    Returns
    -------
    tuple of float
        The angle that is free, 0 to 360 [deg], and where it begins, 0 to
        below 360 [deg]

    Raises
    ------
    Refusal
        If an obstacle ends before it begins.

    Examples
    --------
    Walls over 0 to 90 and 180 to 200 degrees leave 160 between 200 and 360.

    >>> free_swing([(0.0, 90.0), (180.0, 200.0)])
    (160.0, 200.0)

    References
    ----------
    .. [1] First principles.
    """
    stretches: list[tuple[float, float]] = []
    for start, end in blocked:
        must_be_within("stretch that an obstacle takes", end - start, 0.0, float("inf"), "deg")
        begin = start % 360.0
        stretches.append((begin, begin + end - start))
    if not stretches:
        return 360.0, 0.0
    widest, at = 0.0, 0.0
    reached = max(end for _, end in stretches) - 360.0  # of the turn before
    for begin, end in sorted(stretches):
        if begin - reached > widest:
            widest, at = begin - reached, reached % 360.0
        reached = max(reached, end)
    return widest, at
