"""Blind holes at the lathe: how deep the drill goes, what makes the floor, and when it is a stop."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tommybar.design.model import Part
from tommybar.dryrun import run_part
from tommybar.making.as_machined import as_drilled
from tommybar.making.lengths import spoken
from tommybar.making.parts import route_part
from tommybar.shapes.features import Bore, Cylinder, Dim, TurnedShape


def body(dia, length, size, depth, bottom, *limits, zone=""):
    """A cylinder with one blind hole in face A."""
    bore = Bore("bore", Dim(size, "p.bore", zone, *(limits or (None, None))), "A", depth, False, bottom)
    shape = TurnedShape(
        Dim(length, "p.length"), (Cylinder("body", Dim(dia, "p.body"), 0.0, length),), bores=(bore,)
    )
    return Part("p", "turned", "free-cutting brass", 1, shape)


def steps_of(making, *kinds):
    """Steps at the bore, of these tool kinds."""
    found = [s for c in making.cards for s in c.steps if s.feature == "bore"]
    return [spoken(s, "mm") for s in found if not kinds or s.tool_kind in kinds]


def clean(part, making, shop):
    """Neither the route nor the dry run stops."""
    assert [f for f in making.findings if f.severity == "stop"] == []
    run = run_part(as_drilled(part, shop), making.blank, making.cards, shop)
    assert [f.words for f in run.findings if f.severity == "stop"] == []
    return True


def test_a_body_12_by_60_with_a_bore_6_h7_40_deep(shop_r):
    """40/6 = 6.7 diameters: cleared each 6; full diameter to 40 + 6/2 = 43, the tip of the 5.9 1.8 more; 15 stay.

    5.9/2 / tan 59 = 1.77, 60 - 44.77 = 15.2.
    """
    part = body(12.0, 60.0, 6.0, 40.0, "drill", 6.0, 6.012, zone="H7")
    making = route_part(part, {}, shop_r)

    (drill,) = [s for s in steps_of(making, "drill") if s.tool_size == 5.9]
    assert drill.dial[0].startswith("Full diameter to 43.0 deep, the point 1.8 more")
    assert drill.moves[2].z == pytest.approx(-44.77, abs=0.01)
    assert any("clear the chips every 6" in line for line in drill.dial)
    (ream,) = steps_of(making, "reamer")
    assert -ream.moves[2].z < 43.0
    assert clean(part, making, shop_r)


def test_a_floor_that_the_tip_would_pierce_is_a_stop(shop_r):
    """The same hole in a body of 45: 45 - 44.77 leaves 0.2 of floor where 1 is wanted."""
    making = route_part(body(12.0, 45.0, 6.0, 40.0, "drill", 6.0, 6.012, zone="H7"), {}, shop_r)

    stop = next(f for f in making.findings if f.severity == "stop")
    assert (stop.number, stop.figure, stop.bound) == (418, "0.2 mm of floor", "1 mm at least")
    assert stop.remedy


def test_a_reamer_makes_no_flat_floor(shop_r):
    """6 H7 down to a flat floor: no bar enters a hole of 6, so it is a stop with both figures."""
    making = route_part(body(12.0, 60.0, 6.0, 20.0, "flat", 6.0, 6.012, zone="H7"), {}, shop_r)

    stop = next(f for f in making.findings if f.severity == "stop")
    assert (stop.number, stop.figure) == (418, "6 x 20 mm")
    assert "boring bars: D from 7" in stop.bound


def test_a_flat_floor_is_flattened_and_bored_to_it(shop_r):
    """20 H7 x 15 flat: drilled short of the floor by the tip, a slot drill flattens it, the bar sweeps the ring."""
    part = body(30.0, 40.0, 20.0, 15.0, "flat", 20.0, 20.021, zone="H7")
    making = route_part(part, {}, shop_r)

    kinds = [s.tool_kind for s in steps_of(making)]
    assert [k for k in kinds if k in ("drill", "slot drill", "boring")][-2:] == ["slot drill", "boring"]
    assert all(s.moves[2].z > -15.0 for s in steps_of(making, "drill"))
    (bored,) = steps_of(making, "boring")
    cutter = steps_of(making, "slot drill")[0].tool_size
    floor = [m for m in bored.moves if m.z == pytest.approx(-15.0)]
    assert min(m.r for m in floor) < cutter / 2
    assert clean(part, making, shop_r)


def test_a_plain_flat_pocket_is_not_drilled_through_its_floor(shop_r):
    """8 x 2 flat: the tip of a drill of 7.7 is 2.3, deeper than the pocket: a slot drill of 8 makes all of it."""
    part = body(20.0, 20.0, 8.0, 2.0, "flat")
    making = route_part(part, {}, shop_r)

    assert all(s.moves[2].z >= -2.0 - 1e-9 for s in steps_of(making) if s.moves)
    assert steps_of(making, "slot drill")[0].tool_size == 8.0
    assert clean(part, making, shop_r)


def test_without_a_slot_drill_a_flat_pocket_is_a_stop(shop_r):
    """No cutter and no bar that small: said, not drilled with a cone."""
    making = route_part(body(20.0, 20.0, 6.0, 5.0, "flat"), {}, replace(shop_r, cutters=()))

    assert 418 in {f.number for f in making.findings if f.severity == "stop"}


def test_the_centre_drill_is_no_larger_than_the_hole(shop_r):
    """A hole of 1.5: pilots of 1.0 and 1.6 and 2.5 are owned, 1.0 starts it; one of 0.8 starts from a dimple."""
    fine = route_part(body(10.0, 15.0, 1.5, 4.0, "drill"), {}, shop_r)
    assert steps_of(fine, "centre drill")[0].tool_size == 1.0

    small = replace(shop_r, drills=(0.8, *shop_r.drills))
    finer = route_part(body(10.0, 15.0, 0.8, 3.0, "drill"), {}, small)
    assert steps_of(finer, "centre drill") == []
    assert any(f.number == 413 and f.figure and f.remedy for f in finer.findings)


def test_chips_are_never_cleared_every_0_mm(shop_r):
    """0.4 x 3 deep: every 0.4."""
    small = replace(shop_r, drills=(0.4, *shop_r.drills))
    making = route_part(body(10.0, 15.0, 0.4, 3.0, "drill"), {}, small)

    (drill,) = steps_of(making, "drill")
    assert any("clear the chips every 0.4" in line for line in drill.dial)


def test_a_drill_under_a_millimetre_is_fed_by_hand(shop_r):
    """The feed table begins at 1 mm: no feed is made up below it."""
    small = replace(shop_r, drills=(0.8, *shop_r.drills))
    making = route_part(body(10.0, 15.0, 0.8, 3.0, "drill"), {}, small)

    (drill,) = steps_of(making, "drill")
    assert drill.feed == 0.0
    assert any("by hand" in line for line in drill.dial)


def test_a_through_bore_opened_by_a_bar_is_as_deep_as_its_reamer_goes(shop_r):
    """12 H7 with no drill of 11.65 to 11.85: the bar goes beyond the reamer's tip, whose core cuts nothing."""
    bore = Bore("bore", Dim(12.0, "p.bore", "H7", 12.0, 12.018), "A", 12.0, True)
    shape = TurnedShape(
        Dim(12.0, "p.length"), (Cylinder("body", Dim(60.0, "p.body"), 0.0, 12.0),), bores=(bore,)
    )
    part = Part("p", "turned", "mild steel", 1, shape)
    making = route_part(part, {}, shop_r)

    (bar,), (reamer,) = steps_of(making, "boring"), steps_of(making, "reamer")
    assert min(move.z for move in bar.moves) <= min(move.z for move in reamer.moves)
    assert clean(part, making, shop_r)
