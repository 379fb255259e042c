"""Turned parts that between them carry every turned feature, invented for tests of sheets."""

from __future__ import annotations

from tommybar.design.model import Part, RunoutNeed
from tommybar.shapes.features import (
    Arc,
    Bore,
    BoreGroove,
    BoreKeyway,
    BoreTaper,
    CentreHole,
    CircleHoles,
    Cone,
    CrossHole,
    CrossSlot,
    Cup,
    Cylinder,
    Dim,
    Eccentric,
    Engraving,
    FaceGroove,
    Flats,
    Groove,
    HeadSlot,
    Keyway,
    Knurl,
    Recess,
    Slit,
    TurnedShape,
)


def limited(value: float, zone: str, smallest: float, largest: float) -> Dim:
    """A size with limits."""
    return Dim(value, "", zone, smallest, largest)


SHAPES: dict[str, TurnedShape] = {}
SHAPES["spindle"] = TurnedShape(
    Dim(120.0),
    (
        Cylinder("nose", Dim(12.0), 0, 18, 0.5, 0, "M12"),
        Cylinder("seat", limited(16.0, "h6", 15.989, 16.0), 18, 48, 0, 0, corner_end=0.4),
        Cylinder("collar", Dim(24.0), 48, 54, 1, 1),
        Cone("taper", 54, 94, 20.0, 16.0, "D L a"),
        Cylinder("tail", limited(10.0, "g6", 9.986, 9.995), 94, 120, 0, 1, corner_start=0.4),
    ),
    grooves=(Groove("undercut", 16, 18, 9.5), Groove("ring", 110, 111.1, 9.0, 0.2)),
    centres=(CentreHole("c1", "A", "A", 2.5, "may"), CentreHole("c2", "B", "B", 2.5, "must")),
    keyways=(Keyway("key", 24, 40, limited(5.0, "N9", 4.97, 5.0), 3.0, 90.0),),
    cross_holes=(CrossHole("pin", Dim(3.0), 102, 0.0, 2),),
)
SHAPES["knob"] = TurnedShape(
    Dim(40.0),
    (
        Arc("top", 0, 10, 0.0, 24.0, 12.2, "out", "dome"),
        Cylinder("grip", Dim(24.0), 10, 24, 0, 1, knurl=Knurl("diamond", 0.8)),
        Arc("neck", 24, 32, 20.0, 14.0, 9.0, "in", "cove"),
        Cylinder("foot", Dim(14.0), 32, 40, 0, 0.5),
    ),
    bores=(Bore("tapped", Dim(6.0), "B", 18, False, "drill", "M6", 0.5, full=12.0),),
)
SHAPES["ball"] = TurnedShape(
    Dim(36.0),
    (
        Arc("ball", 0, 18.0, 0.0, 12.0, 10.0, "out", "ball"),
        Cylinder("shank", Dim(12.0), 18, 36, 0, 0.5, "M12", full=15.0),
    ),
)
SHAPES["flange"] = TurnedShape(
    Dim(20.0),
    (
        Cylinder("rim", Dim(80.0), 0, 8, 1, 1),
        Cylinder("hub", limited(30.0, "h7", 29.979, 30.0), 8, 20, 0, 0.5, corner_start=0.5),
    ),
    bores=(
        Bore("bore", limited(12.0, "H7", 12.0, 12.018), "A", 20, True, edge=0.5),
        Bore("counter", Dim(20.0), "B", 5, False, corner=0.2),
    ),
    recesses=(Recess("dish", "A", 36.0, 64.0, 3.0, 1.0, 5.0, 5.0),),
    circle_holes=(
        CircleHoles("screws", Dim(5.5), 6, 70.0, 30.0, 0, 8, "", 8.0, 3.0, "A"),
        CircleHoles("taps", Dim(4.0), 3, 50.0, 90.0, 3.0, 8, "M4"),
    ),
    bore_keyways=(BoreKeyway("kw", "bore", Dim(4.0), 1.8, 90.0),),
)
SHAPES["collet"] = TurnedShape(
    Dim(45.0),
    (
        Cone("mouth", 0, 8, 20.0, 14.0, "D d L"),
        Cylinder("body", Dim(14.0), 8, 35, 0, 0),
        Cylinder("screw", Dim(12.0), 35, 45, 0, 1, "M12x1"),
    ),
    bores=(
        Bore("bore", limited(6.0, "H7", 6.0, 6.012), "A", 45, True),
        Bore("back", Dim(8.0), "B", 20, False),
    ),
    slits=(Slit("slit", "A", 1.0, 30.0, 90.0, 2), Slit("slit2", "A", 1.0, 30.0, 0.0, 2)),
    bore_grooves=(BoreGroove("relief", "bore", 10, 12, 7.0),),
)
SHAPES["crankpin"] = TurnedShape(
    Dim(60.0),
    (
        Cylinder("journal", limited(12.0, "f7", 11.966, 11.984), 0, 20, 0.5),
        Cylinder("web", Dim(30.0), 20, 26, 0.5, 0.5),
        Eccentric("pin", limited(10.0, "f7", 9.972, 9.987), 26, 44, 6.0, 90.0),
        Cylinder("web2", Dim(30.0), 44, 50, 0.5, 0.5),
        Cylinder("square", Dim(12.0), 50, 60, 0, 0.5),
    ),
    flats=(Flats("sq", 4, 4.5, 52, 60, 0.0, Dim(9.0)),),
)
SHAPES["screw"] = TurnedShape(
    Dim(30.0),
    (
        Cylinder("head", Dim(12.0), 0, 6, 0.5, 0),
        Cylinder("thread", Dim(6.0), 6, 27, 0, 0, "M6"),
        Cone("point", 27, 30, 5.0, 0.0, "D d a"),
    ),
    grooves=(Groove("uc", 6, 7.5, 4.5),),
    head_slots=(HeadSlot("slot", "A", Dim(1.2), 2.0, 0.0),),
)
SHAPES["bob"] = TurnedShape(
    Dim(90.0),
    (
        Cylinder("neck", Dim(10.0), 0, 12, 0.5),
        Arc("shoulder", 12, 24, 10.0, 34.0, 12.0, "out", "dome"),
        Cylinder("body", Dim(34.0), 24, 50),
        Cone("nose", 50, 90, 34.0, 0.0, "D d L"),
    ),
    bores=(
        Bore("hole", Dim(2.0), "A", 12, False, "drill"),
        Bore("cap", Dim(6.0), "A", 8, False, "drill", "M6", 0.3, full=6.0),
    ),
    cross_holes=(CrossHole("string", Dim(2.0), 20.0, 0.0, 2),),
    cups=(),
)
SHAPES["cup"] = TurnedShape(
    Dim(16.0),
    (Cylinder("body", Dim(8.0), 0, 16, 0.3, 0.3, "M8x1"),),
    cups=(Cup("cup", "A", 4.0, 90.0, 0.8, 3.0),),
    head_slots=(HeadSlot("s", "B", Dim(1.0), 1.5),),
)
SHAPES["hexnut"] = TurnedShape(
    Dim(12.0),
    (Cylinder("blank", Dim(22.0), 0, 12, 1, 1),),
    bores=(Bore("t", Dim(12.0), "A", 12, True, thread="M12", edge=1.0),),
    flats=(Flats("hex", 6, 9.5, 0, 12, 0.0, Dim(19.0)),),
)
SHAPES["dial"] = TurnedShape(
    Dim(18.0),
    (
        Cylinder("dial", Dim(40.0), 0, 12, 0.3, 0.3),
        Cylinder("boss", Dim(20.0), 12, 18, 0, 0.5, "", Knurl("straight", 0.8)),
    ),
    bores=(Bore("bore", limited(8.0, "H7", 8.0, 8.015), "A", 18, True, edge=0.3),),
    cross_holes=(CrossHole("grub", Dim(3.0), 15.0, 45.0, 1, "M3", "bore"),),
    engravings=(Engraving("scale", "dial", 60, 3.0, 5.0, 5, "0 to 60"),),
)
SHAPES["drum"] = TurnedShape(
    Dim(30.0),
    (
        Cylinder("f1", Dim(50.0), 0, 4, 0.5, 0.5),
        Cylinder("body", Dim(30.0), 4, 26, corner_start=1.0, corner_end=1.0),
        Cylinder("f2", Dim(50.0), 26, 30, 0.5, 0.5),
    ),
    bores=(Bore("bore", limited(10.0, "H7", 10.0, 10.015), "A", 30, True, edge=0.5),),
    face_grooves=(FaceGroove("fg", "A", 34.0, 40.0, 2.0),),
    bore_tapers=(BoreTaper("bt", "B", 0.0, 10.0, 14.0, 12.0),),
    cross_slots=(CrossSlot("cs", 10, 20, Dim(5.0), 0.0, 1),),
)

