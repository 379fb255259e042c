"""The shape of a thread: what follows from its flank angle and its pitch.

A thread form is a triangle with its tips cut off or rounded. Everything a
table prints for a size follows from the pitch and from how much is cut off.
"""

from __future__ import annotations

import math
from dataclasses import dataclass


@dataclass(frozen=True)
class Profile:
    """One thread form, each depth as a multiple of the pitch, on diameter.

    ``engagement`` is the difference of diameter that counts as a full
    (100 %) thread in the trade's tapping tables of this form.
    """

    name: str
    flank_angle: float  # included angle of the flanks [deg]
    pitch_diameter: float  # major - pitch diameter, per pitch [-]
    minor: float  # major - basic minor diameter of the internal thread, per pitch [-]
    core: float  # major - root diameter of the external thread, per pitch [-]
    stress: float  # major - diameter of the stress circle, per pitch [-]
    engagement: float  # major - hole of a full thread, per pitch [-]
    engagement_base: str


_H60 = math.sqrt(3) / 2  # height of the 60 degree triangle, per pitch
_H55 = 1 / (2 * math.tan(math.radians(27.5)))  # of the 55 degree triangle

# ISO 68-1: crest cut by H/8, internal minor by H/4; root of the bolt rounded with R = H/6.
ISO = Profile(
    name="ISO 68-1, 60 deg",
    flank_angle=60.0,
    pitch_diameter=3 / 4 * _H60,
    minor=5 / 4 * _H60,
    core=17 / 12 * _H60,
    stress=(3 / 4 + 17 / 12) / 2 * _H60,
    engagement=3 / 2 * _H60,
    engagement_base="1.2990 P, the full 60 deg thread (3/4 of H each side)",
)
# ASME B1.1: the same triangle; UNR root at 11/16 H below the crest; stress circle D - 0.9743 P.
UNIFIED = Profile(
    name="Unified, 60 deg",
    flank_angle=60.0,
    pitch_diameter=3 / 4 * _H60,
    minor=5 / 4 * _H60,
    core=11 / 8 * _H60,
    stress=9 / 8 * _H60,
    engagement=3 / 2 * _H60,
    engagement_base="1.2990 P, the full 60 deg thread (3/4 of H each side)",
)
# BS 84: crests and roots rounded, a sixth of the triangle cut from each.
WHITWORTH = Profile(
    name="Whitworth, 55 deg",
    flank_angle=55.0,
    pitch_diameter=2 / 3 * _H55,
    minor=4 / 3 * _H55,
    core=4 / 3 * _H55,
    stress=_H55,
    engagement=4 / 3 * _H55,
    engagement_base="1.2807 P, the full Whitworth depth on both sides",
)
# BS 93: depth 0.6 p, from a 47.5 degree triangle.
BA = Profile(
    name="BA, 47.5 deg",
    flank_angle=47.5,
    pitch_diameter=0.6,
    minor=1.2,
    core=1.2,
    stress=0.9,
    engagement=1.2,
    engagement_base="1.2 p, the full BA depth on both sides",
)


def triangle_height(pitch: float, flank_angle: float = 60.0) -> float:
    """Height H of the sharp triangle that a thread form is cut from.

    The triangle stands on one pitch, so

        H = P / (2 tan(angle / 2))

    Parameters
    ----------
    pitch : float
        Pitch P [mm]
    flank_angle : float, optional
        Included angle of the flanks: 60 metric and Unified, 55 Whitworth,
        47.5 BA [deg]

    Returns
    -------
    float
        Height H [mm]

    Examples
    --------
    >>> round(triangle_height(1.5), 6)
    1.299038

    References
    ----------
    .. [1] ISO 68-1:1998, basic profile: H = (sqrt(3)/2) P (seen in a public
       reprint). The formula is first principles.
    """
    return pitch / (2 * math.tan(math.radians(flank_angle) / 2))


def crest_shortening(pitch: float, flank_angle: float, depth: float) -> float:
    """How much a rounded form cuts from each tip of its sharp triangle.

        s = (H - h) / 2

    Parameters
    ----------
    pitch : float
        Pitch [mm]
    flank_angle : float
        Included angle of the flanks [deg]
    depth : float
        Depth h of the thread, on one side [mm]

    Returns
    -------
    float
        Shortening at crest and root [mm]

    Examples
    --------
    BA, pitch 1 and depth 0.6:

    >>> round(crest_shortening(1.0, 47.5, 0.6), 7)
    0.2681682

    References
    ----------
    .. [1] First principles. BS 93 prints 0.2681683 p (seen), a unit of the
       seventh place above what its angle gives: see ``ba_shortening``.
    """
    return (triangle_height(pitch, flank_angle) - depth) / 2


def crest_radius(pitch: float, flank_angle: float, depth: float) -> float:
    """Radius that rounds crest and root of a form and touches both flanks.

    The arc reaches down to the shortened crest, so

        r = s sin(angle / 2) / (1 - sin(angle / 2))

    Parameters
    ----------
    pitch : float
        Pitch [mm]
    flank_angle : float
        Included angle of the flanks [deg]
    depth : float
        Depth of the thread, on one side [mm]

    Returns
    -------
    float
        Radius at crest and root [mm]

    Examples
    --------
    Whitworth, pitch 1 and depth 0.640327:

    >>> round(crest_radius(1.0, 55.0, 0.640327), 6)
    0.137329

    References
    ----------
    .. [1] First principles; BS 84 prints 0.137329 p (seen).
    """
    half = math.sin(math.radians(flank_angle) / 2)
    return crest_shortening(pitch, flank_angle, depth) * half / (1 - half)
