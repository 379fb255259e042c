"""What a bonded joint holds."""

from __future__ import annotations

import math
from pathlib import Path

from tommybar.facts.lines import read_lines
from tommybar.refusals import Refusal

_FILE = Path(__file__).parent / "joints.toml"
MPA_PER_PSI = 0.006894757293  # 1 psi [MPa]
TIMES = ("10 min", "48 h")


def joint_strength(first: str, second: str, after: str = "48 h") -> float:
    """Shear strength of a cyanoacrylate joint between two stuffs, as tested.

    Parameters
    ----------
    first, second : str
        "steel", "aluminium", "phenolic", "nylon", "acrylic" or "polycarbonate",
        in any order [-]
    after : str
        "10 min" or "48 h" [-]

    Returns
    -------
    float
        Shear strength [MPa]

    Raises
    ------
    Refusal
        If that pair or time was not tested.

    Notes
    -----
    Figures of good test joints: divide by 3 or more at the lathe.

    Examples
    --------
    >>> round(joint_strength("steel", "steel"), 2)
    22.75

    References
    ----------
    .. [1] Handbook of Adhesives and Sealants, table 10.16 (seen in part).
    """
    if after not in TIMES:
        raise Refusal(f'The time is "{after}"; the table has 10 min and 48 h.', "Say one of the two.")
    _, lines = read_lines(_FILE)
    for line in lines:
        if (first, second) in ((line["first"], line["second"]), (line["second"], line["first"])):
            return float(line["after_" + after.replace(" ", "_") + "_psi"]) * MPA_PER_PSI
    pairs = ", ".join(f"{line['first']}-{line['second']}" for line in lines)
    raise Refusal(f'The pair is "{first}-{second}"; the table has {pairs}.', "Take the weaker of like pairs.")


def axial_holding_force(diameter: float, length: float, shear_strength: float) -> float:
    """Axial force that a bonded sleeve joint holds.

        F = pi d l tau

    Parameters
    ----------
    diameter, length : float
        Diameter d and length l of the joint, above 0 [mm]
    shear_strength : float
        Shear strength tau, above 0 [MPa]

    Returns
    -------
    float
        Force [N]

    Raises
    ------
    Refusal
        If a figure is not above nought.

    Examples
    --------
    >>> round(axial_holding_force(10.0, 12.0, 25.0), 1)
    9424.8

    References
    ----------
    source: area times strength (first principles); film evenly loaded, which
    holds for a length up to about twice the diameter (common practice).
    """
    _check(diameter=diameter, length=length, shear_strength=shear_strength)
    return math.pi * diameter * length * shear_strength


def holding_torque(diameter: float, length: float, shear_strength: float) -> float:
    """Torque that a bonded sleeve joint holds.

        T = F d / 2

    Parameters
    ----------
    diameter, length : float
        Diameter d and length l of the joint, above 0 [mm]
    shear_strength : float
        Shear strength tau, above 0 [MPa]

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
    >>> round(holding_torque(6.0, 8.0, 20.0), 3)
    9.048

    References
    ----------
    source: first principles.
    """
    return axial_holding_force(diameter, length, shear_strength) * diameter / 2000


def bonded_disc_torque(diameter: float, shear_strength: float) -> float:
    """Torque that a disc glued flat on an arbor holds.

    The film shears most at the rim: T = pi D^3 tau / 16.

    Parameters
    ----------
    diameter : float
        Diameter D of the glued face, above 0 [mm]
    shear_strength : float
        Shear strength tau at the rim, above 0 [MPa]

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
    >>> round(bonded_disc_torque(20.0, 8.0), 3)
    12.566

    References
    ----------
    source: torsion of a round film, tau = 16 T / (pi D^3) (first principles).
    """
    _check(diameter=diameter, shear_strength=shear_strength)
    return math.pi * diameter**3 * shear_strength / 16_000


def _check(**figures: float) -> None:
    for name, figure in figures.items():
        if not (math.isfinite(figure) and figure > 0):
            raise Refusal(
                f"The {name.replace('_', ' ')} is {figure:g}; it must be above 0.",
                "Lengths in mm, strengths in MPa.",
            )
