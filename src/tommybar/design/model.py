"""What a loaded design is: named sizes still to be chosen, and its sized form.

:class:`Design` (made by :func:`tommybar.design.load_design`) keeps the
expressions. ``design.sized(values)`` fills every figure in and gives a
:class:`SizedDesign`, which everything further down the chain works with.
"""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from typing import Literal

from tommybar.design.joints import (
    AdhesiveRelation,
    AlikeRelation,
    BeltRelation,
    BenchWork,
    ClockingRelation,
    ContactRelation,
    Duty,
    FlushRelation,
    PatternRelation,
    PinRelation,
    PivotRelation,
    PressRelation,
    RunoutRelation,
    ScrewJoint,
    SeatRelation,
    SolderRelation,
    SquareRelation,
    StandsRelation,
    SweepRelation,
    ThreadRelation,
)
from tommybar.shapes.features import BoughtShape, Shape, SpringShape

Follows = Literal[
    "scale", "reamer", "drill", "cutter", "thread", "bar", "plate", "sheet", "bought", "nothing", ""
]


@dataclass(frozen=True)
class RunoutNeed:
    """Feature ``of`` must run true to feature ``to`` within ``within`` TIR [mm]."""

    of: str
    to: str
    within: float


@dataclass(frozen=True)
class Part:
    """One part with its figures filled in. ``kind`` says how it is come by.

    A rolled ring is of kind "sheet" (or "wire" when it is of wire), a spring
    of kind "wire". ``envelope`` is what the tables say of a bought part; None
    when they do not know its designation and the design says so.
    """

    name: str
    kind: Literal["turned", "plate", "sheet", "wire", "bought"]
    material: str
    count: int
    shape: Shape | None  # None for a bought part
    needs: tuple[RunoutNeed, ...] = ()
    bought: str = ""  # designation of a bought part, e.g. "ISO 4762 M5 x 16"
    note: str = ""
    blank_from: str = ""  # section wished for by the designer ("round", "flat"); empty: the program chooses
    bench: tuple[BenchWork, ...] = ()
    envelope: BoughtShape | None = None

    @property
    def standing(self) -> Shape | BoughtShape | None:
        """Its shape as it stands in the assembly: a spring as long as it is when fitted."""
        if isinstance(self.shape, SpringShape) and self.shape.fitted:
            return replace(self.shape, free=self.shape.fitted)
        return self.shape or self.envelope


@dataclass(frozen=True)
class FitRelation:
    """Hole and shaft named part.feature, the fit as a zone pair ("H7/g6")."""

    hole: str
    shaft: str
    zones: str
    joint: Literal["", "press", "adhesive", "solder"] = ""
    clearance: tuple[float, float] | None = None  # wished for by the designer, least and greatest [mm]
    engaged: float | None = None  # length of hole on shaft [mm]


@dataclass(frozen=True)
class LoopTerm:
    """One member of an axial loop: its size's name, how often it counts, its figure [mm]."""

    name: str
    factor: float
    value: float


@dataclass(frozen=True)
class LoopRelation:
    """A chain of lengths whose sum must lie between two bounds [mm]."""

    name: str
    terms: tuple[LoopTerm, ...]
    least: float
    most: float
    made_last: str


@dataclass(frozen=True)
class ScrewRelation:
    """A screw through clearance holes into a thread: names part.feature."""

    through: tuple[str, ...]
    into: str
    screw: str


@dataclass(frozen=True)
class Purpose:
    """What the thing must do: parts that turn together at a speed, with a balance grade."""

    turns: tuple[str, ...]
    speed: float  # [rev/min]
    balance: float | None = None  # grade G [mm/s]
    hand_driven: bool = False


@dataclass(frozen=True)
class SizedDesign:
    """A design at one set of values; plain frozen data."""

    title: str
    revision: str
    units: Literal["mm", "in"]
    values: tuple[
        tuple[str, float | str], ...
    ]  # every named size as it stands [mm, deg or thread designation]
    parts: tuple[Part, ...]
    fits: tuple[FitRelation, ...] = ()
    loops: tuple[LoopRelation, ...] = ()
    screws: tuple[ScrewRelation, ...] = ()
    purposes: tuple[Purpose, ...] = ()
    cautions: tuple[str, ...] = field(default=())  # the designer's own words for the cover
    runouts: tuple[RunoutRelation, ...] = ()
    squares: tuple[SquareRelation, ...] = ()
    clockings: tuple[ClockingRelation, ...] = ()
    threads: tuple[ThreadRelation, ...] = ()
    screw_joints: tuple[ScrewJoint, ...] = ()
    patterns: tuple[PatternRelation, ...] = ()
    presses: tuple[PressRelation, ...] = ()
    adhesives: tuple[AdhesiveRelation, ...] = ()
    solders: tuple[SolderRelation, ...] = ()
    pins: tuple[PinRelation, ...] = ()
    contacts: tuple[ContactRelation, ...] = ()
    belts: tuple[BeltRelation, ...] = ()
    pivots: tuple[PivotRelation, ...] = ()
    sweeps: tuple[SweepRelation, ...] = ()
    alike: tuple[AlikeRelation, ...] = ()
    seats: tuple[SeatRelation, ...] = ()
    stands: tuple[StandsRelation, ...] = ()
    flush: tuple[FlushRelation, ...] = ()
    duties: tuple[Duty, ...] = ()
    foot: str = ""  # the part, or part.face, on which the assembly stands

    def part(self, name: str) -> Part:
        """The part of that name."""
        return next(one for one in self.parts if one.name == name)
