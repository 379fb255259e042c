"""Holes on a circle against complex roots of unity, a second and independent route."""

from __future__ import annotations

import numpy as np
import pytest

from tommybar.facts.circles import chord, hole_circle
from tommybar.facts.circles.topic import answer
from tommybar.refusals import Refusal


@pytest.mark.parametrize("count", [*range(1, 41), 60, 72, 96, 100])
def test_holes_are_the_roots_of_a_polynomial(count: int) -> None:
    """Coordinates are the complex roots of z^n = r^n, turned by the start angle."""
    radius, start = 16.5, 17.0
    roots = np.exp(1j * np.deg2rad(start)) * radius * np.exp(2j * np.pi * np.arange(count) / count)
    ours = np.array([complex(hole.x, hole.y) for hole in hole_circle(count, 2 * radius, start)])
    assert np.allclose(ours, roots, atol=1e-9)
    assert np.allclose(ours**count, (radius * np.exp(1j * np.deg2rad(start))) ** count, rtol=1e-7)


def test_right_angles_come_out_as_whole_figures() -> None:
    """No dust of binary fractions where the coordinate is nought."""
    assert [(hole.x, hole.y) for hole in hole_circle(4, 20.0)] == [(10, 0), (0, 10), (-10, 0), (0, -10)]


def test_the_two_conventions_differ_by_the_radius() -> None:
    """The corner convention adds half the diameter to both coordinates, and so never is negative."""
    for centre, corner in zip(hole_circle(7, 33.0), hole_circle(7, 33.0, convention="corner"), strict=True):
        assert corner.x == pytest.approx(centre.x + 16.5)
        assert corner.y == pytest.approx(centre.y + 16.5)
        assert min(corner.x, corner.y) >= 0


def test_the_example_of_the_handbook() -> None:
    """Six holes on 10 about (7.5, 6) from 30 degrees: hole 2 lies at (7.5, 11)."""
    assert hole_circle(6, 10.0, 30.0, centre=(7.5, 6.0))[1].y == 11.0


def test_chords_of_a_hexagon_and_a_square() -> None:
    """Six neighbours lie a radius apart, four a side of the square, opposite ones a diameter."""
    assert chord(6, 50.0) == pytest.approx(25.0)
    assert chord(4, 10.0) == pytest.approx(50**0.5)
    assert chord(8, 32.0, apart=4) == pytest.approx(32.0)


def test_the_look_up_gives_holes_and_chord() -> None:
    """circle 6 33: the keys that scripts rely on."""
    found = answer(("6", "33"), {}).data
    assert found["chord_mm"] == 16.5
    assert found["holes"][1] == {"n": 2, "x_mm": 8.25, "y_mm": 14.289419, "angle_deg": 60.0}
    turned = answer(("6", "33"), {"start": "30", "convention": "corner"}).data
    assert turned["holes"][1]["x_mm"] == 16.5
    assert turned["holes"][1]["y_mm"] == 33.0


@pytest.mark.parametrize(
    ("call", "words"),
    [
        (lambda: hole_circle(0, 10.0), "The number of holes is 0; it must be 1 to 1000"),
        (lambda: hole_circle(1001, 10.0), "it must be 1 to 1000"),
        (lambda: hole_circle(6, -1.0), "The pitch-circle diameter is -1 mm; it must be above 0"),
        (lambda: hole_circle(6, 10.0, float("nan")), "must be finite"),
        (lambda: hole_circle(6, 10.0, convention="center"), r'Did you mean "centre"'),
        (lambda: chord(6, 10.0, 6), "they must be 1 to 5 apart"),
        (lambda: answer(("6",), {}), "it needs 2"),
        (lambda: answer(("six", "33"), {}), "must be a whole number"),
    ],
)
def test_what_cannot_be_is_refused(call, words: str) -> None:  # type: ignore[no-untyped-def]
    """Counts, sizes and conventions outside their range say the bound."""
    with pytest.raises(Refusal, match=words):
        call()
