"""A hole that nothing in the shop makes is told once; the steps after it are judged as if it were there."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

from tommybar import plan
from tommybar.design.loaded import design_from_text
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


def test_an_edge_without_its_tool_is_told_once():
    shop = load_shop(SHOP)
    shop = replace(shop, tools=tuple(tool for tool in shop.tools if tool.kind != "chamfer"))
    land = Cylinder("body", Dim(30.0, "peg.body"), 0.0, 40.0, edge_start=1.0)
    peg = Part("peg", "turned", "free-cutting brass", 1, TurnedShape(Dim(40.0, "peg.length"), (land,)))
    making = route_part(peg, {}, shop)
    stops = [one for one in making.findings if one.severity == "stop"]
    assert [(one.number, one.feature) for one in stops] == [(410, "body edge A")]

    def found(*lacking):
        run = run_part(as_drilled(peg, shop), making.blank, making.cards, shop, frozenset(lacking))
        return {one.number for one in run.findings if one.severity == "stop"}

    assert found() == {507}
    assert found("body edge A") == set()


def test_the_plan_tells_a_hole_that_nothing_makes_in_one_stop():
    text = (SHOP.parents[1] / "whistle" / "design.yaml").read_text(encoding="utf-8")
    assert "    from: tube\n" in text
    whole = plan(design_from_text(text.replace("    from: tube\n", "")), load_shop(SHOP), scale=1.0)
    stops = {one.number for one in whole.findings if one.severity == "stop" and one.part == "bell"}
    # 113 mm deep in 23 mm: no bar of the drawer reaches; what the dry run would add says nothing new
    assert stops & set(range(400, 600)) == {410}
