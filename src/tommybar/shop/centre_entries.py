"""Dogs, tail centres and steadies as a shop file writes them. What is left out is not owned."""

from __future__ import annotations

import math
from typing import Literal

from pydantic import Field, model_validator

from tommybar.design.figures import NotNegativeLength
from tommybar.design.figures import PositiveLength as Length
from tommybar.design.validation import Entry
from tommybar.refusals import Refusal
from tommybar.shop.centre_equipment import POINT, Dog, Steady, TailCentre
from tommybar.shop.drawer_entries import Rounds

WIDE = 10.0  # of a dog that was not measured; common practice, no source [mm]


class DogEntry(Rounds):
    """A driving dog: the rounds it takes and how wide it is."""

    wide: Length = Field(WIDE, description="Length of the work under it")


class SteadyEntry(Rounds):
    """A steady rest and the rounds it closes on."""

    kind: Literal["fixed", "travelling"]


class TailCentreEntry(Entry):
    """A centre of the tailstock."""

    kind: Literal["dead", "running", "half"]
    nose: Length = Field(description="Diameter where the cone of its point ends")
    long: Length = Field(description="From the point to the body, or to the barrel")
    body: NotNegativeLength = Field(0.0, description="Diameter behind that; left out, as the nose")

    @model_validator(mode="after")
    def _as_long_as_its_point(self) -> TailCentreEntry:
        point = self.nose / 2 / math.tan(POINT)
        if self.long < point - 1e-6:
            raise Refusal(
                f"The centre is {self.long:.6g} mm long; its point alone, up to {self.nose:.6g} mm, is {point:.2f} mm.",
                "Measure from the point to where the body or the barrel begins.",
            )
        return self


def dogs(entries: tuple[DogEntry, ...]) -> tuple[Dog, ...]:
    """Records of the dogs, smallest first."""
    return tuple(sorted((Dog(one.from_, one.to, one.wide) for one in entries), key=lambda d: d.largest))


def tail_centres(entries: tuple[TailCentreEntry, ...]) -> tuple[TailCentre, ...]:
    """Records of the tail centres as they are listed."""
    return tuple(TailCentre(one.kind, one.nose, one.long, max(one.body, one.nose)) for one in entries)


def steadies(entries: tuple[SteadyEntry, ...]) -> tuple[Steady, ...]:
    """Records of the steadies as they are listed."""
    return tuple(Steady(one.kind, one.from_, one.to) for one in entries)
