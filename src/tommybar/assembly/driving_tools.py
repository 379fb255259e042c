"""The room that a tool takes about a screw's axis: columns round it, and an arm that swings.

Heights are measured along the axis, out of the metal, from the seat of the
head or nut [mm].
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

from tommybar.facts.fasteners import (
    Screwdriver,
    hexagon_driver,
    hexagon_key,
    open_spanner,
    screwdriver,
    socket_spanner,
    stub_screwdriver,
)

SIXTH = 60.0  # a hexagon takes the tool again after this [deg]
OFFSET = 15.0  # of an open spanner's jaws from its handle, to either side turned over; common practice, no source [deg]
TWELFTH = 30.0  # so does a spanner that is turned over, or a socket with twelve corners [deg]
SLENDER = 1.4  # radius of the slenderest jaws over the hexagon's corner; common practice, no source
THIN = 0.8  # wall of the thinnest socket at a corner; common practice, no source [mm]
HELD = 0.5  # of a hexagon's height that may stay below a spanner over a fillet; common practice, no source
HOLLOW = 0.6  # of a socket's length that the screw's end may fill; common practice, no source


@dataclass(frozen=True)
class Column:
    """Round room about the axis.

    Metal nearer the axis than ``hollow`` is left out: a screw's end in its
    own nut. ``least`` is the radius that not even a slender tool of the kind
    does without; 0 where another tool goes round what stands there.
    """

    what: str
    radius: float  # [mm]
    low: float  # [mm]
    high: float  # [mm]
    hollow: float = 0.0  # [mm]
    least: float = 0.0  # [mm]
    mouth: float = 0.0  # how far jaws reach on their open side, opposite the arm; 0: the column is whole [mm]


@dataclass(frozen=True)
class Arm:
    """A bar across the axis, that must swing about it by an angle at one height."""

    low: float  # [mm]
    high: float  # [mm]
    length: float  # [mm]
    width: float  # [mm]
    swing: float  # [deg]
    hollow: float = 0.0  # as of a column [mm]


@dataclass(frozen=True)
class DrivingTool:
    """One tool, or one way of putting it on: all its columns must be free, and its arm must swing."""

    name: str
    columns: tuple[Column, ...]
    arm: Arm | None = None
    kind: str = ""  # tools of one kind are the same piece of the drawer


def for_socket(across: float, depth: float, top: float) -> Iterator[DrivingTool]:
    """Tools for a hexagon socket whose mouth lies at ``top``: the key both ways, a straight driver."""
    key = hexagon_key(across)
    wide, near, far = key.corners, top + key.short - depth, top + key.long - depth
    shank = Column("its shank", wide / 2, top, near, least=wide / 2)
    name = f"size {across:g} hexagon key"
    short = Arm(near - wide, near + depth, key.long, wide, SIXTH)
    yield DrivingTool(f"{name} with its short arm in the screw", (shank,), short, "key")
    long = Arm(far - wide, far + depth, key.short, wide, SIXTH)
    shanks = (shank, Column("its shank", wide / 2, near, far))
    yield DrivingTool(f"{name} with its long arm in the screw", shanks, long, "key")
    yield _straight(f"size {across:g} hexagon screwdriver", hexagon_driver(across), top, key.short - depth)


def for_slot(size: str, top: float) -> Iterator[DrivingTool]:
    """Tools for a slot whose upper edge lies at ``top``: a screwdriver, and a stub of one."""
    stub = stub_screwdriver(size)
    yield _straight("screwdriver", screwdriver(size), top, stub.blade)
    yield _straight("stub screwdriver", stub, top, stub.blade)


def _straight(name: str, one: Screwdriver, top: float, near: float) -> DrivingTool:
    """A driver along the axis; its first stretch is what no shorter one does without."""
    blade = top + one.blade
    first = min(top + near, blade)
    columns = [Column("its blade", one.tip / 2, top, first, least=one.tip / 2)]
    if first < blade:
        columns.append(Column("its blade", one.tip / 2, first, blade))
    columns.append(Column("its handle", one.handle / 2, blade, blade + one.grip))
    return DrivingTool(name, tuple(columns), kind=name)


def for_hexagon(across: float, low: float, top: float, hollow: float = 0.0) -> Iterator[DrivingTool]:
    """Tools for a hexagon between ``low`` and ``top``: a spanner low or high on it, a socket, one with an extension.

    ``hollow`` is the radius of a screw that stands out of a nut.
    """
    spanner, socket = open_spanner(across), socket_spanner(across)
    corner = across / math.sqrt(3)
    raised = low + HELD * (top - low)
    lows = dict.fromkeys((low, max(low, top - spanner.thick), raised))
    for start in lows:
        end = start + spanner.thick
        jaws = Column("its jaws", spanner.width / 2, start, end, hollow, SLENDER * corner, spanner.mouth)
        arm = Arm(start, end, spanner.length, spanner.handle, TWELFTH, hollow)
        yield DrivingTool(f"size {across:g} open spanner", (jaws,), arm, "open spanner")
    outside, thin, end = socket.outside / 2, corner + THIN, top + socket.length
    for start, high in ((s, h) for h in (end, end + socket.extension) for s in (low, raised)):
        room = start + HOLLOW * socket.length
        body = (
            Column("its body", outside, start, room, hollow, thin),
            Column("its body", outside, room, end),  # a deeper socket takes a longer screw's end
        )
        bar = (Column("its drive bar", socket.bar / 2, end, high),) if high > end else ()
        arm = Arm(high, high + socket.bar, socket.handle, socket.bar, TWELFTH)
        name = f"size {across:g} socket" + (" on an extension" if bar else "")
        yield DrivingTool(name, (*body, *bar), arm, "socket")
