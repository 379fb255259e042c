"""Flat lengths of bent strip, rolled rings, springs and bent wire."""

from __future__ import annotations

import math
from collections.abc import Sequence

from tommybar.shapes.features import RolledRing, SpringShape, WireShape


def bend_allowance(angle: float, radius: float, thickness: float, neutral: float = 0.44) -> float:
    """Length of flat strip that goes into a bend: along the fibre that keeps its length.

        BA = angle (R + k t), the angle in radians

    Parameters
    ----------
    angle : float
        How far it is bent out of the flat [deg]
    radius : float
        Inside radius R [mm]
    thickness : float
        Thickness t [mm]
    neutral : float
        Share k of the thickness, from the inside, of the neutral fibre [-]

    Returns
    -------
    float
        Bend allowance [mm]

    Notes
    -----
    k = 0.44 is common practice for mild steel bent to 1 to 3 times its
    thickness; it lies between 0.33 (tight, soft) and 0.5 (easy, hard). A trial strip settles it.

    Examples
    --------
    A right angle of 2 mm strip on 3 mm radius: pi/2 (3 + 0.88) = 6.095 mm.

    >>> round(bend_allowance(90.0, 3.0, 2.0), 3)
    6.095

    References
    ----------
    .. [1] Handbooks of sheet metal give this form; k: common practice, no source.
    """
    return math.radians(abs(angle)) * (radius + neutral * thickness)


def setback(angle: float, radius: float, thickness: float) -> float:
    """From where the outside faces would meet to where the bend begins: (R + t) tan(angle / 2) [mm].

    Examples
    --------
    >>> round(setback(90.0, 3.0, 2.0), 9)
    5.0
    """
    return (radius + thickness) * math.tan(math.radians(abs(angle)) / 2)


def flats(legs: Sequence[float], bends: Sequence[tuple[float, float]], thickness: float) -> tuple[float, ...]:
    """What stays flat of each leg: outside lengths less the setbacks of the bends beside it [mm].

    ``bends`` are (angle [deg], inside radius [mm]), one fewer than the legs.

    Examples
    --------
    >>> flats([20.0, 30.0], [(90.0, 3.0)], 2.0)
    (15.0, 25.0)
    """
    backs = [setback(angle, radius, thickness) for angle, radius in bends]
    return tuple(
        round(leg - (backs[n - 1] if n else 0.0) - (backs[n] if n < len(backs) else 0.0), 9)
        for n, leg in enumerate(legs)
    )


def ring_length(shape: RolledRing) -> float:
    """Length of strip or wire for a rolled ring, along the middle of the metal: pi (D_in + t) less its gap [mm].

    A lapped joint wants its lap on top.

    Examples
    --------
    >>> from tommybar.shapes.features import Dim
    >>> round(ring_length(RolledRing(Dim(40.0), 6.0, 1.5)), 3)
    130.376
    """
    return math.pi * (shape.inside.target + shape.thickness) - shape.gap


def spring_runs(shape: SpringShape) -> tuple[tuple[float, float], ...]:
    """Coils of a spring as (number, pitch): close ends, the active coils, close ends [-, mm].

    The pitch follows from the free length between the middles of the outermost wires.
    """
    if shape.kind != "compression":
        return ((shape.total, shape.wire),)
    dead = max(shape.total - shape.active, 0.0) / 2
    pitch = (shape.free - shape.wire * (1 + 2 * dead)) / shape.active
    return tuple(run for run in ((dead, shape.wire), (shape.active, pitch), (dead, shape.wire)) if run[0] > 0)


def spring_length(shape: SpringShape) -> float:
    """Length of wire in a spring: each coil is sqrt((pi D)^2 + p^2) long, and the legs of a torsion spring [mm].

    Hooks of an extension spring are not in it.

    Examples
    --------
    Ten close coils of 1 mm wire on 9 mm mean diameter: 10 sqrt((9 pi)^2 + 1) = 282.92 mm.

    >>> from tommybar.shapes.features import Dim
    >>> round(spring_length(SpringShape("extension", 1.0, Dim(10.0), 10.0, 10.0, 11.0, "hooks")), 2)
    282.92
    """
    mean = shape.outside.target - shape.wire
    coils = sum(number * math.hypot(math.pi * mean, pitch) for number, pitch in spring_runs(shape))
    return coils + (2 * shape.leg if shape.kind == "torsion" else 0.0)


def solid_length(shape: SpringShape) -> float:
    """Length of a compression spring pressed solid: ground ends n d, others (n + 1) d [mm].

    Examples
    --------
    >>> from tommybar.shapes.features import Dim
    >>> solid_length(SpringShape("compression", 1.0, Dim(10.0), 6.0, 8.0, 25.0, "ground"))
    8.0

    References
    ----------
    .. [1] Any handbook of springs (closed and ground: n d; closed: (n + 1) d).
    """
    return shape.wire * (shape.total + (0.0 if shape.ends == "ground" else 1.0))


def wire_length(shape: WireShape) -> float:
    """Length of wire along its middle: the legs, and each bend about its inside radius [mm].

    Examples
    --------
    >>> from tommybar.shapes.features import Dim
    >>> round(wire_length(WireShape(Dim(2.0), (10.0, 20.0), ((4.0, 90.0),))), 3)
    37.854
    """
    bends = sum(math.radians(abs(angle)) * (inside + shape.dia.target / 2) for inside, angle in shape.bends)
    return sum(shape.legs) + bends
