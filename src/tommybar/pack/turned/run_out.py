"""A keyway cut with a disc, seen from above: where its flanks and the arcs of the disc reach the surface."""

from __future__ import annotations

import math

from tommybar.pack.sheet import Line, Mark, Point
from tommybar.shapes.features import Keyway, TurnedShape
from tommybar.shapes.ring_cuts import surface_radius

STEPS = 8  # from the middle to a flank


def run_out(radius: float, depth: float, cutter: float, aside: float) -> float:
    """How far past the end of its floor a disc reaches the surface of a round, ``aside`` from its top [mm].

    The disc of diameter ``cutter`` has its axis across the work, its lowest
    point ``depth`` below the top of the round: at the height of the surface
    there, sqrt(r^2 - a^2), half the chord of the disc.

    Parameters
    ----------
    radius : float
        Of the round [mm]
    depth : float
        Of the floor below its top [mm]
    cutter : float
        Diameter of the disc [mm]
    aside : float
        From the plane through the axis [mm]

    Returns
    -------
    float
        Length along the axis [mm]

    Examples
    --------
    Half a chord 4 mm up in a disc of 20 mm: sqrt(4 (20 - 4)) = 8.

    >>> round(run_out(15.0, 4.0, 20.0, 0.0), 9)
    8.0
    >>> run_out(5.0, 0.2, 20.0, 4.0)
    0.0
    """
    up = math.sqrt(max(radius**2 - aside**2, 0.0)) - (radius - depth)  # of the surface above the floor
    if up <= 0.0:
        return 0.0
    return math.sqrt(up * (cutter - up)) if up < cutter / 2 else cutter / 2


def disc_keyway(shape: TurnedShape, key: Keyway, scale: float) -> list[Mark]:
    """The outline of a sled-runner keyway or of one for a disc key, turned towards the eye.

    Thin lines show where a floor goes over into the arc of the disc: there
    is no edge, and the floor's length counts from there.
    """
    half, radius = key.width.value / 2, surface_radius(shape, (key.start + key.end) / 2)
    a, b = key.start, key.end
    if key.form == "woodruff":
        a = b = (key.start + key.end) / 2
    aside = [half * n / STEPS for n in range(-STEPS, STEPS + 1)]
    reach = [(t, run_out(radius, key.depth, key.cutter, t)) for t in aside]
    ring: list[Point] = [((b + out) * scale, t * scale) for t, out in reach]
    ring += [((a - out) * scale, t * scale) for t, out in reversed(reach)]
    marks: list[Mark] = [Line(tuple(ring), "thick", True)]
    if key.form == "sled":
        marks += [
            Line(((z * scale, -half * scale * 0.85), (z * scale, half * scale * 0.85)), "thin")
            for z in (a, b)
        ]
    return marks
