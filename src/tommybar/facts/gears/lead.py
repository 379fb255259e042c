"""From lead screw and gears to the pitch that is cut."""

from __future__ import annotations

import math
from collections.abc import Sequence
from fractions import Fraction

from tommybar.refusals import Refusal

INCH = Fraction("25.4")  # [mm], exactly


def lead_of(text: str) -> Fraction:
    """A pitch as it is said, in mm, without loss.

    Parameters
    ----------
    text : str
        "1.25", "1.25 mm", "8 tpi" or "1/8 in" [-]

    Returns
    -------
    Fraction
        Pitch [mm]

    Raises
    ------
    Refusal
        If it is no pitch above nought.

    Examples
    --------
    >>> float(lead_of("8 tpi"))
    3.175
    >>> float(lead_of("1.25 mm"))
    1.25

    References
    ----------
    source: 1 in = 25.4 mm exactly.
    """
    plain = text.strip().casefold().replace(",", ".")
    per_inch = plain.endswith("tpi")
    inches = plain.endswith("in")
    try:
        figure = Fraction(plain.removesuffix("tpi").removesuffix("mm").removesuffix("in").strip())
    except (ValueError, ZeroDivisionError):
        figure = Fraction(0)
    if figure <= 0:
        raise Refusal(
            f'The pitch is "{text}"; it must be a figure above 0.', 'Like 1.25, "8 tpi" or "1/8 in".'
        )
    if per_inch:
        return INCH / figure
    return figure * INCH if inches else figure


def cut_pitch(leadscrew_pitch: Fraction | float, drivers: Sequence[int], driven: Sequence[int]) -> float:
    """Pitch that a train of change gears cuts.

        p = leadscrew pitch x product of drivers / product of driven

    Parameters
    ----------
    leadscrew_pitch : Fraction or float
        Pitch of the lead screw, above 0 [mm]
    drivers, driven : Sequence[int]
        Teeth of the gears that drive and of those driven, in pairs from the
        spindle on; idlers do not count [-]

    Returns
    -------
    float
        Pitch of the thread [mm]

    Raises
    ------
    Refusal
        If a gear has no teeth, or the two lists differ in length.

    Notes
    -----
    The tumbler or a fixed first pair is taken as 1:1; if the lathe has another
    ratio there, multiply the lead screw's pitch by it first.

    Examples
    --------
    >>> cut_pitch(lead_of("8 tpi"), [120], [127])
    3.0

    References
    ----------
    .. [1] Modern Machine-Shop Practice, figures 1238-1240 (worked compound
       train, seen); first principles.
    """
    if len(drivers) != len(driven) or not drivers:
        raise Refusal(
            f"The train has {len(drivers)} drivers and {len(driven)} driven gears; they go in pairs.",
            "Name one driven gear for each driver.",
        )
    if min(*drivers, *driven) < 1 or leadscrew_pitch <= 0:
        raise Refusal(
            f"The train is {list(drivers)} to {list(driven)} on {float(leadscrew_pitch):g} mm; "
            "all must be above 0.",
            "Count the teeth again.",
        )
    return float(Fraction(leadscrew_pitch) * Fraction(math.prod(drivers), math.prod(driven)))


def ratio_error(ratio: Fraction | float, wanted: Fraction | float) -> float:
    """How far a ratio or a pitch is off the wanted one.

    Parameters
    ----------
    ratio, wanted : Fraction or float
        What is had and what is wanted, both above 0, in one unit [-]

    Returns
    -------
    float
        (ratio / wanted - 1) x 1e6 [ppm]; one tenth of it is the error in um
        over 100 mm

    Raises
    ------
    Refusal
        If one of them is not above 0.

    Examples
    --------
    The 37 and 47 gears in place of 100 and 127:

    >>> from fractions import Fraction
    >>> round(ratio_error(Fraction(37, 47), Fraction(100, 127)), 1)
    -212.8

    References
    ----------
    source: definition.
    """
    if ratio <= 0 or wanted <= 0:
        raise Refusal(
            f"The ratios are {float(ratio):g} and {float(wanted):g}; both must be above 0.",
            "Give pitches in mm.",
        )
    return float((Fraction(ratio) / Fraction(wanted) - 1) * 1_000_000)
