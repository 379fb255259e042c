"""Blanks onto the rack: which pieces of stock can serve which blanks, and what is left unserved."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field

from tommybar.facts.materials import material
from tommybar.making.cards import Blank
from tommybar.nest.cutlist import Cut
from tommybar.nest.lengths import fill_offcuts
from tommybar.nest.shelves import shelve
from tommybar.resize.limits import same_material
from tommybar.shop.model import Bar

FLAT = ("flat", "plate", "sheet")  # sections that stand in for each other
SHELVED = ("plate", "sheet")  # sawn both ways
MOST_OVER = 1.3  # a section up to this much larger is turned down rather than bought anew
TOUCH = 0.051  # sizes this near are the same section [mm]


@dataclass(frozen=True)
class Piece:
    """One blank to be sawn, one of ``blank.count``."""

    blank: Blank
    copy: int


@dataclass
class Stand:
    """One bar of the rack while blanks are laid on it."""

    bar: Bar
    name: str
    free_from: float = 0.0  # what lies before is sawn already [mm]
    cuts: list[Cut] = field(default_factory=list)
    shelved: list[Piece] = field(default_factory=list)

    @property
    def room(self) -> float:
        """Length that is still whole [mm]."""
        return max(0.0, self.bar.length - self.free_from)


def stands_of(rack: Sequence[Bar]) -> list[Stand]:
    """Every single piece of the rack; several alike are numbered."""
    return [
        Stand(bar, bar.name if bar.count == 1 else f"{bar.name} ({number})")
        for bar in rack
        for number in range(1, bar.count + 1)
    ]


def serves(bar: Bar, blank: Blank) -> bool:
    """Whether a bar's material and section can give the blank at all, length apart."""
    if not same_material(bar.material, blank.material):
        return False
    if blank.as_supplied and abs(bar.size - blank.size) > TOUCH:
        return False
    if blank.section in FLAT:
        wide_enough = bar.width >= blank.width - TOUCH
        turned = bar.section in SHELVED and bar.width >= min(blank.width, blank.length) - TOUCH
        return bar.section in FLAT and bar.size >= blank.size - TOUCH and (wide_enough or turned)
    if blank.section == "tube":  # its bore stays as it comes
        return (
            bar.section == "tube" and bar.size >= blank.size - TOUCH and abs(bar.width - blank.width) <= TOUCH
        )
    return bar.section == blank.section and bar.size >= blank.size - TOUCH


def exact(bar: Bar, blank: Blank) -> bool:
    """Whether the section is the very one asked for."""
    same = bar.size - blank.size <= TOUCH
    return same and (bar.section in SHELVED or blank.section not in FLAT or bar.width - blank.width <= TOUCH)


def lay(pieces: Sequence[Piece], stands: list[Stand], kerf: float) -> list[Piece]:
    """Saw what can be sawn from the rack; gives back the pieces that found no room.

    Bars of the very section first, then those up to 1.3 times its area, the
    nearest first.
    """
    left = list(pieces)
    for wanted_exact in (True, False):
        for kind in sorted({_kind(one.blank) for one in left}, reverse=True):
            group = [one for one in left if _kind(one.blank) == kind]
            fitting = [
                one
                for one in stands
                if serves(one.bar, group[0].blank)
                and exact(one.bar, group[0].blank) == wanted_exact
                and (wanted_exact or _over(one.bar, group[0].blank) <= MOST_OVER)
            ]
            for section in sorted({(_over(one.bar, group[0].blank), one.bar.section) for one in fitting}):
                alike = [
                    one for one in fitting if (_over(one.bar, group[0].blank), one.bar.section) == section
                ]
                whole = section[1] not in SHELVED
                done = _lay_lengths(group, alike, kerf) if whole else _lay_shelves(group, alike, kerf)
                group = [one for one in group if one not in done]
                left = [one for one in left if one not in done]
    return left


def _kind(blank: Blank) -> tuple[float, float, str, str]:
    """What blanks must share to come from the same bars: section, its size and the metal."""
    return (blank.size, blank.width, blank.section, material(blank.material).name)


def _over(bar: Bar, blank: Blank) -> float:
    """How many times the blank's section the bar's is; a plate counts by thickness only."""
    if bar.section in SHELVED:
        return bar.size / blank.size
    if blank.section in FLAT:
        return bar.size * bar.width / (blank.size * blank.width)
    return (bar.size / blank.size) ** 2


def _lay_lengths(group: Sequence[Piece], stands: Sequence[Stand], kerf: float) -> set[Piece]:
    filled = fill_offcuts([one.blank.length for one in group], [one.room for one in stands], kerf)
    done = set()
    for stand, on_bar in zip(stands, filled.on_bars, strict=True):
        for place in on_bar:
            piece = group[place]
            end = stand.free_from + piece.blank.length
            stand.cuts.append(Cut(piece.blank.part, piece.copy, round(stand.free_from, 3), round(end, 3)))
            stand.free_from = end + kerf
            done.add(piece)
    return done


def _lay_shelves(group: Sequence[Piece], stands: Sequence[Stand], kerf: float) -> set[Piece]:
    """Lay rectangles on plates, smallest plate first; a plate that is begun is laid out afresh."""
    done: set[Piece] = set()
    for stand in sorted(stands, key=lambda one: (one.bar.length * one.bar.width, one.name)):
        waiting = [one for one in group if one not in done]
        if not waiting:
            break
        wanted = [*stand.shelved, *waiting]
        sizes = [(one.blank.length, one.blank.width) for one in wanted]
        places, _ = shelve(sizes, stand.bar.length, stand.bar.width, kerf)
        kept = {place.piece for place in places}
        if not kept.issuperset(range(len(stand.shelved))):
            continue
        stand.shelved = [one for number, one in enumerate(wanted) if number in kept]
        stand.cuts = [
            Cut(
                wanted[place.piece].blank.part,
                wanted[place.piece].copy,
                round(place.start, 3),
                round(place.end, 3),
                round(place.edge, 3),
                round(place.far_edge, 3),
            )
            for place in sorted(places, key=lambda one: (one.start, one.edge))
        ]
        stand.free_from = max((place.end for place in places), default=0.0) + kerf
        done |= {one for one in waiting if one in stand.shelved}
    return done
