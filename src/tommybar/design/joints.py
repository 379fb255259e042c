"""How parts are joined and bear on one another, with every figure filled in.

Names are ``part.feature`` unless it is said that they are parts; lengths [mm],
angles [deg]. A figure that a design leaves open is None.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal


@dataclass(frozen=True)
class RunoutRelation:
    """``feature`` must run true, or lie on one axis, with ``datum`` of the same or another part [mm TIR]."""

    feature: str
    datum: str
    within: float


@dataclass(frozen=True)
class SquareRelation:
    """A feature that must be square or parallel to a datum, ``within`` over its length [mm]."""

    feature: str
    datum: str
    way: Literal["square", "parallel"]
    within: float


@dataclass(frozen=True)
class ClockingRelation:
    """The angle about the common axis from ``datum`` to ``feature``, counter-clockwise from face A [deg].

    ``drawn`` is the angle between the two as their own figures give it; None
    when they are of two parts that may be turned against each other.
    """

    feature: str
    datum: str
    angle: float
    within: float  # tolerance to either side [deg]
    drawn: float | None = None


@dataclass(frozen=True)
class ThreadRelation:
    """A thread on one part that runs in a thread of another."""

    outside: str
    inside: str
    thread: str
    engaged: float  # length of thread in thread [mm]
    travel: float = 0.0  # how far it may be screwed on from there [mm]
    locked: Literal["", "lock nut", "set screw", "adhesive", "slit", "shoulder"] = ""


@dataclass(frozen=True)
class ScrewJoint:
    """A screw with its head, washer and nut or tapped hole, and the length that it must have.

    ``needed`` is what it must be at least [mm]: the grip, the washer, and the
    nut with ``protrusion`` beyond it, or the thread engaged. ``most`` is what
    fits when the thread is blind (None: any). ``length`` is the nearest that
    is made, and ``spare`` what it is longer than needed. ``bought`` names the
    part of the design that is this screw, where there is one; ``stud`` the thread
    of a made part that takes the nut in its stead.
    """

    through: tuple[str, ...]
    into: str  # tapped hole; empty when a nut takes the thread
    screw: str  # size, e.g. "M5"
    head: str  # standard of the screw, e.g. "ISO 4762"
    clearance: Literal["", "fine", "medium", "coarse"]  # class of the holes of ISO 273; empty: as drawn
    seat: float  # depth of the head's seat below the face [mm]
    grip: float  # metal between the head's seat and the thread [mm]
    washers: tuple[str, ...] = ()  # standards, at the head and then at the nut
    nut: str = ""  # standard of the nut
    protrusion: float = 0.0  # of the screw beyond the nut, or engagement in the tapped hole [mm]
    needed: float = 0.0
    most: float | None = None
    length: float | None = None
    spare: float = 0.0
    bought: str = ""
    stud: str = ""


@dataclass(frozen=True)
class PatternRelation:
    """Holes of two parts that must coincide.

    ``first`` and ``second`` pair in order. ``play`` is the clearance between
    hole and screw (or pin) of a pair, both sides together [mm]; ``place`` the
    true-position zone that each pattern may have [mm dia]. With ``spot_through`` the second is
    spotted through the first, and its own position no longer counts.
    """

    first: tuple[str, ...]
    second: tuple[str, ...]
    play: float
    place: float
    spot_through: bool = False


@dataclass(frozen=True)
class PressRelation:
    """A press joint: greatest and least interference on the diameter, and the length pressed [mm]."""

    hole: str
    shaft: str
    least: float
    most: float
    length: float


@dataclass(frozen=True)
class AdhesiveRelation:
    """Surfaces that are bonded. ``gap`` is least and greatest on the diameter or between faces [mm]."""

    hole: str
    shaft: str
    gap: tuple[float, float]
    area: float  # [mm2]
    load: Literal["shear", "tension", "peel"]
    adhesive: str = ""  # a name of the tables; empty: the builder chooses
    hottest: float = 20.0  # in service [deg C]
    spigot: bool = False


@dataclass(frozen=True)
class SolderRelation:
    """A soldered joint: gap on the diameter or between faces, its length, and its place in the order.

    Joints of a lower ``order`` are made first, with the solder that melts higher.
    """

    hole: str
    shaft: str
    gap: tuple[float, float]
    length: float
    solder: str = ""
    order: int = 1
    vent: str = ""  # the hole that lets air out of a blind joint


@dataclass(frozen=True)
class PinRelation:
    """Two features kept by a pin or key, drilled or fitted with both parts together."""

    outer: str
    inner: str
    way: Literal["pin", "taper pin", "key"]
    dia: float  # of the pin, or width of the key [mm]
    length: float
    together: bool = True


@dataclass(frozen=True)
class ContactRelation:
    """Two surfaces that bear on each other.

    "point in cup": included angles of both [deg]; "ball in seat": the ball's
    diameter and the seat's angle; "cam on follower": nose or roller radius and
    lift [mm]; "edge on face": no figures.
    """

    first: str
    second: str
    way: Literal["point in cup", "ball in seat", "cam on follower", "edge on face"]
    figures: tuple[tuple[str, float], ...] = ()


@dataclass(frozen=True)
class BeltRelation:
    """A round belt or cord between two pulleys, on the diameters it runs on [mm].

    ``ratio`` is the driver's diameter over the driven one's; ``length`` that of an open
    belt over the centres, 2C + pi (D + d) / 2 + (D - d)^2 / (4 C).
    """

    driver: str
    driven: str
    driver_dia: float
    driven_dia: float
    centres: float
    ratio: float
    length: float
    crossed: bool = False
    belt: float = 0.0  # thickness or diameter of the belt [mm]
    towards: float | None = None  # where the driver stands from the driven part, as drawn [deg]


@dataclass(frozen=True)
class PivotRelation:
    """A joint that is turned to adjust it and then locked: pin or point, what it turns in, what locks it."""

    pin: str
    turns_in: str
    locked_by: str  # a part or part.feature; empty: friction
    swing: tuple[float, float] = (-180.0, 180.0)  # [deg]


@dataclass(frozen=True)
class SweepRelation:
    """Parts that move together about (or along) the axis of a feature and must clear what stands still."""

    moving: tuple[str, ...]  # parts
    axis: str  # part.feature whose axis it is
    fixed: tuple[str, ...]  # parts; empty: all others
    gap: float  # [mm]
    way: Literal["turns", "slides"] = "turns"
    travel: tuple[float, float] = (0.0, 360.0)  # [deg] or [mm]


@dataclass(frozen=True)
class AlikeRelation:
    """Parts, or features, that are made alike in one setting rather than each to a figure."""

    members: tuple[str, ...]
    within: float  # of each other [mm]


@dataclass(frozen=True)
class SeatRelation:
    """A bought part and the feature it sits in or on: the figure of the table that both must share."""

    bought: str  # part
    seat: str
    figure: str  # name of the figure of the table, e.g. "outside"
    value: float  # [mm]


@dataclass(frozen=True)
class StandsRelation:
    """Where a piece stands as drawn, when no joint says it.

    "against": two faces look at one another, ``apart`` [mm]; "level": both look
    the same way, the first ``apart`` beyond the second; "centred": middle on
    middle along the axis of two features; "through": a land loosely through a hole.
    """

    first: str
    second: str
    way: Literal["against", "level", "centred", "through"] = "against"
    apart: float = 0.0


@dataclass(frozen=True)
class FlushRelation:
    """Two sizes kept equal or tangent for the look of it: names of lengths or diameters."""

    first: str
    second: str
    within: float


@dataclass(frozen=True)
class Duty:
    """A purpose in one figure: what a part must do. ``figure`` is least wanted unless ``most`` is given."""

    kind: Literal["load", "run time", "stroke", "force", "pressure", "sound", "look"]
    on: tuple[str, ...]  # parts or part.feature
    figure: float | None = None  # load, force [N]; run time [s]; stroke [mm]; pressure [bar]; sound [Hz]
    most: float | None = None
    words: str = ""


BENCH_KINDS = (
    "sawn",
    "filed",
    "bent",
    "rolled",
    "riveted",
    "reamed in place",
    "lapped",
    "scraped",
    "pinned",
    "soldered",
    "adhesive",
    "engraved",
    "wound",
    "hardened",
    "tempered",
    "blued",
    "polished",
)


@dataclass(frozen=True)
class BenchWork:
    """Work of the hand on one part, in the order written; ``kind`` is one of BENCH_KINDS.

    ``figures`` are those the work has: "dia", "grip", "allowance" of a rivet
    [mm], "width", "depth" [mm], "to" of a temper [deg C].
    """

    name: str
    kind: str
    on: tuple[str, ...] = ()  # features of the part; empty: all of it
    figures: tuple[tuple[str, float], ...] = ()
    with_: tuple[str, ...] = ()  # parts that are worked together with it
    words: str = ""

    def figure(self, name: str) -> float | None:
        """One figure by its name; None when the work has none of that name."""
        return dict(self.figures).get(name)
