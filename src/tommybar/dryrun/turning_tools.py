"""Turning tools about their touched-off corner: knife, boring bar, blade, recess and chamfer tool.

What a shop file does not say is common practice, no source: a knife's corner
leads its shank by 1 mm and the tool post by 3 mm, its trailing edge clears by
7 degrees, a blade is 0.1 mm thinner behind its edge and stands 1 mm from the
left side of its holder, a recess tool is ground back 0.3 mm on each side.
"""

from __future__ import annotations

import math

from tommybar.dryrun.sweep import Corners, Pieces, counter_clockwise
from tommybar.making.tail_shape import TRAILING

SHANK_BACK = 1.0  # the corner leads the shank by this much [mm]
POST_BACK = 3.0  # and the tool post by this much [mm]
POST = 60.0  # size of a tool post or block [mm]
BLADE_RELIEF = 0.05  # each side of a blade behind its edge [mm]
BLADE_LEFT = 1.0  # of a parting blade's holder beside the blade, towards the chuck [mm]
GROUND_BACK = 0.1  # a groove tool is ground from the left side of its bit, the bit this much behind it [mm]
RECESS_RELIEF = 0.3  # each side of a recess tool behind its edge [mm]
FILE_DEEP = 6.0  # how much a file is let to take off above its line; steps are far lower [mm]
FILE_WIDE = 5e-4  # half the width of that line at its top [mm]
INSIDE_AIR = 0.2  # from an inside tool's bar to the wall at its deepest; common practice, no source [mm]
EDGE = 1.5  # height of a blade's own cutting end [mm]
CHORD_ERROR = 1e-4  # of a nose arc between its exact corners [mm]


def nose_arc(
    centre: tuple[float, float], radius: float, start: float, end: float, directions: tuple[float, ...]
) -> list[tuple[float, float]]:
    """Corners of a nose arc from angle ``start`` up to ``end`` [rad].

    Besides evenly spaced corners there is one at each quarter turn and at
    both normals of every direction of feed: there the inscribed polygon
    touches the true arc, so walls come out exactly.
    """
    if radius <= 0:
        return [centre]
    most = 2 * math.acos(max(0.0, 1 - CHORD_ERROR / radius))
    count = max(2, math.ceil((end - start) / most))
    angles = {start + (end - start) * n / count for n in range(count + 1)}
    for way in (*directions, 0.0, math.pi / 2):
        for normal in (way + math.pi / 2, way - math.pi / 2):
            turn = start + (normal - start) % (2 * math.pi)
            if turn <= end:
                angles.add(turn)
    ordered: list[float] = []
    for angle in sorted(angles):
        if not ordered or angle - ordered[-1] > 1e-9:
            ordered.append(angle)
    return [(centre[0] + radius * math.cos(t), centre[1] + radius * math.sin(t)) for t in ordered]


def knife(nose: float, shank: float, reach: float, left: bool, directions: tuple[float, ...]) -> Pieces:
    """A knife tool: square front towards the chuck, trailing edge clearing outwards.

    The reference is the theoretical corner at -z and -r; a left-hand one is
    its mirror image in z, but for the post, which stays on the side away from
    the chuck: the bit leads it there by its shank's left side.
    """
    if left:
        mirrored = tuple(math.pi - way for way in directions)
        right = knife(nose, shank, reach, False, mirrored)
        long = max(reach, shank + 4.0)
        led = POST_BACK - SHANK_BACK - shank
        return _mirrored(right[0]), _mirrored(right[1]), (box_corners(led, long, led + POST, long + POST),)
    down = 1.5 * math.pi + TRAILING  # normal of the trailing edge
    corner = nose_arc((nose, nose), nose, math.pi, down, directions)
    last = corner[-1]
    rise = (shank - last[0]) * math.tan(TRAILING)
    cut = [*corner, (shank, last[1] + rise), (shank, shank), (0.0, shank)]
    long = max(reach, shank + 4.0)
    body = box_corners(SHANK_BACK, shank, shank, long)
    return (counter_clockwise(cut),), (body,), (box_corners(POST_BACK, long, POST_BACK + POST, long + POST),)


def boring_bar(
    nose: float, shank: float, smallest_bore: float, reach: float, directions: tuple[float, ...]
) -> Pieces:
    """A boring bar cutting outwards: corner at -z and +r, the bar behind and below it.

    The corner stands out from the bar by what is left of the smallest bore
    when the bar lies at its far wall with a little air.
    """
    stand = max(0.5, 0.8 * (smallest_bore - shank))
    head = 3.0
    corner = nose_arc((nose, -nose), nose, math.pi / 2 - TRAILING, math.pi, directions)
    first = corner[0]
    drop = (head - first[0]) * math.tan(TRAILING)
    cut = [*corner, (0.0, -stand), (head, -stand), (head, first[1] - drop)]
    bar = box_corners(0.2, -stand - shank, max(reach, head + 1.0), -stand)
    block = box_corners(max(reach, head + 1.0), -stand - shank - 10.0, reach + POST, -stand + 10.0)
    return (counter_clockwise(cut),), (bar,), (block,)


