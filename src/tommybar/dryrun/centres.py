"""Tail centre, barrel and tailstock, dog and catch plate, as half-sections in the card frame.

The tail stands where the tools work: a knife's shank, a tool post and a blade's
holder come near it at every cut that begins at the free end. A half centre is
drawn as it looks from the tool: ground away down to the mouth of its hole.
"""

from __future__ import annotations

import math

from shapely import Polygon, box

from tommybar.making.cards import Drive, Tail
from tommybar.shop.centre_equipment import POINT

TAILSTOCK = 120.0  # length that is drawn of the tailstock [mm]
BODY = 30.0  # length of a running centre's body in front of the barrel; common practice, no source [mm]
PLATE = 12.0  # thickness of a catch plate; common practice, no source [mm]
PLATE_BACK = 6.0  # from the driven end to the plate; common practice, no source [mm]

Shapes = tuple[tuple[str, Polygon], ...]


def tail_shapes(tail: Tail) -> Shapes:
    """What stands at the free end; the cone is drawn from the mouth of its hole outwards."""
    mouth, nose, body = tail.mouth / 2, tail.nose / 2, tail.body / 2
    foot = tail.at + tail.long - mouth / math.tan(POINT)  # where the body begins
    if tail.kind == "half":
        edge = [(tail.at, mouth), (foot, mouth), (foot, body)]
    else:
        edge = [
            (tail.at, mouth),
            (tail.at + (nose - mouth) / math.tan(POINT), nose),
            (foot, nose),
            (foot, body),
        ]
    barrel = foot + (BODY if tail.body > tail.nose else 0.0)
    edge.append((barrel, body) if barrel > foot else (foot, 0.0))
    centre = Polygon([(tail.at, 0.0), *edge, *([(barrel, 0.0)] if barrel > foot else [])])
    end = barrel + tail.out
    return (
        ("tail centre", centre.buffer(0)),
        ("tailstock barrel", box(barrel, 0.0, end, tail.barrel / 2)),
        ("tailstock", box(end, 0.0, end + TAILSTOCK, tail.casting / 2)),
    )


def drive_shapes(drive: Drive, mouth: float) -> Shapes:
    """The dog, the head's centre in a hole of that mouth, and the plate behind the driven end."""
    inner = drive.mandrel / 2 if drive.mandrel > 0 else drive.held / 2
    shapes = [
        ("driving dog", box(drive.front - drive.wide, inner, drive.front, drive.swing / 2)),
        (
            "catch plate",
            box(drive.end - PLATE_BACK - PLATE, 0.0, drive.end - PLATE_BACK, drive.plate / 2),
        ),
    ]
    if mouth > 0:
        back = PLATE_BACK * math.tan(POINT)
        cone = [(drive.end, 0.0), (drive.end, mouth / 2)]
        cone += [(drive.end - PLATE_BACK, mouth / 2 + back), (drive.end - PLATE_BACK, 0.0)]
        shapes.append(("head centre", Polygon(cone)))
    return tuple(shapes)
