"""Laws of ISO 286: "the tolerance grows with the size and with the number of the grade"."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tommybar.facts.fits.iso286 import limits_of_size, tolerance_grade
from tommybar.facts.fits.zones import GRADES
from tommybar.sizes.fits import Fit, fit_of
from tommybar.sizes.retarget import mate_limits

sizes = st.floats(min_value=0.01, max_value=120.0)
grades = st.sampled_from(GRADES)
clear_letters = st.sampled_from("cdefgh")
grip_letters = st.sampled_from("mnprsu")


@given(sizes, grades)
def test_the_hole_h_begins_and_the_shaft_h_ends_at_the_nominal_size(size: float, grade: int) -> None:
    """H has lower deviation 0, h has upper deviation 0."""
    assert limits_of_size(size, f"H{grade}").lower_um == 0
    assert limits_of_size(size, f"h{grade}").upper_um == 0


@given(sizes, grades, st.sampled_from("cdefghkmnprsu"))
def test_a_zone_is_as_wide_as_its_grade(size: float, grade: int, letter: str) -> None:
    """Letter places, grade widens: for holes and shafts alike."""
    wide = tolerance_grade(size, grade)
    assert limits_of_size(size, f"{letter}{grade}").width_um == wide
    if not (letter == "k" and grade > 8):
        assert limits_of_size(size, f"{letter.upper()}{grade}").width_um == wide


@given(sizes, sizes, grades)
def test_a_larger_size_is_never_held_closer(one: float, other: float, grade: int) -> None:
    """IT grows with the size."""
    small, large = sorted((one, other))
    assert tolerance_grade(small, grade) <= tolerance_grade(large, grade)


@given(sizes, st.sampled_from(GRADES[:-1]))
def test_a_higher_grade_is_wider(size: float, grade: int) -> None:
    """IT grows with the grade, by 1.2 to 2 times."""
    ratio = tolerance_grade(size, grade + 1) / tolerance_grade(size, grade)
    assert 1.2 <= ratio <= 2.0


@given(sizes, st.sampled_from(GRADES[:-1]), st.sampled_from(["d", "f", "g", "h", "m", "n", "p", "s", "H"]))
def test_a_finer_zone_lies_inside_a_coarser_one_of_the_same_letter(
    size: float, grade: int, letter: str
) -> None:
    """Zones nest."""
    fine, coarse = (limits_of_size(size, f"{letter}{number}") for number in (grade, grade + 1))
    assert coarse.lower_um <= fine.lower_um
    assert fine.upper_um <= coarse.upper_um


@given(sizes, grades)
def test_letters_stand_in_order(size: float, grade: int) -> None:
    """c to u: every next shaft lies as high or higher, every next hole as low or lower."""
    shafts = [limits_of_size(size, f"{letter}{grade}").upper_um for letter in "cdefghmnprsu"]
    assert shafts == sorted(shafts)
    holes = [limits_of_size(size, f"{letter}{grade}").lower_um for letter in "CDEFGHPRSU"]
    assert holes == sorted(holes, reverse=True)


@given(sizes, grades, clear_letters)
def test_holes_that_clear_mirror_their_shafts(size: float, grade: int, letter: str) -> None:
    """EI = -es for C to H."""
    hole, shaft = (limits_of_size(size, f"{one}{grade}") for one in (letter.upper(), letter))
    assert hole.lower_um == -shaft.upper_um
    assert hole.upper_um == -shaft.lower_um


@given(st.floats(min_value=3.01, max_value=120.0), st.sampled_from(["p", "r", "s", "u"]))
def test_a_press_fit_grips_alike_on_either_basis(size: float, letter: str) -> None:
    """The reason for delta: H7/p6 and P7/h6 have the same clearances over 3 mm."""
    on_hole = fit_of(size, f"H7/{letter}6")
    on_shaft = fit_of(size, f"{letter.upper()}7/h6")
    assert on_shaft.min_clearance_um == pytest.approx(on_hole.min_clearance_um)
    assert on_shaft.max_clearance_um == pytest.approx(on_hole.max_clearance_um)


@given(sizes, grades)
def test_js_lies_evenly_about_the_nominal_size(size: float, grade: int) -> None:
    """JS and js are the same zone."""
    hole, shaft = limits_of_size(size, f"JS{grade}"), limits_of_size(size, f"js{grade}")
    assert hole.lower_um == -hole.upper_um
    assert (hole.lower_um, hole.upper_um) == (shaft.lower_um, shaft.upper_um)


def clearances(fit: Fit, hole: float, shaft: float) -> bool:
    """Whether a hole and a shaft have a clearance within the band of the fit, to a billionth."""
    gap_um = (hole - shaft) * 1000
    return fit.min_clearance_um - 1e-6 <= gap_um <= fit.max_clearance_um + 1e-6


@given(
    st.floats(min_value=2.0, max_value=100.0),
    st.sampled_from(["H7/g6", "H8/f7", "H7/h6", "H7/k6", "H7/p6", "H11/c11"]),
    st.floats(min_value=-0.3, max_value=0.3),
    st.sampled_from(["hole", "shaft"]),
    st.floats(min_value=0.0, max_value=1.0),
)
def test_every_mate_within_the_new_limits_keeps_the_clearance(
    size: float, pair: str, error: float, made: str, place: float
) -> None:
    """Re-target keeps the band, wherever the first member came out and the second one comes out."""
    fit = fit_of(size, pair)
    measured = size + error
    smallest, largest = mate_limits(measured, fit, made=made)  # type: ignore[arg-type]
    mate = smallest + place * (largest - smallest)
    assert clearances(fit, *((measured, mate) if made == "hole" else (mate, measured)))
    outside = largest + 0.001
    assert not clearances(fit, *((measured, outside) if made == "hole" else (outside, measured)))


@given(st.floats(min_value=0.5, max_value=120.0))
def test_a_size_as_drawn_leaves_the_mate_room_as_drawn(size: float) -> None:
    """A hole in the middle of its limits: the drawn shaft limits lie inside the new ones."""
    fit = fit_of(size, "H7/g6")
    smallest, largest = mate_limits(fit.hole.middle, fit, made="hole")
    assert smallest <= fit.shaft.smallest + 1e-9
    assert fit.shaft.largest <= largest + 1e-9
