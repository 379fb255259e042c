"""How wide circlips are, and in which diameters balls are made."""

from __future__ import annotations

from pathlib import Path

from tommybar.facts.table import Source, read_table
from tommybar.refusals import Refusal

_TABLE = Path(__file__).parent / "ring_widths.toml"


def circlip_width(diameter: float, kind: str) -> float:
    """Radial width of a circlip opposite its gap.

    Parameters
    ----------
    diameter : float
        Diameter of the shaft or bore [mm]
    kind : str
        "shaft" or "bore"

    Returns
    -------
    float
        Radial width b [mm]

    Raises
    ------
    Refusal
        If the table has no such ring.

    Examples
    --------
    >>> circlip_width(10.0, "shaft")
    1.8

    References
    ----------
    .. [1] DIN 471, DIN 472 (from memory).
    """
    rows = read_table(_TABLE).figures[kind]
    if f"{diameter:g}" not in rows:
        close = min(rows, key=lambda one: abs(float(one) - diameter))
        raise Refusal(
            f"The width of a circlip for a {kind} of {diameter:g} mm is not in the table.",
            f"The nearest is {close} mm.",
        )
    return float(rows[f"{diameter:g}"])


def ball_diameters() -> tuple[float, ...]:
    """Diameters in which balls are stocked.

    Returns
    -------
    tuple of float
        Smallest first [mm]

    Examples
    --------
    >>> 6.0 in ball_diameters(), 6.2 in ball_diameters()
    (True, False)

    References
    ----------
    .. [1] ISO 3290 (from memory).
    """
    return tuple(float(one) for one in read_table(_TABLE).figures["balls"])


def source() -> Source:
    """Where the figures of this module come from."""
    return read_table(_TABLE).source
