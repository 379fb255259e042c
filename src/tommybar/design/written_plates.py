"""Plates and blocks as they stand in a design file. x and y run from the lower left corner of a face."""

from __future__ import annotations

from typing import Any, Literal

from pydantic import Field, model_validator

from tommybar.design.formula import AngleFormula, CountFormula, EdgeFormula, LengthFormula, SizeFormula
from tommybar.design.validation import Entry, YesNo
from tommybar.design.written_names import Edge, FeatureName
from tommybar.refusals import Refusal

Face = Literal["top", "bottom", "front", "back", "left", "right"]
SideName = Literal["front", "back", "left", "right"]
Place2 = tuple[LengthFormula, LengthFormula]


class WrittenBoss(Entry):
    """A rounded end of an outline about a place."""

    at: Place2
    radius: SizeFormula


class WrittenOutline(Entry):
    """An outline that is no rectangle: one of disc, polygon, bosses."""

    disc: SizeFormula | None = Field(None, description="Diameter")
    polygon: tuple[
        tuple[LengthFormula, LengthFormula] | tuple[LengthFormula, LengthFormula, EdgeFormula], ...
    ] = Field((), description="Corners x, y and, where it is rounded, its radius; counter-clockwise")
    bosses: tuple[WrittenBoss, ...] = Field(
        (), description="Rounded ends; flanks run tangent from one to the next"
    )

    @model_validator(mode="after")
    def _one_form(self) -> Any:
        given = [key for key in ("disc", "polygon", "bosses") if getattr(self, key)]
        if len(given) != 1:
            had = " and ".join(given) or "none of them"
            raise Refusal(f"The outline has {had}; it must have one of disc, polygon, bosses.", "Keep one.")
        return self


class WrittenRow(Entry):
    """Places in a row."""

    first: Place2
    step: SizeFormula
    count: CountFormula
    angle: AngleFormula | None = Field(None, description="Direction of the row from x")


class WrittenGrid(Entry):
    """Places in rows and columns."""

    first: Place2
    step: Place2
    count: tuple[CountFormula, CountFormula] = Field(description="Along x, along y")


class WrittenRound(Entry):
    """Places on a pitch circle."""

    middle: Place2
    dia: SizeFormula = Field(description="Pitch-circle diameter")
    count: CountFormula
    first: AngleFormula | None = Field(None, description="Angle of the first place from x")


class Scattered(Entry):
    """Base of what may stand in several places: exactly one of at, row, grid, circle."""

    at: tuple[Place2, ...] = ()
    row: WrittenRow | None = None
    grid: WrittenGrid | None = None
    circle: WrittenRound | None = None

    @model_validator(mode="after")
    def _one_pattern(self) -> Any:
        given = [key for key in ("at", "row", "grid", "circle") if getattr(self, key)]
        if len(given) != 1:
            had = " and ".join(given) or "none of them"
            raise Refusal(f"The hole has {had}; it must have one of at, row, grid, circle.", "Keep one.")
        return self


class WrittenPlateHole(Scattered):
    """One or more alike holes in a face, x and y from the lower left corner of that face."""

    name: FeatureName
    face: Face
    dia: SizeFormula | None = None
    thread: str | None = Field(None, description="Designation, or the name of a size that is a thread")
    screw: str | None = Field(
        None, description="Clearance for a screw and a seat for its head: M5, ISO 4762 M5, ISO 10642 M4"
    )
    clearance: Literal["fine", "medium", "coarse"] = Field("medium", description="Class of ISO 273 for screw")
    through: YesNo = False
    deep: SizeFormula | None = Field(None, description="Full depth; of a thread its full thread")
    bottom: Literal["flat", "drill"] = "drill"
    sink_dia: SizeFormula | None = None
    sink_deep: SizeFormula | None = Field(None, description="Depth of a counterbore")
    sink_angle: AngleFormula | None = Field(None, description="Included angle of a countersink")
    tilt: AngleFormula | None = Field(None, description="Lean from the face's normal")
    slope: AngleFormula | None = Field(None, description="Lean from the face itself; 90 is upright")
    towards: AngleFormula | None = Field(None, description="Where it leans, from the face's x")
    flat: YesNo = Field(False, description="A flat is cut at its mouth first")
    limits: str = ""
    place: SizeFormula | None = Field(None, description="Diameter of its true-position zone")
    left: YesNo = False

    @model_validator(mode="after")
    def _one_size(self) -> Any:
        given = [key for key in ("dia", "thread", "screw") if getattr(self, key) is not None]
        if len(given) != 1:
            had = " and ".join(given) or "neither"
            raise Refusal(f"The feature has {had}; it must have dia or thread.", "Keep one of the two.")
        if self.tilt is not None and self.slope is not None:
            raise Refusal("The hole has tilt and slope; they say the same.", "Keep one of the two.")
        return self


