"""Change gears: printed trains, search against brute force, meshing."""

from __future__ import annotations

from fractions import Fraction
from itertools import permutations

import pytest

from tommybar.facts.gears import (
    Quadrant,
    cut_pitch,
    gear_set,
    gear_trains,
    lead_of,
    mesh_faults,
    ratio_error,
    train_for,
)
from tommybar.facts.gears.topic import answer
from tommybar.refusals import Refusal


def test_printed_trains() -> None:
    """8 tpi with 120 to 127 cuts 3 mm; a 3 mm screw with 127 to 120 cuts 8 tpi."""
    assert cut_pitch(lead_of("8 tpi"), [120], [127]) == 3.0
    assert 25.4 / cut_pitch(lead_of("3 mm"), [127], [120]) == pytest.approx(8.0, abs=1e-12)


@pytest.mark.parametrize(
    ("text", "pitch"), [("8 tpi", 3.175), ("1.25", 1.25), ("1/8 in", 3.175), ("3 mm", 3.0), ("0,75 mm", 0.75)]
)
def test_pitches_as_they_are_said(text: str, pitch: float) -> None:
    """Threads to the inch, millimetres and inches."""
    assert float(lead_of(text)) == pytest.approx(pitch, rel=1e-12)


def test_the_63_set_is_125_ppm_off_and_12_5_um_over_100_mm() -> None:
    """The known error of a metric thread without a 127."""
    best = gear_trains(lead_of("1 mm"), lead_of("8 tpi"), gear_set("with 63"))[0]
    assert best.error_ppm == pytest.approx(125.0, abs=0.05)
    assert best.error_per_100 == pytest.approx(12.5, abs=0.005)


def test_search_finds_the_least_error_of_all_trains() -> None:
    """Brute force over every order of every four gears of a small set finds nothing better."""
    gears = (20, 30, 35, 45, 50, 63, 80)
    wanted, screw = Fraction(7, 5), Fraction(3)
    free = Quadrant(clash_teeth=-200)
    best = gear_trains(wanted, screw, gears, free, most=1, within_ppm=1e6)[0]
    errors = [abs(ratio_error(Fraction(a, b), wanted / screw)) for a, b in permutations(gears, 2)]
    errors += [
        abs(ratio_error(Fraction(a * c, b * d), wanted / screw)) for a, b, c, d in permutations(gears, 4)
    ]
    assert abs(best.error_ppm) == pytest.approx(min(errors), abs=1e-6)


def test_gears_are_used_no_oftener_than_they_are_owned() -> None:
    """Two twenties may both drive; one may not."""
    two = gear_trains(
        Fraction(400, 900), Fraction(1), (20, 20, 30, 30), Quadrant(clash_teeth=-200), within_ppm=1
    )
    assert two[0].words == "20/30 x 20/30"
    assert (
        gear_trains(Fraction(400, 900), Fraction(1), (20, 30), Quadrant(clash_teeth=-200), within_ppm=1) == ()
    )


def test_every_train_found_cuts_what_it_says_and_can_be_put_on() -> None:
    """Pitch and error follow from the teeth, errors rise down the list, nothing clashes."""
    found = gear_trains(1.75, lead_of("8 tpi"), gear_set("with 127"), most=10)
    assert len(found) == 10
    assert [abs(train.error_ppm) for train in found] == sorted(abs(train.error_ppm) for train in found)
    for train in found:
        again = train_for(train.drivers, train.driven, lead_of("8 tpi"), 1.75)
        assert again.pitch == train.pitch
        assert train.error_per_100 == pytest.approx(train.error_ppm / 10)
        assert mesh_faults(train.drivers, train.driven, train.idler) == ()


def test_a_big_gear_on_the_stud_fouls_the_shaft_beside_it() -> None:
    """In teeth by the trade's rule, in mm when the quadrant has been measured."""
    assert mesh_faults([20, 100], [25, 127]) != ()
    measured = Quadrant(module=1.0, span=100.0, shaft_diameter=12.0)
    clash = mesh_faults([20, 40], [120, 20], quadrant=measured)
    assert any("clears the lead screw by" in words for words in clash)


