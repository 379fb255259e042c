"""Figures as a person types them."""

from __future__ import annotations

import pytest

from tommybar.facts.keyed import number, whole
from tommybar.refusals import Refusal


@pytest.mark.parametrize(
    ("text", "figure"),
    [
        ("12.5", 12.5),
        ("12,5", 12.5),
        ("3/8 in", 9.525),
        ("1 1/2 in", 38.1),
        ('1"', 25.4),
        ("8 mm", 8.0),
        ("35 deg", 35.0),
    ],
)
def test_lengths_come_back_in_mm(text: str, figure: float) -> None:
    """Decimals, fractions and inches, exactly."""
    assert number(text, "size") == figure


@pytest.mark.parametrize("text", ["", "wide", "1/0", "nan", "inf", "1 2", "1e999"])
def test_what_is_no_number_is_refused(text: str) -> None:
    """Words, infinities and loose figures are refused by name."""
    with pytest.raises(Refusal, match=r"The size is .* must be a number"):
        number(text, "size")


@pytest.mark.parametrize("text", ["7.5", "-7", "seven", ""])
def test_what_is_no_whole_number_is_refused(text: str) -> None:
    """Counts have no fractions and no sign."""
    with pytest.raises(Refusal, match="must be a whole number"):
        whole(text, "count")
