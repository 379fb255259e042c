"""Marks that every sketch of a mill card shares: a numbered place, and the ring of a box."""

from __future__ import annotations

from dataclasses import replace

from tommybar.pack.boxes import Box
from tommybar.pack.sheet import Arc, Line, Mark, Text

SIZE = 4.25  # type size of a sketch [mm]


def spot_marks(x: float, y: float, n: int, inside: Box | None = None) -> list[Mark]:
    """A place with its number; on a narrow face the number stands on the jaw below, in white."""
    tag = Text((x + 2.4, y - 1.6), str(n), SIZE, True)
    if inside is not None:
        for dx, dy in ((2.4, -1.6), (2.4, 4.6), (-2.4 - tag.width, -1.6), (-2.4 - tag.width, 4.6)):
            tag = replace(tag, at=(x + dx, y + dy))
            if _inside(tag.box, inside):
                break
        else:
            tag = Text((x, inside[3] + 4.9), str(n), SIZE, True, "middle", tone="white")
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


def box_ring(x: float, y: float, w: float, h: float) -> tuple[tuple[float, float], ...]:
    """The corners of a box."""
    return ((x, y), (x + w, y), (x + w, y + h), (x, y + h))
