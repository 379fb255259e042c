"""Screws, engaged threads, fits, and metals that run on each other."""

from __future__ import annotations

import pytest

from tommybar.design.model import FitRelation, Purpose, ScrewRelation
from tommybar.shapes.features import Bore, Cylinder, Dim, PlateHole, TurnedShape

from .asking import disc, figures_of, finds, limits, part, passes, plate, stud

TAPPED = PlateHole("tapped", "front", 30.0, 8.0, Dim(5.0), 12.0, "M5")
JOINT = (ScrewRelation(("pillar.foot",), "base.tapped", "M5"),)


def joint(
    length: float, *, through: float = 5.5, metal: str = "aluminium 6082", depth: float = 12.0
) -> list[object]:
    """A pillar of 10 screwed to a base with one M5."""
    tapped = PlateHole("tapped", "front", 30.0, 8.0, Dim(5.0), depth, "M5")
    return [
        part("pillar", plate(PlateHole("foot", "top", 10.0, 20.0, Dim(through)))),
        part("base", plate(tapped, thick=16.0), metal),
        part("screws", None, "", bought=f"ISO 4762 M5 x {length:g}"),
    ]


def test_engagement_by_metal() -> None:
    """Six of M5 are 1.2 d: too little in aluminium (1.3), enough in steel (0.8); 20 long suits."""
    found = finds(630, *joint(16.0), screws=JOINT)  # type: ignore[arg-type]
    assert (found.figure, found.bound) == ("6.00 mm", "6.50 mm")
    assert "M5 x 20" in found.remedy
    assert passes(*joint(16.0, metal="mild steel"), screws=JOINT)  # type: ignore[arg-type]
    assert passes(*joint(20.0), screws=JOINT)  # type: ignore[arg-type]
    assert figures_of(*joint(20.0), screws=JOINT)["thread engaged", "base"].value == 10.0  # type: ignore[arg-type]


def test_a_screw_that_bottoms_or_does_not_pass_or_is_not_there() -> None:
    """631, 632 and 633, and equal holes are said once."""
    assert finds(631, *joint(25.0), screws=JOINT).figure == "15 mm"  # type: ignore[arg-type]
    assert finds(632, *joint(20.0, through=5.0), screws=JOINT).severity == "stop"  # type: ignore[arg-type]
    assert finds(633, *joint(20.0)[:2], screws=JOINT).part == "base"  # type: ignore[arg-type]


def test_screwed_parts_count_their_thread_without_its_neck() -> None:
    """M6, 10 long, in 6 mm of aluminium: 1.0 d; in 8 mm 1.33 d."""

    def crank(thick: float) -> object:
        bores = (Bore("bore", Dim(6.0), "A", thick, True, thread="M6"),)
        return part("crank", disc(40.0, thick, bores=bores), "aluminium 6082")

    shaft = part("shaft", stud(20.0, "M6", 10.0))
    assert finds(630, crank(6.0), shaft).figure == "6.00 mm"  # type: ignore[arg-type]
    assert passes(crank(8.0), shaft)  # type: ignore[arg-type]


def running(hole_metal: str, shaft_metal: str, shaft: Dim) -> tuple[list[object], dict[str, object]]:
    parts = [
        part(
            "bush",
            disc(20.0, 10.0, bores=(Bore("bore", limits(8.0, 0, 15, "H7"), "A", 10.0, True),)),
            hole_metal,
        ),
        part("shaft", TurnedShape(Dim(50.0), (Cylinder("journal", shaft, 0.0, 50.0),)), shaft_metal),
    ]
    fit = FitRelation("bush.bore", "shaft.journal", f"H7/{shaft.zone}")
    return parts, {"fits": (fit,), "purposes": (Purpose(("shaft",), 240.0),)}


def test_metals_that_run_together() -> None:
    """Bronze under hard steel is silent, steel in steel and aluminium in aluminium are said."""
    f7 = limits(8.0, -28, -13, "f7")
    good, how = running("phosphor bronze", "silver steel", f7)
    assert passes(*good, **how)  # type: ignore[arg-type]
    bad, how = running("aluminium 6082", "aluminium 6082", f7)
    assert finds(640, *bad, **how).severity == "caution"  # type: ignore[arg-type]


