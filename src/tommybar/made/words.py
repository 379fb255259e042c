"""Sizes and limits in words, in the unit of the design."""

from __future__ import annotations

from typing import Literal

Unit = Literal["mm", "in"]


def size_words(value: float, unit: Unit) -> str:
    """A size to the last place that is measured in a home shop.

    >>> size_words(10.021, "mm"), size_words(25.4, "in")
    ('10.021 mm', '1.0000 in')
    """
    return f"{value:.3f} mm" if unit == "mm" else f"{value / 25.4:.4f} in"


def limits_words(smallest: float, largest: float, unit: Unit) -> str:
    """Two limits.

    >>> limits_words(9.991, 10.021, "mm")
    '9.991 to 10.021 mm'
    """
    return f"{size_words(smallest, unit).split()[0]} to {size_words(largest, unit)}"
