"""Screws and their threads: what strips, what breaks, what tightening takes."""

from __future__ import annotations

import math
from dataclasses import dataclass

from tommybar.mechanics.bounds import must_be_above, must_be_within

SHEAR = 0.6  # shear strength over tensile strength, ductile metals; common practice, no source [-]


@dataclass(frozen=True)
class StripLoad:
    """Pull at which each member of a screw joint gives way."""

    nut: float  # internal thread strips [N]
    screw: float  # external thread strips [N]
    breaks: float  # the screw's section breaks [N]
    engagement_needed: float  # at which nut thread and screw section are equally strong [mm]


def shear_areas(major: float, pitch: float, engagement: float) -> tuple[float, float]:
    """Areas that shear when a 60-degree thread strips: internal, external.

        internal  pi d  (1/2 + (d - d2)/(sqrt3 P)) L = 0.875 pi d L
        external  pi D1 (1/2 + (d2 - D1)/(sqrt3 P)) L = 0.75 pi D1 L

    Parameters
    ----------
    major : float
        Nominal diameter d, above 0 [mm]
    pitch : float
        Pitch P, above 0 [mm]
    engagement : float
        Length of thread engaged L, above 0 [mm]

    Returns
    -------
    tuple of float
        Internal and external shear area [mm2]

    Raises
    ------
    Refusal
        If a figure is not above nought.

    Examples
    --------
    >>> [round(one, 1) for one in shear_areas(5.0, 0.8, 7.5)]
    [103.1, 73.1]

    References
    ----------
    .. [1] FED-STD-H28 form on the ISO 68-1 profile (from memory); checked
       against the profile's polygon.
    """
    must_be_above("nominal diameter", major, 0.0, "mm")
    must_be_above("pitch", pitch, 0.0, "mm")
    must_be_above("engagement", engagement, 0.0, "mm")
    flank = math.sqrt(3) * pitch
    middle, minor = major - 3 / 8 * flank, major - 5 / 8 * flank
    internal = math.pi * major * engagement * (0.5 + (major - middle) / flank)
    external = math.pi * minor * engagement * (0.5 + (middle - minor) / flank)
    return internal, external


def strip_load(
    major: float,
    pitch: float,
    engagement: float,
    screw_strength: float,
    nut_strength: float,
    shear: float = SHEAR,
) -> StripLoad:
    """Pull at which a screw joint gives way, and the engagement that makes it even.

    Parameters
    ----------
    major, pitch, engagement : float
        As for ``shear_areas`` [mm]
    screw_strength, nut_strength : float
        Tensile strengths of both materials, above 0 [MPa]
    shear : float, optional
        Shear strength over tensile strength, over 0 to 1 [-]

    Returns
    -------
    StripLoad
        Loads [N] and engagement [mm]

    Raises
    ------
    Refusal
        If a figure is outside its range.

    Notes
    -----
    Add one pitch for incomplete threads and 1.2 to 1.5 for tolerance.

    Examples
    --------
    M5 8.8 in brass, 7.5 mm engaged: the screw breaks first.

    >>> joint = strip_load(5.0, 0.8, 7.5, 800.0, 400.0)
    >>> joint.breaks < joint.nut, round(joint.engagement_needed, 2)
    (True, 3.44)

    References
    ----------
    .. [1] FED-STD-H28 form (from memory).
    """
    must_be_above("strength of the screw", screw_strength, 0.0, "MPa")
    must_be_above("strength of the nut", nut_strength, 0.0, "MPa")
    must_be_above("shear share", shear, 0.0, "")
    must_be_within("shear share", shear, 0.0, 1.0, "")
    internal, external = shear_areas(major, pitch, engagement)
    section = math.pi / 4 * (major - 13 / 24 * math.sqrt(3) * pitch) ** 2
    needed = section * screw_strength / (internal / engagement * shear * nut_strength)
    return StripLoad(
        internal * shear * nut_strength, external * shear * screw_strength, section * screw_strength, needed
    )


