"""Parallel pins. Taper pins stand with the tapers."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from tommybar.facts.table import Source, read_table
from tommybar.refusals import Refusal

_TABLE = Path(__file__).parent / "pins.toml"


@dataclass(frozen=True)
class ParallelPin:
    """A hardened parallel pin, ground to m6."""

    diameter: float  # [mm]
    lengths: tuple[float, ...]  # that are made [mm]
    source: Source


def parallel_pin(diameter: float) -> ParallelPin:
    """A hardened parallel pin.

    Parameters
    ----------
    diameter : float
        Diameter, 1 to 10 [mm]

    Returns
    -------
    ParallelPin
        Diameter and the lengths it is made in [mm]

    Raises
    ------
    Refusal
        If there is no such pin; the nearest diameters are named.

    Examples
    --------
    >>> parallel_pin(3.0).lengths[:4]
    (8.0, 10.0, 12.0, 14.0)

    References
    ----------
    .. [1] ISO 8734:1997 (from memory).
    """
    table = read_table(_TABLE)
    rows = {float(row["diameter"]): row for row in table.figures["parallel"]}
    if diameter not in rows:
        close = sorted(rows, key=lambda one: abs(one - diameter))[:2]
        raise Refusal(
            f"There is no parallel pin of {diameter:g} mm in ISO 8734 "
            f"({min(rows):g} to {max(rows):g} mm here).",
            f"The nearest are {close[0]:g} and {close[1]:g} mm.",
        )
    row = rows[diameter]
    return ParallelPin(
        diameter=diameter,
        lengths=tuple(
            float(one) for one in table.figures["lengths"] if row["shortest"] <= one <= row["longest"]
        ),
        source=table.source,
    )


def parallel_pin_diameters() -> tuple[float, ...]:
    """Diameters in which parallel pins are made.

    Parameters
    ----------
    None

    Returns
    -------
    tuple of float
        Diameters, smallest first [mm]

    Examples
    --------
    >>> parallel_pin_diameters()[:3]
    (1.0, 1.5, 2.0)

    References
    ----------
    .. [1] ISO 8734:1997 (from memory).
    """
    return tuple(float(row["diameter"]) for row in read_table(_TABLE).figures["parallel"])
