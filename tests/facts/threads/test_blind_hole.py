"""Depths of blind tapped holes."""

from __future__ import annotations

import pytest

from tommybar.facts.threads import tap_depths, thread
from tommybar.refusals import Refusal


def test_blind_hole_depths_of_the_retaining_screw() -> None:
    """M3, 6 deep, 2.5 drill: lead 1.5, full diameter to 7.5, point 0.75 more."""
    depths = tap_depths(thread("M3"), 6.0, 2.5)

    assert depths.lead == pytest.approx(1.5)
    assert depths.full_diameter_depth == pytest.approx(7.5)
    assert depths.tip == pytest.approx(0.300 * 2.5, abs=0.002)
    assert depths.tip_depth == pytest.approx(8.25, abs=0.005)


def test_blind_hole_needs_a_depth() -> None:
    """No thread depth is refused, and two diameters are suggested."""
    with pytest.raises(Refusal, match=r"depth of full thread is 0 mm.*6 mm is two diameters of M3"):
        tap_depths(thread("M3"), 0.0)


def test_a_bottoming_tap_needs_less_depth() -> None:
    """1.5 pitches instead of 3 save 1.5 pitches of hole; a lead below 0 is refused."""
    plug, bottoming = tap_depths(thread("M6"), 10.0), tap_depths(thread("M6"), 10.0, lead_pitches=1.5)

    assert plug.tip_depth - bottoming.tip_depth == pytest.approx(1.5)
    with pytest.raises(Refusal, match="lead of the tap is -1 pitches"):
        tap_depths(thread("M6"), 10.0, lead_pitches=-1)
