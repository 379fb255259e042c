"""Rounding for the reader never leaves a tolerance."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tommybar.pack.units import Reader
from tommybar.refusals import Refusal
from tommybar.shapes.features import Dim

READERS = st.sampled_from([Reader("mm"), Reader("in")])


@given(READERS, st.floats(0.5, 300.0), st.floats(0.002, 0.5), st.integers(0, 3))
def test_written_limits_lie_inside_the_true_ones(
    reader: Reader, low: float, wide: float, decimals: int
) -> None:
    """The smallest is written no smaller, the largest no larger, and the smaller one comes first."""
    words = [float(figure) for figure in reader.limits(low, low + wide, decimals)]

    assert reader.of(low) - 2e-6 <= words[0] <= words[1] <= reader.of(low + wide) + 2e-6


@given(READERS, st.floats(0.5, 300.0), st.floats(0.004, 0.5), st.integers(0, 3))
def test_a_written_target_lies_inside_its_limits(
    reader: Reader, low: float, wide: float, decimals: int
) -> None:
    """Whatever is to be aimed at, as written, would be accepted if it were made exactly."""
    dim = Dim(low, "part.size", "", low, low + wide)

    assert reader.of(low) <= float(reader.within(dim, decimals)) <= reader.of(low + wide)


def test_limits_the_wrong_way_round_are_refused() -> None:
    """The smaller limit must come first."""
    with pytest.raises(Refusal, match="the smaller one must come first"):
        Reader().limits(8.015, 8.0)


@pytest.mark.parametrize(("mm", "written"), [(25.4, "1"), (12.7, "0.5"), (6.35, "0.25")])
def test_an_inch_is_25_4_millimetres(mm: float, written: str) -> None:
    """The definition of 1959, on three round figures."""
    assert Reader("in").length(mm) == written
