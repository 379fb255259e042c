"""Look-up "drill"."""

from __future__ import annotations

import pytest

from tommybar.facts.drills.topic import answer
from tommybar.refusals import Refusal


def test_number_seven() -> None:
    """Diameter in both units, the point, and what lies beside it in all series."""
    data = answer(("#7",), {}).data

    assert data["diameter_mm"] == pytest.approx(5.1054)
    assert data["diameter_in"] == pytest.approx(0.201)
    assert data["point_mm"] == pytest.approx(0.3 * 5.1054, abs=0.003)
    assert (data["next_below"], data["next_above"]) == ("5.1", "13/64")
    assert "B94.11M" in data["source"]


def test_ends_of_the_series() -> None:
    """Nothing lies below 0.2 mm, nothing above 1 in."""
    assert "next_below" not in answer(("0.2",), {}).data
    assert "next_above" not in answer(("1/1",), {}).data


def test_point_angle_option() -> None:
    """135 degrees shortens the point; words are refused."""
    assert answer(("10",), {"point": "135"}).data["point_mm"] == pytest.approx(2.071, abs=0.001)
    with pytest.raises(Refusal, match='point angle is "blunt"'):
        answer(("10",), {"point": "blunt"})


def test_centre_drill() -> None:
    """The same look-up knows centre drills."""
    assert answer(("centre", "A 2.5"), {}).data["mouth_mm"] == 5.3
    assert "mouth_mm" not in answer(("centre drill BS3",), {}).data


def test_no_key_is_refused() -> None:
    """A look-up needs a name."""
    with pytest.raises(Refusal, match="needs one"):
        answer((), {})
