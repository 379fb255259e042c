"""What is drilled, milled or sawn in a turned part, as it stands in a design file.

Angles are seen from face A, counter-clockwise from the part's x axis.
"""

from __future__ import annotations

from typing import Literal

from pydantic import Field

from tommybar.design.formula import AngleFormula, CountFormula, EdgeFormula, LengthFormula, SizeFormula
from tommybar.design.validation import Entry
from tommybar.design.written_inside import WhichFace
from tommybar.design.written_names import FeatureName, Sized


class WrittenCircle(Sized):
    """Equal holes along the axis on a pitch circle."""

    name: FeatureName
    dia: SizeFormula | None = None
    thread: str | None = None
    count: CountFormula
    circle: SizeFormula = Field(description="Pitch-circle diameter")
    first: AngleFormula | None = Field(None, description="Angle of the first hole")
    face: WhichFace = Field("A", description="Face they are entered from")
    deep: SizeFormula | None = Field(None, description="Depth of blind holes; left out: through")
    sink_dia: SizeFormula | None = Field(None, description="Diameter of a counterbore")
    sink_deep: SizeFormula | None = None
    limits: str = ""


class WrittenCross(Sized):
    """A hole across the axis, in the middle of a land or ``from_a`` away from face A."""

    name: FeatureName
    dia: SizeFormula | None = None
    thread: str | None = None
    on: str = Field(description="Name of the land it enters")
    from_a: SizeFormula | None = None
    angle: AngleFormula | None = None
    walls: Literal[1, 2] = Field(
        1, description="2 goes right through; 1 to the bore, or in solid metal to the axis"
    )
    into: str = Field(
        "", description="Name of the bore, or of the other cross hole, it is meant to break into"
    )
    offset: LengthFormula | None = Field(None, description="Of its axis beside the part's, to the left")
    deep: SizeFormula | None = Field(None, description="Depth from the land's surface, when blind")
    sink_dia: SizeFormula | None = Field(None, description="Diameter of a counterbore")
    sink_deep: SizeFormula | None = None
    limits: str = ""


class WrittenFlats(Entry):
    """Equal flats on a land: one, two, a square (4) or a hexagon (6)."""

    name: FeatureName
    on: str = Field(description="Name of the land they are cut on")
    count: CountFormula = Field(description="1, 2, 3, 4, 6 ...")
    across: SizeFormula | None = Field(None, description="Size across flats")
    deep: SizeFormula | None = Field(None, description="Depth below the round")
    level: SizeFormula | None = Field(None, description="Distance of the flat from the axis")
    at: Literal["a", "b"] | None = Field(None, description="End of the land; left out: all along it")
    long: SizeFormula | None = Field(None, description="Length along the land")
    angle: AngleFormula | None = Field(None, description="Towards which the first flat looks")
    limits: str = ""


class WrittenHeadSlot(Entry):
    """A slot straight across a face and its axis, for a screwdriver."""

    name: FeatureName
    face: WhichFace
    wide: SizeFormula
    deep: SizeFormula
    angle: AngleFormula | None = None
    limits: str = ""


class WrittenCrossSlot(Entry):
    """A slot along a land with half-round ends, through one or both walls."""

    name: FeatureName
    on: str = Field(description="Name of the land it is cut in")
    from_a: EdgeFormula = Field(description="Distance of its A end from face A")
    long: SizeFormula = Field(description="Over its round ends")
    wide: SizeFormula
    angle: AngleFormula | None = None
    walls: Literal[1, 2] = 2
    limits: str = ""


class WrittenKeyway(Entry):
    """A keyway in a land: sunk with round ends, run out by a disc cutter, or for a half-moon key."""

    name: FeatureName
    on: str = Field(description="Name of the land it is cut in")
    from_a: EdgeFormula = Field(description="Distance of its A end (of a woodruff's middle) from face A")
    long: SizeFormula | None = Field(None, description="Its floor's length; of a sunk one over its ends")
    wide: SizeFormula
    deep: SizeFormula = Field(description="Below the top of the round")
    angle: AngleFormula | None = None
    form: Literal["sunk", "sled", "woodruff"] = "sunk"
    cutter: SizeFormula | None = Field(None, description="Diameter of the disc cutter")
    limits: str = ""


class WrittenBoreKeyway(Entry):
    """A keyway along a bore."""

    name: FeatureName
    on: str = Field(description="Name of the bore")
    wide: SizeFormula
    deep: SizeFormula = Field(description="Over the bore's wall")
    angle: AngleFormula | None = None
    limits: str = ""


class WrittenSlit(Entry):
    """A saw cut in a plane through the axis, from a face."""

    name: FeatureName
    face: WhichFace
    wide: SizeFormula
    deep: SizeFormula | None = Field(None, description="Along the axis; left out: the whole length")
    angle: AngleFormula | None = None
    walls: Literal[1, 2] = Field(1, description="1 cuts on one side of the axis only")


class WrittenEngraving(Entry):
    """Scale lines cut round a land or in a face (on: A or B)."""

    name: FeatureName
    on: str = Field(description="Name of a land, or A or B for a face")
    divisions: CountFormula
    short: SizeFormula = Field(description="Length of a short line")
    long: SizeFormula = Field(description="Length of a long line")
    long_every: CountFormula | None = Field(None, description="Every which line is long")
    over: AngleFormula | None = Field(None, description="Angle that they fill; left out: the whole turn")
    words: str = ""
