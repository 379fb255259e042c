"""Which piece of a part each use of its features belongs to."""

from __future__ import annotations

from collections.abc import Iterable

from tommybar.assembly.axes import Axis, axis_of, count_of
from tommybar.assembly.joined import Piece
from tommybar.design.model import Part, SizedDesign


class Dealer:
    """Deals the pieces of parts to the uses of their features."""

    def __init__(self, design: SizedDesign, pairs: Iterable[tuple[str, str]]) -> None:
        self.parts = {part.name: part for part in design.parts}
        self.uses: dict[str, int] = {}
        self.seen: dict[str, int] = {}
        for pair in pairs:
            for name in pair:
                self.uses[name] = self.uses.get(name, 0) + 1

    def part(self, name: str) -> Part | None:
        return self.parts.get(name.partition(".")[0])

    def deal(self, first: str, second: str) -> list[tuple[tuple[Piece, int], tuple[Piece, int]]]:
        """Pieces, and which of equal holes, that one use of two features joins."""
        counted = []
        for name in (first, second):
            part = self.part(name)
            if part is None:
                return []
            use = self.seen.get(name, 0)
            self.seen[name] = use + 1
            holes = count_of(part.shape, name.partition(".")[2])
            counted.append((part, use, self.uses[name], part.count * holes, holes))
        copies = max(max(1, places // uses) for _, _, uses, places, _ in counted)
        found = []
        for copy in range(copies):
            ends = []
            for part, use, uses, places, holes in counted:
                place = (use + copy * uses) % places
                ends.append(((part.name, place // holes + 1), place % holes))
            found.append((ends[0], ends[1]))
        return found

    def axis(self, name: str, number: int) -> Axis | None:
        part = self.part(name)
        return axis_of(part.standing, name.partition(".")[2], number) if part else None
