"""ISO 286: a second route by the formulas, bounds, refusals and the vectorised call."""

from __future__ import annotations

import math
import time

import numpy
import pytest

from tommybar.facts.fits.iso286 import (
    fundamental_deviation,
    limits_of_size,
    limits_of_sizes,
    tolerance_grade,
)
from tommybar.facts.fits.zones import GRADES, HOLE_LETTERS, SHAFT_LETTERS, split_zone
from tommybar.refusals import Refusal

STEPS = ((1, 3), (3, 6), (6, 10), (10, 18), (18, 30), (30, 50), (50, 80), (80, 120))
FACTORS = {5: 7, 6: 10, 7: 16, 8: 25, 9: 40, 10: 64, 11: 100, 12: 160}


def unit(mean: float) -> float:
    """Tolerance unit i = 0.45 D^(1/3) + 0.001 D [um], from memory of the standard's annex."""
    return 0.45 * mean ** (1 / 3) + 0.001 * mean


@pytest.mark.parametrize("grade", GRADES)
@pytest.mark.parametrize("step", STEPS, ids=lambda step: f"{step[0]}-{step[1]}")
def test_grades_follow_the_formula_they_were_rounded_from(step: tuple[int, int], grade: int) -> None:
    """Every printed grade lies near its formula, 7 i to 160 i; the first steps were rounded most."""
    formula = FACTORS[grade] * unit(math.sqrt(step[0] * step[1]))
    near = 0.16 if step[1] <= 3 else 0.095
    assert tolerance_grade(step[1], grade) == pytest.approx(formula, rel=near, abs=0.6)


DEVIATIONS = {  # formulas of the standard's annex, from memory; mean D of the step
    "d": lambda mean: -16 * mean**0.44,
    "e": lambda mean: -11 * mean**0.41,
    "f": lambda mean: -5.5 * mean**0.41,
    "g": lambda mean: -2.5 * mean**0.34,
    "k": lambda mean: 0.6 * mean ** (1 / 3),
    "n": lambda mean: 5 * mean**0.34,
}


@pytest.mark.parametrize("letter", DEVIATIONS)
@pytest.mark.parametrize("step", STEPS, ids=lambda step: f"{step[0]}-{step[1]}")
def test_deviations_follow_the_formula_they_were_rounded_from(step: tuple[int, int], letter: str) -> None:
    """Every printed edge lies within 2.1 um or 4 % of its formula."""
    formula = DEVIATIONS[letter](math.sqrt(step[0] * step[1]))
    assert fundamental_deviation(step[1], f"{letter}6") == pytest.approx(formula, rel=0.04, abs=2.1)


@pytest.mark.parametrize("step", STEPS, ids=lambda step: f"{step[0]}-{step[1]}")
def test_m_and_p_stand_where_a_basic_hole_ends(step: tuple[int, int]) -> None:
    """m begins at IT7 - IT6 and p at IT7 and up to 5 um more, by the rules of the standard."""
    size = float(step[1])
    it6, it7 = tolerance_grade(size, 6), tolerance_grade(size, 7)
    if size > 3:
        assert fundamental_deviation(size, "m6") == it7 - it6
        assert 0 <= fundamental_deviation(size, "p6") - it7 <= 5


@pytest.mark.parametrize("size", [14.0, 22.0, 27.0, 35.0, 45.0, 60.0, 70.0, 90.0, 110.0])
def test_r_is_the_geometric_mean_of_p_and_s(size: float) -> None:
    """The rule of the standard for r, to 2 um of rounding."""
    p, r, s = (fundamental_deviation(size, f"{letter}6") for letter in "prs")
    assert r == pytest.approx(math.sqrt(p * s), abs=2)


SUBSTEPS = (
    (3, 6),
    (6, 10),
    (10, 18),
    (18, 24),
    (24, 30),
    (30, 40),
    (40, 50),
    (50, 65),
    (65, 80),
    (80, 100),
    (100, 120),
)


@pytest.mark.parametrize("step", SUBSTEPS, ids=lambda step: f"{step[0]}-{step[1]}")
def test_c_s_and_u_follow_their_rules(step: tuple[int, int]) -> None:
    """c = -52 D^0.2 to 10 and -(95 + 0.8 D) over 40; s = IT8 + 1 to 4 or IT7 + 0.4 D over 50; u = IT7 + D.

    Between 10 and 40 mm the printed c lies up to 15 um beyond its formula and
    is held by the preferred fits of ANSI B4.2 instead.
    """
    size, mean = float(step[1]), math.sqrt(step[0] * step[1])
    c = -52 * mean**0.2 if size <= 40 else -(95 + 0.8 * mean)
    assert fundamental_deviation(size, "c11") == pytest.approx(c, abs=15.5 if 10 < size <= 40 else 4)
    it7 = tolerance_grade(size, 7)
    if size > 50:
        assert fundamental_deviation(size, "s6") == pytest.approx(it7 + 0.4 * mean, abs=1)
    else:
        assert 1 <= fundamental_deviation(size, "s6") - tolerance_grade(size, 8) <= 4
    if size > 18:
        assert fundamental_deviation(size, "u6") == pytest.approx(it7 + mean, abs=1.5)


