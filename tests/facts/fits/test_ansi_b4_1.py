"""ANSI B4.1: the tables hold together, and what lies outside is refused."""

from __future__ import annotations

import pytest

from tommybar.facts.fits.ansi_b4_1 import inch_fit, inch_fit_classes
from tommybar.refusals import Refusal

SIZES = (0.1, 0.12, 0.2, 0.3, 0.5, 0.6, 0.9, 1.0, 1.3, 1.7, 2.2, 3.0, 3.15)
ALONG = [
    (name, size)
    for name in inch_fit_classes()
    for size in SIZES
    if not (name in ("LT3", "LT4") and size <= 0.24) and not (name == "FN3" and size <= 0.95)
]


def test_all_five_families_are_whole() -> None:
    """RC1-9, LC1-11, LT1-6, LN1-3, FN1-5: 34 classes."""
    counts = dict.fromkeys(("RC", "LC", "LT", "LN", "FN"), 0)
    for name in inch_fit_classes():
        counts[name[:2]] += 1
    assert counts == {"RC": 9, "LC": 11, "LT": 6, "LN": 3, "FN": 5}


@pytest.mark.parametrize("family", ["RC", "LC", "LT", "LN", "FN"])
def test_the_kind_of_fit_is_that_of_the_family(family: str) -> None:
    """RC and LC always clear, LN and FN always grip, LT may do either."""
    for name, size in ALONG:
        if name[:2] != family:
            continue
        fit = inch_fit(size, name)
        if family in ("RC", "LC"):
            assert fit.min_clearance_thou >= 0, (name, size)
        elif family == "LT":
            assert fit.min_clearance_thou < 0 < fit.max_clearance_thou, (name, size)
        else:
            assert fit.max_clearance_thou <= 0, (name, size)


def test_no_member_is_without_tolerance_and_none_shrinks_with_size() -> None:
    """Tolerances are above nought and never fall as the size grows; RC9 is printed with 1.6, then 1.5."""
    widest: dict[tuple[str, str], float] = {}
    for name, size in ALONG:
        fit = inch_fit(size, name)
        for member, width in (
            ("hole", fit.hole_upper_thou),
            ("shaft", fit.shaft_upper_thou - fit.shaft_lower_thou),
        ):
            assert width > 0
            printed_narrower = 0.1 if name == "RC9" else 0.0
            assert width >= widest.get((name, member), 0) - printed_narrower - 1e-9, (name, member, size)
            widest[name, member] = width


def test_running_classes_grow_looser() -> None:
    """Each RC class has no less least clearance than the one before it."""
    for size in SIZES:
        least = [inch_fit(size, f"RC{number}").min_clearance_thou for number in range(1, 10)]
        assert least == sorted(least)


def test_holes_of_one_grade_are_the_same_in_every_class() -> None:
    """RC3, LC2, LT1, LN2 and FN2 all have an H7 hole."""
    for size in SIZES:
        holes = {inch_fit(size, name).hole_upper_thou for name in ("RC3", "LC2", "LT1", "LN2", "FN2")}
        assert len(holes) == 1, size


def test_limits_in_millimetres_are_the_inches_turned() -> None:
    """1/2 in RC4: hole 0.5000 to 0.5010 in."""
    fit = inch_fit(0.5, "rc 4")
    assert fit.hole.largest / 25.4 == pytest.approx(0.5010, abs=1e-9)
    assert fit.shaft.smallest / 25.4 == pytest.approx(0.4987, abs=1e-9)


@pytest.mark.parametrize(
    ("size", "name", "words"),
    [
        (0.5, "RC10", "is not a fit of ANSI B4.1"),
        (3.2, "RC4", "over 0 in and up to 3.15 in"),
        (0.5, "FN3", "over 0.95 in"),
        (0.0, "LC1", "nominal size is 0 in"),
    ],
)
def test_what_is_outside_is_refused_with_the_bound(size: float, name: str, words: str) -> None:
    """Unknown classes and sizes beyond a class's own table."""
    with pytest.raises(Refusal, match=words):
        inch_fit(size, name)
