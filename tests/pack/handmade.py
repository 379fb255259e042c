"""The demonstrator's parts with their figures written in by hand, for tests of drawings."""

from __future__ import annotations

from tommybar.design.model import FitRelation, LoopRelation, LoopTerm, Part, Purpose, RunoutNeed, SizedDesign
from tommybar.pack.imprint import Imprint
from tommybar.pack.units import Reader
from tommybar.shapes.features import (
    Bore,
    CircleHoles,
    CrossHole,
    Cylinder,
    Dim,
    Groove,
    Knurl,
    PlateHole,
    PlateShape,
    Recess,
    TurnedShape,
)

WHEEL = Part(
    "wheel",
    "turned",
    "mild steel",
    1,
    TurnedShape(
        Dim(24.0, "wheel.length"),
        (
            Cylinder("rim", Dim(90.0, "wheel.rim"), 0.0, 14.0, 1.0, 1.0),
            Cylinder("boss", Dim(26.0, "wheel.boss"), 14.0, 24.0, 0.0, 0.5),
        ),
        bores=(Bore("bore", Dim(10.0, "wheel.bore", "H7", 10.0, 10.015), "A", 24.0, True, edge=0.5),),
        recesses=(Recess("recess", "A", 26.0, 70.0, 8.0, 0.4),),
        circle_holes=(CircleHoles("holes", Dim(10.0, "wheel.holes"), 5, 48.0, 90.0, 8.0, 14.0),),
        cross_holes=(CrossHole("grub", Dim(4.0, "wheel.grub"), 19.0, 0.0, 1, "M4", "bore"),),
    ),
    (RunoutNeed("rim", "bore", 0.04),),
)
SHAFT = Part(
    "shaft",
    "turned",
    "silver steel",
    1,
    TurnedShape(
        Dim(77.9, "shaft.length"),
        (
            Cylinder("crank_end", Dim(6.0, "shaft.crank_end"), 0.0, 9.0, 0.5, 0.0, "M6"),
            Cylinder("journal_a", Dim(8.0, "shaft.journal_a", "f7", 7.972, 7.987), 9.0, 25.0, 0.5),
            Cylinder("seat", Dim(10.0, "shaft.seat", "h7", 9.985, 10.0), 25.0, 63.9, 0.5, 0.5),
            Cylinder("journal_b", Dim(8.0, "shaft.journal_b", "f7", 7.972, 7.987), 63.9, 77.9, 0.0, 0.5),
        ),
        grooves=(Groove("undercut", 7.5, 9.0, 4.5),),
    ),
    (RunoutNeed("journal_a", "seat", 0.03), RunoutNeed("journal_b", "seat", 0.03)),
)
BUSH = Part(
    "bush",
    "turned",
    "phosphor bronze",
    2,
    TurnedShape(
        Dim(13.0, "bush.length"),
        (
            Cylinder("flange", Dim(20.0, "bush.flange"), 0.0, 3.0, 0.3, 0.3),
            Cylinder("body", Dim(12.0, "bush.body", "p6", 12.018, 12.029), 3.0, 13.0, 0.0, 1.0),
        ),
        grooves=(Groove("undercut", 3.0, 4.0, 11.4),),
        bores=(
            Bore("bore", Dim(8.0, "bush.bore", "H7", 8.0, 8.015), "A", 13.0, True, edge=0.3, after="press"),
        ),
    ),
)
CRANK = Part(
    "crank",
    "turned",
    "aluminium 6082",
    1,
    TurnedShape(
        Dim(8.0, "crank.length"),
        (Cylinder("disc", Dim(44.0, "crank.disc"), 0.0, 8.0, 0.5, 0.5),),
        bores=(Bore("tapped", Dim(6.0, "crank.tapped"), "A", 8.0, True, thread="M6", edge=0.5),),
        circle_holes=(CircleHoles("pin", Dim(4.0, "crank.pin"), 1, 32.0, 90.0, 0.0, 8.0, "M4"),),
    ),
)
HANDLE = Part(
    "handle",
    "turned",
    "free-cutting brass",
    1,
    TurnedShape(
        Dim(26.0, "handle.length"),
        (
            Cylinder("screw", Dim(4.0, "handle.screw"), 0.0, 8.0, 0.5, 0.0, "M4"),
            Cylinder("head", Dim(12.0, "handle.head"), 8.0, 26.0, 0.5, 0.5, "", Knurl("straight", 0.8)),
        ),
        grooves=(Groove("neck", 6.8, 8.0, 3.0),),
    ),
)
PILLAR = Part(
    "pillar",
    "plate",
    "mild steel",
    2,
    PlateShape(
        Dim(81.0, "pillar.length"),
        Dim(30.0, "pillar.width"),
        Dim(10.0, "pillar.thickness"),
        holes=(
            PlateHole("bore", "top", 66.0, 15.0, Dim(12.0, "pillar.bore", "H7", 12.0, 12.018)),
            PlateHole("foot_1", "top", 8.0, 7.0, Dim(5.5, "pillar.foot")),
            PlateHole("foot_2", "top", 8.0, 23.0, Dim(5.5, "pillar.foot")),
        ),
    ),
)
BASE = Part(
    "base",
    "plate",
    "aluminium 6082",
    1,
    PlateShape(
        Dim(120.0, "base.length"),
        Dim(50.0, "base.width"),
        Dim(16.0, "base.thickness"),
        holes=(
            PlateHole("front_1", "front", 52.0, 8.0, Dim(5.0), 12.0, "M5"),
            PlateHole("front_2", "front", 68.0, 8.0, Dim(5.0), 12.0, "M5"),
            PlateHole("back_1", "back", 52.0, 8.0, Dim(5.0), 12.0, "M5"),
            PlateHole("back_2", "back", 68.0, 8.0, Dim(5.0), 12.0, "M5"),
            PlateHole("bench_1", "top", 10.0, 25.0, Dim(6.6)),
            PlateHole("bench_2", "top", 110.0, 25.0, Dim(6.6)),
        ),
    ),
)
GRUB = Part("grub", "bought", "steel", 1, None, bought="ISO 4026 M4 x 6")
PARTS = (PILLAR, BASE, WHEEL, BUSH, SHAFT, CRANK, HANDLE, GRUB)
DESIGN = SizedDesign(
    "Hand-cranked flywheel demonstrator",
    "A",
    "mm",
    (("wheel_dia", 90.0),),
    PARTS,
    (
        FitRelation("wheel.bore", "shaft.seat", "H7/h7"),
        FitRelation("bush.bore", "shaft.journal_a", "H7/f7"),
        FitRelation("bush.bore", "shaft.journal_b", "H7/f7"),
        FitRelation("pillar.bore", "bush.body", "H7/p6", "press"),
    ),
    (
        LoopRelation(
            "end float",
            (
                LoopTerm("base.width", 1.0, 50.0),
                LoopTerm("bush.flange.long", -2.0, 3.0),
                LoopTerm("shaft.seat.long", -1.0, 38.9),
            ),
            0.05,
            0.2,
            "shaft",
        ),
    ),
    (),
    (Purpose(("wheel", "shaft", "crank", "handle"), 240.0, 6.3, True),),
    ("Screw the base to the bench before the crank is turned.",),
)
IMPRINT = Imprint(DESIGN.title, "A", "7c1e04", 1.0, "shop R", Reader("mm"))
MADE_PARTS = tuple(part for part in PARTS if part.shape is not None)
