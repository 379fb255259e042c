"""A hole that nothing in the shop makes is told once; the steps after it are judged as if it were there."""

from __future__ import annotations

from pathlib import Path

from tommybar.design.model import Part
from tommybar.dryrun import run_part
from tommybar.making.as_machined import as_drilled
from tommybar.making.parts import route_part
from tommybar.shapes.features import Bore, Cylinder, Dim, TurnedShape
from tommybar.shop import load_shop

SHOP = Path(__file__).resolve().parents[2] / "examples" / "shops" / "shop-r.yaml"


def test_a_floor_that_cannot_be_made_leaves_no_other_stops_in_its_wake():
    shop = load_shop(SHOP)
    shape = TurnedShape(
        Dim(70.0, "pot.length"),
        (Cylinder("body", Dim(30.0, "pot.body"), 0.0, 70.0),),
        bores=(Bore("well", Dim(23.0, "pot.well"), "A", 60.0, False, "flat"),),
    )
    pot = Part("pot", "turned", "free-cutting brass", 1, shape)
    making = route_part(pot, {}, shop)
    stops = [one for one in making.findings if one.severity == "stop"]
    assert [(one.number, one.feature) for one in stops] == [(418, "well")]

    def found(*lacking):
        run = run_part(as_drilled(pot, shop), making.blank, making.cards, shop, frozenset(lacking))
        return {one.number for one in run.findings if one.severity == "stop"}

    assert found() == {507}  # the well still stands full
    assert found("well") == set()
