"""Chucks: the jaw force that a cut asks for, tilt of a short grip, and what speed takes away."""

from __future__ import annotations

import math

from tommybar.mechanics.bounds import must_be_above, must_be_within


def grip_against_slip(
    cutting_force: float,
    feed_force: float,
    cut_diameter: float,
    gripped_diameter: float,
    friction: float,
    safety: float = 2.0,
) -> float:
    """Sum of jaw forces that keeps the work from slipping.

        F = S sqrt((F_c d / d_sp)^2 + F_f^2) / mu

    Parameters
    ----------
    cutting_force : float
        Main cutting force F_c, 0 or more [N]
    feed_force : float
        Force along the axis F_f, 0 or more [N]
    cut_diameter : float
        Diameter being cut d, above 0 [mm]
    gripped_diameter : float
        Diameter gripped d_sp, above 0 [mm]
    friction : float
        mu: smooth jaws on a turned surface 0.10 to 0.15, serrated 0.2 to 0.3,
        oily 0.07 [-]
    safety : float, optional
        S, 1 or more [-]

    Returns
    -------
    float
        Sum of the forces of all jaws [N]

    Raises
    ------
    Refusal
        If a figure is outside its range.

    Notes
    -----
    Tilt governs far more often than slip: see ``tilt_moment``.

    Examples
    --------
    >>> round(grip_against_slip(450.0, 180.0, 40.0, 38.0, 0.15))
    6756

    References
    ----------
    .. [1] First principles; friction from memory.
    """
    must_be_within("cutting force", cutting_force, 0.0, 1e6, "N")
    must_be_within("feed force", feed_force, 0.0, 1e6, "N")
    must_be_above("diameter being cut", cut_diameter, 0.0, "mm")
    must_be_above("gripped diameter", gripped_diameter, 0.0, "mm")
    must_be_above("friction", friction, 0.0, "")
    must_be_within("safety", safety, 1.0, 10.0, "")
    return safety * math.hypot(cutting_force * cut_diameter / gripped_diameter, feed_force) / friction


def grip_against_tilt(
    push: float, overhang: float, gripped_diameter: float, friction: float, safety: float = 2.0
) -> float:
    """Sum of jaw forces that keeps a very short grip from tilting, jaws taken as points.

        F = 4 S P L / (mu d_sp)

    Parameters
    ----------
    push : float
        Resultant P of the forces square to the axis, 0 or more [N]
    overhang : float
        Distance L of the cut from the jaws, 0 or more [mm]
    gripped_diameter : float
        Diameter gripped d_sp, above 0 [mm]
    friction : float
        mu, above 0 [-]
    safety : float, optional
        S, 1 or more [-]

    Returns
    -------
    float
        Sum of the forces of all jaws [N]

    Raises
    ------
    Refusal
        If a figure is outside its range.

    Notes
    -----
    Very conservative for jaws of real length; use ``tilt_moment`` there.

    Examples
    --------
    >>> round(grip_against_tilt(math.hypot(450.0, 160.0), 35.0, 38.0, 0.15))
    23461

    References
    ----------
    .. [1] A chuck maker's manual, permissible overhang (seen): arm 0.75 d_sp.
    """
    must_be_within("push", push, 0.0, 1e6, "N")
    must_be_within("overhang", overhang, 0.0, 1e4, "mm")
    must_be_above("gripped diameter", gripped_diameter, 0.0, "mm")
    must_be_above("friction", friction, 0.0, "")
    must_be_within("safety", safety, 1.0, 10.0, "")
    return 4 * safety * push * overhang / (friction * gripped_diameter)


def tilt_moment(
    jaw_force: float, grip_length: float, gripped_diameter: float, friction: float
) -> tuple[float, float]:
    """Moments at which work begins to lift off its jaws, and at which it comes out.

        M_0 = F l / 12        M_u = F min(l/3 + mu d/4, 0.2887 (l + mu d))

    Parameters
    ----------
    jaw_force : float
        Sum of the forces of three jaws F, 0 or more [N]
    grip_length : float
        Length gripped l, above 0 [mm]
    gripped_diameter : float
        Diameter gripped d, above 0 [mm]
    friction : float
        mu, 0 or more [-]

    Returns
    -------
    tuple of float
        Onset of lift-off and limit [N m]

    Raises
    ------
    Refusal
        If a figure is outside its range.

    Notes
    -----
    Rigid work and constant jaw force. For accuracy stay below the onset; for
    safety keep half of the limit in hand.

    Examples
    --------
    >>> [round(one, 1) for one in tilt_moment(6000.0, 20.0, 38.0, 0.15)]
    [10.0, 44.5]

    References
    ----------
    .. [1] Own derivation, checked with a linear programme.
    """
    must_be_within("jaw force", jaw_force, 0.0, 1e6, "N")
    must_be_above("length gripped", grip_length, 0.0, "mm")
    must_be_above("gripped diameter", gripped_diameter, 0.0, "mm")
    must_be_within("friction", friction, 0.0, 1.0, "")
    onset = jaw_force * grip_length / 12 / 1000
    arm = min(
        grip_length / 3 + friction * gripped_diameter / 4,
        0.2887 * (grip_length + friction * gripped_diameter),
    )
    return onset, jaw_force * arm / 1000


def grip_at_rest(
    needed_turning: float, mass_moment: float, speed: float, safety: float = 1.5, chuck_safety: float = 1.5
) -> tuple[float, float]:
    """Jaw force to be set at rest so that enough is left at speed, outside grip.

        F_c = sum(m r) omega^2        F_0 = S_sp (S_z F_spz + F_c)

    Parameters
    ----------
    needed_turning : float
        Jaw force the cut needs F_spz, 0 or more [N]
    mass_moment : float
        Sum of mass times radius of the jaws, 0 or more [kg m]
    speed : float
        Spindle speed, 0 or more [rev/min]
    safety : float, optional
        S_z on the cut, 1.5 or more [-]
    chuck_safety : float, optional
        S_sp on the chuck, 1.5 or more [-]

    Returns
    -------
    tuple of float
        Centrifugal force of the jaws and force to set at rest [N]

    Raises
    ------
    Refusal
        If a figure is outside its range.

    Notes
    -----
    The chuck gives a part of the loss back by its springing, so this is on
    the safe side. The speed marked on a chuck always rules.

    Examples
    --------
    >>> round(grip_at_rest(3000.0, 2.668, 500.0)[1])
    17722

    References
    ----------
    .. [1] Method of VDI 3106, seen in two chuck makers' manuals.
    """
    must_be_within("jaw force needed", needed_turning, 0.0, 1e7, "N")
    must_be_within("mass moment of the jaws", mass_moment, 0.0, 1e3, "kg m")
    must_be_within("spindle speed", speed, 0.0, 1e5, "rev/min")
    must_be_within("safety", safety, 1.0, 10.0, "")
    must_be_within("safety of the chuck", chuck_safety, 1.0, 10.0, "")
    lost = mass_moment * (speed * math.pi / 30) ** 2
    return lost, chuck_safety * (safety * needed_turning + lost)