def tightening_torque(
    force: float,
    major: float,
    pitch: float,
    thread_friction: float,
    head_friction: float,
    head_diameter: float,
) -> float:
    """Torque that pulls a screw up to a force.

        M = F (P/2pi + 0.577 d2 mu_G + D_Km mu_K / 2)

    Parameters
    ----------
    force : float
        Wanted pull F, 0 or more [N]
    major, pitch : float
        Nominal diameter and pitch, above 0 [mm]
    thread_friction, head_friction : float
        mu_G and mu_K, 0.08 to 0.2 usual [-]
    head_diameter : float
        Mean bearing diameter of the head D_Km, about 1.3 d [mm]

    Returns
    -------
    float
        Torque [N m]

    Raises
    ------
    Refusal
        If a figure is outside its range.

    Notes
    -----
    Friction scatters: expect 25 % either way.

    Examples
    --------
    M8x1 8.8: a table of VDI 2230 prints 26.1 N m for 20.2 kN.

    >>> round(tightening_torque(20200.0, 8.0, 1.0, 0.12, 0.12, 10.4), 1)
    26.1

    References
    ----------
    .. [1] VDI 2230 (2001), fine-thread table (seen); bearing diameter inferred.
    """
    must_be_within("force", force, 0.0, 1e7, "N")
    must_be_above("nominal diameter", major, 0.0, "mm")
    must_be_above("pitch", pitch, 0.0, "mm")
    must_be_within("thread friction", thread_friction, 0.0, 1.0, "")
    must_be_within("head friction", head_friction, 0.0, 1.0, "")
    must_be_above("bearing diameter", head_diameter, 0.0, "mm")
    middle = major - 3 / 8 * math.sqrt(3) * pitch
    arm = pitch / (2 * math.pi) + 0.577 * middle * thread_friction + head_diameter * head_friction / 2
    return force * arm / 1000


def pull_at_yield(
    major: float, pitch: float, thread_friction: float, proof: float, used: float = 0.9
) -> float:
    """Pull at which a screw being tightened reaches a share of its yield.

        F = A_s nu R_p / sqrt(1 + 3 [1.5 (d2/d0)(P/(pi d2) + 1.155 mu_G)]^2)

    Parameters
    ----------
    major, pitch : float
        Nominal diameter and pitch, above 0 [mm]
    thread_friction : float
        mu_G, 0 to 1 [-]
    proof : float
        Yield or 0.2 % proof strength R_p, above 0 [MPa]
    used : float, optional
        Share nu of it, over 0 to 1 [-]

    Returns
    -------
    float
        Pull [N]

    Raises
    ------
    Refusal
        If a figure is outside its range.

    Examples
    --------
    >>> round(pull_at_yield(8.0, 1.0, 0.12, 640.0), -2)
    20200.0

    References
    ----------
    .. [1] VDI 2230 (2001), table seen: M8x1 8.8, mu 0.12: 20.2 kN.
    """
    must_be_above("nominal diameter", major, 0.0, "mm")
    must_be_above("pitch", pitch, 0.0, "mm")
    must_be_within("thread friction", thread_friction, 0.0, 1.0, "")
    must_be_above("proof strength", proof, 0.0, "MPa")
    must_be_above("share used", used, 0.0, "")
    must_be_within("share used", used, 0.0, 1.0, "")
    root3 = math.sqrt(3)
    middle = major - 3 / 8 * root3 * pitch
    stress_circle = major - 13 / 24 * root3 * pitch
    twist = 1.5 * middle / stress_circle * (pitch / (math.pi * middle) + 1.155 * thread_friction)
    section = math.pi / 4 * stress_circle**2
    return section * used * proof / math.sqrt(1 + 3 * twist**2)


def tapping_torque(major: float, pitch: float, specific_force: float) -> float:
    """Torque of a tap, whole thread at once.

        M = P^2 d kc / 8000

    Parameters
    ----------
    major, pitch : float
        Nominal diameter and pitch, above 0 [mm]
    specific_force : float
        Specific cutting force kc, above 0 [MPa]

    Returns
    -------
    float
        Torque [N m]

    Raises
    ------
    Refusal
        If a figure is not above nought.

    Examples
    --------
    >>> round(tapping_torque(3.0, 0.5, 1800.0), 3)
    0.169

    References
    ----------
    .. [1] A tap maker's rule (from memory).
    """
    must_be_above("nominal diameter", major, 0.0, "mm")
    must_be_above("pitch", pitch, 0.0, "mm")
    must_be_above("specific cutting force", specific_force, 0.0, "MPa")
    return pitch**2 * major * specific_force / 8000


def tap_breaking_torque(major: float, core_share: float, shear_strength: float) -> float:
    """Torque at which a tap's core twists off.

        M = tau pi (c d)^3 / 16

    Parameters
    ----------
    major : float
        Nominal diameter, above 0 [mm]
    core_share : float
        Core over nominal diameter c, 0.45 to 0.5 usual, over 0 to 1 [-]
    shear_strength : float
        tau of hardened tool steel, 1200 to 1700, above 0 [MPa]

    Returns
    -------
    float
        Torque [N m]

    Raises
    ------
    Refusal
        If a figure is outside its range.

    Examples
    --------
    >>> round(tap_breaking_torque(3.0, 0.48, 1500.0), 2)
    0.88

    References
    ----------
    .. [1] First principles; core and strength are estimates.
    """
    must_be_above("nominal diameter", major, 0.0, "mm")
    must_be_above("core share", core_share, 0.0, "")
    must_be_within("core share", core_share, 0.0, 1.0, "")
    must_be_above("shear strength", shear_strength, 0.0, "MPa")
    return shear_strength * math.pi * (core_share * major) ** 3 / 16 / 1000
