"""Parts and features as they stand in a design file. z runs from face A, lands from A to B."""

from __future__ import annotations

import re
from typing import Annotated, Any, Literal

from pydantic import BeforeValidator, Field, model_validator

from tommybar.design.formula import (
    AngleFormula,
    CountFormula,
    EdgeFormula,
    LengthFormula,
    SizeFormula,
)
from tommybar.design.tokens import wrong
from tommybar.design.validation import Entry, YesNo
from tommybar.refusals import Refusal


def _name(given: Any) -> Any:
    if isinstance(given, str) and not re.fullmatch(r"[A-Za-z][A-Za-z0-9_]*", given):
        raise wrong(1, f'"{given}" is no name.', "Use letters, digits and underlines, a letter first.")
    return given


FeatureName = Annotated[str, BeforeValidator(_name)]


def _edge(given: Any) -> Any:
    """ "1 x 45 deg" is the size of a chamfer; only 45 degrees are made."""
    if isinstance(given, str) and (
        found := re.fullmatch(r"(?P<size>.+?)\s+x\s+(?P<angle>\S+)\s*(deg|°)", given)
    ):
        if found["angle"] != "45":
            raise wrong(
                found.start("angle") + 1, f"The edge is {found['angle']} deg; only 45 deg is drawn yet."
            )
        return found["size"]
    return given


Chamfer = Annotated[EdgeFormula, BeforeValidator(_edge)]


class _Sized(Entry):
    """Base of a feature that has a diameter or a thread, not both."""

    @model_validator(mode="after")
    def _one_size(self) -> Any:
        given = [key for key in ("dia", "thread", "cone") if getattr(self, key, None) is not None]
        if len(given) != 1:
            had = " and ".join(given) or "neither"
            raise Refusal(f"The feature has {had}; it must have dia or thread.", "Keep one of the two.")
        return self


class WrittenKnurl(Entry):
    """A knurl: its pattern and pitch."""

    pattern: Literal["straight", "diamond"]
    pitch: SizeFormula


class WrittenLand(_Sized):
    """An outside cylinder, screw or cone. The one without ``long`` takes what is left of the length."""

    name: FeatureName
    dia: SizeFormula | None = None
    thread: str | None = Field(None, description="Designation, or the name of a size that is a thread")
    cone: tuple[SizeFormula, SizeFormula] | None = Field(None, description="Diameters at its A and B end")
    long: SizeFormula | None = None
    limits: str = Field("", description="H7, +0.05/0, +/-0.02")
    edges: Chamfer | None = Field(None, description="Chamfer of its free edges, 1 x 45 deg")
    edge_a: Chamfer | None = None
    edge_b: Chamfer | None = None
    knurl: WrittenKnurl | None = None
    finish: str = ""


class WrittenGroove(Entry):
    """A groove or undercut in a land, at its A end, its B end, or ``from_a`` away from face A."""

    name: FeatureName
    on: str = Field(description="Name of the land it is cut in")
    at: Literal["a", "b", "middle"] | None = Field(None, description="End of that land")
    from_a: EdgeFormula | None = Field(None, description="Distance of its A side from face A")
    wide: SizeFormula
    deep: SizeFormula | None = None
    floor: SizeFormula | None = Field(None, description="Diameter of its floor")


class WrittenBore(_Sized):
    """A hole on the axis."""

    name: FeatureName
    dia: SizeFormula | None = None
    thread: str | None = None
    face: Literal["A", "B"] = Field("A", description="Face it is entered from")
    through: YesNo = False
    deep: SizeFormula | None = None
    bottom: Literal["flat", "drill"] = "drill"
    limits: str = ""
    edge: Chamfer | None = None
    after: Literal["", "press", "adhesive", "solder"] = Field("", description="Finished after that joint")


class WrittenRecess(Entry):
    """A ring-shaped recess in a face."""

    name: FeatureName
    face: Literal["A", "B"]
    inside: EdgeFormula
    outside: SizeFormula
    deep: SizeFormula
    corner: EdgeFormula | None = None


class WrittenCircle(_Sized):
    """Equal holes along the axis on a pitch circle."""

    name: FeatureName
    dia: SizeFormula | None = None
    thread: str | None = None
    count: CountFormula
    circle: SizeFormula = Field(description="Pitch-circle diameter")
    first: AngleFormula | None = Field(None, description="Angle of the first hole")
    limits: str = ""


class WrittenCross(_Sized):
    """A hole across the axis, in the middle of a land or ``from_a`` away from face A."""

    name: FeatureName
    dia: SizeFormula | None = None
    thread: str | None = None
    on: str = Field(description="Name of the land it enters")
    from_a: SizeFormula | None = None
    angle: AngleFormula | None = None
    walls: Literal[1, 2] = 1
    into: str = Field("", description="Name of the bore it is meant to break into")
    limits: str = ""


class WrittenTurned(Entry):
    """A part turned about one axis."""

    length: SizeFormula | None = Field(None, description="Over all; may be left out when every land has long")
    outside: tuple[WrittenLand, ...] = Field(min_length=1)
    grooves: tuple[WrittenGroove, ...] = ()
    bores: tuple[WrittenBore, ...] = ()
    recesses: tuple[WrittenRecess, ...] = ()
    holes: tuple[WrittenCircle, ...] = ()
    cross_holes: tuple[WrittenCross, ...] = ()


class WrittenPlateHole(_Sized):
    """One or more alike holes in a face of a plate, x and y from the lower left corner of that face."""

    name: FeatureName
    face: Literal["top", "bottom", "front", "back", "left", "right"]
    at: tuple[tuple[LengthFormula, LengthFormula], ...] = Field(min_length=1)
    dia: SizeFormula | None = None
    thread: str | None = None
    through: YesNo = False
    deep: SizeFormula | None = None
    sink_dia: SizeFormula | None = None
    sink_deep: SizeFormula | None = None
    limits: str = ""


class WrittenPlate(Entry):
    """A rectangular plate or block."""

    length: SizeFormula
    width: SizeFormula
    thick: SizeFormula
    corner: EdgeFormula | None = None
    holes: tuple[WrittenPlateHole, ...] = ()


class WrittenNeed(Entry):
    """A run-out need: one feature true to another."""

    runout: str
    to: str
    within: SizeFormula


class WrittenPart(Entry):
    """A part: turned, plate or bought."""

    material: str = ""
    count: CountFormula | None = None
    turned: WrittenTurned | None = None
    plate: WrittenPlate | None = None
    bought: str | None = Field(None, description="Designation, e.g. ISO 4762 M5 x 16")
    needs: tuple[WrittenNeed, ...] = ()
    from_: Literal["", "round", "flat", "plate", "hexagon", "square"] = Field("", alias="from")
    note: str = ""

    @model_validator(mode="after")
    def _one_kind(self) -> WrittenPart:
        given = [key for key in ("turned", "plate", "bought") if getattr(self, key) is not None]
        if len(given) != 1:
            had = " and ".join(given) or "none of them"
            raise Refusal(f"The part has {had}; it must have one of turned, plate, bought.", "Keep one.")
        if not self.bought and not self.material:
            raise Refusal("The part names no material.", "Add material, e.g. mild steel.")
        return self
