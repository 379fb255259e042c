"""End mills and countersinks that a home shop can buy, and how deep a countersink goes."""

from __future__ import annotations

from fractions import Fraction
from math import radians, tan
from pathlib import Path

from tommybar.facts.table import read_table
from tommybar.refusals import Refusal

INCH = 25.4  # [mm]
_TABLE = Path(__file__).parent / "cutters.toml"


def end_mill_diameters(system: str = "metric") -> tuple[float, ...]:
    """Diameters of end mills and slot drills on sale.

    Parameters
    ----------
    system : str, optional
        "metric" or "inch"

    Returns
    -------
    tuple of float
        Diameters, smallest first [mm]

    Raises
    ------
    Refusal
        If the system has another name.

    Examples
    --------
    >>> end_mill_diameters()[:3]
    (1.0, 1.5, 2.0)

    References
    ----------
    .. [1] Dealers' ranges; common practice, no source.
    """
    figures = read_table(_TABLE).figures
    if system == "metric":
        return tuple(float(one) for one in figures["end_mills"])
    if system == "inch":
        return tuple(float(Fraction(one)) * INCH for one in figures["inch_end_mills"])
    raise Refusal(f'There are no "{system}" end mills.', 'Say "metric" or "inch".')


def countersink_diameters(angle: int = 90) -> tuple[float, ...]:
    """Largest diameters of countersinks on sale.

    Parameters
    ----------
    angle : int, optional
        Included angle: 60, 82 or 90 [deg]

    Returns
    -------
    tuple of float
        Diameters, smallest first [mm]

    Raises
    ------
    Refusal
        If countersinks of that angle are not in the table.

    Examples
    --------
    >>> countersink_diameters(90)[0]
    4.3

    References
    ----------
    .. [1] Dealers' ranges; common practice, no source.
    """
    table = read_table(_TABLE).figures["countersinks"]
    if str(angle) not in table:
        raise Refusal(
            f"There are no countersinks of {angle} deg in the table.",
            f"It has {', '.join(sorted(table))} deg.",
        )
    return tuple(float(one) for one in table[str(angle)])


def countersink_depth(mouth: float, hole: float, angle: float = 90.0) -> float:
    """How deep a countersink goes below the face of a drilled hole.

        t = (D - d) / (2 tan(angle / 2))

    Parameters
    ----------
    mouth : float
        Diameter D at the face, not below the hole [mm]
    hole : float
        Diameter d of the hole, above 0 [mm]
    angle : float, optional
        Included angle, above 0 and below 180 [deg]

    Returns
    -------
    float
        Depth of the cone [mm]

    Raises
    ------
    Refusal
        If the mouth is smaller than the hole, or the angle is outside its range.

    Examples
    --------
    >>> round(countersink_depth(11.2, 5.5), 2)
    2.85

    References
    ----------
    .. [1] First principles; ISO 10642 heads are 90 degrees (source: seen).
    """
    if not 0 < hole <= mouth:
        raise Refusal(
            f"The mouth is {mouth:g} mm and the hole {hole:g} mm; the mouth must not be the smaller.",
            "Give the mouth first.",
        )
    if not 0 < angle < 180:
        raise Refusal(f"The angle is {angle:g} deg; it must be above 0 and below 180.", "90 deg is usual.")
    return (mouth - hole) / (2 * tan(radians(angle) / 2))
