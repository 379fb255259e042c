"""Parts and plates as they stand in a design file; turned parts stand in ``written_turned``."""

from __future__ import annotations

from typing import Literal

from pydantic import Field, model_validator

from tommybar.design.formula import CountFormula, EdgeFormula, LengthFormula, SizeFormula
from tommybar.design.validation import Entry, YesNo
from tommybar.design.written_names import FeatureName, Sized
from tommybar.design.written_turned import WrittenTurned
from tommybar.refusals import Refusal


class WrittenPlateHole(Sized):
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
