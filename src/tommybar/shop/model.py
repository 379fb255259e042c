"""What a home shop has, with every figure in house units.

Made by :func:`tommybar.shop.load_shop` from a shop file; what the file leaves
out is taken from the nearest example shop and listed in ``Shop.assumed``.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from tommybar.shop.centre_equipment import Dog, Steady, TailCentre


@dataclass(frozen=True)
class Dial:
    """A slide's dial: one division and one turn [mm of slide travel].

    ``reads`` "DIA" means that a division marked on the dial takes twice the
    slide's travel off the diameter and the dial is numbered in diameter;
    "RAD" that it is numbered in travel; "" for a slide along the axis.
    ``per_division`` and ``per_turn`` are always travel of the slide itself.
    """

    per_division: float
    per_turn: float
    reads: Literal["DIA", "RAD", ""] = ""
    unit: Literal["mm", "in"] = "mm"
    slack: float = 0.0  # divisions turned before the slide moves
    travel: float = 0.0  # [mm]; 0: unknown


@dataclass(frozen=True)
class Lathe:
    """A bench lathe [mm, rev/min, W]."""

    name: str
    centre_height: float
    swing_bed: float
    swing_cross_slide: float
    between_centres: float
    spindle_bore: float
    speeds: tuple[float, ...]  # as on the plate, rising
    cross_slide: Dial
    top_slide: Dial
    carriage: Dial
    tailstock: Dial
    drill_chuck: float  # largest drill it takes
    power: float = 370.0
    efficiency: float = 0.75
    leadscrew_pitch: float = 0.0  # [mm]; 0: none
    change_gears: tuple[int, ...] = ()


@dataclass(frozen=True)
class Jaws:
    """One way of gripping: a jaw set, a collet set, or soft jaws.

    Each range is (smallest, largest, depth): the diameters it grips and how
    much length of work it can hold [mm].
    """

    name: str  # "inside jaws", "outside jaws", "four-jaw", "collets"
    device: Literal["three-jaw", "four-jaw", "collets", "soft jaws"]
    grips: Literal["outside", "inside"]  # which surface of the work
    ranges: tuple[tuple[float, float, float], ...]
    runout: float  # TIR near the grip [mm]
    body: float = 0.0  # outside diameter of the chuck body or collet nut [mm]
    jaw_height: float = 0.0  # how far jaw tips stand out from the body's face [mm]
    top_speed: float = 0.0  # marked on the chuck [rev/min]; 0: not marked


ToolKind = Literal[
    "knife",
    "boring",
    "parting",
    "groove",
    "recess",
    "chamfer",
    "knurling",
    "threading",
    "inside groove",
    "form",
]


@dataclass(frozen=True)
class Tool:
    """A lathe tool from the drawer.

    ``reach``: how deep it goes (blade below its holder, bar into a bore,
    recess tool below its shank) [mm]. ``smallest_bore``: what a boring bar
    or an inside grooving tool needs [mm]. ``width``: of a blade or recess
    tool [mm]. ``cuts_deep``: how deep a groove an inside grooving tool cuts,
    radially [mm]. A form tool has the ``radius`` of the curve that it
    ``leaves`` on the work: "round" on an edge, "hollow" in a cove [mm].
    """

    letter: str
    kind: ToolKind
    hand: Literal["right", "left", "both"]
    material: Literal["HSS", "carbide"]
    nose: float = 0.0
    width: float = 0.0
    reach: float = 0.0
    smallest_bore: float = 0.0
    shank: float = 8.0
    angle: float = 45.0  # of a chamfer tool [deg]
    pitch: float = 0.0  # of knurling wheels [mm]
    pattern: str = ""
    cuts_deep: float = 0.0
    radius: float = 0.0
    leaves: Literal["", "round", "hollow"] = ""
    note: str = ""


@dataclass(frozen=True)
class Reamer:
    """A reamer: nominal size, zone it is marked with, and what it really adds [mm]."""

    size: float
    zone: str = "H7"
    cuts_over: float = 0.0


@dataclass(frozen=True)
class Mill:
    """A bench mill or a milling slide [mm, rev/min]."""

    name: str
    nose_to_table: float
    quill: float
    travel_x: float
    travel_y: float
    speeds: tuple[float, ...]
    dial: Dial
    vice_height: float
    vice_opening: float
    vice_depth: float
    vice_width: float
    column: Literal["dovetail", "round"] = "dovetail"
    readout: float = 0.0  # resolution of a digital read-out; 0: none
    rotary_table: float = 0.0  # diameter; 0: none
    rotary_height: float = 0.0
    boring_head: tuple[float, float] = (
        0.0,
        0.0,
    )  # smallest hole its bar enters, largest it bores; 0: not known
    vee_to: float = 0.0  # largest round that the vee block takes; 0: none
    vee_bottom: float = 0.0  # from the block's foot to the root of its 90-degree vee
    sine_bar: float = 0.0  # between its rollers; 0: none


@dataclass(frozen=True)
class Counterbore:
    """A counterbore with a pilot: both diameters [mm]."""

    dia: float
    pilot: float


@dataclass(frozen=True)
class Instrument:
    """A measuring instrument: what it reads and how finely [mm]."""

    name: str
    measures: tuple[str, ...]  # "outside", "inside", "depth", "length", "runout"
    smallest: float
    largest: float
    resolution: float
    uncertainty: float  # standard uncertainty of one careful reading


@dataclass(frozen=True)
class Bar:
    """A piece on the rack, or a section that can be bought.

    Round: ``size`` is the diameter; hexagon and square: across flats; flat
    and plate: ``size`` thickness and ``width`` its width; tube: ``size``
    outside and ``width`` bore [mm].
    """

    name: str
    material: str
    section: Literal["round", "hexagon", "square", "flat", "plate", "sheet", "tube"]
    size: float
    length: float
    width: float = 0.0
    skin: Literal["drawn", "ground", "sawn", "cast", "rolled"] = "drawn"
    certain: bool = True  # the material is known, not guessed
    count: int = 1


@dataclass(frozen=True)
class Shop:
    """Everything a plan is made with."""

    name: str
    unit: Literal["mm", "in"]
    lathe: Lathe
    mill: Mill | None
    jaws: tuple[Jaws, ...]
    tools: tuple[Tool, ...]
    drills: tuple[float, ...]  # diameters owned, rising
    centre_drills: tuple[float, ...]  # pilot diameters
    reamers: tuple[Reamer, ...]
    taps: tuple[str, ...]  # designations
    dies: tuple[str, ...]
    cutters: tuple[float, ...]  # end mill diameters
    countersinks: tuple[float, ...]
    instruments: tuple[Instrument, ...]
    rack: tuple[Bar, ...]
    obtainable: tuple[Bar, ...]  # sections that can be bought (length: longest sold)
    can: frozenset[
        str
    ]  # "arbor", "adhesive arbor", "split sleeve", "between centres", "four-jaw clocked", ...
    saw_kerf: float = 1.5
    counterbores: tuple[Counterbore, ...] = ()
    long_drills: tuple[float, ...] = ()  # diameters owned in the long series besides the jobber drills
    dogs: tuple[Dog, ...] = ()  # smallest first
    catch_plate: float = 0.0  # diameter of the plate that drives a dog [mm]; 0: none
    tail_centres: tuple[TailCentre, ...] = ()
    steadies: tuple[Steady, ...] = ()
    mandrels: tuple[float, ...] = ()  # diameters of the taper mandrels owned [mm]
    assumed: tuple[str, ...] = ()  # places of the file that were taken from an example shop

    def jaw_set(self, name: str) -> Jaws | None:
        """The jaws of that name, or None."""
        return next((one for one in self.jaws if one.name == name), None)
