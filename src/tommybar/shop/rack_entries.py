"""Pieces on the rack, and sections that can be bought, as a shop file writes them."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field, model_validator

from tommybar.design.figures import PositiveLength as Length
from tommybar.design.validation import Entry
from tommybar.refusals import Refusal
from tommybar.shop.amounts import Lengths, Pairs
from tommybar.shop.model import Bar

SECTIONS = ("round", "hexagon", "square", "flat", "plate", "sheet", "tube")


class StockEntry(Entry):
    """A material in one kind of section; the section's name carries the size or sizes.

    ``flat: 30 x 10`` is width by thickness either way round; ``tube: 20 x 16``
    outside by bore.
    """

    material: str
    round: Lengths | None = None
    hexagon: Lengths | None = None
    square: Lengths | None = None
    flat: Pairs | None = None
    plate: Pairs | None = None
    sheet: Pairs | None = None
    tube: Pairs | None = None
    long: Length
    name: str = ""
    skin: Literal["drawn", "ground", "sawn", "cast", "rolled"] = "drawn"
    certain: bool = True
    count: Annotated[int, Field(ge=1)] = 1

    @model_validator(mode="after")
    def _one_section(self) -> StockEntry:
        given = [name for name in SECTIONS if getattr(self, name) is not None]
        if len(given) != 1:
            raise Refusal(
                f"The piece has {len(given)} sections ({', '.join(given) or 'none'}); it must have one of"
                f" {', '.join(SECTIONS)}.",
                "Write for instance round: 20.",
            )
        return self


def bars_from(entry: StockEntry, unit: Literal["mm", "in"]) -> tuple[Bar, ...]:
    """One Bar for each size that the entry names."""
    section = next(name for name in SECTIONS if getattr(entry, name) is not None)
    bars = []
    for given in getattr(entry, section):
        if section == "tube":
            size, width = max(given), min(given)
        elif isinstance(given, tuple):
            size, width = min(given), max(given)
        else:
            size, width = given, 0.0
        bars.append(
            Bar(
                name=entry.name or f"{entry.material} {section_words(section, size, width, unit)}",
                material=entry.material,
                section=section,  # type: ignore[arg-type]  # a name out of SECTIONS, which are the sections
                size=size,
                length=entry.long,
                width=width,
                skin=entry.skin,
                certain=entry.certain,
                count=entry.count,
            )
        )
    return tuple(bars)


def section_words(section: str, size: float, width: float, unit: Literal["mm", "in"]) -> str:
    """A section in shop words: "round 20", "flat 30 x 10", "round 0.75 in".

    Examples
    --------
    >>> section_words("flat", 10.0, 30.0, "mm")
    'flat 30 x 10'
    >>> section_words("round", 19.05, 0.0, "in")
    'round 0.75 in'
    """
    each = 25.4 if unit == "in" else 1.0
    figures = [size] if not width else sorted((size, width), reverse=True)
    words = " x ".join(f"{round(figure / each, 4):g}" for figure in figures)
    return f"{section} {words}" + (" in" if unit == "in" else "")
