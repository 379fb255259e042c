"""Compound indexing: two moves on two circles of one plate."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from itertools import permutations

from tommybar.facts.dividing.head import index_divisions
from tommybar.facts.dividing.plates import Plates


@dataclass(frozen=True)
class CompoundIndexing:
    """Two moves that together make one step, both on circles of one plate.

    The crank is moved ``first_holes`` on ``first_plate``; then the plate is
    freed and moved with the crank by ``second_holes`` on ``second_plate``, the
    same way when it is above 0, back when it is below.
    """

    turns: int
    first_holes: int
    first_plate: int
    second_holes: int  # below 0: the other way
    second_plate: int
    error: float  # of one step [deg]
    closing_error: float  # when the step is repeated all round [deg]

    @property
    def words(self) -> str:
        """The step as it is said at the bench."""
        sign = "+" if self.second_holes > 0 else "-"
        first = f"{self.turns} turns + {self.first_holes} holes on {self.first_plate}"
        return f"{first} {sign} {abs(self.second_holes)} holes on {self.second_plate}"


def compound_indexings(
    divisions: int, ratio: int, plates: Plates, most: int = 5
) -> tuple[CompoundIndexing, ...]:
    """The best compound ways to a number of divisions.

    Both circles must be on one plate, because the second move is counted with
    the index pin at the back of the same plate.

    Parameters
    ----------
    divisions : int
        Number of divisions N, 1 to 10000 [-]
    ratio : int
        Turns of the crank for one turn of the work, 1 to 360 [-]
    plates : tuple[tuple[int, ...], ...]
        Circles of holes that are owned, plate by plate [-]
    most : int
        How many ways to give at most [-]

    Returns
    -------
    tuple[CompoundIndexing, ...]
        Least error first, then the shortest moves; errors [deg]

    Raises
    ------
    Refusal
        If a figure is outside its range or there is no plate.

    Examples
    --------
    The textbook way to 69 divisions, 21 holes on 23 and back 11 on 33:

    >>> best = compound_indexings(69, 40, ((21, 23, 27, 29, 31, 33),))[0]
    >>> best.error
    0.0
    >>> "21 holes on 23 - 11 holes on 33" in [
    ...     way.words.removeprefix("0 turns + ")
    ...     for way in compound_indexings(69, 40, ((21, 23, 27, 29, 31, 33),), most=50)
    ... ]
    True

    References
    ----------
    .. [1] Machinery's Handbook, compound indexing, 69 divisions (from memory);
       the rule is first principles.
    """
    index_divisions(divisions, ratio, plates)
    turns = Fraction(ratio, divisions)
    whole, part = int(turns), turns - int(turns)
    ways: dict[CompoundIndexing, tuple[float, int]] = {}
    for plate in plates:
        for first, second in permutations(sorted(set(plate)), 2):
            for first_holes in range(1, first):
                left = (part - Fraction(first_holes, first)) * second
                second_holes = round(left)
                if second_holes == 0 or abs(second_holes) >= second:
                    continue
                off = (second_holes - left) / second * 360 / ratio
                way = CompoundIndexing(
                    whole, first_holes, first, second_holes, second, float(off), float(off * divisions)
                )
                ways[way] = (abs(float(off)), first_holes + abs(second_holes))
    return tuple(sorted(ways, key=lambda way: ways[way])[:most])
