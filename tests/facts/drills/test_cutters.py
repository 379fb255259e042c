"""End mills and countersinks."""

from __future__ import annotations

import pytest

from tommybar.facts.drills import countersink_depth, countersink_diameters, end_mill_diameters
from tommybar.refusals import Refusal


def test_countersink_for_a_socket_head() -> None:
    """At 90 degrees the depth is half the difference of the diameters."""
    assert countersink_depth(11.2, 5.5) == pytest.approx(2.85)
    assert countersink_depth(10.0, 4.0, 60) == pytest.approx(5.196, abs=0.001)


def test_no_countersink_on_a_larger_hole() -> None:
    """The mouth is never the smaller."""
    with pytest.raises(Refusal, match="mouth must not be the smaller"):
        countersink_depth(4.0, 5.0)


def test_angle_has_bounds() -> None:
    """A flat countersink is none."""
    with pytest.raises(Refusal, match="above 0 and below 180"):
        countersink_depth(5.0, 4.0, 180)


def test_stock_runs_upwards() -> None:
    """Every list rises, in metric and in inch."""
    for sizes in (
        end_mill_diameters(),
        end_mill_diameters("inch"),
        countersink_diameters(90),
        countersink_diameters(60),
        countersink_diameters(82),
    ):
        assert list(sizes) == sorted(set(sizes))
    assert 12.7 in end_mill_diameters("inch")


def test_what_is_not_sold_is_refused() -> None:
    """Systems and angles outside the lists."""
    with pytest.raises(Refusal, match='no "cubit" end mills'):
        end_mill_diameters("cubit")
    with pytest.raises(Refusal, match="no countersinks of 75 deg"):
        countersink_diameters(75)
