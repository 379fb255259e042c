"""Tapping holes: percentage of thread and the drill for it."""

from __future__ import annotations

from collections.abc import Iterable

from tommybar.facts.drills import DrillSize, nearest_drills
from tommybar.facts.threads.thread import Thread
from tommybar.refusals import Refusal

BASES = ("full", "basic")


def engagement_base(thread: Thread, base: str = "full") -> float:
    """Difference of diameter that counts as 100 % of thread.

    Parameters
    ----------
    thread : Thread
        The thread
    base : str, optional
        "full": the trade's base, 1.299 P for 60 degree threads, 1.2807 P
        Whitworth, 1.2 p BA. "basic": major less basic minor diameter,
        1.0825 P for 60 degree threads; for the others it is the same

    Returns
    -------
    float
        Major diameter less the hole of a 100 % thread [mm]

    Raises
    ------
    Refusal
        If the base has another name.

    Examples
    --------
    >>> from tommybar.facts.threads import thread
    >>> round(engagement_base(thread("M6")), 4), round(engagement_base(thread("M6"), "basic"), 4)
    (1.299, 1.0825)

    References
    ----------
    .. [1] ISO 68-1 profile; tapping tables of the trade (both bases seen).
    """
    if base not in BASES:
        raise Refusal(f'There is no base "{base}" for a percentage of thread.', 'Say "full" or "basic".')
    depth = thread.profile.engagement if base == "full" else thread.profile.minor
    return depth * thread.pitch


def engagement_percent(thread: Thread, drill: float, base: str = "full") -> float:
    """Percentage of thread that a tapping hole leaves.

        percent = 100 (d - drill) / base

    Parameters
    ----------
    thread : Thread
        The thread
    drill : float
        Diameter of the hole, above 0 and below the major diameter [mm]
    base : str, optional
        As for ``engagement_base``

    Returns
    -------
    float
        Percentage of a full thread; above 100 the hole is smaller than the
        base's [%]

    Raises
    ------
    Refusal
        If the hole is as large as the thread, or not above 0.

    Examples
    --------
    A 5 mm hole for M6 is 77 % of one base and 92 % of the other:

    >>> from tommybar.facts.threads import thread
    >>> round(engagement_percent(thread("M6"), 5.0)), round(engagement_percent(thread("M6"), 5.0, "basic"))
    (77, 92)

    References
    ----------
    .. [1] Handbook tap-drill tables (rule seen); profile geometry.
    """
    if not 0 < drill < thread.major:
        raise Refusal(
            f"The hole is {drill:g} mm; for {thread.designation} it must be above 0 and below "
            f"{thread.major:g} mm.",
            f"The usual drill is {thread.tapping_drill_name}.",
        )
    return 100 * (thread.major - drill) / engagement_base(thread, base)


def drill_for_percent(thread: Thread, percent: float, base: str = "full") -> float:
    """Hole that gives a wanted percentage of thread, before any drill is chosen.

        drill = d - base percent / 100

    Parameters
    ----------
    thread : Thread
        The thread
    percent : float
        Wanted percentage of thread, above 0 and up to 100 [%]
    base : str, optional
        As for ``engagement_base``

    Returns
    -------
    float
        Diameter of the hole [mm]

    Raises
    ------
    Refusal
        If the percentage is outside its range.

    Examples
    --------
    >>> from tommybar.facts.threads import thread
    >>> round(drill_for_percent(thread("M6"), 77), 2)
    5.0

    References
    ----------
    .. [1] Handbook tap-drill tables (rule seen); profile geometry.
    """
    if not 0 < percent <= 100:
        raise Refusal(
            f"The percentage of thread is {percent:g}; it must be above 0 and up to 100.",
            "60 to 80 % of the full base is usual.",
        )
    return thread.major - engagement_base(thread, base) * percent / 100


def pitch_rule_drill(thread: Thread) -> float:
    """Tapping drill by the rule major diameter less one pitch.

    Parameters
    ----------
    thread : Thread
        The thread

    Returns
    -------
    float
        Diameter d - P, before any drill is chosen [mm]

    Notes
    -----
    That is 77 % of a full 60 degree thread, 78 % Whitworth, 83 % BA.

    Examples
    --------
    >>> from tommybar.facts.threads import thread
    >>> pitch_rule_drill(thread("M12x1.25"))
    10.75

    References
    ----------
    .. [1] ISO 2306:1972, which rounds it to a stocked drill (seen).
    """
    return thread.major - thread.pitch


def tapping_drill_from(
    thread: Thread,
    drills: Iterable[DrillSize] = (),
    percent: float = 75.0,
    least: float = 55.0,
    most: float = 85.0,
) -> DrillSize:
    """The drill of a drawer that comes nearest to a wanted percentage of thread.

    Parameters
    ----------
    thread : Thread
        The thread
    drills : iterable of DrillSize, optional
        The drawer; every drill that is made if none is given
    percent : float, optional
        Wanted percentage on the full base [%]
    least, most : float, optional
        Bounds outside which no drill is taken [%]

    Returns
    -------
    DrillSize
        The drill, diameter [mm]; of two equally near the larger

    Raises
    ------
    Refusal
        If no drill of the drawer gives a percentage within the bounds.

    Examples
    --------
    >>> from tommybar.facts.drills import drill_size
    >>> from tommybar.facts.threads import thread
    >>> tapping_drill_from(thread("M4"), [drill_size(d) for d in ("3.2", "3.3", "3.5")]).name
    '3.3'

    References
    ----------
    .. [1] Common practice, no source, for the bounds; the percentage as in
       ``engagement_percent``.
    """
    drawer = tuple(drills) or nearest_drills(drill_for_percent(thread, percent), count=8)
    fits = {
        drill: engagement_percent(thread, drill.diameter)
        for drill in drawer
        if 0 < drill.diameter < thread.major
    }
    inside = {drill: share for drill, share in fits.items() if least <= share <= most}
    if not inside:
        lowest, highest = drill_for_percent(thread, most), drill_for_percent(thread, least)
        raise Refusal(
            f"No drill of the drawer gives {thread.designation} between {least:g} and {most:g} % of thread.",
            f"Get one between {lowest:.2f} and {highest:.2f} mm; the usual one is "
            f"{thread.tapping_drill_name}.",
        )
    return min(inside, key=lambda drill: (round(abs(inside[drill] - percent), 6), -drill.diameter))
