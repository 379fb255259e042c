"""Which circles of holes a dividing head has."""

from __future__ import annotations

from pathlib import Path

from tommybar.facts.table import read_table
from tommybar.refusals import Refusal, nearest

Plates = tuple[tuple[int, ...], ...]

MOST_HOLES = 400


def plate_set(name: str) -> Plates:
    """Circles of a usual set of plates.

    Parameters
    ----------
    name : str
        "three plates" or "two-sided plate" [-]

    Returns
    -------
    tuple[tuple[int, ...], ...]
        One tuple of hole numbers for each plate or side [-]

    Raises
    ------
    Refusal
        If there is no such set.

    Examples
    --------
    >>> plate_set("three plates")[0]
    (15, 16, 17, 18, 19, 20)

    References
    ----------
    source: facts/dividing/plates.toml (Army ordnance course OD1644; memory).
    """
    sets = read_table(Path(__file__).parent / "plates.toml").figures
    if name not in sets:
        raise Refusal(f'The plate set is "{name}"; the table has {", ".join(sets)}.', nearest(name, sets))
    return tuple(tuple(plate) for plate in sets[name])


def plates_of(text: str) -> Plates:
    """Plates as a person writes them.

    Commas part circles, a dash makes a run, a slash parts plates. Without a
    slash every run is a plate of its own and the loose numbers are one plate.

    Parameters
    ----------
    text : str
        For example "15-20,21-33" or "15,16,17 / 21,23,27" [-]

    Returns
    -------
    tuple[tuple[int, ...], ...]
        One tuple of hole numbers for each plate [-]

    Raises
    ------
    Refusal
        If it cannot be read, or a circle has fewer than 2 or more than 400 holes.

    Examples
    --------
    >>> plates_of("15-17,21,23")
    ((15, 16, 17), (21, 23))
    >>> plates_of("15,16/21,23")
    ((15, 16), (21, 23))

    References
    ----------
    source: our own way of writing plates.
    """
    if "/" in text:
        return tuple(tuple(hole for run in _runs(part) for hole in run) for part in text.split("/"))
    runs = _runs(text)
    loose = tuple(run[0] for run in runs if len(run) == 1)
    return tuple(run for run in runs if len(run) > 1) + ((loose,) if loose else ())


def _runs(text: str) -> list[tuple[int, ...]]:
    runs = []
    for part in text.split(","):
        first, _, last = part.strip().partition("-")
        try:
            low = int(first)
            high = int(last) if last else low
        except ValueError:
            raise Refusal(
                f'The plates are "{text}"; "{part.strip()}" is no number of holes and no run.',
                "Write them like 15-20,21-33 or 15,16,17 / 21,23,27.",
            ) from None
        if not 2 <= low <= high <= MOST_HOLES:
            raise Refusal(
                f"The plate has a circle or run {part.strip()}; it must be 2 to {MOST_HOLES}, rising.",
                "Write them like 15-20,21-33.",
            )
        runs.append(tuple(range(low, high + 1)))
    return runs
