"""Where a tool does not suit, the plan says so: zones of reamers, marked chucks, blind holes in plates."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tommybar.making.cards import Card, Hold, Measure, Step
from tommybar.making.instruments import too_coarse
from tommybar.making.reaming import hole_plan
from tommybar.shapes.features import Dim, PlateHole


def test_a_reamer_is_taken_only_for_limits_that_it_keeps(shop_r):
    """10 H7 is 10.000 to 10.015, 10 N7 is 9.981 to 9.996 (ISO 286-2): a reamer that cuts 10.006 makes the first only."""
    assert hole_plan(10.0, shop_r, limits=True, within=(10.0, 10.015)).reamer is not None
    assert hole_plan(10.0, shop_r, limits=True, within=(9.981, 9.996)).reamer is None


def test_a_chuck_marked_slower_than_the_machine_is_a_stop(made, shop_r):
    """Marked 100 rev/min on a machine that begins at 150."""
    slow = replace(shop_r, jaws=tuple(replace(j, top_speed=100.0) for j in shop_r.jaws))
    stop = next(f for f in made("wheel", slow).findings if f.number == 402)

    assert (stop.severity, stop.figure) == ("stop", "150 rev/min")


@pytest.mark.parametrize(
    ("hole", "number"),
    [
        (PlateHole("pin", "top", 20, 10, Dim(7.3, "pillar.pin", "H7", 7.3, 7.315), 6.0), 905),
        (PlateHole("pin", "top", 20, 10, Dim(7.0, "pillar.pin"), None, "", 11.0, 4.0), 905),
    ],
    ids=["blind with limits", "counterbore"],
)
def test_what_is_not_routed_at_the_mill_is_a_stop(made, demonstrator, hole, number):
    """No card pretends to make a fine blind hole or a flat seat with a drill."""
    shape = demonstrator.part("pillar").shape
    making = made("pillar", shape=replace(shape, holes=(*shape.holes, hole)))

    assert number in {f.number for f in making.findings if f.severity == "stop"}


def test_a_plain_blind_hole_takes_a_drill_that_is_owned(made, demonstrator):
    """7.15 is drawn, 7.0 is the nearest owned within 0.2 of it (ISO 2768-1 m)."""
    shape = demonstrator.part("pillar").shape
    hole = PlateHole("pin", "top", 20, 10, Dim(7.15, "pillar.pin"), 5.0)
    making = made("pillar", shape=replace(shape, holes=(*shape.holes, hole)))
    drilled = [
        s.tool_size for c in making.cards for s in c.steps if s.feature == "pin" and s.tool_kind == "drill"
    ]

    assert drilled == [7.0]


def test_an_instrument_that_tells_nothing_of_a_bore_is_told(shop_r):
    """23.4 H8 is 0.033 wide (ISO 286-2); a caliper of 0.02 standard uncertainty is sure to 0.04. Of 6 H7 a pin tells enough."""
    wide = Dim(23.4, "piece.seat", "H8", 23.4, 23.433)
    fine = Dim(6.0, "piece.hole", "H7", 6.0, 6.012)

    def told(dim: Dim, instrument: str):
        step = Step(1, "", "", "", "hand", 0, 0, 0, "", "", (), measure=(Measure(dim.name, dim, instrument),))
        hold = Hold("", "", "", 0.0, 0.0, 0.0, 0.0, "")
        card = Card("piece", 1, 1, "bench", "", "", hold, (step,), (), ())
        return [(f.number, f.figure) for f in too_coarse("piece", (card,), shop_r)]

    assert told(wide, "caliper 150") == [(483, "1.21 of the limits")]
    assert told(fine, "plug gauges and pins") == []
    assert told(wide, "") == []
