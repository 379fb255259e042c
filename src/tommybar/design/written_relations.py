"""Relations between parts as they stand in a design file. Features are named part.feature."""

from __future__ import annotations

from typing import Annotated, Any, Literal

from pydantic import BeforeValidator, Discriminator, Field, Tag, model_validator

from tommybar.design.formula import (
    AngleFormula,
    CountFormula,
    EdgeFormula,
    LengthFormula,
    NumberFormula,
    SizeFormula,
)
from tommybar.design.validation import Entry, YesNo
from tommybar.refusals import Refusal


def _listed(given: Any) -> Any:
    return [given] if isinstance(given, str) else given


Names = Annotated[list[str], BeforeValidator(_listed, json_schema_input_type=str | list[str])]
"""One name or a list of names."""
Two = tuple[LengthFormula, LengthFormula]


class WrittenFit(Entry):
    """A hole and a shaft that belong together."""

    fit: str = Field(description="The hole, part.feature")
    on: Names = Field(description="The shaft or shafts, part.feature")
    limits: str = Field("", description="Zone pair, e.g. H7/g6")
    clearance: Two | None = Field(None, description="Least and greatest, in place of limits")
    engaged: SizeFormula | None = Field(None, description="Length of hole on shaft")
    joint: Literal["", "press", "adhesive", "solder"] = ""

    @model_validator(mode="after")
    def _one_way(self) -> Any:
        if bool(self.limits) == (self.clearance is not None):
            raise Refusal("A fit must have either limits or clearance.", "Write limits: H7/g6.")
        return self


class WrittenLoop(Entry):
    """A chain of lengths with signs whose sum must lie within ``float``."""

    loop: tuple[str, ...] = Field(min_length=1, description="Terms such as base.width, -2 * bush.flange.long")
    float_: tuple[LengthFormula, LengthFormula] = Field(alias="float", description="Least and most")
    made_last: str = Field(description="The part whose length is made to measure")
    name: str = ""


class WrittenScrew(Entry):
    """A screw through clearance holes into a thread or a nut."""

    screw: str
    through: Names
    into: Names = Field(default_factory=list, description="Tapped holes; left out when there is a nut")
    head: str = Field("", description="Standard of the screw, e.g. ISO 4762")
    clearance: Literal["", "fine", "medium", "coarse"] = Field("", description="Class of ISO 273 to be held")
    washer: Names = Field(
        default_factory=list, description="Standards, e.g. ISO 7089: at the head, at the nut"
    )
    nut: str = Field("", description="Standard, e.g. ISO 4032")
    stud: str = Field(
        "", description="The thread of a made part that takes the nut in place of a bought screw"
    )
    protrusion: EdgeFormula | None = Field(None, description="Beyond the nut; two pitches when left out")
    engaged: SizeFormula | None = Field(
        None, description="Thread in the tapped hole; one diameter when left out"
    )

    @model_validator(mode="after")
    def _one_end(self) -> Any:
        if bool(self.into) == bool(self.nut):
            raise Refusal("A screw must have either into (a tapped hole) or nut.", "Keep one of the two.")
        if self.stud and (self.into or self.head):
            raise Refusal("A stud takes a nut; it has no head and goes into no hole.", "Keep one of them.")
        return self


class WrittenRunout(Entry):
    """A feature that must run true to a datum of the same or another part."""

    runout: str
    to: str
    within: SizeFormula = Field(description="Full reading")


class WrittenSquare(Entry):
    """A feature square or parallel to a datum; give square or parallel."""

    square: str = ""
    parallel: str = ""
    to: str
    within: SizeFormula


class WrittenClocking(Entry):
    """The angle about the axis between two features."""

    clock: str
    to: str
    angle: AngleFormula
    within: AngleFormula = Field(description="To either side")


class WrittenThread(Entry):
    """A thread of one part in a thread of another."""

    thread: str = Field(description="The outside thread")
    in_: str = Field(alias="in", description="The inside thread")
    engaged: SizeFormula
    travel: EdgeFormula | None = None
    locked: Literal["", "lock nut", "set screw", "adhesive", "slit", "shoulder"] = ""


class WrittenPattern(Entry):
    """Holes of two parts that must coincide."""

    pattern: Names
    on: Names
    screw: str = Field("", description="Size of the screws, e.g. M5")
    pin: SizeFormula | None = Field(None, description="Diameter of pins in place of screws")
    spot_through: YesNo = False

    @model_validator(mode="after")
    def _one_thing(self) -> Any:
        if bool(self.screw) == (self.pin is not None):
            raise Refusal("A pattern must have either screw or pin.", "Write screw: M5.")
        return self


class WrittenPress(Entry):
    """A press joint by its interference."""

    press: str = Field(description="The hole")
    on: str
    interference: Two = Field(description="Least and greatest, on the diameter")
    length: SizeFormula


class WrittenBond(Entry):
    """Surfaces that are bonded."""

    bond: str
    on: str
    gap: Two
    area: NumberFormula = Field(description="mm2")
    load: Literal["shear", "tension", "peel"] = "shear"
    adhesive: str = ""
    hottest: NumberFormula | None = Field(None, description="In service, deg C")
    spigot: YesNo = False


class WrittenSolder(Entry):
    """A soldered joint."""

    solder: str
    on: str
    gap: Two
    length: SizeFormula
    alloy: str = ""
    order: CountFormula | None = Field(None, description="Its turn; a later one melts lower")
    vent: str = Field("", description="The hole that lets air out")


