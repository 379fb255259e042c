"""Float loops: a loop by hand, and the ways they are refused."""

from __future__ import annotations

import numpy
import pytest

from tommybar.refusals import Refusal
from tommybar.sizes.loop import Link, last_made_limits, root_sum_square_gap, sampled_gaps, worst_case_gap

FRAME = Link("frame", +1, 30.0, 30.06)
WHEEL = Link("wheel", -1, 27.9, 27.96)
WASHERS = Link("washer", -2, 0.98, 1.0)


def test_a_loop_by_hand() -> None:
    """30.00..30.06 less 27.90..27.96 less two of 0.98..1.00: 0.04 to 0.20."""
    assert worst_case_gap([FRAME, WHEEL, WASHERS]) == pytest.approx((0.04, 0.20))
    low, high = root_sum_square_gap([FRAME, WHEEL, WASHERS])
    assert (low + high) / 2 == pytest.approx(0.12)
    assert (high - low) / 2 == pytest.approx((0.03**2 + 0.03**2 + 0.02**2) ** 0.5)


def test_drawn_parts_scatter_as_even_distributions_do() -> None:
    """Standard deviation of the drawn gaps is the root of the sum of (t w)^2 / 12."""
    gaps = sampled_gaps([FRAME, WHEEL, WASHERS], count=200_000)
    expected = ((0.06**2 + 0.06**2 + (2 * 0.02) ** 2) / 12) ** 0.5
    assert float(numpy.std(gaps)) == pytest.approx(expected, rel=0.01)
    assert gaps[0] >= 0.04
    assert gaps[-1] <= 0.20
    assert (gaps == sampled_gaps([FRAME, WHEEL, WASHERS], count=200_000)).all()


def test_the_washers_made_last_take_up_what_was_measured() -> None:
    """Frame 30.02, wheel 27.95, float 0.05 to 0.2: washers (2.07 - 0.2)/2 to (2.07 - 0.05)/2."""
    made = [Link("frame", +1, 30.02, 30.02), Link("wheel", -1, 27.95, 27.95)]
    assert last_made_limits(made, -2, (0.05, 0.2)) == pytest.approx((0.935, 1.01))


@pytest.mark.parametrize(
    ("others", "times", "gap", "words"),
    [
        ([FRAME, WHEEL], -2, (0.05, 0.1), r"vary by 0\.120 mm together"),
        ([FRAME, WHEEL], 0, (0.05, 0.2), "counts 0 times"),
        ([Link("short", +1, 1.0, 1.0), WHEEL], -1, (0.05, 0.2), "already overfill the loop"),
    ],
)
def test_loops_that_cannot_be_closed_are_refused(
    others: list[Link], times: float, gap: tuple[float, float], words: str
) -> None:
    """The refusal names what the others use up."""
    with pytest.raises(Refusal, match=words):
        last_made_limits(others, times, gap)


def test_counts_that_make_no_sense_are_refused() -> None:
    """No draws, no deviations."""
    with pytest.raises(Refusal, match="count of draws is 0"):
        sampled_gaps([FRAME], count=0)
    with pytest.raises(Refusal, match="number of deviations is 0"):
        root_sum_square_gap([FRAME], deviations=0)
