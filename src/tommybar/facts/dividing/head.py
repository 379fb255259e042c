"""Dividing head: turns of the crank and holes on a circle."""

from __future__ import annotations

import math
from dataclasses import dataclass
from fractions import Fraction

from tommybar.facts.dividing.bounds import check_bounds
from tommybar.facts.dividing.plates import Plates
from tommybar.refusals import Refusal


@dataclass(frozen=True)
class Indexing:
    """One way to go from one division to the next.

    ``plate`` is the number of holes of the circle used, 0 when whole turns do
    it. ``error`` is how far a single step is off, ``closing_error`` what the
    last gap gathers when the step is repeated all round.
    """

    turns: int
    holes: int
    plate: int  # holes on the circle
    error: float  # of one step, + is too far [deg]
    closing_error: float  # [deg]

    @property
    def exact(self) -> bool:
        """Whether the step is right without any remainder."""
        return self.error == 0.0

    @property
    def words(self) -> str:
        """The step as it is said at the bench."""
        if not self.holes:
            return f"{self.turns} turns exactly"
        return f"{self.turns} turns + {self.holes} holes on {self.plate}"


def index_divisions(divisions: int, ratio: int, plates: Plates) -> Indexing:
    """Crank turns and holes for a number of even divisions.

    One division takes ratio / N turns. Where no circle gives that exactly, the
    nearest hole is taken and its error told.

    Parameters
    ----------
    divisions : int
        Number of divisions N, 1 to 10000 [-]
    ratio : int
        Turns of the crank for one turn of the work, 1 to 360 (40, 60, 90) [-]
    plates : tuple[tuple[int, ...], ...]
        Circles of holes that are owned, plate by plate [-]

    Returns
    -------
    Indexing
        Whole turns, holes and circle [-], with errors [deg]

    Raises
    ------
    Refusal
        If a figure is outside its range or there is no plate.

    Notes
    -----
    The exact circle with fewest holes is taken; :func:`plain_indexings` gives
    them all. Turn the crank always the same way, past and back on a miss.

    Examples
    --------
    >>> index_divisions(7, 40, ((15, 16, 17, 18, 19, 20), (21, 23, 27))).words
    '5 turns + 15 holes on 21'
    >>> near = index_divisions(51, 40, ((15, 16), (49,)))
    >>> near.words, near.exact
    ('0 turns + 38 holes on 49', False)

    References
    ----------
    .. [1] Army ordnance correspondence course OD1644 (worked examples, seen);
       rule turns = ratio / N, first principles.
    """
    check_bounds(divisions, ratio)
    return _nearest(Fraction(ratio, divisions), divisions, ratio, plates)


def index_angle(angle: float, ratio: int, plates: Plates) -> Indexing:
    """Crank turns and holes for one angle.

    Parameters
    ----------
    angle : float
        Angle to turn the work, above 0 and up to 360 [deg]
    ratio : int
        Turns of the crank for one turn of the work, 1 to 360 [-]
    plates : tuple[tuple[int, ...], ...]
        Circles of holes that are owned, plate by plate [-]

    Returns
    -------
    Indexing
        Whole turns, holes and circle [-], with the error of the step [deg]

    Raises
    ------
    Refusal
        If a figure is outside its range or there is no plate.

    Examples
    --------
    >>> index_angle(35.0, 40, ((15, 16, 17, 18, 19, 20),)).words
    '3 turns + 16 holes on 18'

    References
    ----------
    .. [1] Machinery's Handbook 1916, indexing for angles (seen).
    """
    if not (math.isfinite(angle) and 0 < angle <= 360):
        raise Refusal(f"The angle is {angle:g} deg; it must be above 0 and up to 360.", "Give it in degrees.")
    check_bounds(1, ratio)
    exact = Fraction(angle).limit_denominator(3_600_000)
    return _nearest(exact * ratio / 360, 1, ratio, plates)


def degrees_a_turn(ratio: int) -> float:
    """How far the work turns for one turn of the crank.

    Parameters
    ----------
    ratio : int
        Turns of the crank for one turn of the work, 1 to 360 [-]

    Returns
    -------
    float
        Angle of the work [deg]

    Raises
    ------
    Refusal
        If the ratio is outside its range.

    Examples
    --------
    >>> degrees_a_turn(40), degrees_a_turn(90)
    (9.0, 4.0)

    References
    ----------
    .. [1] Army ordnance correspondence course OD1644 (540 arc minutes, seen).
    """
    check_bounds(1, ratio)
    return 360.0 / ratio


def plain_indexings(divisions: int, ratio: int, plates: Plates) -> tuple[Indexing, ...]:
    """Every circle that gives a number of divisions exactly.

    Parameters
    ----------
    divisions : int
        Number of divisions N, 1 to 10000 [-]
    ratio : int
        Turns of the crank for one turn of the work, 1 to 360 [-]
    plates : tuple[tuple[int, ...], ...]
        Circles of holes that are owned, plate by plate [-]

    Returns
    -------
    tuple[Indexing, ...]
        Exact ways by rising number of holes; empty when there is none [-]

    Raises
    ------
    Refusal
        If a figure is outside its range or there is no plate.

    Examples
    --------
    >>> [way.words for way in plain_indexings(70, 40, ((21, 28), (49,)))]
    ['0 turns + 12 holes on 21', '0 turns + 16 holes on 28', '0 turns + 28 holes on 49']
    >>> plain_indexings(127, 40, ((21, 28), (49,)))
    ()

    References
    ----------
    .. [1] Army ordnance correspondence course OD1644 (worked examples, seen).
    """
    first = index_divisions(divisions, ratio, plates)
    if not first.exact:
        return ()
    turns = Fraction(ratio, divisions)
    if turns.denominator == 1:
        return (first,)
    part = turns - first.turns
    return tuple(
        Indexing(first.turns, int(part * circle), circle, 0.0, 0.0)
        for circle in _circles(plates)
        if circle % part.denominator == 0
    )


def _nearest(turns: Fraction, steps: int, ratio: int, plates: Plates) -> Indexing:
    ways = []
    for circle in _circles(plates):
        moved = Fraction(round(turns * circle), circle)
        off = (moved - turns) * 360 / ratio
        if moved > 0:
            ways.append((abs(off), circle, moved, off))
    if not ways:
        raise Refusal(
            f"The step is {float(turns):.5f} turns of the crank; no circle owned has holes that close.",
            "Use a circle with more holes, a lower ratio, or a rotary table with vernier.",
        )
    _, circle, moved, off = min(ways)
    whole = int(moved)
    holes = int((moved - whole) * circle)
    return Indexing(
        turns=whole,
        holes=holes,
        plate=circle if holes else 0,
        error=float(off),
        closing_error=float(off * steps),
    )


def _circles(plates: Plates) -> tuple[int, ...]:
    circles = tuple(sorted({circle for plate in plates for circle in plate}))
    if not circles:
        raise Refusal(
            "There is no plate; indexing needs one circle of holes at least.", "Give --plates 15-20."
        )
    return circles