class WrittenPin(Entry):
    """Two features kept by a pin or key, drilled or fitted with both together."""

    pin: str = Field(description="The outer feature")
    on: str = Field(description="The inner one")
    dia: SizeFormula
    length: SizeFormula
    way: Literal["pin", "taper pin", "key"] = "pin"
    together: YesNo = True


class WrittenContact(Entry):
    """Two surfaces that bear on each other."""

    contact: Literal["point in cup", "ball in seat", "cam on follower", "edge on face"]
    of: tuple[str, str]
    angles: tuple[AngleFormula, AngleFormula] | None = Field(
        None, description="Where the features do not say them"
    )
    radius: SizeFormula | None = Field(None, description="Of the ball or the follower's nose")
    lift: SizeFormula | None = None


class WrittenBelt(Entry):
    """A round belt or cord between two pulleys."""

    belt: str = Field(description="The driver")
    drives: str
    centres: SizeFormula
    thick: EdgeFormula | None = None
    crossed: YesNo = False
    towards: AngleFormula | None = Field(
        None, description="Where the driver stands as drawn, counter-clockwise from x of the driven part"
    )


class WrittenPivot(Entry):
    """A joint that is turned to adjust it and then locked."""

    pivot: str
    in_: str = Field(alias="in")
    locked_by: str = ""
    swing: tuple[AngleFormula, AngleFormula] | None = None


class WrittenSweep(Entry):
    """Parts that move together and must clear what stands still."""

    sweep: Names
    about: str = Field(description="The feature whose axis it is")
    clear_of: Names = Field(default_factory=list, description="Parts; all others when left out")
    gap: EdgeFormula
    turns: tuple[AngleFormula, AngleFormula] | None = None
    slides: tuple[LengthFormula, LengthFormula] | None = None


class WrittenAlike(Entry):
    """Parts or features made alike in one setting."""

    alike: list[str] = Field(min_length=2)
    within: SizeFormula


class WrittenSeat(Entry):
    """A bought part and the feature it sits in or on."""

    seat: str = Field(description="part.feature")
    of: str = Field(description="The bought part")
    figure: str = Field(description="Of its table, e.g. outside")


class WrittenStands(Entry):
    """Where a piece stands when no joint says it, as it is drawn and put together."""

    stands: str = Field(description="A face, e.g. drum.face_a, upper.front, stud.collar.face_b, or a feature")
    on: str = Field(description="The face or feature of the other part")
    way: Literal["against", "level", "centred", "through"] = Field(
        "against",
        description="Faces towards one another, or looking the same way; features middle on middle, "
        "or a land loosely through a hole",
    )
    apart: LengthFormula | None = Field(
        None, description="How far the two faces stand apart; 0 when left out"
    )


class WrittenFlush(Entry):
    """Two sizes kept equal for the look of it."""

    flush: str
    with_: str = Field(alias="with")
    within: EdgeFormula


KEYS = {
    "fit": WrittenFit,
    "loop": WrittenLoop,
    "pattern": WrittenPattern,
    "screw": WrittenScrew,
    "runout": WrittenRunout,
    "square": WrittenSquare,
    "parallel": WrittenSquare,
    "clock": WrittenClocking,
    "thread": WrittenThread,
    "press": WrittenPress,
    "bond": WrittenBond,
    "solder": WrittenSolder,
    "pin": WrittenPin,
    "contact": WrittenContact,
    "belt": WrittenBelt,
    "pivot": WrittenPivot,
    "sweep": WrittenSweep,
    "alike": WrittenAlike,
    "seat": WrittenSeat,
    "stands": WrittenStands,
    "flush": WrittenFlush,
}
"""The key that says what a relation is, asked for in this order."""


def _relation(given: Any) -> str:
    keys = given if isinstance(given, dict) else {}
    for key, kind in KEYS.items():
        if key in keys or isinstance(given, kind):
            # no tag may be a key, or the place of a fault could not be told
            return {"parallel": "a square", "stands": "a stand"}.get(key, f"a {key}")
    return "?"


Relation = Annotated[
    Annotated[WrittenFit, Tag("a fit")]
    | Annotated[WrittenLoop, Tag("a loop")]
    | Annotated[WrittenPattern, Tag("a pattern")]
    | Annotated[WrittenScrew, Tag("a screw")]
    | Annotated[WrittenRunout, Tag("a runout")]
    | Annotated[WrittenSquare, Tag("a square")]
    | Annotated[WrittenClocking, Tag("a clock")]
    | Annotated[WrittenThread, Tag("a thread")]
    | Annotated[WrittenPress, Tag("a press")]
    | Annotated[WrittenBond, Tag("a bond")]
    | Annotated[WrittenSolder, Tag("a solder")]
    | Annotated[WrittenPin, Tag("a pin")]
    | Annotated[WrittenContact, Tag("a contact")]
    | Annotated[WrittenBelt, Tag("a belt")]
    | Annotated[WrittenPivot, Tag("a pivot")]
    | Annotated[WrittenSweep, Tag("a sweep")]
    | Annotated[WrittenAlike, Tag("a alike")]
    | Annotated[WrittenSeat, Tag("a seat")]
    | Annotated[WrittenStands, Tag("a stand")]
    | Annotated[WrittenFlush, Tag("a flush")],
    Discriminator(
        _relation,
        custom_error_type="relation",
        custom_error_message="it must have one of the keys "
        + ", ".join(("fit", "loop", "screw", *(key for key in KEYS if key not in ("fit", "loop", "screw")))),
    ),
]
