"""What a route is made of: cards (one grip each), steps, passes and moves.

Card frame of a lathe card: the axis is z, z = 0 lies at the *finished* free
face of this card, z grows away from the chuck, so metal stands at z < 0.
For a card with face A free, z = -(distance from A); with face B free,
z = (distance from A) - length.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Literal

from tommybar.shapes.features import Dim, Face


@dataclass(frozen=True)
class Move:
    """A straight move of the tool's reference point to (z, r) [mm, card frame]."""

    z: float
    r: float
    rapid: bool = False


@dataclass(frozen=True)
class Pass:
    """One cut: what the diameter, depth or width is after it [mm] and the infeed."""

    to: float
    infeed: float  # on the measure that is dialled [mm]
    dial: str  # how the machine's own dial reads it, e.g. "3 turns + 24 div"
    last: bool = False  # one of the two equal finishing cuts


@dataclass(frozen=True)
class Measure:
    """A size to be measured and written in before going on."""

    size: str  # part.feature, as tommybar record calls it
    dim: Dim
    instrument: str = ""
    gives_to: tuple[str, ...] = ()  # mates that are made to suit this reading


@dataclass(frozen=True)
class Step:
    """One tool doing one thing."""

    number: int
    do: str  # at most about 12 words, verb first
    feature: str
    tool: str  # "B: knife, right hand" or "drill 7.8"
    tool_kind: str  # knife, boring, drill, reamer, tap, die, parting, groove, recess, chamfer, knurling, ...
    speed: float  # as marked on the machine [rev/min]; 0: by hand, spindle stopped
    cutting_speed: float  # reached at the largest diameter in the cut [m/min]
    feed: float  # [mm/rev]; 0: by hand
    big: str  # the one number that rules the page, e.g. "5.02"
    big_kind: str  # "DIA mm", "RAD mm", "Z mm", "deep mm", "mm"
    dial: tuple[str, ...]  # sentences for the dials
    passes: tuple[Pass, ...] = ()
    minutes: float = 0.0
    why: str = ""
    cautions: tuple[str, ...] = ()
    measure: tuple[Measure, ...] = ()  # hold point after this step when not empty
    moves: tuple[Move, ...] = ()  # lathe: of the reference point, the first one is the start
    tool_size: float = 0.0  # diameter of a drill, reamer, tap, die or cutter; width of a blade [mm]
    tool_letter: str = ""  # letter of the drawer's tool; empty for drills and the like
    key: str = ""  # stable name: part/card/what.deed, see step_keys


@dataclass(frozen=True)
class Rejected:
    """A holding that was looked at and not taken, with the figure that spoke against it."""

    holding: str
    reason: str


@dataclass(frozen=True)
class Tail:
    """The tailstock's centre in the free end, and what follows behind it [mm]."""

    kind: Literal["dead", "running", "half"]
    mouth: float  # of the centre hole in which it stands
    nose: float  # diameter where the cone of its point ends
    long: float  # from the point to the body
    body: float  # diameter behind that
    barrel: float  # diameter of the barrel
    out: float  # how far the barrel stands out
    casting: float  # diameter of the tailstock round its barrel
    at: float = 0.0  # where the hole's mouth lies, z in the card frame: 0 is the finished free face


@dataclass(frozen=True)
class Drive:
    """What turns work that runs between centres [mm, card frame]."""

    front: float  # of the dog, towards the work: z
    wide: float  # along the axis
    held: float  # diameter it is screwed to
    swing: float  # diameter that its outside sweeps
    plate: float  # diameter of the catch plate
    end: float  # driven end, where the head's centre stands: z
    mandrel: float = 0.0  # diameter of the mandrel on which the work sits; 0: the work itself is driven


@dataclass(frozen=True)
class Hold:
    """How the part is held on a card."""

    device: str  # "three-jaw, inside jaws", "collet 8", "stub arbor", "vice on parallels"
    jaws: str  # name of the jaw set in the shop; empty for arbors and vices
    surface: str  # what is gripped: "blank", "tail", or the feature's name
    dia: float  # in-process diameter of the gripped surface [mm]; 0 for a vice
    length: float  # length gripped [mm]
    sticks_out: float  # from the jaw fronts to the rough free face [mm]
    runout: float  # TIR to be expected near the grip [mm]
    why: str
    stop: str = ""  # against what the work is seated
    seat: float = 0.0  # diameter of the shoulder of a screwed stub [mm]; 0 for other holdings
    rejected: tuple[Rejected, ...] = ()
    tail: Tail | None = None  # the tailstock's centre, where it carries the free end
    drive: Drive | None = None  # between centres only


@dataclass(frozen=True)
class HolePlace:
    """One hole of a coordinate list, in the order of visiting [mm]."""

    n: int
    x: float
    y: float
    dial_x: str
    dial_y: str
    what: str
    overshoot: str = ""  # "come from the left": which side the last move comes from


@dataclass(frozen=True)
class RunoutForecast:
    """What run-out to expect for a need: 95 % and worst [mm TIR] against the bound."""

    of: str
    to: str
    within: float
    expected: float
    worst: float
    how: str


@dataclass(frozen=True)
class Card:
    """One grip of one part: the page that hangs at the machine."""

    part: str
    number: int
    of: int
    machine: Literal["lathe", "mill", "bench"]
    title: str
    free_end: Face | Literal[""]
    hold: Hold
    steps: tuple[Step, ...]
    before_starting: tuple[str, ...]  # safety and seating lines
    drawer: tuple[str, ...]  # tools in the order of use
    places: tuple[HolePlace, ...] = ()
    chord_checks: tuple[str, ...] = ()
    minutes: float = 0.0
    after: str = ""  # what becomes of the part ("leave it in the chuck", "to card 2")
    goes_wrong: tuple[str, ...] = ()
    why: str = ""
    runout: tuple[RunoutForecast, ...] = field(default=())


@dataclass(frozen=True)
class Blank:
    """The piece of stock a part starts from [mm]."""

    part: str
    material: str
    section: str  # round, flat, plate, hexagon, square
    size: float  # diameter, thickness or across flats
    width: float  # of a flat or plate; 0 for bars
    length: float  # to be sawn
    finished_length: float
    allowances: tuple[tuple[str, float], ...]  # words and mm
    count: int = 1
    mass: float = 0.0  # [g] of one blank
    why: str = ""
    as_supplied: bool = (
        False  # sheet and wire: nothing is taken off the section, so a larger one does not serve
    )
