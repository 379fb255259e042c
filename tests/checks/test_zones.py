"""Zones of fits and stacks of floats, against ISO 286 and by hand."""

from __future__ import annotations

import pytest

from tommybar.checks.zones import fit_zones, float_stacks
from tommybar.design.model import FitRelation, LoopRelation, LoopTerm, Part, SizedDesign
from tommybar.made.record import Made, Measured
from tommybar.shapes.features import Bore, Cylinder, Dim, TurnedShape


def design(joint=""):
    """A wheel 8 H7 on a shaft 8 g6; limits from ISO 286-2 (from memory): +15/0 and -5/-14 um."""
    bore = Dim(8.0, "wheel.bore", "H7", 8.0, 8.015)
    seat = Dim(8.0, "shaft.seat", "g6", 7.986, 7.995)
    wheel = TurnedShape(
        Dim(10.0), (Cylinder("rim", Dim(40.0), 0.0, 10.0),), bores=(Bore("bore", bore, "A", 10.0, True),)
    )
    shaft = TurnedShape(Dim(30.0), (Cylinder("seat", seat, 0.0, 30.0),))
    parts = (
        Part("wheel", "turned", "mild steel", 1, wheel),
        Part("shaft", "turned", "mild steel", 1, shaft),
    )
    loop = LoopRelation(
        "end float",
        (
            LoopTerm("frame.gap", 1.0, 30.02),
            LoopTerm("washer.thick", -2.0, 1.0),
            LoopTerm("shaft.seat.long", -1.0, 27.9),
        ),
        0.05,
        0.2,
        "washer",
    )
    return SizedDesign(
        "x", "A", "mm", (), parts, (FitRelation("wheel.bore", "shaft.seat", "H7/g6", joint),), (loop,)
    )


def test_a_running_fit_plays_as_the_standard_says():
    """8 H7/g6 plays 5 to 29 um (ISO 286: 0 + 5 and 15 + 14)."""
    (fit,) = fit_zones(design(), Made())

    assert (fit.least * 1000, fit.most * 1000) == (pytest.approx(5.0), pytest.approx(29.0))
    assert (fit.hole.low * 1000, fit.shaft.low * 1000) == (pytest.approx(0.0), pytest.approx(-14.0))


def test_a_measured_size_stands_as_it_is():
    """The bore measured 8.021: it plays 26 to 35 um, and the zone is one place."""
    made = Made(measured=(Measured("wheel.bore", 8.021),))
    (fit,) = fit_zones(design(), made)

    assert fit.hole.measured and fit.hole.low == fit.hole.high == pytest.approx(0.021)
    assert (fit.least * 1000, fit.most * 1000) == (pytest.approx(26.0), pytest.approx(35.0))


def test_a_fit_without_limits_is_not_drawn():
    """Nothing is invented for a size under the general tolerance."""
    plain = design()
    part = Part(
        "shaft", "turned", "mild steel", 1, TurnedShape(Dim(30.0), (Cylinder("seat", Dim(8.0), 0, 30),))
    )
    bare = SizedDesign("x", "A", "mm", (), (plain.parts[0], part), plain.fits)

    assert fit_zones(bare, Made()) == ()


def test_a_float_by_hand():
    """30.02 less 2 x 1.00 and 27.9 leaves 0.12; washers from 0.96 to 1.035 keep 0.05 to 0.2."""
    (stack,) = float_stacks(design(), Made())

    assert stack.left == pytest.approx(0.12)
    assert stack.made_last == "washer.thick"
    assert stack.last_limits == (pytest.approx(0.96), pytest.approx(1.035))
    assert [one.length for one in stack.fills] == [pytest.approx(2.0), pytest.approx(27.9)]


def test_a_measured_member_moves_the_limits_of_the_last():
    """The frame measured 30.00 takes 0.01 from each washer; a measured washer has no limits any more."""
    (stack,) = float_stacks(design(), Made(measured=(Measured("frame.gap", 30.00),)))
    assert stack.left == pytest.approx(0.10)
    assert stack.last_limits == (pytest.approx(0.95), pytest.approx(1.025))

    (done,) = float_stacks(design(), Made(measured=(Measured("washer.thick", 0.98),)))
    assert done.left == pytest.approx(0.16)
    assert done.last_limits is None
