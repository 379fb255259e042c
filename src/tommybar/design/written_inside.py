"""The inside and the faces of a turned part as they stand in a design file."""

from __future__ import annotations

from typing import Literal

from pydantic import Field

from tommybar.design.formula import AngleFormula, EdgeFormula, SizeFormula
from tommybar.design.validation import Entry, YesNo
from tommybar.design.written_names import Chamfer, FeatureName, Sized

WhichFace = Literal["A", "B"]


class WrittenBore(Sized):
    """A hole on the axis."""

    name: FeatureName
    dia: SizeFormula | None = None
    thread: str | None = None
    face: WhichFace = Field("A", description="Face it is entered from")
    through: YesNo = False
    deep: SizeFormula | None = None
    bottom: Literal["flat", "drill", "ball"] = "drill"
    corner: EdgeFormula | None = Field(None, description="Radius round a flat bottom")
    full: SizeFormula | None = Field(None, description="Depth of full thread, when less than deep")
    left: YesNo = Field(False, description="A left-hand thread")
    limits: str = ""
    edge: Chamfer | None = None
    after: Literal["", "press", "adhesive", "solder"] = Field("", description="Finished after that joint")


class WrittenBoreTaper(Entry):
    """A conical bore, wide at its face: by two diameters, or one and an angle or a standard taper."""

    name: FeatureName
    face: WhichFace = "A"
    from_face: EdgeFormula | None = Field(None, description="Where it begins below the face")
    deep: SizeFormula | None = Field(None, description="Its length; a standard taper has its own")
    mouth: SizeFormula | None = Field(None, description="Its wide diameter; a standard taper has its own")
    end: EdgeFormula | None = Field(None, description="Its narrow diameter")
    half_angle: AngleFormula | None = None
    included: AngleFormula | None = None
    taper: str = Field("", description="A standard taper, Morse 2 or 1:20")


class WrittenBoreGroove(Entry):
    """A groove inside a bore, ``from_a`` away from face A."""

    name: FeatureName
    on: str = Field(description="Name of the bore")
    from_a: EdgeFormula = Field(description="Distance of its A side from face A")
    wide: SizeFormula
    deep: SizeFormula | None = None
    floor: SizeFormula | None = Field(None, description="Diameter of its floor")


class WrittenCup(Entry):
    """A conical cup in a face, or a countersink ``on`` a bore."""

    name: FeatureName
    face: WhichFace
    mouth: SizeFormula = Field(description="Diameter at its mouth")
    included: AngleFormula = Field(description="Angle between its two sides")
    relief: SizeFormula | None = Field(None, description="Diameter of the small hole at its bottom")
    relief_deep: EdgeFormula | None = Field(None, description="How far that hole goes below the cone")
    on: str = Field("", description="Name of the bore that a countersink opens")


class WrittenCentre(Entry):
    """A centre hole by its form and pilot as ISO 6411 writes them."""

    name: FeatureName
    face: WhichFace
    size: str = Field(description="A 2.5, B 4 or R 3.15")
    keep: Literal["may", "must", "must not"] = Field("may", description="Whether it stays on the part")


class WrittenRecess(Entry):
    """A ring-shaped recess in a face; diameters at its mouth."""

    name: FeatureName
    face: WhichFace
    inside: EdgeFormula
    outside: SizeFormula
    deep: SizeFormula
    corner: EdgeFormula | None = None
    inside_draft: AngleFormula | None = Field(None, description="Lean of its inner wall from the axis")
    outside_draft: AngleFormula | None = Field(None, description="Lean of its outer wall from the axis")


class WrittenFaceGroove(Entry):
    """A narrow ring groove in a face."""

    name: FeatureName
    face: WhichFace
    inside: SizeFormula
    outside: SizeFormula
    deep: SizeFormula
