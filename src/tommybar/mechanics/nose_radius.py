"""What a rounded tool nose does: thin chips in light cuts, where the force points, the finish it leaves."""

from __future__ import annotations

import math
from dataclasses import dataclass

from tommybar.mechanics.bounds import must_be_above, must_be_within


@dataclass(frozen=True)
class NoseChip:
    """Chip of a cut with a rounded nose."""

    edge: float  # engaged length of edge [mm]
    area: float  # chip section [mm2]
    thickness: float  # area over edge: the equivalent chip thickness [mm]


@dataclass(frozen=True)
class InPlaneForce:
    """Force in the plane of feed and infeed, split."""

    angle: float  # effective approach angle [deg]
    along: float  # against the feed [N]
    radial: float  # pushing the work away [N]


def nose_chip(nose: float, depth: float, feed: float, approach_angle: float) -> NoseChip:
    """Engaged edge, section and equivalent thickness of a chip cut with a rounded nose.

    With a_p up to r (1 - cos k) only the arc cuts, else the straight edge as
    well; the cusp that the last turn left is taken off:

        L = r (acos(1 - a_p/r) + asin(f/2r))   or
        L = r (k + asin(f/2r)) + (a_p - r (1 - cos k)) / sin k
        A = a_p f - (f r - r^2 asin(f/2r) - (f/2) sqrt(r^2 - f^2/4))

    Parameters
    ----------
    nose : float
        Nose radius r, above 0 [mm]
    depth : float
        Depth of cut a_p, above 0 [mm]
    feed : float
        Feed f, above 0 and below 2 r [mm/rev]
    approach_angle : float
        Approach angle k, over 0 to 90 [deg]

    Returns
    -------
    NoseChip
        Edge [mm], area [mm2], equivalent thickness [mm]

    Raises
    ------
    Refusal
        If a figure is outside its range.

    Examples
    --------
    A finishing cut of 0.1 with a 0.4 nose: the chip is a third as thick as the feed.

    >>> round(nose_chip(nose=0.4, depth=0.1, feed=0.08, approach_angle=75.0).thickness, 4)
    0.0241

    References
    ----------
    .. [1] Own derivation from the geometry, checked numerically.
    """
    must_be_above("nose radius", nose, 0.0, "mm")
    must_be_above("depth of cut", depth, 0.0, "mm")
    must_be_above("feed", feed, 0.0, "mm/rev")
    must_be_within("feed", feed, 0.0, 2 * nose, "mm/rev")
    must_be_above("approach angle", approach_angle, 0.0, "deg")
    must_be_within("approach angle", approach_angle, 0.0, 90.0, "deg")
    k, half = math.radians(approach_angle), math.asin(feed / (2 * nose))
    arc_depth = nose * (1 - math.cos(k))
    if depth <= arc_depth:
        edge = nose * (math.acos(1 - depth / nose) + half)
    else:
        edge = nose * (k + half) + (depth - arc_depth) / math.sin(k)
    cusp = feed * nose - nose**2 * half - feed / 2 * math.sqrt(nose**2 - feed**2 / 4)
    area = depth * feed - cusp
    return NoseChip(edge, area, area / edge)


def in_plane_force(
    cutting_force: float, share: float, nose: float, depth: float, feed: float, approach_angle: float
) -> InPlaneForce:
    """Feed force and radial force of a cut, by the chord of the engaged edge.

    The in-plane force is a share q of the cutting force and stands square to
    the chord of the engaged edge.

    Parameters
    ----------
    cutting_force : float
        Main cutting force F_c, above 0 [N]
    share : float
        Share q: 0.4 to 0.7 usual, 0.7 to 1.2 for thin chips or a worn edge [-]
    nose, depth, feed, approach_angle : float
        As for ``nose_chip`` [mm, mm, mm/rev, deg]

    Returns
    -------
    InPlaneForce
        Effective angle [deg], feed force and radial force [N]

    Raises
    ------
    Refusal
        If a figure is outside its range.

    Notes
    -----
    This is why a light finishing cut pushes the work away more than a deep
    one of the same force.

    Examples
    --------
    >>> split = in_plane_force(120.0, 0.6, nose=0.4, depth=0.1, feed=0.08, approach_angle=75.0)
    >>> round(split.along, 1), round(split.radial, 1)
    (22.1, 68.5)

    References
    ----------
    .. [1] Chip-flow chord rule, 1954 (from memory); q is common practice, no source.
    """
    nose_chip(nose, depth, feed, approach_angle)  # refuses what is out of range
    must_be_above("cutting force", cutting_force, 0.0, "N")
    must_be_within("share of the in-plane force", share, 0.0, 2.0, "")
    k = math.radians(approach_angle)
    arc_depth = nose * (1 - math.cos(k))
    if depth <= arc_depth:
        end = math.sqrt(nose**2 - (nose - depth) ** 2)
    else:
        end = nose * math.sin(k) + (depth - arc_depth) / math.tan(k)
    low = nose - math.sqrt(nose**2 - feed**2 / 4)
    angle = math.atan2(depth - low, end + feed / 2)
    push = share * cutting_force
    return InPlaneForce(math.degrees(angle), push * math.sin(angle), push * math.cos(angle))


def turned_roughness(feed: float, nose: float) -> tuple[float, float]:
    """Peak-to-valley height and mean roughness that feed and nose leave.

        R_t = r - sqrt(r^2 - f^2/4)        R_a = f^2 / (18 sqrt(3) r)

    Parameters
    ----------
    feed : float
        Feed f, above 0 and below 2 r [mm/rev]
    nose : float
        Nose radius r, above 0 [mm]

    Returns
    -------
    tuple of float
        R_t and R_a [um]

    Raises
    ------
    Refusal
        If a figure is outside its range.

    Notes
    -----
    What is measured is 1.3 to 2 times as much, more with a built-up edge.

    Examples
    --------
    >>> tuple(round(one, 2) for one in turned_roughness(feed=0.1, nose=0.4))
    (3.14, 0.8)

    References
    ----------
    .. [1] First principles; f^2/8r in any machining text (from memory).
    """
    must_be_above("nose radius", nose, 0.0, "mm")
    must_be_above("feed", feed, 0.0, "mm/rev")
    must_be_within("feed", feed, 0.0, 2 * nose, "mm/rev")
    height = nose - math.sqrt(nose**2 - feed**2 / 4)
    return 1000 * height, 1000 * feed**2 / (18 * math.sqrt(3) * nose)
