"""Dividing head: worked examples of books, and every number checked by multiplying back."""

from __future__ import annotations

from fractions import Fraction

import pytest

from tommybar.facts.dividing import (
    compound_indexings,
    crank_places,
    degrees_a_turn,
    index_angle,
    index_divisions,
    plain_indexings,
    plate_set,
    plates_of,
)
from tommybar.refusals import Refusal

THREE = plate_set("three plates")


@pytest.mark.parametrize(
    ("divisions", "words"),
    [
        (7, "5 turns + 15 holes on 21"),
        (13, "3 turns + 3 holes on 39"),
        (10, "4 turns exactly"),
        (24, "1 turns + 10 holes on 15"),
        (49, "0 turns + 40 holes on 49"),
    ],
)
def test_plain_indexing_as_printed(divisions: int, words: str) -> None:
    """Indexing table of a 40:1 head with the usual three plates."""
    assert index_divisions(divisions, 40, THREE).words == words


def test_three_plates_divide_every_number_to_50() -> None:
    """As a treatise on milling says; 51 is the first that fails."""
    assert all(plain_indexings(number, 40, THREE) for number in range(2, 51))
    assert plain_indexings(51, 40, THREE) == ()


@pytest.mark.parametrize("ratio", [40, 60, 90])
def test_exact_steps_close_the_circle(ratio: int) -> None:
    """The holes and turns of an exact step, repeated, are the ratio exactly; an inexact one is told so."""
    for divisions in range(2, 131):
        step = index_divisions(divisions, ratio, THREE)
        part = Fraction(step.holes, step.plate) if step.holes else Fraction(0)
        off = (step.turns + part) * divisions - ratio
        assert (off == 0) == step.exact
        assert step.closing_error == pytest.approx(float(off) * degrees_a_turn(ratio), abs=1e-12)


def test_the_least_error_is_found() -> None:
    """No hole of any circle comes nearer to a 127th than the one given."""
    step = index_divisions(127, 40, THREE)
    every = [Fraction(hole, circle) for plate in THREE for circle in plate for hole in range(1, circle)]
    least = min(abs(float(place - Fraction(40, 127))) for place in every) * 9
    assert abs(step.error) == pytest.approx(least)


def test_angles_of_the_handbook() -> None:
    """35 degrees, 11.5 degrees and one degree on a 40:1 head."""
    assert index_angle(35.0, 40, THREE).words == "3 turns + 16 holes on 18"
    assert index_angle(11.5, 40, THREE).words == "1 turns + 5 holes on 18"
    assert index_angle(1.0, 40, THREE).words == "0 turns + 2 holes on 18"


def test_24_minutes_fall_half_a_minute_short() -> None:
    """1 hole on 23 is the nearest, 0.522 arc minutes short (ordnance course)."""
    near = index_angle(0.4, 40, THREE)
    assert (near.holes, near.plate) == (1, 23)
    assert near.error * 60 == pytest.approx(-0.522, abs=0.0005)


def test_compound_indexing_adds_up() -> None:
    """Both moves together are the step less its stated error, on circles of one plate."""
    for way in compound_indexings(127, 40, THREE, most=20):
        both = (
            way.turns
            + Fraction(way.first_holes, way.first_plate)
            + Fraction(way.second_holes, way.second_plate)
        )
        assert float(both - Fraction(40, 127)) * 9 == pytest.approx(way.error, abs=1e-12)
        assert any({way.first_plate, way.second_plate} <= set(plate) for plate in THREE)
    best = compound_indexings(127, 40, THREE)[0]
    assert abs(best.error) < abs(index_divisions(127, 40, THREE).error) / 10


def test_compound_indexing_reaches_51() -> None:
    """51 divisions: 17 and 3 lie on different circles of one plate, so two moves do it exactly."""
    assert compound_indexings(51, 40, plates_of("15-20"))[0].error == 0.0


def test_places_set_one_by_one_never_gather() -> None:
    """Every division lies within half a hole of the best circle, and the first at nought."""
    places = crank_places(127, 40, THREE)
    assert (places[0].turns, places[0].holes, places[0].error) == (0, 0, 0.0)
    assert max(abs(place.error) for place in places) <= 360 / 40 / 49 / 2
    assert places[-1].turns == 39


def test_plates_as_written() -> None:
    """Runs, loose numbers and slashes."""
    assert plates_of("15-20,21-33") == (tuple(range(15, 21)), tuple(range(21, 34)))
    assert plates_of("15,16,17 / 21,23") == ((15, 16, 17), (21, 23))


@pytest.mark.parametrize(
    ("call", "words"),
    [
        (lambda: index_divisions(0, 40, THREE), "The number of divisions is 0"),
        (lambda: index_divisions(7, 0, THREE), "The ratio is 0:1"),
        (lambda: index_divisions(7, 40, ()), "There is no plate"),
        (lambda: crank_places(7, 40, ()), "There is no plate"),
        (lambda: index_angle(400.0, 40, THREE), "The angle is 400 deg"),
        (lambda: index_angle(0.001, 40, THREE), "no circle owned has holes that close"),
        (lambda: plates_of("a-b"), "is no number of holes"),
        (lambda: plates_of("20-15"), "it must be 2 to 400, rising"),
        (lambda: plate_set("four plates"), r'Did you mean "three plates"'),
    ],
)
def test_what_cannot_be_divided_is_refused(call, words: str) -> None:  # type: ignore[no-untyped-def]
    """Each refusal names the figure and the bound."""
    with pytest.raises(Refusal, match=words):
        call()
