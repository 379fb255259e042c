"""Depths of a blind tapped hole."""

from __future__ import annotations

from dataclasses import dataclass

from tommybar.facts.drills import point_length
from tommybar.facts.threads.thread import Thread
from tommybar.refusals import Refusal

LEAD_PITCHES = 3.0  # what a plug tap leaves short of full form


@dataclass(frozen=True)
class TapDepths:
    """Depths of a blind tapped hole, all from the face [mm]."""

    full_thread: float  # how deep the thread has its full form
    lead: float  # what the tap's lead needs below that
    full_diameter_depth: float  # how deep the drill must cut its full diameter
    tip: float  # length of the drill's point
    tip_depth: float  # where the point of the drill ends


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
