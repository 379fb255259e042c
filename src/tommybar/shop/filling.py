"""From a shop file's entries to records, with what is missing taken from an example shop."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import fields
from typing import Any, Literal, TypeVar

from tommybar.shop.drawer_entries import InstrumentEntry, JawsEntry, ReamerFigures, ToolEntry
from tommybar.shop.machine_entries import DialEntry
from tommybar.shop.model import Dial, Instrument, Jaws, Lathe, Mill, Reamer, Shop, Tool

Record = TypeVar("Record")
Unit = Literal["mm", "in"]

FILE_KEYS = {"swing_bed": "swing_over_bed", "swing_cross_slide": "swing_over_cross_slide"}
# What a jaw set runs out by when its owner has not tried it [mm], common practice, no source.
RUNOUT_UNTRIED = {"three-jaw": 0.1, "four-jaw": 0.03, "collets": 0.03, "soft jaws": 0.03}

_NO_DIAL = Dial(0.0, 0.0)
_NO_LATHE = Lathe(
    name="",
    centre_height=0.0,
    swing_bed=0.0,
    swing_cross_slide=0.0,
    between_centres=0.0,
    spindle_bore=0.0,
    speeds=(),
    cross_slide=Dial(0.0, 0.0, reads="RAD"),
    top_slide=_NO_DIAL,
    carriage=_NO_DIAL,
    tailstock=_NO_DIAL,
    drill_chuck=0.0,
)
_NO_MILL = Mill("", 0.0, 0.0, 0.0, 0.0, (), _NO_DIAL, 0.0, 0.0, 0.0, 0.0)
NO_SHOP = Shop(
    "", "mm", _NO_LATHE, _NO_MILL, (), (), (), (), (), (), (), (), (), (), (), (), frozenset()
)  # what a whole shop file is filled up from: nothing is taken of it


class Filler:
    """Fills records and notes each place that was taken from elsewhere."""

    def __init__(self, unit: Unit) -> None:
        self.unit = unit
        self.assumed: list[str] = []

    def take(self, given: Any, example: Any, place: str) -> Any:
        """``given``, or the example's where it is None; then the place is noted."""
        if given is not None:
            return given
        self.assumed.append(place)
        return example

    def record(self, example: Record, given: Mapping[str, Any], place: str) -> Record:
        """A record like ``example`` with the figures that are given."""
        names = [field.name for field in fields(example)]  # type: ignore[arg-type]  # dataclasses
        filled = {
            name: self.take(given.get(name), getattr(example, name), f"{place}.{FILE_KEYS.get(name, name)}")
            for name in names
        }
        return type(example)(**filled)

    def dial(self, entry: DialEntry | None, example: Dial, place: str) -> Dial:
        """A dial in travel of its slide: a dial numbered in diameter moves half of what it says."""
        if entry is None:
            self.assumed.append(place)
            return example
        along = not example.reads  # a slide along the axis reads travel
        reads: Literal["DIA", "RAD", ""] = (
            "" if along else self.take(entry.reads, example.reads, f"{place}.reads")
        )
        half = 2.0 if reads == "DIA" else 1.0
        return Dial(
            per_division=self.travel(entry.division, half, example.per_division, f"{place}.division"),
            per_turn=self.travel(entry.turn, half, example.per_turn, f"{place}.turn"),
            reads=reads,
            unit=entry.unit or self.unit,
            slack=self.take(entry.slack, example.slack, f"{place}.slack"),
            travel=self.take(entry.travel, example.travel, f"{place}.travel"),
        )

    def travel(self, numbered: float | None, half: float, example: float, place: str) -> float:
        """Slide travel behind a figure on the dial [mm]."""
        return float(self.take(None if numbered is None else numbered / half, example, place))

    def jaws(self, entry: JawsEntry, place: str) -> Jaws:
        """A jaw set; each collet of a set is a range of its own, from what it closes to up to its size."""
        ranges = [(one.from_, one.to, one.depth) for one in entry.ranges]
        if entry.sizes and entry.closes is not None and entry.depth is not None:
            for size in entry.sizes:
                ranges.append((max(round(size - entry.closes, 6), 0.0), size, entry.depth))
        return Jaws(
            name=entry.name,
            device=entry.device,
            grips=entry.grips,
            ranges=tuple(ranges),
            runout=self.take(entry.runout, RUNOUT_UNTRIED[entry.device], f"{place}.runout"),
            body=entry.body,
            jaw_height=entry.jaw_height,
            top_speed=entry.top_speed or 0.0,
        )

    def tool(self, entry: ToolEntry, place: str) -> Tool:
        """A lathe tool; the shank of a bar or bit that was not measured is taken as 8 mm."""
        given = entry.model_dump()
        if entry.kind in ("parting", "groove", "recess", "knurling", "form"):
            given["shank"] = entry.shank or 8.0  # the blade decides, not what carries it
        else:
            given["shank"] = self.take(entry.shank, 8.0, f"{place}.shank")
        return Tool(**given)

    def reamer(self, entry: ReamerFigures) -> Reamer:
        """A reamer with what it adds to its size."""
        over = 0.0 if entry.cuts is None else round(entry.cuts - entry.size, 6)
        return Reamer(size=entry.size, zone=entry.zone, cuts_over=over)

    def instrument(self, entry: InstrumentEntry, place: str) -> Instrument:
        """An instrument; an untried one is trusted to half its resolution (no source)."""
        return Instrument(
            name=entry.name,
            measures=entry.measures,
            smallest=entry.range[0],
            largest=entry.range[1],
            resolution=entry.resolution,
            uncertainty=self.take(entry.uncertainty, entry.resolution / 2, f"{place}.uncertainty"),
        )
