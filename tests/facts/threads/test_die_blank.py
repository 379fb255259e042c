"""Blanks for dies."""

from __future__ import annotations

import pytest

from tommybar.facts.threads import die_blank_diameter, thread, threads_of_series


def test_die_blank_of_the_handle_screw() -> None:
    """M4 is turned to 3.93 before the die."""
    assert die_blank_diameter(thread("M4")) == pytest.approx(3.93)


def test_blank_is_a_little_below_the_major_diameter() -> None:
    """Between the pitch diameter and the major diameter, for every coarse thread."""
    for one in threads_of_series("ISO metric coarse"):
        assert one.pitch_diameter < die_blank_diameter(one) < one.major
