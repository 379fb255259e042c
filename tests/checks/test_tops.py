"""A finger top of brass, every figure by hand: 43.4 g, 10.35 above the tip, 4.09 and 7.13 kg mm2, 827 rev/min."""

from __future__ import annotations

import math

import pytest

from tommybar.design.model import FitRelation, Part, Purpose
from tommybar.shapes.features import Cone, Cylinder, Dim, TurnedShape

from .asking import design, figures_of, finds, found_in

TOP = Part(
    "top",
    "turned",
    "free-cutting brass",
    1,
    TurnedShape(
        Dim(28.0),
        (
            Cone("tip", 0.0, 6.0, 0.0, 4.0),
            Cylinder("disc", Dim(28.0), 6.0, 14.0),
            Cylinder("stem", Dim(4.0), 14.0, 28.0),
        ),
    ),
)


def spun(speed: float) -> tuple[Purpose, ...]:
    """Spun by the fingers at a speed."""
    return (Purpose(("top",), speed, None, True),)


def test_the_speed_at_which_it_sleeps() -> None:
    """2 sqrt(m g h I_t) / I_a = 86.6 1/s, density 8.47; I_a / I_cg = 1.65."""
    got = figures_of(TOP, purposes=spun(1500))
    sleeps = got["sleeps above", "top"]

    assert sleeps.value == pytest.approx(827, rel=0.004)
    for words in ("h = 10.35 mm", "about the axis 4."):
        assert words in sleeps.how
    assert got["inertia about the axis over that across it", "top"].value == pytest.approx(1.65, abs=0.01)


def test_a_slower_spin_is_told() -> None:
    """800 is below 827, 850 above."""
    assert finds(672, TOP, purposes=spun(800)).part == "top"
    assert not [one for one in found_in(TOP, purposes=spun(850)) if one.number == 672]


def test_what_is_held_in_a_bearing_is_no_top() -> None:
    """The same part in a hole says nothing of sleeping."""
    from tommybar.checks.tops import look

    from .asking import SHOP

    held = design((TOP,), purposes=spun(100), fits=(FitRelation("cup.hole", "top.tip", "H7/f7"),))
    assert look(held, SHOP).findings == ()
    assert math.isfinite(look(design((TOP,), purposes=spun(100)), SHOP).figures[0].value)
