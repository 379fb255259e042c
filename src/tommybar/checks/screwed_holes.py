"""Holes that screws go through and into, as a design names them."""

from __future__ import annotations

from dataclasses import dataclass

from tommybar.design.model import Part, SizedDesign
from tommybar.shapes.screwed_holes import HoleForScrew, hole_for_screw


@dataclass(frozen=True)
class ScrewedHole:
    """One hole of a part, and what a screw meets in it."""

    part: Part
    feature: str
    hole: HoleForScrew

    @property
    def name(self) -> str:
        """The hole as a design names it."""
        return f"{self.part.name}.{self.feature}"

    @property
    def dia(self) -> float:
        """Diameter as drilled [mm]."""
        return self.hole.dia

    @property
    def metal(self) -> float:
        """From a head's seat to the far side [mm]."""
        return self.hole.metal

    @property
    def thread(self) -> float:
        """Length that is cut all round; 0 for a plain hole [mm]."""
        return self.hole.thread

    @property
    def end(self) -> float | None:
        """How far a screw may go in; None where it comes out [mm]."""
        return self.hole.end


def screwed_hole(design: SizedDesign, name: str) -> ScrewedHole | None:
    """The hole that part.feature names; None for what is no hole, or leans."""
    part = next((one for one in design.parts if one.name == name.split(".")[0]), None)
    feature = name.partition(".")[2]
    hole = hole_for_screw(part.shape, feature) if part is not None else None
    return ScrewedHole(part, feature, hole) if part is not None and hole is not None else None
