"""What has really been made so far, as read from a made file."""

from __future__ import annotations

import re
from dataclasses import dataclass


def piece_of(note: str) -> int:
    """Which of several alike a note says, from 1.

    Examples
    --------
    >>> piece_of("piece 2"), piece_of("a little tight"), piece_of("")
    (2, 1, 1)
    """
    found = re.fullmatch(r"piece (\d{1,4})", note)
    return int(found[1]) if found else 1


@dataclass(frozen=True)
class Measured:
    """A measured size: part.feature, the figure [mm], with what, when, by whom."""

    size: str
    value: float
    instrument: str = ""
    on: str = ""
    by: str = ""
    note: str = ""  # "piece 2" of several alike, or the maker's own words

    @property
    def piece(self) -> int:
        """Which of several alike it is of, from 1."""
        return piece_of(self.note)


@dataclass(frozen=True)
class Ticked:
    """A step (part/card/step) or a whole card (part/card) that is done, or skipped with a reason."""

    key: str
    done: bool = True
    on: str = ""
    by: str = ""
    skipped: str = ""
    note: str = ""
    after: int = 0  # how many measured sizes stood in the record before it


@dataclass(frozen=True)
class Whereabouts:
    """Where a part was left."""

    part: str
    where: str
    on: str = ""
    by: str = ""
    note: str = ""


@dataclass(frozen=True)
class Made:
    """The state of one making. Later entries of the same size replace earlier ones; none is deleted."""

    design: str = ""
    measured: tuple[Measured, ...] = ()
    ticks: tuple[Ticked, ...] = ()
    whereabouts: tuple[Whereabouts, ...] = ()

    def size(self, name: str) -> Measured | None:
        """The latest measurement of that size, or None."""
        return next((one for one in reversed(self.measured) if one.size == name), None)

    def pieces(self, name: str) -> tuple[Measured, ...]:
        """The latest measurement of that size on each piece of several alike, in the order of the pieces."""
        latest = {one.piece: one for one in self.measured if one.size == name}
        return tuple(latest[piece] for piece in sorted(latest))

    def in_order(self) -> tuple[Measured | Ticked, ...]:
        """Sizes and ticks in the order in which they came: the ticks say after how many sizes."""
        found: list[Measured | Ticked] = []
        for index in range(len(self.measured) + 1):
            found += [one for one in self.ticks if min(one.after, len(self.measured)) == index]
            found += self.measured[index : index + 1]
        return tuple(found)

    def when_begun(self, part: str) -> Made:
        """What was known when the first step of that part was done: the sizes measured before it."""
        first = min(
            (one.after for one in self.ticks if one.done and one.key.split("/")[0] == part), default=0
        )
        return Made(self.design, self.measured[:first])

    def begun(self, part: str) -> bool:
        """Whether any step of that part has been ticked."""
        return any(one.key.split("/")[0] == part for one in self.ticks if one.done)
