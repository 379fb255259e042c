"""Rounding for the reader never leaves a tolerance."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tommybar.pack.units import INCH, Reader
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


@given(READERS, st.floats(0.5, 2000.0))
def test_a_size_without_limits_is_rounded_by_a_twentieth_of_its_zone_at_most(
    reader: Reader, size: float
) -> None:
    """Zones of ISO 2768-1, class m, from Table 1 by hand; what is written never leaves one in twenty of them."""
    steps = ((3.0, 0.1), (6.0, 0.1), (30.0, 0.2), (120.0, 0.3), (400.0, 0.5), (1000.0, 0.8), (2000.0, 1.2))
    zone = 2 * next(either for most, either in steps if size <= most)
    written = float(reader.free(size)) * (INCH if reader.unit == "in" else 1.0)

    assert abs(written - size) <= zone / 20 + 1e-9


@pytest.mark.parametrize(
    ("inches", "written"),
    [
        ("7/8", "22.23"),
        ("4 5/16", "109.54"),
        ("1/32", "0.8"),
        ("1/64", "0.4"),
        ("1/2", "12.7"),
        ("0.06", "1.52"),
    ],
)
def test_an_inch_size_in_millimetres_has_no_more_digits_than_its_tolerance_is_worth(
    inches: str, written: str
) -> None:
    """7/8 in is 22.225 mm held to 0.2: a hundredth says it; 22.2 would take an eighth of the zone."""
    size = float(sum(Fraction(part) for part in inches.split())) * 25.4

    assert Reader().free(size) == written


@pytest.mark.parametrize("size", [73.92, 109.98, 12.05, 0.35])
def test_two_decimals_that_a_designer_wrote_stand(size: float) -> None:
    """Even where the tolerance would allow fewer."""
    assert float(Reader().free(size)) == size
