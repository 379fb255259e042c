"""The mark that every sketch of a mill card shares: a numbered place."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from tommybar.pack.boxes import Box, overlap
from tommybar.pack.sheet import Arc, Line, Mark, Text

SIZE = 4.25  # type size of a sketch [mm]


def spots_marks(places: Iterable[tuple[float, float, int]], inside: Box) -> list[Mark]:
    """Places (x, y, number) within a face, no number on another one or on another place."""
    wanted = list(places)
    rings = [(x - 1.8, y - 1.8, x + 1.8, y + 1.8) for x, y, _ in wanted]
    tags: list[Box] = []
    marks: list[Mark] = []
    for k, (x, y, n) in enumerate(wanted):
        made = spot_marks(x, y, n, inside, [*tags, *rings[:k], *rings[k + 1 :]])
        tags += [one.box for one in made if isinstance(one, Text)]
        marks += made
    return marks


def spot_marks(
    x: float, y: float, n: int, inside: Box | None = None, taken: Iterable[Box] = ()
) -> list[Mark]:
    """A place with its number; on a narrow face the number stands on the jaw below, in white."""
    tag = Text((x + 2.4, y - 1.6), str(n), SIZE, True)
    if inside is not None:
        left = -2.4 - tag.width
        busy = list(taken)
        spots = [
            (2.4, -1.6),
            (2.4, 4.6),
            (left, -1.6),
            (left, 4.6),
            (-tag.width / 2, -3.2),
            (-tag.width / 2, 6.2),
        ]
        tried = [replace(tag, at=(x + dx, y + dy)) for dx, dy in spots]
        within = [one for one in tried if _inside(one.box, inside)]
        free = [one for one in within if not any(overlap(one.box, other) for other in busy)]
        below = Text((x, inside[3] + 4.9), str(n), SIZE, True, "middle", tone="white")
        tag = (free or within or [below])[0]
    return [
        Line(((x - 2.6, y), (x + 2.6, y)), "thin"),
        Line(((x, y - 2.6), (x, y + 2.6)), "thin"),
        Arc((x, y), 1.5, "thick"),
        tag,
    ]


def _inside(box: Box, room: Box) -> bool:
    return (
        room[0] < box[0] - 0.3
        and room[1] < box[1] - 0.3
        and box[2] + 0.3 < room[2]
        and box[3] + 0.3 < room[3]
    )
