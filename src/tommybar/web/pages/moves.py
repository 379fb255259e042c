"""What moves in a design, for the view in three dimensions: any angle of it, and how near it passes what stands still."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache

from tommybar.assembly.placing import assembled
from tommybar.assembly.sweep import Clearance, Movement, clearances, movements
from tommybar.design.model import SizedDesign
from tommybar.pack.units import Reader
from tommybar.refusals import OwnFault, Refusal

Frame = tuple[float, ...]  # three rows of a rotation and a shift, in mm
NEAREST = 3  # neighbours that are told
STEPS = {"turns": 15.0, "slides": 1.0}  # of one press [deg or mm]


@dataclass(frozen=True)
class Move:
    """A movement that the view can go through."""

    words: str  # what moves
    unit: str  # deg or mm
    axis: Frame  # its z is the axis
    low: float  # of the travel [deg or mm]
    high: float
    step: float
    round: bool  # whether it goes round and round
    pieces: tuple[tuple[int, int], ...]  # number of the part in the list, and of its piece
    told: tuple[str, ...]  # how near it passes what stands still, over the whole movement
    narrowest: float | None  # where on the way that is, when it is known [deg or mm]


def moves_of(design: SizedDesign, names: Sequence[str], reader: Reader) -> tuple[Move, ...]:
    """Every movement, with the numbers of its pieces in a list of parts."""
    found = []
    for one in movements(design, assembled(design)):
        pieces = tuple((names.index(part), n - 1) for part, n in one.pieces if part in names)
        if not pieces:
            continue
        turns, (low, high) = one.sweep.way == "turns", one.sweep.travel
        gaps = _gaps(design, one)
        found.append(
            Move(
                _words(one),
                "deg" if turns else "mm",
                tuple(float(each) for each in one.at),
                low,
                high,
                STEPS[one.sweep.way],
                turns and high - low >= 360 - 1e-9,
                pieces,
                tuple(_told(each, reader) for each in gaps[:NEAREST])
                or ("Nothing that stands still is looked at beside it.",),
                gaps[0].at if gaps else None,
            )
        )
    return tuple(found)


def _words(one: Movement) -> str:
    names = list(dict.fromkeys(part.replace("_", " ") for part, _ in one.pieces))
    whole = names[0] if len(names) == 1 else f"{', '.join(names[:-1])} and {names[-1]}"
    return f"{'Turn' if one.sweep.way == 'turns' else 'Slide'} {whole}"


@lru_cache(maxsize=8)
def _all_gaps(design: SizedDesign) -> tuple[Clearance, ...]:
    try:
        return clearances(design)
    except (OwnFault, Refusal):
        return ()  # a finding of the checks tells it


def _gaps(design: SizedDesign, one: Movement) -> list[Clearance]:
    """What is nearest to these pieces over the movement, each neighbour once, the nearest first."""
    found: dict[tuple[str, str], Clearance] = {}
    for gap in _all_gaps(design):
        if gap.moving in one.pieces:
            found.setdefault((gap.moving[0], gap.fixed[0]), gap)
    return list(found.values())


def _told(one: Clearance, reader: Reader) -> str:
    moving, fixed = one.moving[0].replace("_", " "), one.fixed[0].replace("_", " ")
    where = "" if one.at is None else f", at {one.at:.3g} of its way"
    if one.meets:
        return f"{moving} strikes {fixed}{where}."
    if one.gap <= one.bound:
        return f"{moving} and {fixed} touch or nearly so{where}."
    sure = max(one.gap - one.bound, 0.0)
    return f"{moving} passes {fixed} at {reader.length(sure, 2)} {reader.unit} at least{where}."
