"""Parts that are bought: their figures come from the tables and are never scaled."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class BoughtShape:
    """A bought part by its designation, with the envelope that the tables give [mm].

    ``kind`` is the trade's word ("socket head screw", "nut", "washer",
    "ball", "circlip", "dowel pin", "ball bearing", "o-ring"); ``sizes`` are
    named figures of the table (head_dia, head_height, length, thickness,
    across_flats, inside, outside, wide ...).
    """

    designation: str
    kind: str
    sizes: tuple[tuple[str, float], ...]
    source: str

    def size(self, name: str) -> float:
        """One figure of the table by its name [mm]; KeyError when it has none of that name."""
        return dict(self.sizes)[name]
