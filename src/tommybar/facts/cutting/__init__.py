"""Cutting speeds and feeds by material, tool and operation."""

from tommybar.facts.cutting.feeds import FeedRange, drilling_feed, feed_range
from tommybar.facts.cutting.speeds import SpeedRange, cutting_speed, operation_names

__all__ = [
    "FeedRange",
    "SpeedRange",
    "cutting_speed",
    "drilling_feed",
    "feed_range",
    "operation_names",
]
