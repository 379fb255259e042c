"""A small design to record against: a wheel on a shaft between two bushes."""

from __future__ import annotations

import pytest

from tommybar.design.model import FitRelation, LoopRelation, LoopTerm, Part, SizedDesign
from tommybar.shapes.features import Bore, Cylinder, Dim, PlateShape, TurnedShape


def dim(name: str, value: float, zone: str = "", lower: float = 0.0, upper: float = 0.0) -> Dim:
    """A figure with its deviations [mm]; without a zone it has no limits."""
    if not zone:
        return Dim(value, name)
    return Dim(value, name, zone, round(value + lower, 4), round(value + upper, 4))


@pytest.fixture
def design() -> SizedDesign:
    """Wheel 10 H7 on a shaft 10 h7; the seat's length closes a loop in a base of 50."""
    wheel = TurnedShape(
        length=dim("wheel.length", 24.0),
        outside=(Cylinder("rim", dim("wheel.rim", 90.0), 0.0, 24.0),),
        bores=(Bore("bore", dim("wheel.bore", 10.0, "H7", 0.0, 0.015), "A", 24.0, through=True),),
    )
    shaft = TurnedShape(
        length=dim("shaft.length", 79.9),
        outside=(
            Cylinder("journal_a", dim("shaft.journal_a", 8.0, "f7", -0.028, -0.013), 0.0, 16.0),
            Cylinder("seat", dim("shaft.seat", 10.0, "h7", -0.015, 0.0), 16.0, 59.9),
            Cylinder("journal_b", dim("shaft.journal_b", 8.0, "f7", -0.028, -0.013), 59.9, 79.9),
        ),
    )
    bush = TurnedShape(
        length=dim("bush.length", 13.0),
        outside=(
            Cylinder("flange", dim("bush.flange", 20.0), 0.0, 3.0),
            Cylinder("body", dim("bush.body", 12.0, "p6", 0.018, 0.029), 3.0, 13.0),
        ),
        bores=(Bore("bore", dim("bush.bore", 8.0, "H7", 0.0, 0.015), "A", 13.0, through=True),),
    )
    base = PlateShape(dim("base.length", 120.0), dim("base.width", 50.0), dim("base.thickness", 16.0))
    return SizedDesign(
        title="Trial",
        revision="A",
        units="mm",
        values=(),
        parts=(
            Part("wheel", "turned", "mild steel", 1, wheel),
            Part("shaft", "turned", "silver steel", 1, shaft),
            Part("bush", "turned", "phosphor bronze", 2, bush),
            Part("base", "plate", "aluminium 6082", 1, base),
        ),
        fits=(
            FitRelation("wheel.bore", "shaft.seat", "H7/h7"),
            FitRelation("bush.bore", "shaft.journal_a", "H7/f7"),
            FitRelation("bush.bore", "shaft.journal_b", "H7/f7"),
        ),
        loops=(
            LoopRelation(
                "end float",
                (
                    LoopTerm("base.width", 1.0, 50.0),
                    LoopTerm("bush.flange.long", -2.0, 3.0),
                    LoopTerm("shaft.seat.long", -1.0, 43.9),
                ),
                0.05,
                0.2,
                "shaft",
            ),
        ),
    )
