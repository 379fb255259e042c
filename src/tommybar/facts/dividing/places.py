"""Divisions that no circle gives exactly: every one set by itself, so that nothing gathers."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from tommybar.facts.dividing.bounds import check_bounds
from tommybar.facts.dividing.plates import Plates
from tommybar.refusals import Refusal


@dataclass(frozen=True)
class CrankPlace:
    """Where the crank stands for one division, counted from the first."""

    n: int
    turns: int
    holes: int
    plate: int  # holes on the circle
    error: float  # set less exact [deg]


def crank_places(divisions: int, ratio: int, plates: Plates) -> tuple[CrankPlace, ...]:
    """Crank places for divisions, each to the nearest hole from the first one.

    The circle is taken on which the worst of the divisions is least off.

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
    tuple[CrankPlace, ...]
        One for each division: turns, holes and circle [-], error [deg], never
        more than half a hole

    Raises
    ------
    Refusal
        If a figure is outside its range or there is no plate.

    Examples
    --------
    >>> places = crank_places(51, 40, ((15, 16), (49,)))
    >>> places[1].turns, places[1].holes, places[1].plate
    (0, 38, 49)
    >>> max(abs(place.error) for place in places) <= 360 / 40 / 49 / 2
    True

    References
    ----------
    source: place = n x ratio / N, first principles.
    """
    check_bounds(divisions, ratio)
    circles = sorted({circle for plate in plates for circle in plate}, reverse=True)
    if not circles:
        raise Refusal(
            "There is no plate; indexing needs one circle of holes at least.", "Give --plates 15-20."
        )
    step = Fraction(ratio, divisions)
    best = min(circles, key=lambda circle: max(abs(_off(step * n, circle)) for n in range(divisions)))
    places = []
    for index in range(divisions):
        holes = round(step * index * best)
        off = float(_off(step * index, best) * 360 / ratio)
        places.append(CrankPlace(index + 1, holes // best, holes % best, best, off))
    return tuple(places)


def _off(turns: Fraction, circle: int) -> Fraction:
    return Fraction(round(turns * circle), circle) - turns
