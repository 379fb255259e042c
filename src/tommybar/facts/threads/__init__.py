"""Screw threads: series, diameters, limits, tapping."""

from tommybar.facts.threads.ba_limits import ba_shortening, ba_tolerance
from tommybar.facts.threads.blind_hole import TapDepths, tap_depths
from tommybar.facts.threads.designation import thread
from tommybar.facts.threads.die_blank import die_blank_diameter
from tommybar.facts.threads.iso_965 import fundamental_deviation, metric_tolerance
from tommybar.facts.threads.limit_pair import ExternalLimits, InternalLimits, ThreadLimits
from tommybar.facts.threads.limits import has_limits, thread_limits, usual_class
from tommybar.facts.threads.profile import crest_radius, crest_shortening, triangle_height
from tommybar.facts.threads.series import SERIES, threads_of_series
from tommybar.facts.threads.tapping import (
    drill_for_percent,
    engagement_base,
    engagement_percent,
    pitch_rule_drill,
    tapping_drill_from,
)
from tommybar.facts.threads.thread import Thread

__all__ = [
    "SERIES",
    "ExternalLimits",
    "InternalLimits",
    "TapDepths",
    "Thread",
    "ThreadLimits",
    "ba_shortening",
    "ba_tolerance",
    "crest_radius",
    "crest_shortening",
    "die_blank_diameter",
    "drill_for_percent",
    "engagement_base",
    "engagement_percent",
    "fundamental_deviation",
    "has_limits",
    "metric_tolerance",
    "pitch_rule_drill",
    "tap_depths",
    "tapping_drill_from",
    "thread",
    "thread_limits",
    "threads_of_series",
    "triangle_height",
    "usual_class",
]
