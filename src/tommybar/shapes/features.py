"""The features of a part with their figures filled in.

Part frame of a turned part: the axis is z, face A lies at z = 0, face B at
z = length; every z is a distance from face A [mm]. Diameters are diameters.
Plates: x along the length, y along the width, from the lower left corner of
the named face seen from outside; depths go into the plate.
"""

from __future__ import annotations

from dataclasses import dataclass, field

from tommybar.shapes.across import (
    BoreKeyway,
    CircleHoles,
    CrossHole,
    CrossSlot,
    Engraving,
    Flats,
    HeadSlot,
    Keyway,
    Rays,
    Slit,
)
from tommybar.shapes.bent import Bend, RolledRing, SheetShape, SpringShape, WireShape
from tommybar.shapes.bought import BoughtShape
from tommybar.shapes.dim import Dim, Face
from tommybar.shapes.ends import Bore, BoreGroove, BoreTaper, CentreHole, Cup, Recess
from tommybar.shapes.lands import Arc, Cone, Cylinder, Eccentric, FaceGroove, Groove, Knurl, Land
from tommybar.shapes.prisms import (
    Boss,
    Corner,
    Dovetail,
    Outline,
    PlateEdge,
    PlateFace,
    PlateHole,
    PlateSlit,
    PlateStep,
    Pocket,
    Side,
    Slot,
    Vee,
)

__all__ = [
    "Arc",
    "Bend",
    "Bore",
    "BoreGroove",
    "BoreKeyway",
    "BoreTaper",
    "Boss",
    "BoughtShape",
    "CentreHole",
    "CircleHoles",
    "Cone",
    "Corner",
    "CrossHole",
    "CrossSlot",
    "Cup",
    "Cylinder",
    "Dim",
    "Dovetail",
    "Eccentric",
    "Engraving",
    "Face",
    "FaceGroove",
    "Flats",
    "Groove",
    "HeadSlot",
    "Keyway",
    "Knurl",
    "Land",
    "Outline",
    "PlateEdge",
    "PlateFace",
    "PlateHole",
    "PlateShape",
    "PlateSlit",
    "PlateStep",
    "Pocket",
    "Rays",
    "Recess",
    "RolledRing",
    "Shape",
    "SheetShape",
    "Side",
    "Slit",
    "Slot",
    "SpringShape",
    "TurnedShape",
    "Vee",
    "WireShape",
]


@dataclass(frozen=True)
class TurnedShape:
    """A part turned about one axis, with what is drilled, milled and sawn in it."""

    length: Dim
    outside: tuple[Land, ...]
    grooves: tuple[Groove, ...] = ()
    bores: tuple[Bore, ...] = ()
    recesses: tuple[Recess, ...] = ()
    circle_holes: tuple[CircleHoles, ...] = ()
    cross_holes: tuple[CrossHole, ...] = ()
    face_grooves: tuple[FaceGroove, ...] = ()
    bore_tapers: tuple[BoreTaper, ...] = ()
    cups: tuple[Cup, ...] = ()
    centres: tuple[CentreHole, ...] = ()
    bore_grooves: tuple[BoreGroove, ...] = ()
    flats: tuple[Flats, ...] = ()
    head_slots: tuple[HeadSlot, ...] = ()
    cross_slots: tuple[CrossSlot, ...] = ()
    keyways: tuple[Keyway, ...] = ()
    bore_keyways: tuple[BoreKeyway, ...] = ()
    slits: tuple[Slit, ...] = ()
    engravings: tuple[Engraving, ...] = ()


@dataclass(frozen=True)
class PlateShape:
    """A plate or block: overall length (x), width (y), thickness, and what is cut in it [mm]."""

    length: Dim
    width: Dim
    thickness: Dim
    corner: float = 0.0  # radius of the four corners in plan of a rectangle [mm]
    holes: tuple[PlateHole, ...] = field(default=())
    outline: Outline | None = None  # None is the rectangle
    slots: tuple[Slot, ...] = ()
    pockets: tuple[Pocket, ...] = ()
    steps: tuple[PlateStep, ...] = ()
    vees: tuple[Vee, ...] = ()
    dovetails: tuple[Dovetail, ...] = ()
    edges: tuple[PlateEdge, ...] = ()
    slits: tuple[PlateSlit, ...] = ()
    engravings: tuple[Engraving, ...] = ()
    rays: tuple[Rays, ...] = ()


Shape = TurnedShape | PlateShape | SheetShape | RolledRing | SpringShape | WireShape
