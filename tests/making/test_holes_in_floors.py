"""A hole in the floor of a deep well is drilled from the side where a drill reaches, and only as deep as the floor."""

from __future__ import annotations

import pytest

from tommybar.design.model import Part
from tommybar.dryrun import run_part
from tommybar.making.as_machined import as_drilled
from tommybar.making.parts import route_part
from tommybar.shapes.features import Bore, Cylinder, Dim, TurnedShape


def pot(face):
    """A pot 30 x 70 with a well of 24 x 30 in that face, and a hole of 4 in its floor."""
    shape = TurnedShape(
        Dim(70.0, "pot.length"),
        (Cylinder("body", Dim(30.0, "pot.body"), 0.0, 70.0),),
        bores=(
            Bore("well", Dim(24.0, "pot.well"), face, 30.0, False, "flat"),
            Bore("drain", Dim(4.0, "pot.drain"), "A", 0.0, True, "drill"),
        ),
    )
    return Part("pot", "turned", "free-cutting brass", 1, shape)


@pytest.mark.parametrize(("face", "other"), [("A", "B"), ("B", "A")])
def test_the_floor_is_drilled_through_from_below(shop_r, face, other):
    # a 4 mm jobber drill stands 14 + 7.5 x 4 = 44 mm out of its chuck (common practice): not 70 through the well
    part = pot(face)
    making = route_part(part, {}, shop_r)
    drilled = [
        (card.free_end, -min(move.z for move in step.moves))
        for card in making.cards
        for step in card.steps
        if step.feature == "drain" and step.tool_kind == "drill"
    ]
    [(free, deep)] = drilled
    # floor 70 - 30 = 40, the drill's full diameter 1 mm past it, its point 0.300 x 4 more
    assert (free, deep) == (other, pytest.approx(40.0 + 1.0 + 1.2, abs=0.01))
    run = run_part(as_drilled(part, shop_r), making.blank, making.cards, shop_r)
    assert [one.words for one in (*making.findings, *run.findings) if one.severity == "stop"] == []
