"""Tapping: drill and percentage of thread, depths of a blind hole, blanks for dies."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from tommybar.facts.drills import DrillSize, nearest_drills, point_length
from tommybar.facts.threads.thread import Thread
from tommybar.refusals import Refusal

LEAD_PITCHES = 3.0  # what a plug tap leaves short of full form
BASES = ("full", "basic")


@dataclass(frozen=True)
class TapDepths:
    """Depths of a blind tapped hole, all from the face [mm]."""

    full_thread: float  # how deep the thread has its full form
    lead: float  # what the tap's lead needs below that
    full_diameter_depth: float  # how deep the drill must cut its full diameter
    tip: float  # length of the drill's point
    tip_depth: float  # where the point of the drill ends


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


def tap_depths(
    thread: Thread,
    full_thread: float,
    drill: float | None = None,
    point_angle: float = 118.0,
    lead_pitches: float = LEAD_PITCHES,
) -> TapDepths:
    """Depths to drill and tap a blind hole.

    Full thread, then the lead of the tap, then the point of the drill:

        full diameter to  full thread + 3 P
        point to          that + d / (2 tan(angle / 2))

    Parameters
    ----------
    thread : Thread
        The thread
    full_thread : float
        Depth of thread of full form, above 0 [mm]
    drill : float, optional
        Diameter of the tapping drill; the table's if not given [mm]
    point_angle : float, optional
        Included angle of the drill's point [deg]
    lead_pitches : float, optional
        Pitches that the last tap leaves short of full form: 3, or about 1.5
        for a bottoming tap; not below 0 [-]

    Returns
    -------
    TapDepths
        Every depth from the face [mm]

    Raises
    ------
    Refusal
        If the depth of thread is not above 0, or the lead is below 0.

    Examples
    --------
    M3, 6 deep: full diameter to 7.5, point to 8.25:

    >>> from tommybar.facts.threads import thread
    >>> depths = tap_depths(thread("M3"), 6.0)
    >>> depths.full_diameter_depth, round(depths.tip_depth, 2)
    (7.5, 8.25)

    References
    ----------
    .. [1] Common practice, no source, for the leads; the point is geometry.
    """
    if not full_thread > 0:
        raise Refusal(
            f"The depth of full thread is {full_thread:g} mm; it must be above 0.",
            f"{2 * thread.major:g} mm is two diameters of {thread.designation}.",
        )
    if not lead_pitches >= 0:
        raise Refusal(
            f"The lead of the tap is {lead_pitches:g} pitches; it must not be below 0.",
            "A plug tap has about 3, a bottoming tap about 1.5.",
        )
    lead = lead_pitches * thread.pitch
    tip = point_length(thread.tapping_drill if drill is None else drill, point_angle)
    return TapDepths(
        full_thread=full_thread,
        lead=lead,
        full_diameter_depth=full_thread + lead,
        tip=tip,
        tip_depth=full_thread + lead + tip,
    )


def die_blank_diameter(thread: Thread) -> float:
    """Diameter to turn before a thread is cut with a die.

        blank = d - 0.1 P

    Parameters
    ----------
    thread : Thread
        The thread

    Returns
    -------
    float
        Diameter of the blank [mm]

    Notes
    -----
    The die throws the crest up a little; a blank of full diameter binds and
    tears. A thread cut with a single point may start at full diameter.

    Examples
    --------
    >>> from tommybar.facts.threads import thread
    >>> round(die_blank_diameter(thread("M4")), 2)
    3.93

    References
    ----------
    .. [1] Common practice, no source.
    """
    return thread.major - 0.1 * thread.pitch
