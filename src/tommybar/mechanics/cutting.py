"""Turning: spindle speed, force, power and torque of a cut."""

from __future__ import annotations

import math

from tommybar.mechanics.bounds import must_be_above, must_be_within


def spindle_speed(cutting_speed: float, diameter: float) -> float:
    """Speed at which the spindle must turn for a wanted cutting speed.

    One turn carries the edge once round the circle it cuts on, so

        n = 1000 v / (pi d)

    Parameters
    ----------
    cutting_speed : float
        Cutting speed v at the largest diameter in the cut, above 0 [m/min]
    diameter : float
        Diameter d: of the work when turning, of the cutter when milling or
        drilling, above 0 [mm]

    Returns
    -------
    float
        Spindle speed n, not yet moved to a speed the machine has [rev/min]

    Raises
    ------
    Refusal
        If either figure is not a finite number above nought.

    Notes
    -----
    When facing or parting, the diameter falls as the tool goes in: this is
    the speed at the rim, so the cutting speed drops towards the centre.

    Examples
    --------
    A 75 mm bar turning at 400 rev/min passes the tool at 94.25 m/min [1]_.
    Asked the other way round:

    >>> round(spindle_speed(cutting_speed=94.25, diameter=75.0))
    400

    References
    ----------
    .. [1] Manufacturing Engineering and Technology (textbook), problem on
       turning a 75 mm rod (title from memory; figures and answer seen in a
       public reprint). The formula itself is first principles.
    """
    must_be_above("cutting speed", cutting_speed, 0.0, "m/min")
    must_be_above("diameter", diameter, 0.0, "mm")
    return 1000 * cutting_speed / (math.pi * diameter)


def surface_speed(speed: float, diameter: float) -> float:
    """Cutting speed that a spindle speed gives at a diameter.

        v = pi d n / 1000

    Parameters
    ----------
    speed : float
        Spindle speed n, 0 or more [rev/min]
    diameter : float
        Diameter d, above 0 [mm]

    Returns
    -------
    float
        Cutting speed v [m/min]

    Raises
    ------
    Refusal
        If the diameter is not above nought or the speed is below it.

    Examples
    --------
    >>> round(surface_speed(speed=400, diameter=75.0), 2)
    94.25

    References
    ----------
    .. [1] First principles; the example as in ``spindle_speed``.
    """
    must_be_above("diameter", diameter, 0.0, "mm")
    must_be_within("spindle speed", speed, 0.0, 1e6, "rev/min")
    return math.pi * diameter * speed / 1000


def cutting_minutes(length: float, feed: float, speed: float) -> float:
    """Time that one cut takes.

        t = L / (f n)

    Parameters
    ----------
    length : float
        Length of the cut L, above 0 [mm]
    feed : float
        Feed f, above 0 [mm/rev]
    speed : float
        Spindle speed n, above 0 [rev/min]

    Returns
    -------
    float
        Time t [min]

    Raises
    ------
    Refusal
        If a figure is not above nought.

    Examples
    --------
    60 mm at 0.1 mm a turn and 200 turns a minute:

    >>> cutting_minutes(length=60.0, feed=0.1, speed=200.0)
    3.0

    References
    ----------
    .. [1] First principles.
    """
    must_be_above("length of the cut", length, 0.0, "mm")
    must_be_above("feed", feed, 0.0, "mm/rev")
    must_be_above("spindle speed", speed, 0.0, "rev/min")
    return length / (feed * speed)


def specific_cutting_force(kc11: float, mc: float, thickness: float) -> float:
    """Force on one square millimetre of chip section.

        kc = kc1.1 h^-mc

    Parameters
    ----------
    kc11 : float
        kc1.1: the same at 1 mm by 1 mm, above 0 [MPa]
    mc : float
        Exponent mc, from 0 to 0.6 [-]
    thickness : float
        Chip thickness h, above 0 [mm]

    Returns
    -------
    float
        Specific cutting force kc [MPa]

    Raises
    ------
    Refusal
        If a figure is outside its range.

    Notes
    -----
    Tested from about 0.05 to 2.5 mm of chip thickness; thinner chips need
    more force than this says.

    Examples
    --------
    E295 steel at h = 0.177 mm; a chuck maker's table prints 3100 MPa:

    >>> round(specific_cutting_force(kc11=1990, mc=0.26, thickness=0.1768), -2)
    3100.0

    References
    ----------
    .. [1] VDI-Z 94 (1952), forces and powers at cutting tools (from memory);
       the example's value seen in a chuck maker's leaflet.
    """
    must_be_above("kc1.1", kc11, 0.0, "MPa")
    must_be_within("exponent mc", mc, 0.0, 0.6, "")
    must_be_above("chip thickness", thickness, 0.0, "mm")
    return float(kc11 * thickness**-mc)


