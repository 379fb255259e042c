"""Where jaws, chucks, collet nuts and arbors stand in the frame of a card."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tommybar.dryrun.keep_out import fixture
from tommybar.making.cards import Hold
from tommybar.shop.model import Jaws

from .bench import SHOP

HOLD = Hold("three-jaw, inside jaws", "inside jaws", "blank", 20.0, 18.0, 31.0, 0.06, "")


def bounds(hold: Hold, shop: object = SHOP, top: float = 1.0) -> dict[str, tuple[float, ...]]:
    return {name: shape.bounds for name, shape in fixture(hold, top, shop).keep_out}  # type: ignore[arg-type]


def test_jaws_and_chuck() -> None:
    """Fronts at top less stick-out; jaws 25 high from the gripped radius to the body's; the body behind."""
    held = fixture(HOLD, 1.0, SHOP)

    assert held.front == -30.0
    assert held.grip == (-48.0, -30.0)
    assert bounds(HOLD) == {"jaws": (-55.0, 10.0, -30.0, 50.0), "chuck": (-95.0, 10.0, -55.0, 50.0)}


def test_large_work_pushes_the_jaws_beyond_the_body() -> None:
    """At 92 mm in a chuck of 100 the jaws reach 8 mm over the work."""
    assert bounds(replace(HOLD, dia=92.0, length=8.0, sticks_out=14.0))["jaws"][3] == 54.0


def test_jaws_inside_a_bore_and_a_collet() -> None:
    """Jaws that open in a bore fill it; a collet has only its nut."""
    inside = Jaws("ring jaws", "three-jaw", "inside", ((20, 60, 10),), 0.05, 100, 25)
    collet = Jaws("collets", "collets", "outside", ((2, 16, 20),), 0.02, 40)
    shop = replace(SHOP, jaws=(inside, collet))

    assert bounds(replace(HOLD, jaws="ring jaws", dia=40.0, length=10.0), shop)["jaws"] == (
        -55.0,
        0.0,
        -30.0,
        20.0,
    )
    nut = bounds(replace(HOLD, jaws="collets", dia=8.0), shop)
    assert nut == {"collet nut": (-45.0, 4.0, -30.0, 20.0)}


def test_an_arbor_and_a_holding_that_is_not_known() -> None:
    """Shoulder behind, washer in front, grip inside the bore; a vice is said to be unknown."""
    arbor = fixture(Hold("stub arbor 10, draw screw", "", "bore", 10.0, 24.0, 24.0, 0.01, ""), 0.0, SHOP)
    shapes = {name: shape.bounds for name, shape in arbor.keep_out}

    assert arbor.grip == (-24.0, 0.0)
    assert shapes["arbor shoulder"] == pytest.approx((-44.0, 0.0, -24.0, 8.0))
    assert shapes["draw screw's washer"] == pytest.approx((0.0, 0.0, 4.0, 8.0))
    assert not fixture(replace(HOLD, jaws="vice"), 0.0, SHOP).known
