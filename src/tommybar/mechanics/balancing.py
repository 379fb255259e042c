"""Finding and taking away unbalance: trial runs, balancing holes, discs set askew."""

from __future__ import annotations

import math
from dataclasses import dataclass

from tommybar.mechanics.bounds import must_be_above, must_be_within
from tommybar.refusals import Refusal


@dataclass(frozen=True)
class FoundUnbalance:
    """Unbalance from trial runs."""

    unbalance: float  # [g mm]
    heavy_at: float  # angle of the heavy side from the first trial place [deg]
    scatter: float  # how far the three runs are from agreeing; above 0.05 do them again [-]

    @property
    def add_at(self) -> float:
        """Where the mass is to be added: opposite the heavy side [deg]."""
        return (self.heavy_at + 180) % 360


def three_run_unbalance(
    bare: float, trials: tuple[float, float, float], trial_unbalance: float
) -> FoundUnbalance:
    """Unbalance from the vibration bare and with one trial mass at 0, 120 and 240 degrees.

        V_T^2 = (V1^2 + V2^2 + V3^2)/3 - V0^2,     U = U_t V0 / V_T

    Parameters
    ----------
    bare : float
        Vibration without trial mass V0, above 0 [any unit, all alike]
    trials : tuple of float
        Vibration with the trial mass at 0, 120, 240 degrees [same unit]
    trial_unbalance : float
        Unbalance of the trial mass U_t, above 0 [g mm]

    Returns
    -------
    FoundUnbalance
        Unbalance [g mm], angle [deg] and how well the runs agree [-]

    Raises
    ------
    Refusal
        If the trial mass makes no difference, or a figure is not above nought.

    Notes
    -----
    Only sizes of vibration are needed, no angles. Holds while the stand
    answers in proportion.

    Examples
    --------
    >>> found = three_run_unbalance(3.2, (4.1896, 4.8261, 1.3697), 50.0)
    >>> round(found.unbalance), round(found.heavy_at), round(found.add_at)
    (80, 75, 255)

    References
    ----------
    .. [1] Three trial positions, common practice, no source; algebra checked
       numerically.
    """
    must_be_above("vibration without trial mass", bare, 0.0, "")
    must_be_above("trial unbalance", trial_unbalance, 0.0, "g mm")
    for one in trials:
        must_be_within("vibration with trial mass", one, 0.0, 1e9, "")
    first, second, third = trials
    square = (first**2 + second**2 + third**2) / 3 - bare**2
    if square <= 0:
        raise Refusal(
            f"The trial mass makes no difference: the mean square with it is {square + bare**2:.3g}, "
            f"bare it is {bare**2:.3g}; it must be larger.",
            "Take a heavier trial mass.",
        )
    trial = math.sqrt(square)
    across = (second**2 - third**2) / (2 * math.sqrt(3) * bare * trial)
    along = (first**2 - bare**2 - trial**2) / (2 * bare * trial)
    angle = math.degrees(math.atan2(across, along)) % 360
    return FoundUnbalance(trial_unbalance * bare / trial, angle, abs(math.hypot(across, along) - 1))


def face_hole_depth(
    unbalance: float, radius: float, drill: float, density: float, point: float = 118.0
) -> float:
    """Depth at full diameter of a balancing hole in a face, its cone counted.

        z = (U/(r rho) - pi d^3/(24 tan(point/2))) / (pi d^2/4)

    Parameters
    ----------
    unbalance : float
        Unbalance to take away U, above 0 [g mm]
    radius : float
        Radius of the hole's middle r, above 0 [mm]
    drill : float
        Diameter d, above 0 [mm]
    density : float
        Density, above 0 [g/cm3]
    point : float, optional
        Point angle, 60 to 180 [deg]

    Returns
    -------
    float
        Depth at full diameter; below nought the cone alone takes more [mm]

    Raises
    ------
    Refusal
        If a figure is outside its range.

    Examples
    --------
    >>> round(face_hole_depth(65.0, 42.0, 5.0, 8.5), 2)
    8.77

    References
    ----------
    .. [1] First principles: volume of a drilled hole.
    """
    must_be_above("unbalance", unbalance, 0.0, "g mm")
    must_be_above("radius", radius, 0.0, "mm")
    must_be_above("drill", drill, 0.0, "mm")
    must_be_above("density", density, 0.0, "g/cm3")
    must_be_within("point angle", point, 60.0, 180.0, "deg")
    volume = unbalance / (radius * density / 1000)
    cone = math.pi * drill**3 / (24 * math.tan(math.radians(point / 2)))
    return (volume - cone) / (math.pi * drill**2 / 4)


def rim_hole_depth(unbalance: float, rim_radius: float, drill: float, density: float) -> float:
    """Depth of a flat balancing hole drilled inwards from a rim.

        h = R - sqrt(R^2 - 2 U/(rho pi d^2/4))

    Parameters
    ----------
    unbalance : float
        Unbalance to take away U, above 0 [g mm]
    rim_radius : float
        Radius of the rim R, above 0 [mm]
    drill : float
        Diameter d, above 0 [mm]
    density : float
        Density, above 0 [g/cm3]

    Returns
    -------
    float
        Depth h [mm]

    Raises
    ------
    Refusal
        If even a hole to the axis takes too little, or a figure is out of range.

    Examples
    --------
    >>> round(rim_hole_depth(65.0, 50.0, 4.0, 8.5), 2)
    14.18

    References
    ----------
    .. [1] First principles.
    """
    must_be_above("unbalance", unbalance, 0.0, "g mm")
    must_be_above("radius of the rim", rim_radius, 0.0, "mm")
    must_be_above("drill", drill, 0.0, "mm")
    must_be_above("density", density, 0.0, "g/cm3")
    left = rim_radius**2 - 2 * unbalance / (density / 1000 * math.pi * drill**2 / 4)
    if left < 0:
        most = rim_radius**2 / 2 * density / 1000 * math.pi * drill**2 / 4
        raise Refusal(
            f"The unbalance is {unbalance:g} g mm; one hole of {drill:g} mm takes at most {most:.3g} g mm.",
            "Take a larger drill or several holes.",
        )
    return rim_radius - math.sqrt(left)


def skew_couple(inertia_axis: float, inertia_across: float, face_runout: float, at_diameter: float) -> float:
    """Couple unbalance of a disc that sits askew on its shaft.

        C = (I_p - I_t) sin(2 theta) / 2,    tan theta = TIR / diameter

    Parameters
    ----------
    inertia_axis, inertia_across : float
        Moments of inertia about the axis and across it, 0 or more [g mm2]
    face_runout : float
        Run-out of the face, TIR, 0 or more [mm]
    at_diameter : float
        Diameter at which it is measured, above 0 [mm]

    Returns
    -------
    float
        Couple C; times omega squared it rocks the bearings [g mm2]

    Raises
    ------
    Refusal
        If a figure is outside its range.

    Examples
    --------
    >>> round(skew_couple(900000.0, 470000.0, 0.02, 90.0), 2)
    95.56

    References
    ----------
    .. [1] First principles: products of inertia of a turned frame.
    """
    must_be_within("moment of inertia", inertia_axis, 0.0, 1e15, "g mm2")
    must_be_within("moment of inertia across", inertia_across, 0.0, 1e15, "g mm2")
    must_be_within("face run-out", face_runout, 0.0, 1e3, "mm")
    must_be_above("diameter", at_diameter, 0.0, "mm")
    theta = math.atan(face_runout / at_diameter)
    return (inertia_axis - inertia_across) * math.sin(2 * theta) / 2
