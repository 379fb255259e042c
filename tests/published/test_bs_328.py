"""BS 328 metric drills: the article's four rules, in whole hundredths of a millimetre."""

from __future__ import annotations

from tommybar.facts.drills import drills_of_series


def test_the_four_rules() -> None:
    """N/10 + 0, 0.02, 0.05, 0.08 for N 2 to 9; + 0, 0.05 for 10 to 29; N/10 for 30 to 139; quarters from 14."""
    small = {10 * n + part for n in range(2, 10) for part in (0, 2, 5, 8)}
    middle = {10 * n + part for n in range(10, 30) for part in (0, 5)}
    large = {10 * n for n in range(30, 140)}
    largest = {100 * m + part for m in range(14, 26) for part in (0, 25, 50, 75)}
    expected = {size for size in small | middle | large | largest if size <= 2500}

    assert {round(100 * drill.diameter) for drill in drills_of_series("metric")} == expected
