"""Plates written in by hand that between them have every feature of plates."""

from __future__ import annotations

import math

from tommybar.design.model import Part
from tommybar.shapes.features import (
    Boss,
    Corner,
    Dim,
    Dovetail,
    Outline,
    PlateEdge,
    PlateHole,
    PlateShape,
    PlateSlit,
    PlateStep,
    Pocket,
    Slot,
    Vee,
)

SLIDE = Part(
    "slide_block",
    "plate",
    "mild steel",
    1,
    PlateShape(
        Dim(80.0, "slide_block.length"),
        Dim(50.0, "slide_block.width"),
        Dim(20.0, "slide_block.thickness"),
        holes=(
            PlateHole("ream", "top", 15.0, 12.0, Dim(8.0, "", "H7", 8.0, 8.015), place=0.1),
            PlateHole("head_1", "top", 65.0, 12.0, Dim(5.5), sink_dia=10.0, sink_depth=5.4),
            PlateHole("head_2", "top", 65.0, 38.0, Dim(5.5), sink_dia=10.0, sink_depth=5.4),
            PlateHole("tap", "top", 15.0, 38.0, Dim(5.0), 12.0, "M5"),
            PlateHole("lean", "top", 40.0, 25.0, Dim(4.0), tilt=20.0, towards=0.0, flat=True),
            PlateHole("end", "right", 25.0, 10.0, Dim(4.0), 10.0, "M4"),
            PlateHole("peg", "front", 40.0, 14.0, Dim(3.0), 8.0),
        ),
        slots=(Slot("slot", "top", 40.0, 44.0, 30.0, Dim(6.0), 4.0),),
        pockets=(Pocket("pocket", "top", 40.0, 10.0, Dim(24.0), Dim(10.0), 3.0, 6.0),),
        steps=(PlateStep("step", "bottom", "left", Dim(8.0), Dim(5.0)),),
        vees=(Vee("vee", "top", "y", 28.0, 6.0, 90.0),),
        edges=(PlateEdge("edge", "top", 0.5),),
    ),
)
LINK = Part(
    "link",
    "plate",
    "gauge plate",
    2,
    PlateShape(
        Dim(70.0),
        Dim(24.0),
        Dim(6.0),
        outline=Outline("bosses", bosses=(Boss(12.0, 12.0, 12.0), Boss(62.0, 12.0, 8.0))),
        holes=(
            PlateHole("big", "top", 12.0, 12.0, Dim(10.0, "", "H7", 10.0, 10.015)),
            PlateHole("small", "top", 62.0, 12.0, Dim(6.0)),
        ),
    ),
)
GUSSET = Part(
    "gusset",
    "plate",
    "free-cutting brass",
    1,
    PlateShape(
        Dim(60.0),
        Dim(45.0),
        Dim(3.0),
        outline=Outline(
            "polygon",
            corners=(Corner(0, 0, 2.0), Corner(60, 0, 5.0), Corner(20, 45, 3.0), Corner(0, 45, 0.0)),
        ),
        holes=(
            PlateHole("sunk_1", "top", 10.0, 10.0, Dim(4.0), sink_dia=8.0, sink_angle=90.0),
            PlateHole("sunk_2", "top", 40.0, 8.0, Dim(4.0), sink_dia=8.0, sink_angle=90.0),
        ),
        edges=(PlateEdge("edge", "top", 1.0, True),),
    ),
)
COLLAR = Part(
    "clamp_disc",
    "plate",
    "free-cutting brass",
    1,
    PlateShape(
        Dim(50.0),
        Dim(50.0),
        Dim(4.0),
        outline=Outline("disc", bosses=(Boss(25.0, 25.0, 25.0),)),
        holes=tuple(
            PlateHole(f"hole_{n}", "top", 25.0 + 18.0 * x, 25.0 + 18.0 * y, Dim(4.0))
            for n, (x, y) in enumerate([(1.0, 0.0), (0.0, 1.0), (-1.0, 0.0), (0.6, -0.8)], 1)
        ),
        slits=(PlateSlit("slit", "front", 25.0, 10.0, 1.0),),
    ),
)
BED = Part(
    "bed",
    "plate",
    "cast iron",
    1,
    PlateShape(
        Dim(60.0),
        Dim(40.0),
        Dim(16.0),
        dovetails=(Dovetail("way", "x", 20.0, Dim(14.0), 6.0, 60.0),),
        steps=(PlateStep("ledge", "top", "front", Dim(5.0), Dim(4.0)),),
    ),
)
FLANGE = Part(
    "flange",
    "plate",
    "mild steel",
    1,
    PlateShape(
        Dim(80.0),
        Dim(50.0),
        Dim(6.0),
        8.0,
        holes=(
            PlateHole("bore", "top", 40.0, 25.0, Dim(16.0, "", "H7", 16.0, 16.018)),
            *(
                PlateHole(
                    f"bolt_{n + 1}",
                    "top",
                    round(40.0 + 18.0 * math.cos(math.radians(18 + 72 * n)), 9),
                    round(25.0 + 18.0 * math.sin(math.radians(18 + 72 * n)), 9),
                    Dim(4.0),
                )
                for n in range(5)
            ),
        ),
    ),
)
PLATES = (SLIDE, LINK, GUSSET, COLLAR, BED, FLANGE)
