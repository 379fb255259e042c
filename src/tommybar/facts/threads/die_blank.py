"""Blanks for threads that are cut with a die."""

from __future__ import annotations

from tommybar.facts.threads.thread import Thread


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