SHAPES["bolt"] = TurnedShape(
    Dim(50.0),
    (
        Cylinder("head", Dim(18.0), 0, 8, round_start=2.0),
        Cylinder("body", Dim(10.0), 8, 50, 0, 1.0, "M10", full=26.0, corner_start=0.5),
    ),
    cross_holes=(
        CrossHole("split", Dim(2.0), 44.0, 90.0, 2),
        CrossHole("oil", Dim(3.0), 4.0, 0.0, 1, depth=6.0, sink_dia=5.0, sink_depth=1.0),
    ),
)
SHAPES["arbor"] = TurnedShape(
    Dim(100.0),
    (
        Cone("morse", 0, 62, 14.0, 17.0, "D d L", "Morse 2"),
        Cylinder("neck", Dim(16.0), 62, 70),
        Cylinder("seat", limited(16.0, "h6", 15.989, 16.0), 70, 100, 0, 1.0),
    ),
    grooves=(Groove("vee", 64, 66, 14.0, form="vee"), Groove("round", 67, 69, 14.0, form="round")),
    keyways=(Keyway("disc", 80, 90, Dim(3.0), 3.7, 90.0, "woodruff", 13.0),),
    bores=(Bore("drawbar", Dim(10.0), "A", 30.0, False, "drill", "M10", full=22.0),),
)
SHAPES["long"] = TurnedShape(
    Dim(180.0),
    tuple(
        Cylinder(f"step_{n}", Dim(10.0 + (n * 7) % 5), 20.0 * n, 20.0 * (n + 1), 0.5 if n == 0 else 0.0)
        for n in range(9)
    ),
)
SHAPES["medley"] = TurnedShape(
    Dim(70.0),
    (
        Cylinder("left", Dim(12.0), 0, 16, 1.0, 0, "M12", left=True),
        Cylinder("relief", Dim(14.0), 16, 20, corner_end=0.5),
        Cylinder("collar", Dim(26.0), 20, 30, 0.5, 1.0, edge_end_angle=30.0),
        Cylinder("stem", Dim(18.0), 30, 46, corner_start=1.0),
        Arc("fillet", 46, 50, 18.0, 26.0, 4.0, "in", "fillet"),
        Cylinder("drum", Dim(26.0), 50, 70, round_end=1.0),
    ),
    bores=(Bore("pocket", Dim(8.0), "B", 12.0, False, "ball"), Bore("mouth", Dim(12.0), "B", 4.0, False)),
    cross_holes=(CrossHole("aside", Dim(3.0), 25.0, 90.0, 2, offset=8.0),),
    flats=(Flats("flat", 1, 11.0, 52.0, 62.0, 180.0),),
    keyways=(Keyway("sled", 32, 44, Dim(4.0), 2.0, 90.0, "sled", 40.0),),
)
NEEDS = {
    "spindle": (RunoutNeed("tail", "seat", 0.01),),
    "flange": (RunoutNeed("hub", "bore", 0.02), RunoutNeed("rim", "hub", 0.05)),
}
VOCABULARY = tuple(
    Part(name, "turned", "mild steel", 1, shape, NEEDS.get(name, ())) for name, shape in SHAPES.items()
)
