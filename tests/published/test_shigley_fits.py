"""Worked examples of Shigley's Mechanical Engineering Design (title from memory; figures seen in a reprint).

Only figures printed in the book stand here as expected values; none was
taken from our own output.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest

from tommybar.facts.fits.iso286 import limits_of_size


@pytest.mark.parametrize(
    ("zone", "smallest", "largest"),
    [("H11", "34.000", "34.160"), ("c11", "33.720", "33.880")],
    ids=["hole", "shaft"],
)
def test_example_7_7_loose_running_fit_on_34_mm(
    printed: Callable[[str], Any], zone: str, smallest: str, largest: str
) -> None:
    """Example 7-7: 34H11/c11, limits of the hole and of the shaft."""
    limits = limits_of_size(34.0, zone)

    assert limits.smallest == printed(smallest)
    assert limits.largest == printed(largest)
