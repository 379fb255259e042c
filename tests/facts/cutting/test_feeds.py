"""Feeds by operation, and drilling feeds by diameter."""

from __future__ import annotations

import pytest

from tommybar.facts.cutting import drilling_feed, feed_range
from tommybar.refusals import Refusal


@pytest.mark.parametrize(
    ("name", "diameter", "printed_feed"),
    [
        ("mild steel", 6, "0.20"),
        ("mild steel", 12, "0.25"),
        ("mild steel", 18, "0.41"),
        ("mild steel", 25, "0.51"),
        ("brass", 25, "0.51"),
        ("grey cast iron", 6, "0.13"),
        ("304", 12, "0.18"),
        ("304", 25, "0.31"),
        ("6082", 6, "0.30"),
        ("6082", 25, "0.81"),
        ("acetal", 12, "0.15"),
    ],
)
def test_drilling_feeds_of_the_university_tutorial(name: str, diameter: float, printed_feed: str) -> None:
    """Feed [mm/rev] of a high-speed drill as printed in the tutorial's table."""
    assert drilling_feed(name, diameter).high == pytest.approx(float(printed_feed), abs=0.005)


def test_drilling_feed_rises_with_the_drill() -> None:
    """A thicker drill never gets less feed, and the lower figure is half of the higher."""
    for name in ("mild steel", "brass", "304", "6082", "acetal"):
        feeds = [drilling_feed(name, 0.5 * step) for step in range(2, 51)]
        assert [feed.high for feed in feeds] == sorted(feed.high for feed in feeds)
        assert all(feed.low == feed.high / 2 for feed in feeds)


@pytest.mark.parametrize("diameter", [0.9, 25.1, float("nan")])
def test_drills_outside_the_table_are_refused(diameter: float) -> None:
    """Below 1 and above 25 mm there is no figure."""
    with pytest.raises(Refusal, match="the table runs from 1 to 25 mm"):
        drilling_feed("brass", diameter)


def test_finishing_is_finer_than_roughing() -> None:
    """For turning, facing, boring and milling with either tool."""
    for operation in ("turning", "facing", "boring", "milling"):
        for tool in ("HSS", "carbide"):
            rough, fine = (feed_range(operation, tool, stage) for stage in ("roughing", "finishing"))
            assert fine.low < rough.low
            assert fine.high < rough.high


@pytest.mark.parametrize(
    ("operation", "tool", "stage", "words"),
    [
        ("reaming", "HSS", "roughing", "ask by the diameter"),
        ("turning", "HSS", "rough", r'The stage is "rough".*Did you mean "roughing"'),
        ("knurling", "carbide", "roughing", "knurling with carbide"),
    ],
)
def test_a_feed_the_table_does_not_hold_is_refused(operation: str, tool: str, stage: str, words: str) -> None:
    """No silent stand-in for a missing line."""
    with pytest.raises(Refusal, match=words):
        feed_range(operation, tool, stage)
