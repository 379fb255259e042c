"""The outside of a turned part as it stands in a design file: lands from face A to face B, and grooves."""

from __future__ import annotations

from typing import Any, Literal

from pydantic import Field, model_validator

from tommybar.design.formula import AngleFormula, EdgeFormula, SizeFormula
from tommybar.design.validation import Entry, YesNo
from tommybar.design.written_names import Edge, FeatureName
from tommybar.refusals import Refusal

DESIGNATION = "Designation, or the name of a size that is a thread"


class WrittenKnurl(Entry):
    """A knurl: its pattern and pitch."""

    pattern: Literal["straight", "diamond"]
    pitch: SizeFormula


class WrittenCone(Entry):
    """A taper by three of large diameter, small diameter, length (``long`` of the land) and angle."""

    large: SizeFormula | None = Field(None, description="Large diameter")
    small: EdgeFormula | None = Field(None, description="Small diameter")
    half_angle: AngleFormula | None = Field(None, description="Angle between its side and the axis")
    included: AngleFormula | None = Field(None, description="Angle between its two sides")
    taper: str = Field("", description="A standard taper in place of the angle, Morse 2 or 1:20")
    limits: str = Field("", description="Of its large diameter")
    small_at: Literal["a", "b"] = Field("b", description="End at which it is small")


class WrittenPoint(Entry):
    """A cone point on a land of ``dia``; its length follows."""

    included: AngleFormula = Field(description="Angle between its two sides")
    flat: EdgeFormula | None = Field(None, description="Diameter of the flat left at its tip")


class WrittenDome(Entry):
    """A domed end on a land of ``dia``: by its radius, or by ``long``, its height."""

    radius: SizeFormula | None = None


class WrittenBall(Entry):
    """A ball by its diameter; a neck's diameter at an end where it does not run to the axis."""

    dia: SizeFormula
    neck_a: EdgeFormula | None = None
    neck_b: EdgeFormula | None = None


class WrittenCurve(Entry):
    """A hollow land between two diameters: a cove by radius and ``long``, or a fillet by its radius."""

    a: SizeFormula = Field(description="Diameter at its A end")
    b: SizeFormula = Field(description="Diameter at its B end")
    radius: SizeFormula


class WrittenOgee(Entry):
    """Two equal arcs, hollow beside the smaller end and bulging beside the larger; by ``long`` or radius."""

    a: SizeFormula = Field(description="Diameter at its A end")
    b: SizeFormula = Field(description="Diameter at its B end")
    radius: SizeFormula | None = None


class WrittenCrown(Entry):
    """A crowned land of ``dia`` in its middle: by the radius of the crown, or by how far its edges drop."""

    radius: SizeFormula | None = None
    drop: SizeFormula | None = Field(None, description="On radius; about w x w / (8 R) for a width w")


class WrittenThrow(Entry):
    """An eccentric land of ``dia``."""

    throw: SizeFormula = Field(description="Distance of its axis from the part's")
    angle: AngleFormula | None = Field(None, description="Towards which its axis lies, seen from face A")


FORMS = ("cone", "point", "dome", "ball", "cove", "fillet", "ogee", "crown", "eccentric")
WITH_DIA = ("point", "dome", "crown", "eccentric")  # forms that stand on a land of dia


class WrittenLand(Entry):
    """One land of the outside. The one without ``long`` takes what is left of the length."""

    name: FeatureName
    dia: SizeFormula | None = None
    thread: str | None = Field(None, description=DESIGNATION)
    cone: tuple[SizeFormula, SizeFormula] | WrittenCone | None = Field(
        None, description="Diameters at its A and B end, or three of its figures"
    )
    point: WrittenPoint | None = None
    dome: WrittenDome | None = None
    ball: WrittenBall | None = None
    cove: WrittenCurve | None = None
    fillet: WrittenCurve | None = None
    ogee: WrittenOgee | None = None
    crown: WrittenCrown | None = None
    eccentric: WrittenThrow | None = None
    long: SizeFormula | None = None
    full: SizeFormula | None = Field(None, description="Length of full thread; left out: the whole land")
    left: YesNo = Field(False, description="A left-hand thread")
    limits: str = Field("", description="H7, +0.05/0, +/-0.02")
    edges: Edge | None = Field(None, description="Its free edges: 1 x 45 deg, 1 x 15 deg, 0.5 round")
    edge_a: Edge | None = None
    edge_b: Edge | None = None
    corner: EdgeFormula | None = Field(None, description="Radius in the corners with larger neighbours")
    corner_a: EdgeFormula | None = None
    corner_b: EdgeFormula | None = None
    knurl: WrittenKnurl | None = None
    finish: str = ""

    @property
    def form(self) -> str:
        """What it is besides a cylinder or screw; empty for these."""
        return next((key for key in FORMS if getattr(self, key) is not None), "")

    @model_validator(mode="after")
    def _one_form(self) -> Any:
        forms = [key for key in FORMS if getattr(self, key) is not None]
        given = [key for key in ("dia", "thread") if getattr(self, key) is not None]
        if len(forms) > 1:
            raise Refusal(f"The land is {' and '.join(forms)}; it can be one of them.", "Keep one.")
        form = forms[0] if forms else ""
        if form and form not in WITH_DIA:
            if given:
                raise Refusal(f"The land has {given[0]} and {form}; {form} says its diameters.", "Keep one.")
        elif form and given != ["dia"]:
            raise Refusal(f"The {form} has no dia; it stands on one.", "Add dia.")
        elif not form and len(given) != 1:
            had = " and ".join(given) or "neither"
            raise Refusal(f"The feature has {had}; it must have dia or thread.", "Keep one of the two.")
        return self


class WrittenGroove(Entry):
    """A groove or undercut in a land, at its A end, its B end, or ``from_a`` away from face A."""

    name: FeatureName
    on: str = Field(description="Name of the land it is cut in")
    at: Literal["a", "b", "middle"] | None = Field(None, description="End of that land")
    from_a: EdgeFormula | None = Field(None, description="Distance of its A side from face A")
    wide: SizeFormula
    deep: SizeFormula | None = None
    floor: SizeFormula | None = Field(None, description="Diameter of its floor")
    form: Literal["square", "round", "vee"] = "square"
    included: AngleFormula | None = Field(None, description="Of a vee, in place of deep")
    corner: EdgeFormula | None = Field(None, description="Radius in its floor's corners")
