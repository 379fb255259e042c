"""The drill's point."""

from __future__ import annotations

import pytest

from tommybar.facts.drills import point_length
from tommybar.refusals import Refusal


@pytest.mark.parametrize(
    ("angle", "factor"), [(118, 0.300), (135, 0.207), (90, 0.500)], ids=["118", "135", "90"]
)
def test_factors_of_the_trade(angle: float, factor: float) -> None:
    """0.300 d at 118, 0.207 d at 135, half the diameter at 90 degrees."""
    assert point_length(10.0, angle) / 10 == pytest.approx(factor, abs=0.0005)


@pytest.mark.parametrize(
    ("diameter", "angle", "words"),
    [
        (0, 118, "diameter is 0 mm"),
        (-2, 118, "diameter is -2"),
        (5, 180, "angle is 180"),
        (5, 0, "angle is 0"),
    ],
)
def test_outside_the_range(diameter: float, angle: float, words: str) -> None:
    """A point needs a diameter and an angle below a straight one."""
    with pytest.raises(Refusal, match=words):
        point_length(diameter, angle)
