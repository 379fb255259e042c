"""Screws and tapped holes at the lathe: where the die stops, and the pilot before the tapping drill."""

from __future__ import annotations

from dataclasses import replace

from tommybar.design.model import Part
from tommybar.making.lengths import spoken
from tommybar.making.parts import route_part
from tommybar.shapes.features import Bore, Cylinder, Dim, Groove, TurnedShape


def screw(*grooves):
    """M6 x 12 on a head of 10."""
    lands = (Cylinder("thread", Dim(6.0), 0.0, 12.0, thread="M6"), Cylinder("head", Dim(10.0), 12.0, 20.0))
    shape = TurnedShape(Dim(20.0, "p.length"), lands, tuple(grooves))
    return Part("p", "turned", "mild steel", 1, shape)


def die_words(part, shop):
    """What the card says at the die."""
    making = route_part(part, {}, shop)
    return spoken(next(s for c in making.cards for s in c.steps if s.tool_kind == "die"), "mm").dial[0]


def test_the_die_goes_to_the_undercut_only_where_there_is_one(shop_r):
    """Without one it stops two threads of its lead short of the shoulder: 2.0 of M6, pitch 1 (ISO 261)."""
    assert "to the undercut" in die_words(screw(Groove("neck", 10.5, 12.0, 4.5)), shop_r)

    plain = die_words(screw(), shop_r)
    assert "undercut" not in plain
    assert "the last 2.0 without full thread" in plain


def test_a_pilot_is_clearly_smaller_than_the_tapping_drill(shop_r):
    """M8 wants 6.8 (ISO 2306); with 6.5 alone below it there is no pilot; with all of them it is near 3.4."""
    lands = (Cylinder("body", Dim(20.0), 0.0, 20.0),)
    bore = Bore("bore", Dim(8.0), "A", 20.0, True, thread="M8")
    part = Part("p", "turned", "mild steel", 1, TurnedShape(Dim(20.0, "p.length"), lands, bores=(bore,)))

    def drills(shop):
        return [
            s.tool_size for c in route_part(part, {}, shop).cards for s in c.steps if s.tool_kind == "drill"
        ]

    assert drills(shop_r) == [3.4, 6.8]
    assert drills(replace(shop_r, drills=(6.5, 6.8))) == [6.8]
