"""Laws of dividing: exact means exact, errors are bounded by half a hole, scales close."""

from __future__ import annotations

from fractions import Fraction

from hypothesis import given, settings
from hypothesis import strategies as st

from tommybar.facts.dividing import crank_places, index_divisions, plain_indexings, plate_set, table_settings

divisions = st.integers(2, 150)
ratios = st.sampled_from([40, 60, 90])
PLATES = plate_set("three plates")


@settings(deadline=None, max_examples=60)
@given(divisions, ratios)
def test_all_exact_ways_are_the_same_turn(number: int, ratio: int) -> None:
    """Every circle offered gives the same fraction of a turn, N of which are the ratio."""
    for way in plain_indexings(number, ratio, PLATES):
        part = Fraction(way.holes, way.plate) if way.plate else Fraction(0)
        assert (way.turns + part) * number == ratio


@settings(deadline=None, max_examples=60)
@given(divisions, ratios)
def test_a_step_is_never_more_than_half_a_hole_off(number: int, ratio: int) -> None:
    """The finest circle has 49 holes: nothing is further off than half of one."""
    assert abs(index_divisions(number, ratio, PLATES).error) <= 360 / ratio / 49 / 2 + 1e-12


@settings(deadline=None, max_examples=60)
@given(divisions, ratios)
def test_more_plates_never_make_it_worse(number: int, ratio: int) -> None:
    """Adding a plate can only lower the error."""
    few, many = (abs(index_divisions(number, ratio, plates).error) for plates in (PLATES[:1], PLATES))
    assert many <= few


@settings(deadline=None, max_examples=60)
@given(divisions, ratios)
def test_places_lie_within_half_a_hole_and_rise(number: int, ratio: int) -> None:
    """Set one by one, the divisions come in order and no error gathers."""
    places = crank_places(number, ratio, PLATES)
    turned = [place.turns + place.holes / place.plate for place in places]
    assert turned == sorted(turned)
    assert all(abs(place.error) <= 360 / ratio / place.plate / 2 + 1e-12 for place in places)


@settings(deadline=None, max_examples=60)
@given(divisions, ratios, st.sampled_from([1.0, 10.0, 60.0]))
def test_a_vernier_reads_within_half_its_step(number: int, ratio: int, resolution: float) -> None:
    """Rounding to the vernier is off by half a step at most, at every division alike."""
    for setting in table_settings(number, ratio, resolution):
        assert abs(setting.error) * 3600 <= resolution / 2 + 1e-6