def test_the_stud_must_reach_both_shafts() -> None:
    """Centre distances against the span and the slot."""
    far = mesh_faults([20, 20], [25, 30], quadrant=Quadrant(span=100.0))
    assert any("the gears reach 47.5 mm" in words for words in far)
    slot = mesh_faults([60], [60], 60, Quadrant(span=100.0, slot_from=70.0, slot_to=120.0))
    assert slot == ("the stud would lie 60 mm from the lead screw, the slot runs from 70 to 120 mm",)
    assert mesh_faults([60], [60], 60, Quadrant(span=100.0, slot_from=40.0, slot_to=120.0)) == ()
    assert "put an idler between" in mesh_faults([20], [30], quadrant=Quadrant(span=100.0))[0]
    assert mesh_faults([50], [150], quadrant=Quadrant(span=100.0)) == ()
    assert "judge the clearances" in mesh_faults([20, 20, 20], [30, 30, 30])[0]


def test_an_idler_is_chosen_when_the_shafts_lie_apart() -> None:
    """A simple train over 120 mm gets an idler of the set, and its pitch does not change."""
    arm = Quadrant(span=120.0, slot_from=35.0, slot_to=110.0)
    best = gear_trains(1.25, 3.175, gear_set("with 127"), arm)[0]
    assert (best.words, best.error_ppm) == ("50/127", 0.0)
    assert best.idler in gear_set("with 127")


def test_the_look_up_answers_the_example() -> None:
    """gears 1.25 --leadscrew "8 tpi": the keys that scripts rely on."""
    found = answer(("1.25",), {"leadscrew": "8 tpi"})
    assert [found.data[key] for key in ("train", "pitch_mm", "error_ppm")] == ["50/127", 1.25, 0.0]
    own = answer(("20 tpi",), {"leadscrew": "3 mm", "gears": "20-80,63,100,120"}).data
    assert own["error_ppm"] == pytest.approx(-125.0, abs=0.05)
    measured = answer(("1.25",), {"leadscrew": "8 tpi", "span": "120", "slot": "35-110"})
    assert measured.cautions == ()


@pytest.mark.parametrize(
    ("call", "words"),
    [
        (lambda: lead_of("coarse"), 'The pitch is "coarse"'),
        (lambda: lead_of("0 tpi"), "must be a figure above 0"),
        (lambda: cut_pitch(3.0, [20], [30, 40]), "they go in pairs"),
        (lambda: cut_pitch(3.0, [20], [0]), "all must be above 0"),
        (lambda: ratio_error(1.0, 0.0), "both must be above 0"),
        (lambda: gear_trains(1.0, 3.0, [20]), "it must have 2 to 40"),
        (lambda: gear_trains(-1.0, 3.0, [20, 30]), "The pitch is -1 mm"),
        (lambda: gear_set("with 100"), "The gear set is"),
        (lambda: answer(("1.25",), {}), "and the lead screw"),
        (lambda: answer(("1.25",), {"leadscrew": "8 tpi", "gears": "20,80"}), "no train of the 2 gears"),
    ],
)
def test_what_cannot_be_is_refused(call, words: str) -> None:  # type: ignore[no-untyped-def]
    """Each refusal names the figure and the bound."""
    with pytest.raises(Refusal, match=words):
        call()


def test_the_order_of_the_gears_is_found_that_fits_the_quadrant() -> None:
    """20 and 63 driving 60 and 30 in that order only: every other order fouls a shaft or leaves the slot."""
    arm = Quadrant(span=80.0, slot_from=45.0, slot_to=75.0)
    good = [
        (drivers, driven)
        for drivers in permutations((20, 63))
        for driven in permutations((30, 60))
        if not mesh_faults(drivers, driven, quadrant=arm)
    ]
    found = gear_trains(0.7, 1.0, (20, 30, 60, 63), arm, within_ppm=1)
    assert [(train.drivers, train.driven) for train in found] == good == [((20, 63), (60, 30))]
