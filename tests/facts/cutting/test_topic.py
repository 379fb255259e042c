"""The look-up "speed"."""

from __future__ import annotations

import pytest

from tommybar.facts.cutting.topic import answer
from tommybar.refusals import Refusal


def test_spindle_speed_at_a_diameter() -> None:
    """15 m/min on 3 mm is 1591.5 rev/min and 30 m/min on 10 mm 954.9, as handbooks work it."""
    found = answer(("silver steel", "HSS", "turning", "3"), {}).data
    assert found["spindle_low_rpm"] == pytest.approx(1591.5, abs=0.05)
    found = answer(("mild steel", "HSS", "drilling"), {"diameter": "10"}).data
    assert found["spindle_high_rpm"] == pytest.approx(954.9, abs=0.05)


def test_inches_are_taken() -> None:
    """Half an inch is 12.7 mm."""
    assert answer(("brass", "HSS", "turning", "1/2 in"), {}).data["diameter_mm"] == 12.7


def test_feed_and_cautions_are_with_it() -> None:
    """Turning brings both feeds; leaded brass brings its cautions."""
    found = answer(("brass",), {})
    assert found.data["feed_finishing_mm_rev"] == [0.04, 0.1]
    assert any("lead" in words for words in found.cautions)
    assert answer(("brass", "HSS", "drilling", "6"), {}).data["feed_mm_rev"] == [0.1, 0.2]
    assert answer(("brass", "HSS", "milling"), {}).data["feed_roughing_mm_tooth"] == [0.03, 0.1]


@pytest.mark.parametrize(
    ("keys", "words"),
    [
        ((), "needs 1 to 4"),
        (("brass", "HSS", "turning", "-3"), "must be above 0"),
        (("brass", "HSS", "turning", "x"), "a number"),
    ],
)
def test_what_cannot_be_answered_is_refused(keys: tuple[str, ...], words: str) -> None:
    """No material, no size."""
    with pytest.raises(Refusal, match=words):
        answer(keys, {})
