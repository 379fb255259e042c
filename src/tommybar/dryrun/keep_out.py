"""Where no tool may go: jaws, chuck, collet nut or arbor, as half-sections in the card frame.

What a shop file does not say is common practice, no source: a chuck body 40 mm
deep, jaws reaching 8 mm beyond what they grip, an arbor's shoulder and the
washer of its draw screw 6 mm larger than the spigot.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from shapely import Polygon, box

from tommybar.dryrun.centres import drive_shapes, tail_shapes
from tommybar.facts.threads import die_blank_diameter, thread
from tommybar.making.cards import Drive, Hold
from tommybar.making.steadies import BEHIND, WIDE
from tommybar.shop.model import Jaws, Shop

CHUCK_DEEP = 40.0
JAW_OVER = 8.0  # jaws reach at least this far beyond the gripped surface, radially [mm]
NUT_LONG = 15.0  # of a collet nut in front of the spindle nose [mm]
WASHER = 6.0  # how much larger on diameter than the spigot [mm]
WASHER_THICK = 4.0
STEADY_HIGH = 25.0  # its ring stands so far off the work; common practice, no source [mm]


@dataclass(frozen=True)
class Fixture:
    """What holds the work: named keep-out shapes, and where the grip lies."""

    keep_out: tuple[tuple[str, Polygon], ...]
    front: float  # jaw fronts, z in the card frame [mm]
    grip: tuple[float, float]  # z from, z to of the gripped length [mm]
    radius: float  # of the gripped surface; 0 for a vice [mm]
    known: bool = True
    tail: tuple[tuple[str, Polygon], ...] = ()  # stands there only while it carries the work


def fixture(hold: Hold, top: float, shop: Shop) -> Fixture:
    """Keep-out shapes of a holding whose work stands out to ``top`` [mm]."""
    held = _held(hold, top, shop)
    return replace(held, tail=tail_shapes(hold.tail)) if hold.tail is not None else held


def _held(hold: Hold, top: float, shop: Shop) -> Fixture:
    front = top - hold.sticks_out
    radius = _gripped(hold)
    if hold.drive is not None:
        return _driven(hold, hold.drive, front)
    if "expanding mandrel" in hold.device:
        shoulder = box(front - 20.0, 0.0, front, radius + WASHER / 2)
        return Fixture((("mandrel shoulder", shoulder),), front, (front, front + hold.length), radius)
    if "arbor" in hold.device:
        return _arbor(radius, front, top, hold.length)
    if hold.seat > 0:
        shoulder = box(front - 20.0, 0.0, front, hold.seat / 2)
        return Fixture((("shoulder of the stub", shoulder),), front, (front, front + hold.length), 0.0)
    grip = (front - hold.length, front)
    jaws = shop.jaw_set(hold.jaws)
    if jaws is None:
        return Fixture((), front, grip, radius, known=False)
    if jaws.device == "collets":
        nut = box(front - NUT_LONG, radius, front, max(jaws.body / 2, radius + JAW_OVER))
        return Fixture((("collet nut", nut), *_fixed_steady(hold, radius)), front, grip, radius)
    return Fixture(
        (*_chuck(jaws, radius, front, hold.length), *_fixed_steady(hold, radius)), front, grip, radius
    )


def _fixed_steady(hold: Hold, radius: float) -> tuple[tuple[str, Polygon], ...]:
    """A fixed steady a little behind the finished face, where the grip has one."""
    if "fixed steady" not in hold.device:
        return ()
    ring = box(-BEHIND - WIDE, radius, -BEHIND, radius + STEADY_HIGH)
    return (("fixed steady", ring),)


def _driven(hold: Hold, drive: Drive, front: float) -> Fixture:
    """Between centres: under the dog the work is held, on a mandrel in its bore."""
    shapes = drive_shapes(drive, hold.tail.mouth if hold.tail is not None else 0.0)
    if drive.mandrel <= 0:
        return Fixture(shapes, drive.front, (drive.front - drive.wide, drive.front), drive.held / 2)
    radius = drive.mandrel / 2
    rod = box(drive.end, 0.0, hold.tail.at if hold.tail is not None else drive.end, radius)
    inside = (front, front + hold.length)
    left, right = box(drive.end, 0.0, inside[0], radius), box(inside[1], 0.0, rod.bounds[2], radius)
    return Fixture(
        (*shapes, ("mandrel, driving end", left), ("mandrel's free end", right)), inside[0], inside, radius
    )


def _gripped(hold: Hold) -> float:
    """Radius of what is gripped; a screw in a tapped sleeve stands at the blank that its die was run on [mm]."""
    _, tapped, designation = hold.device.partition(" tapped ")
    if tapped:
        return die_blank_diameter(thread(designation)) / 2
    return hold.dia / 2


def _chuck(jaws: Jaws, radius: float, front: float, length: float) -> tuple[tuple[str, Polygon], ...]:
    face = front - max(jaws.jaw_height, length)
    outside = max(jaws.body / 2, radius + JAW_OVER)
    if jaws.grips == "inside":
        return (
            ("jaws", box(face, 0.0, front, radius)),
            ("chuck", box(face - CHUCK_DEEP, 0.0, face, outside)),
        )
    return (
        ("jaws", box(face, radius, front, outside)),
        ("chuck", box(face - CHUCK_DEEP, radius, face, outside)),
    )


def _arbor(radius: float, front: float, top: float, length: float) -> Fixture:
    wide = radius + WASHER / 2
    return Fixture(
        (
            ("arbor shoulder", box(front - 20.0, 0.0, front, wide)),
            ("draw screw's washer", box(top, 0.0, top + WASHER_THICK, wide)),
        ),
        front,
        (front, front + length),
        radius,
    )
