"""Limits of size of a thread, whatever its series."""

from __future__ import annotations

from tommybar.facts.threads.ba_limits import ba_external, ba_internal
from tommybar.facts.threads.designation import thread
from tommybar.facts.threads.iso_965 import metric_external, metric_internal
from tommybar.facts.threads.limit_pair import ExternalLimits, InternalLimits, ThreadLimits
from tommybar.facts.threads.pipe_limits import pipe_external, pipe_internal
from tommybar.facts.threads.thread import Thread
from tommybar.facts.threads.unified_limits import unified_external, unified_internal
from tommybar.facts.threads.whitworth_limits import whitworth_external, whitworth_internal
from tommybar.refusals import Refusal

_SMALL_METRIC = 1.4  # [mm] up to here ISO 965-2 takes 5H and 6h for medium quality
_FINEST = {0.2: "4H", 0.25: "5H"}  # pitch [mm]: widest nut that ISO 965-1 gives


def has_limits(one: Thread) -> bool:
    """Whether a thread's series has tolerances of its own.

    Parameters
    ----------
    one : Thread
        Any thread

    Returns
    -------
    bool
        False for the model engineers' and the instrument series [yes or no]

    Examples
    --------
    >>> has_limits(thread("M6")), has_limits(thread("1/4-40 ME"))
    (True, False)

    References
    ----------
    .. [1] The standards named in ``thread_limits``.
    """
    return one.series not in ("ME", "Brass", "metric instrument")


def usual_class(one: Thread) -> str:
    """The tolerance class that a thread has when nothing is said: internal/external.

    Parameters
    ----------
    one : Thread
        A thread of a series that has tolerances

    Returns
    -------
    str
        Its medium class [words]

    Raises
    ------
    Refusal
        If the series has no tolerances.

    Examples
    --------
    >>> usual_class(thread("M6")), usual_class(thread("1/4-20 UNC"))
    ('6H/6g', '2B/2A')

    References
    ----------
    .. [1] ISO 965-2:1998 (5H/6h up to M1.4; 4H and 5H for pitches of 0.2 and
       0.25 seen in a tap maker's table), ASME B1.1, BS 84, BS 93, ISO 228-1.
    """
    if one.series.startswith("ISO metric"):
        small = one.major <= _SMALL_METRIC
        return f"{_FINEST.get(one.pitch, '5H' if small else '6H')}/{'6h' if small else '6g'}"
    if one.series in ("UNC", "UNF", "UNEF"):
        return "2B/2A"
    if one.series in ("BSW", "BSF"):
        return "normal/medium"
    if one.series == "BA":
        return "normal"
    if one.series == "BSP":
        return "A"
    raise Refusal(
        f"{one.designation}: the {one.series} series has no tolerances of its own.",
        "Cut it to fit its mate, or use the limits of the nearest BSF or ISO metric thread.",
    )


def thread_limits(designation: str | Thread, tolerance_class: str = "") -> ThreadLimits:
    """Limits of size of a thread in a tolerance class.

    Parameters
    ----------
    designation : str or Thread
        "M6", "1/4-20 UNC", "2 BA", or a thread
    tolerance_class : str, optional
        ISO metric "6g", "4h", "6e", "4g6g", "6H", "5H", "4H5H", "6H/6g";
        Unified "1A" to "3A", "1B" to "3B"; BSW and BSF "close", "medium",
        "free"; BA "close", "normal"; BSP "A", "B". One side or both with a
        stroke between; the usual medium class if none is given

    Returns
    -------
    ThreadLimits
        External and internal limits, smallest and largest [mm]; the side that
        the class does not name is None

    Raises
    ------
    Refusal
        If the class is unknown, or its standard has no figure for this size.

    Examples
    --------
    >>> one = thread_limits("M6")
    >>> one.external.pitch_diameter, one.internal.minor
    ((5.212, 5.324), (4.917, 5.153))

    References
    ----------
    .. [1] ISO 965-1:2013 and 965-2:1998; ASME B1.1-2003; BS 84; BS 93:2008;
       ISO 228-1. How each was checked stands in its data file.
    """
    one = designation if isinstance(designation, Thread) else thread(designation)
    named = tolerance_class.strip() or usual_class(one)
    outside: ExternalLimits | None = None
    inside: InternalLimits | None = None
    for part in dict.fromkeys(piece.strip() for piece in named.split("/")):
        made_outside, made_inside = _both(one, part)
        outside, inside = outside or made_outside, inside or made_inside
    return ThreadLimits(one, named, outside, inside)


def _both(one: Thread, part: str) -> tuple[ExternalLimits | None, InternalLimits | None]:
    """The sides that one tolerance class names."""
    if one.series.startswith("ISO metric"):
        if part.lower() == part:
            return metric_external(one, part), None
        return None, metric_internal(one, part)
    if one.series in ("UNC", "UNF", "UNEF"):
        if part.upper().endswith("A"):
            return unified_external(one, part.upper()), None
        return None, unified_internal(one, part.upper())
    if one.series in ("BSW", "BSF"):
        if part == "normal":
            return None, whitworth_internal(one, part)
        return whitworth_external(one, part), whitworth_internal(one, "medium")
    if one.series == "BA":
        return ba_external(one, part), ba_internal(one)
    if one.series == "BSP":
        return pipe_external(one, part), pipe_internal(one)
    usual_class(one)  # refuses: the series has no tolerances
    return None, None