def blade(width: float, nose: float, reach: float, directions: tuple[float, ...]) -> Pieces:
    """A parting or grooving blade: the reference is its +z corner; it spans ``width`` towards the chuck."""
    round_ = min(nose, width / 2)
    near_chuck = nose_arc((-width + round_, round_), round_, math.pi, 1.5 * math.pi, directions)
    free_side = nose_arc((-round_, round_), round_, 1.5 * math.pi, 2 * math.pi, directions)
    edge = max(EDGE, round_)
    cut = [*near_chuck, *free_side, (0.0, edge), (-width, edge)]
    long = max(reach, edge + 0.5)
    body = box_corners(-width + BLADE_RELIEF, edge, -BLADE_RELIEF, long)
    return (counter_clockwise(cut),), (body,), (box_corners(-width - BLADE_LEFT, long, 8.0, long + POST),)


def groove_tool(
    width: float, nose: float, reach: float, shank: float, directions: tuple[float, ...]
) -> Pieces:
    """A groove tool ground from the left side of a bit: a short blade, the bit standing out to the right.

    It gets at a corner against a shoulder on its left, however high the
    shoulder; the bit must clear what stands to its right.
    """
    cut, body, _ = blade(width, nose, reach, directions)
    bit = box_corners(-width + GROUND_BACK, reach, shank - width, reach + 1.5 * shank)
    post = box_corners(-width + POST_BACK, reach + 1.5 * shank, POST, reach + POST)
    return cut, (*body, bit), (post,)


def inside_groove_tool(
    width: float, nose: float, shank: float, cuts_deep: float, reach: float, directions: tuple[float, ...]
) -> Pieces:
    """An inside grooving tool cutting outwards: the reference is its outer corner at -z; it spans ``width`` towards +z.

    Its neck stands out of the bar by what it cuts and a little air; the bar
    begins flush with the neck's left side, since a groove may lie at a floor.
    """
    round_ = min(nose, width / 2)
    stand = cuts_deep + INSIDE_AIR
    free_side = nose_arc((width - round_, -round_), round_, 0.0, math.pi / 2, directions)
    near_chuck = nose_arc((round_, -round_), round_, math.pi / 2, math.pi, directions)
    edge = min(max(EDGE, round_), stand)
    cut = [*free_side, *near_chuck, (0.0, -edge), (width, -edge)]
    long = max(reach, width + 1.0)
    body = [box_corners(0.0, -stand - shank, long, -stand)]
    if edge < stand:
        body.append(box_corners(BLADE_RELIEF, -stand, width - BLADE_RELIEF, -edge))
    block = box_corners(long, -stand - shank - 10.0, long + POST, -stand + 10.0)
    return (counter_clockwise(cut),), tuple(body), (block,)


def recess_tool(width: float, nose: float, reach: float, directions: tuple[float, ...]) -> Pieces:
    """A face recess tool: the reference is its outer corner at -z; it spans ``width`` towards the axis."""
    round_ = min(nose, width / 2)
    outer = nose_arc((round_, -round_), round_, math.pi / 2, math.pi, directions)
    inner = nose_arc((round_, -width + round_), round_, math.pi, 1.5 * math.pi, directions)
    edge = max(EDGE, round_)
    cut = [*outer, *inner, (edge, -width), (edge, 0.0)]
    long = max(reach, edge + 0.5)
    body = box_corners(edge, -width + RECESS_RELIEF, long, -RECESS_RELIEF)
    return (counter_clockwise(cut),), (body,), (box_corners(long, -width - 5.0, long + POST, 10.0),)


def chamfer_tool(shank: float, reach: float) -> Pieces:
    """A 90-degree point, both edges at 45 degrees; the reference is its tip.

    The bit is set at the left side of its post and stands out 1.5 times its height.
    """
    half = shank / 2
    cut = counter_clockwise([(0.0, 0.0), (half, half), (-half, half)])
    long = max(reach, 1.5 * shank)
    return (
        (cut,),
        (box_corners(-half, half, half, long),),
        (box_corners(-half, long, half + POST, long + POST),),
    )


def file_edge() -> Pieces:
    """A file led along a contour by hand: all that stands over the line it is led along, within a few millimetres."""
    cut = counter_clockwise([(0.0, 0.0), (FILE_WIDE, FILE_DEEP), (-FILE_WIDE, FILE_DEEP)])
    return (cut,), (), ()


def box_corners(z_low: float, r_low: float, z_high: float, r_high: float) -> Corners:
    """The corners of a box in the section, from its low to its high z and r [mm]."""
    return counter_clockwise([(z_low, r_low), (z_high, r_low), (z_high, r_high), (z_low, r_high)])


def _mirrored(pieces: tuple[Corners, ...]) -> tuple[Corners, ...]:
    return tuple(counter_clockwise([(-float(z), float(r)) for z, r in piece]) for piece in pieces)
