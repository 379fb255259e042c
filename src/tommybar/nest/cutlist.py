"""What the nest says: which blank is sawn from which bar, and what must be bought."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Cut:
    """One blank on a bar: saw from ``start`` to ``end`` from the bar's marked end [mm].

    On a plate ``edge`` and ``far_edge`` say where it lies from the marked
    edge; on bars both are 0 and the whole section is sawn.
    """

    part: str
    copy: int  # 1 for the first of several alike
    start: float
    end: float
    edge: float = 0.0
    far_edge: float = 0.0


@dataclass(frozen=True)
class SawnBar:
    """One bar of the rack, or one bought, with its cuts and what is left [mm]."""

    bar: str  # its name on the rack, or "buy: ..."
    material: str
    section: str
    size: float
    width: float
    length: float
    cuts: tuple[Cut, ...]
    kerf: float
    left: float
    bought: bool


@dataclass(frozen=True)
class BuyLine:
    """One line of the request slip, in shop words."""

    words: str
    section: str
    size: float
    width: float
    length: float
    material: str
    mass: float  # of the whole line [g]; 0 where the material's density is not known
    for_parts: tuple[str, ...]
    accept: tuple[str, ...] = ()  # other sections or alloys that do as well
    count: int = 1  # pieces of this length


@dataclass(frozen=True)
class CutList:
    """All bars and the request slip; ``bound_words`` says how near the best possible."""

    bars: tuple[SawnBar, ...]
    buy: tuple[BuyLine, ...]
    bound_words: str = ""
