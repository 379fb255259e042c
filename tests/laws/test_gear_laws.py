"""Laws of change gears: the error is symmetric, idlers change nothing, swapping pairs changes nothing."""

from __future__ import annotations

from fractions import Fraction

from hypothesis import given, settings
from hypothesis import strategies as st

from tommybar.facts.gears import cut_pitch, ratio_error, train_for

teeth = st.integers(15, 127)
pairs = st.tuples(teeth, teeth, teeth, teeth)
pitches = st.fractions(min_value=Fraction(1, 5), max_value=Fraction(8), max_denominator=1000)


@settings(deadline=None, max_examples=60)
@given(pairs, pitches)
def test_turning_the_train_over_turns_the_error_over(
    gears: tuple[int, int, int, int], pitch: Fraction
) -> None:
    """Drivers for driven, wanted for had: the two errors multiply to nought change."""
    one, two, three, four = gears
    had = Fraction(one * three, two * four)
    forth = ratio_error(had, pitch) / 1e6
    back = ratio_error(1 / had, 1 / pitch) / 1e6
    assert abs((1 + forth) * (1 + back) - 1) < 1e-9


@settings(deadline=None, max_examples=60)
@given(pairs, pitches)
def test_the_order_of_drivers_and_of_driven_does_not_matter(
    gears: tuple[int, int, int, int], screw: Fraction
) -> None:
    """Only the products count."""
    one, two, three, four = gears
    assert cut_pitch(screw, [one, three], [two, four]) == cut_pitch(screw, [three, one], [two, four])
    assert cut_pitch(screw, [one, three], [two, four]) == cut_pitch(screw, [one, three], [four, two])


@settings(deadline=None, max_examples=60)
@given(pairs, pitches, teeth)
def test_an_idler_and_an_equal_pair_change_nothing(
    gears: tuple[int, int, int, int], screw: Fraction, idler: int
) -> None:
    """A gear that drives as many teeth as it is driven by drops out."""
    one, two, _, _ = gears
    plain = train_for([one], [two], screw, screw)
    assert train_for([one], [two], screw, screw, idler).pitch == plain.pitch
    assert train_for([one, idler], [two, idler], screw, screw).error_ppm == plain.error_ppm


@settings(deadline=None, max_examples=60)
@given(pairs, pitches, pitches)
def test_the_error_says_how_far_the_pitch_is_off(
    gears: tuple[int, int, int, int], screw: Fraction, wanted: Fraction
) -> None:
    """Wanted pitch times one plus the error is the pitch cut; over 100 mm it is a tenth in um."""
    one, two, three, four = gears
    train = train_for([one, three], [two, four], screw, wanted)
    assert abs(float(wanted) * (1 + train.error_ppm / 1e6) - train.pitch) < 1e-9 * train.pitch + 1e-12
    assert abs(train.error_per_100 * 10 - train.error_ppm) <= 1e-9 * abs(train.error_ppm)
