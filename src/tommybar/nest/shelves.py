"""Rectangles sawn from plate and sheet: shelves across the plate, each sawn off in one cut."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass


@dataclass(frozen=True)
class Place:
    """Where one rectangle lies on a plate: from the marked end, and from the marked edge [mm]."""

    piece: int
    start: float
    end: float
    edge: float
    far_edge: float


@dataclass(frozen=True)
class _Shelf:
    start: float
    depth: float  # along the plate
    used: float  # across the plate


def shelve(
    pieces: Sequence[tuple[float, float]], length: float, width: float, kerf: float
) -> tuple[tuple[Place, ...], tuple[int, ...]]:
    """Lay rectangles (length, width) on one plate; the second answer is what finds no room.

    Largest first; each goes on the first shelf that takes it, lying along the
    plate or turned by a quarter, else on a new shelf of its own. Both ways of
    starting (pieces along, pieces across) are tried and the one with the most
    metal used, then the shorter stretch of plate, is kept.
    """
    tried = [_laid(pieces, length, width, kerf, across) for across in (False, True)]
    return min(tried, key=lambda one: (_area(pieces, one[1]), _stretch(one[0])))


def _area(pieces: Sequence[tuple[float, float]], left: Sequence[int]) -> float:
    return sum(pieces[one][0] * pieces[one][1] for one in left)


def _stretch(places: Sequence[Place]) -> float:
    return max((one.end for one in places), default=0.0)


def _laid(
    pieces: Sequence[tuple[float, float]], length: float, width: float, kerf: float, across: bool
) -> tuple[tuple[Place, ...], tuple[int, ...]]:
    order = sorted(range(len(pieces)), key=lambda one: (-max(pieces[one]), -min(pieces[one]), one))
    shelves: list[_Shelf] = []
    places: list[Place] = []
    left: list[int] = []
    for piece in order:
        long, wide = pieces[piece]
        ways = [(wide, long), (long, wide)] if across else [(long, wide), (wide, long)]
        if not (_on_a_shelf(piece, ways, shelves, places, width, kerf)) and not (
            _on_a_new_shelf(piece, ways, shelves, places, length, width, kerf)
        ):
            left.append(piece)
    return tuple(places), tuple(sorted(left))


def _on_a_shelf(
    piece: int,
    ways: Sequence[tuple[float, float]],
    shelves: list[_Shelf],
    places: list[Place],
    width: float,
    kerf: float,
) -> bool:
    for number, shelf in enumerate(shelves):
        for along, wide in ways:
            if along <= shelf.depth + 1e-9 and shelf.used + kerf + wide <= width + 1e-9:
                edge = shelf.used + kerf
                places.append(Place(piece, shelf.start, shelf.start + along, edge, edge + wide))
                shelves[number] = _Shelf(shelf.start, shelf.depth, edge + wide)
                return True
    return False


def _on_a_new_shelf(
    piece: int,
    ways: Sequence[tuple[float, float]],
    shelves: list[_Shelf],
    places: list[Place],
    length: float,
    width: float,
    kerf: float,
) -> bool:
    start = shelves[-1].start + shelves[-1].depth + kerf if shelves else 0.0
    for along, wide in ways:
        if start + along <= length + 1e-9 and wide <= width + 1e-9:
            places.append(Place(piece, start, start + along, 0.0, wide))
            shelves.append(_Shelf(start, along, wide))
            return True
    return False
