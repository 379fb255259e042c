"""Widths of circlips and diameters of balls; the figures are from memory of DIN 471, DIN 472, ISO 3290."""

import pytest

from tommybar.facts.fasteners.ring_widths import ball_diameters, circlip_width, source
from tommybar.refusals import Refusal


def test_rings_grow_with_their_shafts():
    """A law of the series: a larger ring is never narrower."""
    for kind, sizes in (("shaft", (3, 6, 10, 15, 20, 25)), ("bore", (8, 12, 16, 20, 25, 30))):
        widths = [circlip_width(size, kind) for size in sizes]
        assert widths == sorted(widths)


def test_a_ring_that_is_not_in_the_table_is_refused_with_the_nearest():
    """10.4 mm is no size."""
    with pytest.raises(Refusal, match=r"bore of 10\.4 mm is not in the table\. The nearest is 10 mm"):
        circlip_width(10.4, "bore")


def test_balls_stand_in_order_and_know_the_inch():
    """1/4 in is 6.35 mm."""
    assert list(ball_diameters()) == sorted(ball_diameters())
    assert 6.35 in ball_diameters()
    assert source().checked.startswith("from memory")
