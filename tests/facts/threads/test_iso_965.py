"""ISO 965-1 tables against the formulas they were smoothed from, and against published limits."""

from __future__ import annotations

from itertools import pairwise
from math import sqrt

import pytest

from tommybar.facts.threads import (
    Thread,
    fundamental_deviation,
    metric_tolerance,
    thread,
    thread_limits,
    threads_of_series,
)
from tommybar.refusals import Refusal

RANGES = [(0.99, 1.4), (1.4, 2.8), (2.8, 5.6), (5.6, 11.2), (11.2, 22.4), (22.4, 45)]
ALL = [one for series in ("ISO metric coarse", "ISO metric fine") for one in threads_of_series(series)]
STEP = 10 ** (1 / 40)  # of the R40 series that the tables are rounded to
GRADE_FACTORS = {4: 0.63, 5: 0.8, 6: 1.0, 7: 1.25, 8: 1.6}


def mean_diameter(major: float) -> float:
    low, high = next(pair for pair in RANGES if pair[0] < major <= pair[1])
    return sqrt(low * high)


@pytest.mark.parametrize("one", ALL, ids=lambda one: one.designation)
def test_tables_follow_their_formulas(one: Thread) -> None:
    """Every tolerance is within two steps of R40 of its formula, in every grade that is given."""
    pitch = one.pitch
    td2 = 90 * pitch**0.4 * mean_diameter(one.major) ** 0.1
    formulas = {
        "external_pitch": td2,
        "internal_pitch": 1.32 * td2,
        "external_major": 180 * pitch ** (2 / 3) - 3.15 / sqrt(pitch),
        "internal_minor": 433 * pitch - 190 * pitch**1.22 if pitch < 1 else 230 * pitch**0.7,
    }
    checked = 0
    for table, basis in formulas.items():
        for grade, factor in GRADE_FACTORS.items():
            try:
                found = metric_tolerance(one, table, grade)
            except Refusal:
                continue
            checked += 1
            assert STEP**-2.1 < found / (basis * factor) < STEP**2.1, (table, grade, found, basis * factor)
    assert checked >= 4


@pytest.mark.parametrize("one", ALL, ids=lambda one: one.designation)
def test_deviations_follow_their_formulas(one: Thread) -> None:
    """es of g is -(15 + 11 P), of f -(30 + 11 P), of e -(50 + 11 P), to 3 um; H and h are nought.

    The table's e falls short of its formula by up to 5.5 um at the finest pitches.
    """
    for position, start, slack in (("g", 15, 3.1), ("f", 30, 3.1), ("e", 50, 5.6)):
        try:
            found = fundamental_deviation(one, position)
        except Refusal:
            assert one.pitch < 0.5
            continue
        assert found == pytest.approx(-(start + 11 * one.pitch), abs=slack)
    assert fundamental_deviation(one, "h") == 0
    assert fundamental_deviation(one, "H") == 0
    assert fundamental_deviation(one, "G") == -fundamental_deviation(one, "g")


# pitch diameter tolerance of coarse nuts, 4H 5H 6H, as a tap maker prints it [um]
TAP_MAKER = {
    "M1": (45, 56),
    "M1.2": (45, 56),
    "M1.4": (48, 60, 75),
    "M1.6": (53, 67, 85),
    "M2": (56, 71, 90),
    "M2.5": (60, 75, 95),
    "M3": (63, 80, 100),
    "M3.5": (71, 90, 112),
    "M4": (75, 95, 118),
    "M5": (80, 100, 125),
    "M6": (95, 118, 150),
    "M8": (100, 125, 160),
}


@pytest.mark.parametrize(("size", "printed"), TAP_MAKER.items(), ids=TAP_MAKER)
def test_pitch_diameter_tolerances_of_a_tap_makers_table(size: str, printed: tuple[int, ...]) -> None:
    """4H, 5H and 6H of the coarse threads, as a tap maker's catalogue prints them."""
    for grade, figure in zip((4, 5, 6), printed, strict=False):
        assert metric_tolerance(thread(size), "internal_pitch", grade) == figure


def test_two_part_class_takes_pitch_diameter_first() -> None:
    """4g6g: grade 4 on the pitch diameter, grade 6 on the major diameter."""
    mixed = thread_limits("M8", "4g6g").external
    plain, fine = thread_limits("M8", "6g").external, thread_limits("M8", "4g").external
    assert mixed is not None
    assert plain is not None
    assert fine is not None

    assert mixed.major == plain.major
    assert mixed.pitch_diameter == fine.pitch_diameter
    assert mixed.pitch_diameter[0] > plain.pitch_diameter[0]


def test_grade_that_is_not_given_is_refused_with_those_that_are() -> None:
    """M1 has no 6H: the standard stops at grade 5 for a pitch of 0.25."""
    with pytest.raises(Refusal, match=r"M1 has no TD2 of grade 6; ISO 965-1 gives grades 4, 5"):
        thread_limits("M1", "6H")


def test_position_that_is_not_given_is_refused() -> None:
    """e is not given below a pitch of 0.5."""
    with pytest.raises(Refusal, match=r'no position "e" for a pitch of 0\.4 mm'):
        thread_limits("M2", "6e")


@pytest.mark.parametrize("named", ["6x", "g6", "66", "6gg", "2A"])
def test_a_class_that_is_none_is_refused(named: str) -> None:
    """What is not a grade and a position is refused with an example."""
    with pytest.raises(Refusal, match="no tolerance class"):
        thread_limits("M6", named)


def r40() -> set[int]:
    """R40 numbers of 10 to 1000 as ISO 3 rounds them to whole micrometres."""
    decade = (
        100,
        106,
        112,
        118,
        125,
        132,
        140,
        150,
        160,
        170,
        180,
        190,
        200,
        212,
        224,
        236,
        250,
        265,
        280,
        300,
        315,
        335,
        355,
        375,
        400,
        425,
        450,
        475,
        500,
        530,
        560,
        600,
        630,
        670,
        710,
        750,
        800,
        850,
        900,
        950,
    )
    small = {
        24,
        25,
        26,
        28,
        30,
        32,
        34,
        36,
        38,
        40,
        42,
        45,
        48,
        50,
        53,
        56,
        60,
        63,
        67,
        71,
        75,
        80,
        85,
        90,
        95,
    }
    return small | set(decade)


@pytest.mark.parametrize("one", ALL, ids=lambda one: one.designation)
def test_tolerances_are_r40_numbers_that_rise_by_two_steps_a_grade(one: Thread) -> None:
    """Every tolerance is a number of R40, and a grade is 1.25 times the one before, to one step."""
    numbers = r40()
    for table in ("external_pitch", "internal_pitch", "external_major", "internal_minor"):
        found = {}
        for grade in range(3, 10):
            try:
                found[grade] = metric_tolerance(one, table, grade)
            except Refusal:
                continue
        assert found
        assert set(found.values()) <= numbers
        grades = sorted(found)
        for low, high in pairwise(grades):
            ratio = found[high] / found[low]
            assert ratio == pytest.approx(1.25 ** (high - low), rel=0.055), (table, low, high)
