"""Threads without a die: gears, depth and hand; and screws whose knurled head is all there is to hold by."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tommybar.shapes.features import Cylinder, Dim, Groove, Knurl

from .turned import clean, routed, shape, steps

BODY = Cylinder("body", Dim(20.0, "p.body"), 0.0, 20.0)


def screw(designation: str, dia: float, left: bool = False):
    """A screw of 12 with an undercut on a body."""
    return shape(
        BODY,
        Cylinder("screw", Dim(dia), 20.0, 32.0, 0.0, 0.5, thread=designation, left=left),
        grooves=(Groove("neck", 20.0, 22.0, dia - 2.0),),
    )


def test_a_thread_without_a_die_is_cut_with_change_gears(shop_r):
    """M12x1 on a lead screw of 3: the train's ratio is 1 : 3 and its error nought; root 12 - 1.22687 = 10.77."""
    making, _ = clean(screw("M12x1", 12.0), shop_r)
    (step,) = [s for s in steps(making, "screw") if s.tool_kind == "threading"]
    drivers, driven = (
        part.split("x") for part in step.dial[0].split("gears ")[1].split(" ")[0].split("/")[:2]
    )

    assert float(step.big) == pytest.approx(12 - 1.22687, abs=0.01)
    assert int(drivers[0]) * 3 == int(driven[0])
    assert "exactly" in step.dial[0]
    assert step.speed in shop_r.lathe.speeds


def test_a_left_hand_thread_is_never_cut_with_the_die(shop_r):
    """M8 is owned as a die, of the right hand only."""
    making, _ = clean(screw("M8", 8.0, left=True), shop_r)
    (step,) = [s for s in steps(making, "screw") if "thread" in s.do]

    assert step.tool_kind == "threading" and "left-hand" in step.do
    assert any("from the undercut outwards" in line for line in step.dial)


def test_a_right_hand_thread_still_takes_its_die(shop_r):
    """M8 with the die."""
    making, _ = clean(screw("M8", 8.0), shop_r)

    assert [s.tool_kind for s in steps(making, "screw")][-1] == "die"


def test_without_lead_screw_a_thread_without_a_die_is_refused(shop_r):
    """The stop names both ways out."""
    poor = replace(shop_r, lathe=replace(shop_r.lathe, change_gears=()))
    making, _ = routed(screw("M12x1", 12.0), poor)
    (found,) = [f for f in making.findings if f.number == 416]

    assert found.severity == "stop" and "single point" in found.remedy


def test_a_knurled_head_is_held_through_copper_strips_where_nothing_else_holds(shop_r):
    """No M12x1 tap for a sleeve: the top of the head is faced with strips under the jaws, never bare."""
    cap = shape(
        Cylinder("grip", Dim(18.0), 0.0, 8.0, 0.5, 0.5, knurl=Knurl("straight", 0.8)),
        Cylinder("screw", Dim(12.0), 8.0, 17.0, 0.0, 1.0, thread="M12x1"),
        grooves=(Groove("neck", 8.0, 9.5, 10.4),),
    )
    making, _ = clean(cap, shop_r)
    last = making.cards[-1]

    assert last.hold.device.endswith("copper strips")
    assert any("strips under the jaws" in line for line in last.before_starting)
