"""What plays and what is stacked, as figures to be drawn: zones of fits, members of float loops."""

from __future__ import annotations

from dataclasses import dataclass

from tommybar.checks.fit_sense import dim_of
from tommybar.design.model import LoopRelation, SizedDesign
from tommybar.made.record import Made
from tommybar.refusals import Refusal
from tommybar.shapes.features import Dim
from tommybar.sizes.loop import Link, last_made_limits


@dataclass(frozen=True)
class Zone:
    """Where a size may lie, from the fit's basic size; equal ends when it is measured [mm]."""

    name: str
    low: float
    high: float
    measured: bool


@dataclass(frozen=True)
class FitZones:
    """Hole and shaft of a fit about their basic size, and what plays between them [mm]."""

    zones: str
    joint: str
    basic: float
    hole: Zone
    shaft: Zone

    @property
    def least(self) -> float:
        """Smallest clearance, below nought where it must be pressed [mm]."""
        return self.hole.low - self.shaft.high

    @property
    def most(self) -> float:
        """Largest clearance [mm]."""
        return self.hole.high - self.shaft.low


@dataclass(frozen=True)
class Member:
    """One member of a float loop: it opens the gap or fills it by so much [mm]."""

    name: str
    times: float
    value: float
    measured: bool

    @property
    def length(self) -> float:
        """What it adds to its side of the loop [mm]."""
        return abs(self.times) * self.value


@dataclass(frozen=True)
class FloatStack:
    """A float loop: what makes room, what fills it, what is left and what may be left [mm]."""

    name: str
    opens: tuple[Member, ...]
    fills: tuple[Member, ...]
    least: float
    most: float
    made_last: str
    last_limits: tuple[float, float] | None  # of the member made last, the others at their figures

    @property
    def left(self) -> float:
        """The float that these lengths leave [mm]."""
        return sum(one.length for one in self.opens) - sum(one.length for one in self.fills)


def fit_zones(design: SizedDesign, made: Made) -> tuple[FitZones, ...]:
    """Every fit whose two sizes have limits; a measured size stands as what it is."""
    found = []
    for fit in design.fits:
        hole, shaft = dim_of(design, fit.hole), dim_of(design, fit.shaft)
        if hole is None or shaft is None:
            continue
        basic = hole.value
        zones = [_zone(name, dim, basic, made) for name, dim in ((fit.hole, hole), (fit.shaft, shaft))]
        if zones[0] is not None and zones[1] is not None:
            found.append(FitZones(fit.zones, fit.joint, basic, zones[0], zones[1]))
    return tuple(dict.fromkeys(found))


def _zone(name: str, dim: Dim, basic: float, made: Made) -> Zone | None:
    measured = made.size(name)
    if measured is not None:
        return Zone(name, measured.value - basic, measured.value - basic, True)
    if dim.smallest is None or dim.largest is None:
        return None
    return Zone(name, dim.smallest - basic, dim.largest - basic, False)


def float_stacks(design: SizedDesign, made: Made) -> tuple[FloatStack, ...]:
    """Every float loop, at the sizes as they stand or as they were measured."""
    return tuple(_stack(loop, design, made) for loop in design.loops)


def _stack(loop: LoopRelation, design: SizedDesign, made: Made) -> FloatStack:
    members = []
    for term in loop.terms:
        measured = made.size(term.name)
        value = measured.value if measured else term.value
        members.append(Member(term.name, term.factor, value, measured is not None))
    last = [one for one in members if loop.made_last in (one.name, one.name.split(".")[0])]
    return FloatStack(
        loop.name,
        tuple(one for one in members if one.times > 0),
        tuple(one for one in members if one.times < 0),
        loop.least,
        loop.most,
        last[0].name if len(last) == 1 else loop.made_last,
        _last_limits(loop, last[0], members) if len(last) == 1 and not last[0].measured else None,
    )


def _last_limits(loop: LoopRelation, last: Member, members: list[Member]) -> tuple[float, float] | None:
    others = [Link(one.name, one.times, one.value, one.value) for one in members if one is not last]
    try:
        return last_made_limits(others, last.times, (loop.least, loop.most))
    except Refusal:
        return None  # a finding says so