class WrittenSlot(Entry):
    """A slot with half-round ends; an end that lies beyond the outline is open."""

    name: FeatureName
    face: Face
    at: Place2 = Field(description="Its middle")
    long: SizeFormula | None = Field(None, description="Overall")
    centres: SizeFormula | None = Field(None, description="Between the middles of its ends")
    wide: SizeFormula
    deep: SizeFormula | None = None
    through: YesNo = False
    angle: AngleFormula | None = Field(None, description="From the face's x")
    limits: str = Field("", description="Of its width")


class WrittenPocket(Entry):
    """A rectangular pocket about its middle."""

    name: FeatureName
    face: Face
    at: Place2 = Field(description="Its middle")
    length: SizeFormula
    width: SizeFormula
    corner: EdgeFormula = Field(description="Radius of its corners in plan, that of the cutter or more")
    deep: SizeFormula | None = None
    through: YesNo = False


class WrittenStep(Entry):
    """A step along one side of the top or bottom face."""

    name: FeatureName
    face: Literal["top", "bottom"] = "top"
    side: SideName
    wide: SizeFormula
    deep: SizeFormula


class WrittenVee(Entry):
    """A vee groove right along a face."""

    name: FeatureName
    face: Face = "top"
    along: Literal["x", "y"]
    at: LengthFormula = Field(description="Its middle, across")
    wide: SizeFormula = Field(description="At the face")
    angle: AngleFormula | None = Field(None, description="Included; 90 deg when left out")


class WrittenDovetail(Entry):
    """A dovetail slot in the top face, or a tail left standing."""

    name: FeatureName
    along: Literal["x", "y"]
    at: LengthFormula = Field(description="Its middle, across")
    narrow: SizeFormula = Field(description="Width at its narrow side")
    deep: SizeFormula
    angle: AngleFormula | None = Field(None, description="Of the flanks from the floor; 60 deg when left out")
    tail: YesNo = False
    limits: str = ""


class WrittenPlateEdge(Entry):
    """An edge broken all round the outline of one face."""

    name: FeatureName
    face: Literal["top", "bottom"]
    size: Edge


class WrittenPlateSlit(Entry):
    """A saw cut from a side through the whole thickness."""

    name: FeatureName
    side: SideName
    at: LengthFormula = Field(description="From the left end of that side, seen from outside")
    to: str = Field("", description="The hole it runs into")
    long: SizeFormula | None = None
    wide: SizeFormula
    pinch: str = Field("", description="The screw hole that pinches it together")


class WrittenPlateEngraving(Entry):
    """A straight scale or words engraved on a face of a plate."""

    name: FeatureName
    face: Face
    divisions: CountFormula
    over: SizeFormula = Field(description="Length that the divisions fill")
    short: SizeFormula = Field(description="Length of a short line")
    long: SizeFormula = Field(description="Length of a long line")
    long_every: CountFormula | None = Field(None, description="Every which line is long")
    words: str = ""


PLATE_FEATURES = (
    "holes",
    "slots",
    "pockets",
    "steps",
    "vees",
    "dovetails",
    "edges",
    "slits",
    "engravings",
    "rays",
)
"""Keys of a plate under which its features stand."""
PLATE_LISTS = ("holes", "slots", "pockets", "steps", "vees", "dovetails", "slits", "rays", "bends")
"""Keys that only hold the features of plates and sheet together."""


class WrittenRays(Entry):
    """Lines engraved on the top face that radiate from one place, as on a dial."""

    name: FeatureName
    at: Place2 = Field(description="The place from which they radiate")
    inner: SizeFormula = Field(description="Radius at which each begins")
    outer: SizeFormula = Field(description="Radius at which each ends")
    angles: tuple[AngleFormula, ...] = Field(min_length=1, description="Counter-clockwise from the face's x")
    words: tuple[str, ...] = Field((), description="What stands beside each, on its left")


class PlateFeatures(Entry):
    """What a plate and a block have alike."""

    length: SizeFormula | None = None
    width: SizeFormula | None = None
    corner: EdgeFormula | None = None
    outline: WrittenOutline | None = None
    holes: tuple[WrittenPlateHole, ...] = ()
    slots: tuple[WrittenSlot, ...] = ()
    pockets: tuple[WrittenPocket, ...] = ()
    steps: tuple[WrittenStep, ...] = ()
    vees: tuple[WrittenVee, ...] = ()
    dovetails: tuple[WrittenDovetail, ...] = ()
    edges: tuple[WrittenPlateEdge, ...] = ()
    slits: tuple[WrittenPlateSlit, ...] = ()
    engravings: tuple[WrittenPlateEngraving, ...] = ()
    rays: tuple[WrittenRays, ...] = ()

    @model_validator(mode="after")
    def _sizes(self) -> Any:
        if self.outline is None:
            for key in ("length", "width"):
                if getattr(self, key) is None:
                    raise Refusal(f'The key "{key}" is missing.', "Add it, or give an outline.")
        elif self.corner is not None:
            raise Refusal(
                "A plate with an outline has no corner of its own.",
                "Give each corner of a polygon its radius.",
            )
        return self


class WrittenPlate(PlateFeatures):
    """A plate."""

    thick: SizeFormula


class WrittenBlock(PlateFeatures):
    """A block: a plate whose thickness is called its height."""

    height: SizeFormula
