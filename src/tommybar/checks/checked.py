"""What one check gives back."""

from __future__ import annotations

from dataclasses import dataclass

from tommybar.checks.figures import Figure
from tommybar.findings import Finding

PRACTICE = "common practice, no source"


@dataclass(frozen=True)
class Checked:
    """Findings, and figures worth showing even when nothing is wrong."""

    findings: tuple[Finding, ...] = ()
    figures: tuple[Figure, ...] = ()


def at_least(
    number: int, words: str, figure: float, bound: float, unit: str = "mm", *, remedy: str, **place: str
) -> Finding | None:
    """A caution when a figure lies below its bound, None when it does not."""
    if figure >= bound - 1e-6:
        return None
    source = place.pop("source", PRACTICE)
    return Finding(
        number,
        "caution",
        f"{words}: {figure:.2f} {unit}, {bound:.2f} {unit} wanted.",
        figure=f"{figure:.2f} {unit}",
        bound=f"{bound:.2f} {unit}",
        remedy=remedy,
        source=source,
        **place,  # type: ignore[arg-type]  # part and feature are words
    )