def test_k_shafts_stand_on_the_line_in_coarse_grades() -> None:
    """k up to IT7 begins at +1 um at 12 mm, from IT8 at 0."""
    assert fundamental_deviation(12.0, "k7") == 1
    assert fundamental_deviation(12.0, "k8") == 0


def test_delta_ends_at_it8_for_k_m_n_and_at_it7_for_p_to_u() -> None:
    """At 12 mm: N8 is moved by delta (-12 + 9), P8 is not (-18)."""
    assert limits_of_size(12.0, "N8").upper_um == -3
    assert limits_of_size(12.0, "P8").upper_um == -18
    assert limits_of_size(12.0, "P7").upper_um == -11


def test_a_bound_belongs_to_the_step_below_it() -> None:
    """30 mm stands in 18 to 30, just over it does not; r divides the steps again at 65 and 100."""
    assert limits_of_size(30.0, "H7").upper_um == 21
    assert limits_of_size(30.0001, "H7").upper_um == 25
    assert (limits_of_size(65.0, "r6").lower_um, limits_of_size(65.1, "r6").lower_um) == (41, 43)


@pytest.mark.parametrize("size", [0.0, -3.0, 120.001, math.nan, math.inf])
def test_sizes_outside_the_table_are_refused_with_its_bound(size: float) -> None:
    """Never clamped: the refusal names the size and the bound."""
    with pytest.raises(Refusal, match=r"over 0 mm and up to 120 mm"):
        limits_of_size(size, "H7")


@pytest.mark.parametrize(
    ("zone", "words"),
    [
        ("H13", "IT5 to IT12"),
        ("H4", "IT5 to IT12"),
        ("q6", r'letter "q"'),
        ("7H", "a letter and a grade"),
        ("Js7", r'letter "Js"'),
        ("K9", "only up to IT8"),
    ],
)
def test_zones_that_are_not_held_are_refused(zone: str, words: str) -> None:
    """The words say what the table holds."""
    with pytest.raises(Refusal, match=words):
        limits_of_size(8.0, zone)


def test_js_has_no_edge_of_its_own() -> None:
    """Half the grade each way, and no fundamental deviation."""
    assert (limits_of_size(16.0, "js6").lower_um, limits_of_size(16.0, "JS6").upper_um) == (-5.5, 5.5)
    with pytest.raises(Refusal, match="evenly about the nominal size"):
        fundamental_deviation(16.0, "js6")


def test_coarse_n_holes_end_at_the_zero_line() -> None:
    """Above IT8 and over 3 mm the standard gives N an upper deviation of 0; up to 3 mm -4."""
    assert limits_of_size(10.0, "N9").upper_um == 0
    assert limits_of_size(2.0, "N9").upper_um == -4


@pytest.mark.parametrize("zone", ["H7", "g6", "JS8", "P7", "K8", "s6", "M9"])
def test_many_sizes_at_once_are_the_sizes_one_by_one(zone: str) -> None:
    """The vectorised call gives the same limits, bounds included."""
    sizes = numpy.concatenate([numpy.linspace(0.1, 120.0, 400), [3, 6, 10, 18, 24, 30, 65, 80, 100]])
    single = [(one.lower_um, one.upper_um) for one in (limits_of_size(size, zone) for size in sizes)]
    assert limits_of_sizes(sizes, zone).tolist() == [list(pair) for pair in single]


def test_many_sizes_refuse_one_that_is_outside() -> None:
    """One bad size among many is refused by its figure."""
    with pytest.raises(Refusal, match=r"130 mm"):
        limits_of_sizes([8.0, 130.0], "H7")


def test_a_hundred_thousand_limits_take_at_most_a_fifth_of_a_second() -> None:
    """The budget of the handbook for one vectorised call."""
    sizes = numpy.random.default_rng(1).uniform(0.5, 120.0, 100_000)
    limits_of_sizes(sizes[:10], "H7")
    began = time.perf_counter()
    found = limits_of_sizes(sizes, "H7")
    assert time.perf_counter() - began < 0.2
    assert found.shape == (100_000, 2)


def test_every_letter_has_its_capital() -> None:
    """Holes and shafts are the same letters, capital and small."""
    assert [letter.lower() for letter in HOLE_LETTERS] == list(SHAFT_LETTERS)
    assert split_zone(" js 7 ") == ("js", 7)
