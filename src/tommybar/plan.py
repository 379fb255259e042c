"""``plan(design, shop, made) -> Plan``: the loop that everything else is a view of."""

from __future__ import annotations

from dataclasses import dataclass

from tommybar.design.model import Part, SizedDesign
from tommybar.dryrun.runs import PartRun
from tommybar.findings import Finding
from tommybar.made.record import Made
from tommybar.making.cards import Blank, Card
from tommybar.nest.cutlist import CutList
from tommybar.resize.table import Bind, Resized, SizeRow
from tommybar.shop.model import Shop


@dataclass(frozen=True)
class Figure:
    """A worked-out figure for the cover or the checks page, with its source."""

    what: str
    part: str
    value: float
    unit: str
    decimals: int
    how: str  # the formula with its figures
    source: str


@dataclass(frozen=True)
class PartPlan:
    """One part: what it is, what it starts from, its cards and its dry run."""

    part: Part
    blank: Blank | None
    cards: tuple[Card, ...]
    run: PartRun | None  # turned parts only
    mass: float  # [g]
    changed: str = ""  # why its limits differ from the drawing, after a measured mate


@dataclass(frozen=True)
class Plan:
    """Everything worked out for one design in one shop, as frozen data."""

    plan_id: str
    version: str
    title: str
    revision: str
    scale: float
    sizes: tuple[SizeRow, ...]
    binds: tuple[Bind, ...]
    second: Resized | None
    design: SizedDesign
    shop: Shop
    made: Made
    parts: tuple[PartPlan, ...]  # in the order in which they should be made
    stock: CutList
    figures: tuple[Figure, ...]
    findings: tuple[Finding, ...]
    rounds: int  # how often the loop went round

    def part(self, name: str) -> PartPlan:
        """The plan of the part of that name."""
        return next(one for one in self.parts if one.part.name == name)

    @property
    def stops(self) -> tuple[Finding, ...]:
        """The findings that forbid starting."""
        return tuple(one for one in self.findings if one.severity == "stop")
