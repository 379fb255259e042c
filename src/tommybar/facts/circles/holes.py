"""Coordinates of holes on a pitch circle."""

from __future__ import annotations

import math
from dataclasses import dataclass

from tommybar.refusals import Refusal, nearest

CENTRE = "centre"
CORNER = "corner"
MOST_HOLES = 1000


@dataclass(frozen=True)
class Hole:
    """One hole of a circle, numbered from 1 counter-clockwise."""

    n: int
    x: float  # [mm]
    y: float  # [mm]
    angle: float  # from the X axis, counter-clockwise, 0 up to 360 [deg]


def hole_circle(
    count: int,
    pitch_circle_diameter: float,
    start_angle: float = 0.0,
    convention: str = CENTRE,
    centre: tuple[float, float] = (0.0, 0.0),
) -> tuple[Hole, ...]:
    """Coordinates of evenly spaced holes.

    Hole 1 lies at the start angle from the X axis, the others follow
    counter-clockwise:

        x = x0 + D/2 cos(a),  y = y0 + D/2 sin(a)

    Handbooks print two conventions. "centre": the origin is the centre of the
    circle. "corner": the origin is the lower left corner of the square round
    the circle, so that every coordinate is positive.

    Parameters
    ----------
    count : int
        Number of holes, 1 to 1000 [-]
    pitch_circle_diameter : float
        Diameter D of the circle through the holes, above 0 [mm]
    start_angle : float
        Angle of hole 1 from the X axis, counter-clockwise [deg]
    convention : str
        "centre" or "corner" [-]
    centre : tuple[float, float]
        Where the origin of the convention lies in the coordinates wanted;
        with "centre" that is the centre of the circle (x0, y0) [mm]

    Returns
    -------
    tuple[Hole, ...]
        The holes in order, with x and y [mm] and angle [deg]

    Raises
    ------
    Refusal
        If the count, the diameter or the convention cannot be.

    Examples
    --------
    >>> hole_circle(6, 10.0, start_angle=30.0, centre=(7.5, 6.0))[1]
    Hole(n=2, x=7.5, y=11.0, angle=90.0)
    >>> hole_circle(4, 20.0, convention="corner")[2]
    Hole(n=3, x=0.0, y=10.0, angle=180.0)

    References
    ----------
    .. [1] Machinery's Handbook, 31st ed., p. 711, example 3(a) (seen). The
       formula is first principles.
    """
    check_circle(count, pitch_circle_diameter)
    if convention not in (CENTRE, CORNER):
        raise Refusal(
            f'The convention is "{convention}"; handbooks know centre and corner.',
            nearest(convention, (CENTRE, CORNER)) or 'Say "centre" or "corner".',
        )
    if not all(math.isfinite(figure) for figure in (start_angle, *centre)):
        raise Refusal(
            "The start angle and the centre must be finite figures.", "Give them in degrees and mm."
        )
    radius = pitch_circle_diameter / 2
    shift = radius if convention == CORNER else 0.0
    holes = []
    for index in range(count):
        angle = (start_angle + 360.0 * index / count) % 360.0
        x = centre[0] + shift + radius * math.cos(math.radians(angle))
        y = centre[1] + shift + radius * math.sin(math.radians(angle))
        holes.append(Hole(index + 1, _plain(x), _plain(y), _plain(angle) % 360.0))
    return tuple(holes)


def check_circle(count: int, pitch_circle_diameter: float) -> None:
    """Refuse a circle of holes that cannot be.

    Parameters
    ----------
    count : int
        Number of holes, 1 to 1000 [-]
    pitch_circle_diameter : float
        Diameter of the circle through the holes, above 0 [mm]

    Raises
    ------
    Refusal
        If either is outside its range.

    Returns
    -------
    None
        Nothing [-], when both are within bounds.

    Examples
    --------
    >>> check_circle(6, 33.0)

    References
    ----------
    source: bounds of ours.
    """
    if not 1 <= count <= MOST_HOLES:
        raise Refusal(
            f"The number of holes is {count}; it must be 1 to {MOST_HOLES}.",
            "Count the holes on the drawing.",
        )
    if not (math.isfinite(pitch_circle_diameter) and pitch_circle_diameter > 0):
        raise Refusal(
            f"The pitch-circle diameter is {pitch_circle_diameter:g} mm; it must be above 0.",
            "Give the diameter through the hole centres.",
        )


def _plain(figure: float) -> float:
    """The figure without the dust of binary fractions (below 1e-11 mm)."""
    return round(figure, 11) + 0.0
