"""The lathe and the mill as a shop file writes them. A figure left out stays None."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field, model_validator

from tommybar.design.figures import NotNegativeLength, Power
from tommybar.design.figures import PositiveLength as Length
from tommybar.design.validation import Entry
from tommybar.refusals import Refusal
from tommybar.shop.amounts import Divisions, Share, Speeds


class DialEntry(Entry):
    """A dial: division and turn as it is numbered; ``reads: DIA`` means numbered in diameter."""

    division: Length | None = None
    turn: Length | None = None
    reads: Literal["DIA", "RAD"] | None = None
    unit: Literal["mm", "in"] | None = None
    slack: Divisions | None = None
    travel: Length | None = None

    @model_validator(mode="after")
    def _whole_divisions(self) -> DialEntry:
        if self.division is not None and self.turn is not None:
            count = self.turn / self.division
            if round(count) < 1 or abs(count - round(count)) > 1e-6 * count:
                raise Refusal(
                    f"One turn holds {count:.6g} divisions; a dial has a whole number of them.",
                    "Read division and turn off the dial again.",
                )
        return self


class LatheEntry(Entry):
    """The lathe: names as in the trade."""

    name: str | None = None
    centre_height: Length | None = None
    swing_over_bed: Length | None = None
    swing_over_cross_slide: Length | None = None
    between_centres: Length | None = None
    spindle_bore: Length | None = None
    speeds: Speeds | None = None
    power: Power | None = None
    efficiency: Share | None = None
    drill_chuck: Length | None = None
    cross_slide: DialEntry | None = None
    top_slide: DialEntry | None = None
    carriage: DialEntry | None = None
    tailstock: DialEntry | None = None
    leadscrew_pitch: NotNegativeLength | None = None
    change_gears: tuple[int, ...] | None = None

    @model_validator(mode="after")
    def _swings_agree(self) -> LatheEntry:
        bed, over = self.swing_over_bed, self.swing_over_cross_slide
        if bed is not None and over is not None and over >= bed:
            raise Refusal(
                f"The swing over the cross-slide is {over:.6g} mm; it must be below the swing over the"
                f" bed, {bed:.6g} mm.",
                "Measure from the top of the slide to the axis, times two.",
            )
        return self

    @model_validator(mode="after")
    def _along_the_axis(self) -> LatheEntry:
        for name in ("top_slide", "carriage", "tailstock"):
            dial = getattr(self, name)
            if dial is not None and dial.reads is not None:
                raise Refusal(
                    f"The {name.replace('_', ' ')} reads {dial.reads}; only a cross-slide has DIA or RAD.",
                    "Take reads out.",
                )
        return self


class MillEntry(Entry):
    """The mill, or a milling slide on the lathe."""

    name: str | None = None
    nose_to_table: Length | None = None
    quill: Length | None = None
    travel_x: Length | None = None
    travel_y: Length | None = None
    speeds: Speeds | None = None
    dial: DialEntry | None = None
    vice_height: Length | None = None
    vice_opening: Length | None = None
    vice_depth: Length | None = None
    vice_width: Length | None = None
    column: Literal["dovetail", "round"] | None = None
    readout: NotNegativeLength = 0.0  # left out: there is none
    rotary_table: NotNegativeLength = 0.0
    rotary_height: NotNegativeLength = 0.0
    boring_head: Annotated[
        tuple[NotNegativeLength, NotNegativeLength],
        Field(description="smallest hole its bar enters, largest it bores"),
    ] = (0.0, 0.0)
    vee_to: NotNegativeLength = 0.0
    vee_bottom: NotNegativeLength = 0.0
    sine_bar: NotNegativeLength = 0.0

    @model_validator(mode="after")
    def _head_rises(self) -> MillEntry:
        least, most = self.boring_head
        if most > 0 and least >= most:
            raise Refusal(
                f"The boring head ends at {most:.6g} mm; it must end above {least:.6g} mm.",
                "Write the smallest hole that its bar enters first.",
            )
        return self
