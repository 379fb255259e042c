"""Form tools about their reference point: a round nose, a hollow that rounds an edge, a point fed straight in.

What a shop file does not say is common practice, no source: a rounding tool
is ground 0.4 mm beyond both ends of its arc.
"""

from __future__ import annotations

import itertools
import math

from tommybar.dryrun.sweep import Pieces, counter_clockwise
from tommybar.dryrun.turning_tools import BLADE_RELIEF, POST, box_corners, nose_arc

LIP = 0.4  # of a rounding form tool beyond both ends of its arc [mm]
SLICES = 48  # of the arc of a rounding form tool


def hollow_form(radius: float, shank: float, reach: float, directions: tuple[float, ...]) -> Pieces:
    """A round-nosed form tool that leaves a hollow: the reference is its lowest point, its neck as wide as the round."""
    cut = nose_arc((0.0, radius), radius, math.pi, 2 * math.pi, directions)
    long = max(reach, radius + 0.5)
    half = max(shank / 2, radius)
    body = box_corners(-radius + BLADE_RELIEF, radius, radius - BLADE_RELIEF, long)
    bit = box_corners(-half, long, half, long + 1.5 * shank)
    post = box_corners(-half, long + 1.5 * shank, half + POST, long + POST)
    return (counter_clockwise(cut),), (body, bit), (post,)


def round_form(radius: float, shank: float, back: bool) -> Pieces:
    """A form tool that leaves a rounded edge: the reference is the middle of its hollow.

    It cuts between the arc and both sides of the corner, and a little beyond
    them, in slices that are each convex; ``back`` for an edge that looks
    towards the chuck.
    """
    turn = [math.pi / 2 * n / SLICES for n in range(SLICES + 1)]
    arc = [(radius * math.cos(t), radius * math.sin(t)) for t in turn]
    out = radius + LIP
    slices = [[one, (out, out), other] for one, other in itertools.pairwise(arc)]
    slices += [[(radius, 0.0), (out, 0.0), (out, out)], [(0.0, radius), (out, out), (0.0, out)]]
    way = -1.0 if back else 1.0
    pieces = tuple(counter_clockwise([(way * z, r) for z, r in one]) for one in slices)
    low, high = (-out, 0.0) if back else (0.0, out)
    return pieces, (box_corners(low, out, high, out + 1.5 * shank),), ()


def pointed_form(included: float, shank: float, reach: float) -> Pieces:
    """A pointed tool fed straight in: the reference is its tip."""
    half = shank / 2
    high = half / math.tan(math.radians(included / 2))
    cut = counter_clockwise([(0.0, 0.0), (half, high), (-half, high)])
    long = max(reach, high + 0.5 * shank)
    return (
        (cut,),
        (box_corners(-half, high, half, long),),
        (box_corners(-half, long, half + POST, long + POST),),
    )
