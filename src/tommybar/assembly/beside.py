"""Pieces that share one land stand one after the other along it: a nut beyond the wheel that it holds."""

from __future__ import annotations

from collections.abc import Sequence

from tommybar.assembly.links import Joined, Link, Piece
from tommybar.shapes.solids.frames import Frame, back, direction, shifted, within

NEAR = 0.02  # an overlap along the land that is no matter of placing [mm]


def beside(link: Link, at: Frame, frames: dict[Piece, Frame], links: Sequence[Link]) -> Frame:
    """A frame for ``link.first`` past the pieces that stand on its land already, towards the land's open end.

    ``at`` is where the link alone would place it. It is given back as it is
    when nothing stands there, or when the land has no open end to move to.
    """
    land = link.pairs[0].shaft
    second = frames[link.second]
    taken = [
        _stretch(one.pairs[0], frames[one.first], second)
        for one in links
        if one is not link
        and one.kind in ("fit", "thread")
        and one.second == link.second
        and one.first in frames
        and one.first != link.first
        and one.pairs[0].shaft == land
    ]
    for _ in taken:
        low, high = _stretch(link.pairs[0], at, second)
        met = [one for one in taken if min(high, one[1]) - max(low, one[0]) > NEAR]
        if not met:
            break
        moves = [met[0][0] - high] if land.low_open else []
        moves += [met[0][1] - low] if land.high_open else []
        if not moves:
            break
        x, y, z = direction(within(second, land.at), (0.0, 0.0, min(moves, key=abs)))
        at = within(shifted(x, y, z), at)
    return at


def _stretch(pair: Joined, first: Frame, second: Frame) -> tuple[float, float]:
    """Where a hole stands along the axis of its land [mm]."""
    told = within(back(within(second, pair.shaft.at)), within(first, pair.hole.at))
    up = 1.0 if told[10] > 0 else -1.0
    low, high = sorted((told[11] + up * pair.hole.low, told[11] + up * pair.hole.high))
    return low, high
