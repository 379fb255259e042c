"""What a short trial tells about a machine: how a dial reads, its slack, a chuck's run-out, what a reamer cuts."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from tommybar.refusals import Refusal

NEAR = 0.12  # share by which a trial may miss what the dial says; common practice, no source
MOST_OFF = 0.1  # a reamer whose hole is further off its size is no reamer any more [mm]


@dataclass(frozen=True)
class DialFound:
    """How a cross-slide's dial reads.

    ``taken`` is what one division took off the diameter [mm].
    """

    reads: Literal["DIA", "RAD"]
    taken: float
    words: str


def dial_by_one_cut(marked: float, divisions: float, before: float, after: float) -> DialFound:
    """Whether a dial is numbered in diameter or in radius, from one cut.

    ``marked`` is what one division is said to be, ``divisions`` how far the
    dial was turned between two touches of the same cut, ``before`` and
    ``after`` the diameters measured [mm].

    >>> dial_by_one_cut(0.05, 20, 25.00, 24.01).reads
    'DIA'
    >>> dial_by_one_cut(0.02, 25, 25.00, 24.00).reads
    'RAD'
    """
    if min(marked, divisions, before, after) <= 0 or after >= before:
        raise Refusal(
            f"{divisions:g} divisions from {before:g} to {after:g} mm are no cut; the diameter must fall.",
            "Take a cut over a short length, measure, feed in by whole divisions, cut and measure again.",
        )
    taken = (before - after) / divisions
    for reads, wanted in (("DIA", marked), ("RAD", 2 * marked)):
        if abs(taken - wanted) <= NEAR * wanted:
            words = f"One division took {taken:.4f} mm off the diameter; the dial says {marked:g}: it reads {reads}."
            return DialFound("DIA" if reads == "DIA" else "RAD", taken, words)
    raise Refusal(
        f"One division took {taken:.4f} mm off the diameter; {marked:g} would be DIA, {2 * marked:g} RAD.",
        "Check how many divisions you turned, with the slack taken up from one side, and measure again.",
    )


def slack_of(readings: Sequence[float]) -> float:
    """The slack to work with: the largest of some readings, in divisions.

    >>> slack_of([3, 4, 3.5])
    4.0
    """
    return _largest(readings, "slack", 200.0)


def runout_of(readings: Sequence[float]) -> float:
    """The run-out to reckon with: the largest full indicator reading of some grips [mm].

    >>> runout_of([0.04, 0.07, 0.05])
    0.07
    """
    return _largest(readings, "run-out", 2.0)


def _largest(readings: Sequence[float], what: str, most: float) -> float:
    if not readings or min(readings) < 0 or max(readings) > most:
        raise Refusal(
            f"The {what} is {', '.join(f'{one:g}' for one in readings) or 'not given'};"
            f" readings lie between 0 and {most:g}.",
            "Give three readings with commas between them.",
        )
    return float(max(readings))


def reamer_cuts(size: float, readings: Sequence[float]) -> float:
    """The diameter that a reamer really cuts: the middle of some measured holes [mm].

    >>> reamer_cuts(8.0, [8.011, 8.013, 8.012])
    8.012
    """
    if not readings:
        raise Refusal("No hole is given.", "Ream two or three holes in scrap and measure them.")
    middle = sum(readings) / len(readings)
    if abs(middle - size) > MOST_OFF:
        raise Refusal(
            f"The holes are {middle:.3f} mm in the middle; a reamer of {size:g} mm lies within {MOST_OFF:g} mm of it.",
            "Check the unit and the reamer.",
        )
    return round(middle, 4)
