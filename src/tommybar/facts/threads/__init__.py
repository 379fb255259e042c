"""Screw threads: series, diameters, limits, tapping."""

from tommybar.facts.threads.designation import thread
from tommybar.facts.threads.profile import triangle_height
from tommybar.facts.threads.series import SERIES, threads_of_series
from tommybar.facts.threads.tapping import (
    TapDepths,
    die_blank_diameter,
    drill_for_percent,
    engagement_base,
    engagement_percent,
    pitch_rule_drill,
    tap_depths,
    tapping_drill_from,
)
from tommybar.facts.threads.thread import Thread

__all__ = [
    "SERIES",
    "TapDepths",
    "Thread",
    "die_blank_diameter",
    "drill_for_percent",
    "engagement_base",
    "engagement_percent",
    "pitch_rule_drill",
    "tap_depths",
    "tapping_drill_from",
    "thread",
    "threads_of_series",
    "triangle_height",
]
