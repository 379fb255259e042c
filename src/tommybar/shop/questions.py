"""Every question that others ask of a shop, in one place to import from."""

from __future__ import annotations

from tommybar.shop.drawer import (
    bars_of,
    drill_at_or_below,
    instrument_for,
    lathe_tool,
    obtainable_of,
    reamer_for,
    speed_at_or_below,
    tool_letters,
)
from tommybar.shop.examples import example_shops
from tommybar.shop.grips import grips_for, nearest_grip_words

__all__ = [
    "bars_of",
    "drill_at_or_below",
    "example_shops",
    "grips_for",
    "instrument_for",
    "lathe_tool",
    "nearest_grip_words",
    "obtainable_of",
    "reamer_for",
    "speed_at_or_below",
    "tool_letters",
]
