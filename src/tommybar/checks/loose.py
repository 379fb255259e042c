"""Pieces whose place is not settled: nothing says where they stand along or about an axis, or what they hang on."""

from __future__ import annotations

from tommybar.assembly.links import Piece, links_of
from tommybar.assembly.placing import Assembly
from tommybar.design.model import SizedDesign

UNSETTLED = "no relation says just where it stands, so look there first"


def loose_pieces(design: SizedDesign, whole: Assembly) -> frozenset[Piece]:
    """Pieces with an open place, those joined to them and set down later, and doubles that share one place."""
    links = links_of(design)
    order = {(one.part, one.instance): one.order for one in whole.placements}
    found: set[Piece] = set()
    for one in sorted(whole.placements, key=lambda each: each.order):
        piece = (one.part, one.instance)
        joined = [link for link in links if piece in (link.first, link.second)]
        others = {link.first if link.second == piece else link.second for link in joined}
        earlier = {other for other in others if order.get(other, one.order) < one.order}
        if one.open or earlier & found or _doubled(one.part, piece, whole):
            found.add(piece)
    return frozenset(found)


def _doubled(part: str, piece: Piece, whole: Assembly) -> bool:
    mine = whole.of(*piece)
    return mine is not None and any(
        one.part == part and one.instance != piece[1] and one.frame == mine.frame for one in whole.placements
    )
