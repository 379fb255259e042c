"""Where the heads, nuts and grub screws of a design sit, each in its own frame, and the tools that turn it."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from functools import lru_cache

from tommybar.assembly.access import obstacle
from tommybar.assembly.axes import Axis, axis_of, count_of
from tommybar.assembly.driving_tools import Column, DrivingTool, for_hexagon, for_slot, for_socket
from tommybar.assembly.links import Piece
from tommybar.assembly.placing import Assembly, Placement
from tommybar.checks.screwed_holes import screwed_hole
from tommybar.design.joints import ScrewJoint
from tommybar.design.model import Part, SizedDesign
from tommybar.facts.fasteners import ScrewHead, nut, screw_head, washer
from tommybar.facts.threads import thread
from tommybar.refusals import Refusal
from tommybar.shapes.features import Shape
from tommybar.shapes.solids.frames import HERE, Frame, back, direction, frame, point, shifted, within

HEXAGONS = ("ISO 4017", "ISO 4014")
SUNK = ("ISO 10642", "ISO 2009")
OVER = frame((1, 0, 0), (0, -1, 0), (0, 0, -1))  # z the other way
ROUND = 0.1  # over a thread's major radius, what a nut's own screw may take [mm]
LEVEL, RING = 0.05, 0.4  # round a hole, from where to where its seat is felt for [mm]
BESIDE = 0.5  # a piece is the one that sits in a hole when its axis lies this near [mm]


@dataclass(frozen=True)
class Seat:
    """A head, nut or grub screw where it sits.

    ``ways`` are the frames in which it may be driven, z out of the metal and
    0 at the seat: of the assembly, or of the part itself where the part is
    not placed. ``screw`` is the piece that is driven, where it is one of the
    design; ``joined`` the pieces that must stand before it is.
    """

    hole: str
    what: str
    own: Piece
    placed: bool
    ways: tuple[Frame, ...]
    head: Column
    tools: tuple[DrivingTool, ...]
    screw: Piece | None
    joined: tuple[Piece, ...]


def seats(design: SizedDesign, whole: Assembly) -> Iterator[Seat | Refusal]:
    """Every head, nut and grub screw, those of equal holes each by itself; a refusal for what no table knows."""
    known: set[Piece] = set()
    for joint in design.screw_joints:
        try:
            found = list(_of_joint(design, whole, joint))
        except Refusal as refusal:
            yield refusal
            continue
        known |= {seat.screw for seat in found if seat.screw}
        yield from found
    for relation in design.seats:
        part = next((one for one in design.parts if one.name == relation.bought), None)
        if part is None or part.envelope is None or relation.figure != "thread_dia":
            continue
        try:
            yield from _of_seat(design, whole, part, relation.seat, known)
        except Refusal as refusal:
            yield refusal


def _of_joint(design: SizedDesign, whole: Assembly, joint: ScrewJoint) -> Iterator[Seat]:
    under = washer(joint.screw, joint.washers[0]).thickness if joint.washers else 0.0
    for own, axis in _places(design, joint.through[0]) if joint.head else ():  # a stud has none
        seat = _head(design, whole, joint, own, axis, screw_head(joint.head, joint.screw), under)
        into = joint.into.partition(".")[0]
        if seat.placed and whole.of(into) and into not in (piece[0] for piece in seat.joined):
            continue  # this hole lies over another thread
        yield seat
    for own, axis in _places(design, joint.through[-1]) if joint.nut else ():
        yield _nut(design, whole, joint, own, axis)


def _of_seat(
    design: SizedDesign, whole: Assembly, part: Part, name: str, known: set[Piece]
) -> Iterator[Seat]:
    assert part.envelope is not None
    if part.envelope.kind == "nut":
        for one in whole.placements:
            if one.part == part.name and (one.part, one.instance) not in known:
                yield _nut_on_a_thread(part, name, one)
    elif part.envelope.kind == "grub screw":
        yield from _grubs(design, whole, part, name)


def _places(design: SizedDesign, name: str) -> Iterator[tuple[Piece, Axis]]:
    """Each of the equal holes of that name in each piece of its part."""
    part = next((one for one in design.parts if one.name == name.partition(".")[0]), None)
    if part is None:
        return
    feature = name.partition(".")[2]
    for instance in range(1, part.count + 1):
        for number in range(count_of(part.shape, feature)):
            axis = axis_of(part.shape, feature, number)
            if axis is not None:
                yield (part.name, instance), axis


def _stands(whole: Assembly, piece: Piece) -> tuple[Frame, bool]:
    found = whole.of(*piece)
    return (found.frame, True) if found is not None else (HERE, False)


def _outwards(axis: Axis, far: bool) -> tuple[Frame, ...]:
    """The axis with z out of the end that a head goes in at (or of the other one); both when nothing says which."""
    high = within(axis.at, shifted(z=axis.high))
    low = within(within(axis.at, shifted(z=axis.low)), OVER)
    if axis.entry:
        return (high,) if (axis.entry == "high") != far else (low,)
    return (high, low)


def _head(
    design: SizedDesign,
    whole: Assembly,
    joint: ScrewJoint,
    own: Piece,
    axis: Axis,
    head: ScrewHead,
    under: float,
) -> Seat:
    at, placed = _stands(whole, own)
    hole = joint.through[0]
    sunk = joint.head in SUNK
    top = 0.0 if sunk else under + head.height
    beside = head.diameter if sunk else _hole_dia(design, hole)
    ways = [within(at, _seated(design, hole, axis, one, beside)) for one in _outwards(axis, False)]
    alike = [one.name for one in design.parts if one.bought.startswith(f"{joint.head} {joint.screw} ")]
    named = joint.bought or (alike[0] if len(alike) == 1 else "")
    screw = _piece_on(whole, named, ways, placed)
    if screw is not None:  # its own way says from which side it goes in
        told = [within(back(_frame_of(whole, screw)), way) for way in ways]
        ways = [way for way, one in zip(ways, told, strict=True) if one[10] < 0] or ways
    tools: tuple[DrivingTool, ...]
    if joint.head in HEXAGONS and head.key:
        tools = tuple(for_hexagon(head.key, under, top))
    elif head.key:
        tools = tuple(for_socket(head.key, head.socket, top))
    else:
        tools = tuple(for_slot(joint.screw, top))
    names = (*joint.through, *([joint.into] if joint.into else []))
    return Seat(
        hole,
        f"{joint.head} {joint.screw} screw",
        own,
        placed,
        tuple(ways),
        Column("the head itself", head.diameter / 2, under, top, least=head.diameter / 2),
        tools,
        screw,
        joined_on(design, whole, names, ways[0]) if placed else (),
    )


def _nut(design: SizedDesign, whole: Assembly, joint: ScrewJoint, own: Piece, axis: Axis) -> Seat:
    at, placed = _stands(whole, own)
    hole = joint.through[-1]
    one = nut(joint.screw, joint.nut)
    under = washer(joint.screw, joint.washers[-1]).thickness if len(joint.washers) > 1 else 0.0
    dia = _hole_dia(design, hole)
    ways = [within(at, _seated(design, hole, axis, each, dia)) for each in _outwards(axis, True)]
    alike = [
        part.name for part in design.parts if part.bought == f"{joint.nut} {joint.screw}" and part.envelope
    ]
    piece = _piece_on(whole, alike[0] if len(alike) == 1 else "", ways, placed)
    top = under + one.height
    hollow = thread(joint.screw).major / 2 + ROUND
    corner = one.across_flats / math.sqrt(3)
    return Seat(
        hole,
        f"{joint.nut} {joint.screw} nut",
        own,
        placed,
        tuple(ways),
        Column("the nut itself", corner, under, top, hollow, corner),
        tuple(for_hexagon(one.across_flats, under, top, hollow)),
        piece,
        joined_on(design, whole, joint.through, ways[0]) if placed else (),
    )


def _hole_dia(design: SizedDesign, name: str) -> float:
    found = screwed_hole(design, name)
    return found.dia if found is not None else 0.0


def _seated(design: SizedDesign, name: str, axis: Axis, way: Frame, dia: float) -> Frame:
    """The way moved to where the metal round a hole ends: the floor of a counterbore, a pocket or a recess."""
    shape = design.part(name.partition(".")[0]).shape
    level = _level(shape, way, axis.long, dia) if shape is not None and dia > 0 else 0.0
    return within(way, shifted(z=level))


@lru_cache(maxsize=64)
def _level(shape: Shape, way: Frame, long: float, dia: float) -> float:
    """How far below the mouth of a hole the metal round it ends, felt for in a narrow ring [mm]."""
    from manifold3d import Manifold

    low, high = -long - LEVEL, LEVEL
    inner, outer = dia / 2 + LEVEL, dia / 2 + RING
    ring = Manifold.cylinder(high - low, outer, outer, 64) - Manifold.cylinder(high - low, inner, inner, 64)
    met = ring.translate((0.0, 0.0, low)) ^ obstacle(("", 0), shape, HERE, way).mesh
    return 0.0 if met.is_empty() else round(min(0.0, float(met.bounding_box()[5])), 6) + 0.0


def _nut_on_a_thread(part: Part, seat: str, one: Placement) -> Seat:
    """A nut on a turned thread, to be driven from either side."""
    assert part.envelope is not None
    sizes = dict(part.envelope.sizes)
    high, flats = sizes["thickness"], sizes["across_flats"]
    hollow = sizes["thread_dia"] / 2 + ROUND
    ways = (one.frame, within(within(one.frame, shifted(z=high)), OVER))
    return Seat(
        seat,
        f"{part.bought or part.name} nut",
        (one.part, one.instance),
        True,
        ways,
        Column("the nut itself", flats / math.sqrt(3), 0.0, high, hollow),
        tuple(for_hexagon(flats, 0.0, high, hollow)),
        (one.part, one.instance),
        (),
    )


def _grubs(design: SizedDesign, whole: Assembly, part: Part, name: str) -> Iterator[Seat]:
    """Grub screws in their tapped holes: the key goes in at the mouth."""
    assert part.envelope is not None
    words = part.bought.replace("×", "x").split()
    if len(words) < 3:
        raise Refusal(
            f"the table of screws does not know the grub screw {part.name}.", "Give its designation."
        )
    head = screw_head(" ".join(words[:2]), words[2])
    key = head.key or 0.0
    long = dict(part.envelope.sizes)["length"]
    for own, axis in _places(design, name):
        at, placed = _stands(whole, own)
        ways = [within(at, one) for one in _outwards(axis, False)]
        piece = _piece_on(whole, part.name, ways, placed)
        top = 0.0
        if piece is not None:
            told = within(back(ways[0]), _frame_of(whole, piece))
            top = max(told[11], told[11] + told[10] * long)  # its end in the hole's frame
        yield Seat(
            name,
            f"{part.bought} grub screw",
            own,
            placed,
            tuple(ways),
            Column("the screw itself", 0.0, 0.0, 0.0),
            tuple(for_socket(key, head.socket, top)),
            piece,
            (own,),
        )


def _frame_of(whole: Assembly, piece: Piece) -> Frame:
    found = whole.of(*piece)
    assert found is not None
    return found.frame


def _piece_on(whole: Assembly, name: str, ways: Iterable[Frame], placed: bool) -> Piece | None:
    """The placed piece of a bought part whose axis is that of a hole, the nearest along it."""
    best: tuple[float, Piece] | None = None
    for one in whole.placements if placed and name else ():
        for way in ways:
            told = within(back(way), one.frame)
            if one.part == name and abs(told[10]) > 1 - 1e-6 and math.hypot(told[3], told[7]) < BESIDE:
                found = abs(told[11]), (one.part, one.instance)
                best = found if best is None or found < best else best
    return best[1] if best else None


def joined_on(design: SizedDesign, whole: Assembly, names: Iterable[str], way: Frame) -> tuple[Piece, ...]:
    """The placed pieces whose hole of one of these names lies on the screw's axis."""
    found: dict[Piece, None] = {}
    for name in names:
        for piece, axis in _places(design, name):
            stands = whole.of(*piece)
            if stands is None:
                continue
            at = within(stands.frame, axis.at)
            spot = point(back(way), (at[3], at[7], at[11]))
            along = direction(back(way), direction(at, (0.0, 0.0, 1.0)))
            if abs(along[2]) > 1 - 1e-6 and math.hypot(spot[0], spot[1]) < BESIDE:
                found[piece] = None
    return tuple(found)
