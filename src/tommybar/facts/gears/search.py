"""Finding the trains of an owned set that come nearest to a pitch."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from fractions import Fraction
from itertools import combinations, permutations
from pathlib import Path

from tommybar.facts.gears.quadrant import Quadrant, mesh_faults
from tommybar.facts.gears.train import Train, train_for
from tommybar.facts.table import read_table
from tommybar.refusals import Refusal, nearest

MOST_GEARS = 40
Pairs = tuple[tuple[int, ...], tuple[int, ...]]


def gear_set(name: str) -> tuple[int, ...]:
    """Teeth of a usual set of change gears.

    Parameters
    ----------
    name : str
        "with 127" or "with 63" [-]

    Returns
    -------
    tuple[int, ...]
        Teeth, one entry for each gear owned [-]

    Raises
    ------
    Refusal
        If there is no such set.

    Examples
    --------
    >>> 127 in gear_set("with 127")
    True

    References
    ----------
    source: facts/gears/sets.toml, common practice.
    """
    sets = {key: teeth for key, teeth in _figures().items() if isinstance(teeth, list)}
    if name not in sets:
        raise Refusal(f'The gear set is "{name}"; the table has {", ".join(sets)}.', nearest(name, sets))
    return tuple(sets[name])


def gear_trains(
    pitch: Fraction | float,
    leadscrew_pitch: Fraction | float,
    gears: Sequence[int],
    quadrant: Quadrant | None = None,
    most: int = 5,
    within_ppm: float = 5000.0,
) -> tuple[Train, ...]:
    """Trains that cut a pitch, best first, among those that can be put on.

    Every simple train and every compound train of two pairs is tried; gears
    are used as often as they are owned. A simple train is preferred to a
    compound one of the same error, then the train with fewer teeth.

    Parameters
    ----------
    pitch : Fraction or float
        Pitch wanted, above 0 [mm]
    leadscrew_pitch : Fraction or float
        Pitch of the lead screw, above 0 [mm]
    gears : Sequence[int]
        Teeth of every gear owned, a double twice, 2 to 40 gears [-]
    quadrant : Quadrant or None
        Measured reach of the arm [mm]; the rule in teeth when None
    most : int
        How many trains to give at most [-]
    within_ppm : float
        Largest error that still counts as a train [ppm]

    Returns
    -------
    tuple[Train, ...]
        Trains by rising error; empty when none is within the bound [-]

    Raises
    ------
    Refusal
        If a figure is outside its range.

    Notes
    -----
    200 ppm is 2 um over a nut of 10 mm: far below what a nut notices. Over a
    lead screw it is not.

    Examples
    --------
    >>> best = gear_trains(1.25, 3.175, gear_set("with 127"))[0]
    >>> best.words, best.error_ppm
    ('50/127', 0.0)

    References
    ----------
    source: lead rule, first principles; every combination tried.
    """
    wanted, screw = _ratio(pitch, "pitch"), _ratio(leadscrew_pitch, "lead screw's pitch")
    owned = Counter(gears)
    if not 2 <= owned.total() <= MOST_GEARS or min(owned) < 10:
        raise Refusal(
            f"The set has {owned.total()} gears; it must have 2 to {MOST_GEARS}, each of 10 teeth or more.",
            "Name the teeth of every change gear owned.",
        )
    target = float(wanted / screw)
    found: list[tuple[float, int, int, Pairs]] = []
    for drivers, driven in _pairs(owned):
        ratio = drivers[0] / driven[0]
        if len(drivers) == 2:
            ratio *= drivers[1] / driven[1]
        off = abs(ratio / target - 1) * 1e6
        if off <= within_ppm:
            found.append((round(off, 6), len(drivers), sum(drivers) + sum(driven), (drivers, driven)))
    trains: list[Train] = []
    for _, _, _, (drivers, driven) in sorted(found):
        placed = _placed(drivers, driven, owned, quadrant)
        if placed is not None:
            trains.append(train_for(placed[0], placed[1], screw, wanted, placed[2]))
        if len(trains) == most:
            break
    return tuple(trains)


def _pairs(owned: Counter[int]) -> Iterator[Pairs]:
    teeth = sorted(owned)
    for driver, driven in permutations(teeth, 2):
        yield (driver,), (driven,)
    twos = [*combinations(teeth, 2), *((one, one) for one in teeth if owned[one] > 1)]
    for drivers in twos:
        used = Counter(drivers)
        for driven_two in twos:
            if not used.keys() & set(driven_two):
                yield drivers, driven_two


def _placed(
    drivers: tuple[int, ...], driven: tuple[int, ...], owned: Counter[int], quadrant: Quadrant | None
) -> tuple[tuple[int, ...], tuple[int, ...], int] | None:
    """The same gears in an order that can be put on, with an idler where one is needed."""
    if len(drivers) == 1:
        left = owned - Counter((*drivers, *driven))
        for idler in (0, *sorted(left)):
            if not mesh_faults(drivers, driven, idler, quadrant):
                return drivers, driven, idler
        return None
    for one in permutations(drivers):
        for other in permutations(driven):
            if not mesh_faults(one, other, 0, quadrant):
                return one, other, 0
    return None


def _ratio(figure: Fraction | float, what: str) -> Fraction:
    if not figure > 0 or figure > 1000:
        raise Refusal(
            f"The {what} is {float(figure):g} mm; it must be above 0 and up to 1000.", "Give it in mm."
        )
    return figure if isinstance(figure, Fraction) else Fraction(str(figure))


def _figures() -> dict[str, object]:
    return dict(read_table(Path(__file__).parent / "sets.toml").figures)