def cutting_force(
    kc11: float, mc: float, feed: float, depth: float, approach_angle: float = 90.0, correction: float = 1.0
) -> float:
    """Main cutting force of a turning cut.

    The chip is b = a_p / sin k wide and h = f sin k thick, so

        F_c = K b h^(1 - mc) kc1.1

    Parameters
    ----------
    kc11 : float
        kc1.1 of the material, above 0 [MPa]
    mc : float
        Exponent mc of the material, from 0 to 0.6 [-]
    feed : float
        Feed f, above 0 [mm/rev]
    depth : float
        Depth of cut a_p: what comes off the radius, above 0 [mm]
    approach_angle : float, optional
        Angle k between the edge and the direction of feed, over 0 to 90 [deg]
    correction : float, optional
        Product K of corrections: worn edge 1.3 to 1.5, HSS at low speed 1.1
        to 1.2, above 0 [-]

    Returns
    -------
    float
        Cutting force F_c, tangential [N]

    Raises
    ------
    Refusal
        If a figure is outside its range.

    Notes
    -----
    kc1.1 of published tables scatters by a quarter and more. With a depth of
    the order of the nose radius the chip is thinner than this takes it:
    see ``nose_chip``.

    Examples
    --------
    >>> round(cutting_force(kc11=780, mc=0.18, feed=0.12, depth=1.5), 1)
    205.6

    References
    ----------
    .. [1] VDI-Z 94 (1952), forces and powers at cutting tools (from memory).
    """
    must_be_above("feed", feed, 0.0, "mm/rev")
    must_be_above("depth of cut", depth, 0.0, "mm")
    must_be_above("correction", correction, 0.0, "")
    thickness = chip_thickness(feed, approach_angle)
    width = depth / math.sin(math.radians(approach_angle))
    return correction * width * thickness * specific_cutting_force(kc11, mc, thickness)


def chip_thickness(feed: float, approach_angle: float) -> float:
    """Thickness of the chip before it is cut.

        h = f sin k

    Parameters
    ----------
    feed : float
        Feed f, above 0 [mm/rev]
    approach_angle : float
        Angle k between the edge and the direction of feed, over 0 to 90 [deg]

    Returns
    -------
    float
        Chip thickness h [mm]

    Raises
    ------
    Refusal
        If a figure is outside its range.

    Examples
    --------
    >>> round(chip_thickness(feed=0.25, approach_angle=45.0), 4)
    0.1768

    References
    ----------
    .. [1] First principles.
    """
    must_be_above("feed", feed, 0.0, "mm/rev")
    must_be_above("approach angle", approach_angle, 0.0, "deg")
    must_be_within("approach angle", approach_angle, 0.0, 90.0, "deg")
    return feed * math.sin(math.radians(approach_angle))


def cutting_power(force: float, cutting_speed: float) -> float:
    """Power that a cutting force takes at the edge.

        P = F_c v / 60

    Parameters
    ----------
    force : float
        Cutting force F_c, above 0 [N]
    cutting_speed : float
        Cutting speed v, above 0 [m/min]

    Returns
    -------
    float
        Power at the edge; the motor gives more by its efficiency [W]

    Raises
    ------
    Refusal
        If a figure is not above nought.

    Examples
    --------
    >>> round(cutting_power(force=1561.3, cutting_speed=30.0), 1)
    780.6

    References
    ----------
    .. [1] First principles.
    """
    must_be_above("cutting force", force, 0.0, "N")
    must_be_above("cutting speed", cutting_speed, 0.0, "m/min")
    return force * cutting_speed / 60


def cutting_torque(force: float, diameter: float) -> float:
    """Torque of a cutting force on the spindle.

        M = F_c d / 2000

    Parameters
    ----------
    force : float
        Cutting force F_c, above 0 [N]
    diameter : float
        Diameter d that is being cut, above 0 [mm]

    Returns
    -------
    float
        Torque M [N m]

    Raises
    ------
    Refusal
        If a figure is not above nought.

    Examples
    --------
    >>> round(cutting_torque(force=1561.3, diameter=50.0), 2)
    39.03

    References
    ----------
    .. [1] First principles.
    """
    must_be_above("cutting force", force, 0.0, "N")
    must_be_above("diameter", diameter, 0.0, "mm")
    return force * diameter / 2000
