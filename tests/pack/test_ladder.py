"""The figure that rules a rung, for readers of millimetres and of inches."""

from __future__ import annotations

import pytest

from tommybar.making.cards import Step
from tommybar.pack.cardsheets.ladder import big_words
from tommybar.pack.units import Reader


def step(big: str, kind: str, tool_size: float = 0.0) -> Step:
    """A step with only its figure filled in."""
    return Step(1, "Turn it", "rim", "", "knife", 400, 20, 0.1, big, kind, (), tool_size=tool_size)


@pytest.mark.parametrize(
    ("big", "kind", "tool_size", "said"),
    [
        ("90.50", "DIA mm", 0.0, ("3.563", "DIA in")),
        ("12.024", "DIA mm", 0.0, ("0.4734", "DIA in")),
        ("25.40", "mm long", 0.0, ("1.000", "in long")),
        ("0.5", "x 45 deg", 0.0, ("0.020", "in x 45 deg")),
        ("6.5", "DIA mm", 6.5, ("6.5", "DIA mm")),
        ("12 H7", "DIA mm", 12.0, ("12 H7", "DIA mm")),
        ("5", "places", 0.0, ("5", "places")),
    ],
)
def test_big_figures_in_inches(big: str, kind: str, tool_size: float, said: tuple[str, str]) -> None:
    """Lengths are turned (1 in = 25.4 mm), sizes marked on tools and counts are not."""
    assert big_words(step(big, kind, tool_size), Reader("in")) == said
    assert big_words(step(big, kind, tool_size), Reader("mm")) == (big, kind)
