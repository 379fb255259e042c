"""Tools that stand on the axis: the reference point is the tip, and the tool lies towards +z.

Lengths that no shop file states are common practice, no source: a jobber
drill stands about 14 + 7.5 d out of its chuck, a chuck is 36 mm in diameter,
a centre drill's body is 2.5 times its pilot.
"""

from __future__ import annotations

from tommybar.dryrun.sweep import Corners, Pieces, counter_clockwise
from tommybar.facts.drills import point_length
from tommybar.making.reaming import standing_out

CHUCK_RADIUS = 18.0  # of a drill chuck [mm]
CHUCK_LONG = 60.0  # [mm]
CORE = 0.3  # radial; a reamer takes no more, its core must find a hole there [mm]


def twist_drill(dia: float) -> Pieces:
    """A drill with a 118-degree point; full diameter starts a point length behind the tip."""
    r, tip, out = dia / 2, point_length(dia), standing_out(dia)
    return (_ring((0, 0), (tip, -r), (out, -r), (out, r), (tip, r)),), (), (_chuck(out),)


def reamer(dia: float) -> Pieces:
    """A reamer with a 45-degree lead of 0.1 d; its core cuts nothing."""
    r, lead, out = dia / 2, 0.1 * dia, standing_out(dia)
    core = r - max(CORE, 0.025 * dia)
    cut = _ring((0, core), (0, r - lead), (lead, r), (out, r), (out, core))
    if core > r - lead:
        slope = lead - (r - core)
        cut = _ring((slope, core), (lead, r), (out, r), (out, core))
        body = _ring((0, 0), (0, r - lead), (slope, core), (out, core), (out, 0))
    else:
        body = _ring((0, 0), (0, core), (out, core), (out, 0))
    return (cut,), (body,), (_chuck(out),)


def centre_drill(pilot: float) -> Pieces:
    """A 60-degree centre drill: pilot with a 118-degree point, cone, body of 2.5 times the pilot."""
    r, big, tip = pilot / 2, 1.25 * pilot, point_length(pilot)
    cone = 1.3 * pilot  # where the cone starts behind the tip
    full = cone + (big - r) * 3**0.5
    out = full + 3 * pilot
    cut = (
        _ring((0, 0), (tip, -r), (cone, -r), (cone, r), (tip, r)),
        _ring((cone, -r), (full, -big), (out, -big), (out, big), (full, big), (cone, r)),
    )
    return cut, (), (_chuck(out + 5.0),)


def slot_drill(dia: float) -> Pieces:
    """A slot drill: flat across its end, as long as a drill of its size."""
    r, out = dia / 2, standing_out(dia)
    return (_ring((0, -r), (out, -r), (out, r), (0, r)),), (), (_chuck(out),)


def countersink(dia: float) -> Pieces:
    """A 90-degree countersink; full diameter half a diameter behind the tip."""
    r = dia / 2
    return (_ring((0, 0), (r, -r), (r + 5, -r), (r + 5, r), (r, r)),), (), (_chuck(r + 25.0),)


def _chuck(at: float) -> Corners:
    return _ring(
        (at, -CHUCK_RADIUS),
        (at + CHUCK_LONG, -CHUCK_RADIUS),
        (at + CHUCK_LONG, CHUCK_RADIUS),
        (at, CHUCK_RADIUS),
    )


def _ring(*corners: tuple[float, float]) -> Corners:
    return counter_clockwise(list(corners))