def test_a_shaft_that_must_turn_needs_clearance() -> None:
    """p6 in H7 will not turn; sizes of different features are no pair."""
    tight, how = running("phosphor bronze", "silver steel", limits(8.0, 15, 24, "p6"))
    assert finds(646, *tight, **how).figure == "-24 um"  # type: ignore[arg-type]
    other, how = running("phosphor bronze", "silver steel", limits(10.0, -28, -13, "f7"))
    assert finds(645, *other, **how).severity == "stop"  # type: ignore[arg-type]


def pressed(low: float, high: float, **bore: str) -> tuple[list[object], dict[str, object]]:
    hub = plate(PlateHole("bore", "top", 40.0, 20.0, limits(12.0, 0, 18, "H7")))
    bush = TurnedShape(
        Dim(10.0),
        (Cylinder("body", limits(12.0, low, high, "p6"), 0.0, 10.0),),
        bores=(Bore("bore", limits(8.0, 0, 15, "H7"), "A", 10.0, True, **bore),),
    )
    parts = [part("pillar", hub), part("bush", bush, "phosphor bronze")]
    return parts, {"fits": (FitRelation("pillar.bore", "bush.body", "H7/p6", "press"),)}


def test_a_press_joint() -> None:
    """H7/p6 holds; a loose one is said; a bore with limits is finished after pressing."""
    good, how = pressed(18, 29, after="press")
    assert passes(*good, **how)  # type: ignore[arg-type]
    shown = figures_of(*good, **how)  # type: ignore[arg-type]
    assert shown["force to press in, at most", "bush"].value == pytest.approx(3.9, abs=0.5)
    assert 0 < shown["bore closes by, at most", "bush"].value < 29

    loose, how = pressed(-20, -9, after="press")
    assert finds(647, *loose, **how).part == "pillar"  # type: ignore[arg-type]
    before, how = pressed(18, 29)
    assert finds(648, *before, **how).feature == "bore"  # type: ignore[arg-type]
    hard, how = pressed(90, 101, after="press")
    assert finds(649, *hard, **how).severity == "caution"  # type: ignore[arg-type]


def test_a_screw_through_a_leaning_hole_is_said_to_be_unchecked() -> None:
    """Never silent about what is not computed."""
    leaning = plate(PlateHole("foot", "top", 10.0, 20.0, Dim(5.5), tilt=20.0))
    parts = [part("pillar", leaning), *joint(16.0)[1:]]
    one = finds(690, *parts, screws=JOINT)  # type: ignore[arg-type]
    assert (one.severity, one.part) == ("note", "base")


def test_a_press_joint_by_its_interference_is_worked_out_like_a_fit() -> None:
    """20 to 30 um on 12 in a ring of 30: force and stress stand as figures; 0.1 mm stresses mild steel too much."""
    from tommybar.design.joints import PressRelation
    from tommybar.shapes.features import Cylinder, Dim, TurnedShape

    pin = part("pin", TurnedShape(Dim(20.0), (Cylinder("body", Dim(12.0), 0.0, 20.0),)))
    ring = part("ring", disc(30.0, 10.0, 12.0))
    got = figures_of(ring, pin, presses=(PressRelation("ring.bore", "pin.body", 0.02, 0.03, 8.0),))
    assert "8 mm long" in got["force to press in, at most", "pin"].how
    # same metal, solid pin: p = E i (D^2 - d^2) / (2 d D^2); hub hoop p (D^2 + d^2) / (D^2 - d^2)
    pressure = 206000 * 0.03 * (30**2 - 12**2) / (2 * 12 * 30**2)
    hoop = pressure * (30**2 + 12**2) / (30**2 - 12**2)
    mises = (hoop**2 + hoop * pressure + pressure**2) ** 0.5
    assert abs(got["stress in the hub", "ring"].value / mises - 1) < 0.03
    assert finds(649, ring, pin, presses=(PressRelation("ring.bore", "pin.body", 0.09, 0.1, 8.0),))
