"""A small mechanism built from records: a foot with two posts, bushes pressed into them, a spindle with a wheel."""

from __future__ import annotations

from dataclasses import replace

from tommybar.design.joints import SweepRelation
from tommybar.design.model import FitRelation, LoopRelation, LoopTerm, Part, ScrewRelation, SizedDesign
from tommybar.shapes.features import Bore, Cylinder, Dim, PlateHole, PlateShape, Shape, TurnedShape


def part(name: str, shape: Shape, count: int = 1) -> Part:
    """A part of mild steel."""
    return Part(name, "turned" if isinstance(shape, TurnedShape) else "plate", "mild steel", count, shape)


FOOT = PlateShape(
    Dim(60.0),
    Dim(30.0),
    Dim(10.0),
    holes=tuple(
        PlateHole(f"{face}_{n}", face, x, 5.0, Dim(3.3), 8.0, "M4")  # type: ignore[arg-type]
        for face in ("front", "back")
        for n, x in ((1, 22.0), (2, 38.0))
    ),
)
POST = PlateShape(  # x stands up from the foot's underside
    Dim(50.0),
    Dim(24.0),
    Dim(6.0),
    holes=(
        PlateHole("bore", "top", 40.0, 12.0, Dim(8.0)),
        PlateHole("foot_1", "top", 5.0, 4.0, Dim(4.5)),
        PlateHole("foot_2", "top", 5.0, 20.0, Dim(4.5)),
    ),
)
BUSH = TurnedShape(  # face A is the flange
    Dim(8.0),
    (Cylinder("flange", Dim(14.0), 0.0, 2.0), Cylinder("body", Dim(8.0), 2.0, 8.0)),
    bores=(Bore("bore", Dim(5.0), "A", 8.0, True),),
)
SPINDLE = TurnedShape(
    Dim(46.0),
    (
        Cylinder("tail", Dim(5.0), 0.0, 10.0),
        Cylinder("seat", Dim(8.0), 10.0, 35.8),
        Cylinder("nose", Dim(5.0), 35.8, 46.0),
    ),
)
WHEEL = TurnedShape(
    Dim(12.0), (Cylinder("rim", Dim(40.0), 0.0, 12.0),), bores=(Bore("bore", Dim(8.0), "A", 12.0, True),)
)


def mechanism() -> SizedDesign:
    """The whole of it: 30 between the posts, 25.8 of seat and two flanges of 2, so 0.2 of end float."""
    return SizedDesign(
        "Test mechanism",
        "A",
        "mm",
        (),
        (
            part("foot", FOOT),
            part("post", POST, 2),
            part("bush", BUSH, 2),
            part("spindle", SPINDLE),
            part("wheel", WHEEL),
        ),
        fits=(
            FitRelation("wheel.bore", "spindle.seat", "H7/h7"),
            FitRelation("bush.bore", "spindle.tail", "H7/f7"),
            FitRelation("bush.bore", "spindle.nose", "H7/f7"),
            FitRelation("post.bore", "bush.body", "H7/p6", "press"),
        ),
        loops=(
            LoopRelation(
                "end float",
                (
                    LoopTerm("foot.width", 1.0, 30.0),
                    LoopTerm("bush.flange.long", -2.0, 2.0),
                    LoopTerm("spindle.seat.long", -1.0, 25.8),
                ),
                0.1,
                0.3,
                "spindle",
            ),
        ),
        screws=tuple(
            ScrewRelation((f"post.foot_{n}",), f"foot.{face}_{n}", "M4")
            for face in ("front", "back")
            for n in (1, 2)
        ),
        sweeps=(SweepRelation(("spindle", "wheel"), "spindle.seat", (), 1.0),),
    )


def with_shape(design: SizedDesign, name: str, shape: Shape) -> SizedDesign:
    """The design with another shape of one part."""
    parts = tuple(replace(one, shape=shape) if one.name == name else one for one in design.parts)
    return replace(design, parts=parts)
