"""Permissible unbalance: its scaling, the rule of thumb, and its bounds."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tommybar.mechanics.unbalance import flat_hole_depth, permissible_eccentricity, permissible_unbalance
from tommybar.refusals import Refusal

above = st.floats(min_value=0.1, max_value=1e4)


@given(above, above, above)
def test_the_rule_of_thumb_is_met(grade: float, mass: float, speed: float) -> None:
    """U = 9549 G m / n, the figure handbooks print."""
    assert permissible_unbalance(grade, mass, speed) == pytest.approx(9549 * grade * mass / speed, rel=1e-4)


@given(above, above)
def test_a_rotor_at_its_permissible_eccentricity_moves_at_its_grade(grade: float, speed: float) -> None:
    """e times omega is the grade again."""
    omega = speed * math.pi / 30
    assert permissible_eccentricity(grade, speed) / 1000 * omega == pytest.approx(grade)


def test_the_metal_that_is_drilled_out_carries_the_unbalance() -> None:
    """Mass of the hole times its radius is the unbalance that was asked for."""
    depth = flat_hole_depth(10.0, 20.0, 6.0, 7.85)
    mass_g = math.pi * 0.3**2 * depth / 10 * 7.85
    assert mass_g * 20.0 == pytest.approx(10.0)


@pytest.mark.parametrize(
    ("call", "words"),
    [
        (lambda: permissible_eccentricity(6.3, 0.0), "speed is 0 rev/min"),
        (lambda: permissible_unbalance(6.3, -1.0, 3000.0), "mass is -1 kg"),
        (lambda: flat_hole_depth(-1.0, 20.0, 6.0, 7.85), "unbalance is -1 g mm"),
        (lambda: flat_hole_depth(1.0, 0.0, 6.0, 7.85), "radius is 0 mm"),
    ],
)
def test_bad_figures_are_refused(call: object, words: str) -> None:
    """With figure and bound."""
    with pytest.raises(Refusal, match=words):
        call()  # type: ignore[operator]
