"""Taper pins and parallel pins."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from tommybar.facts.table import Source, read_table
from tommybar.refusals import Refusal, nearest

_TABLE = Path(__file__).parent / "pins.toml"
_STANDARD = {"taper": "ISO 2339", "parallel": "ISO 8734"}


@dataclass(frozen=True)
class Pin:
    """A pin by its diameter."""

    standard: str
    kind: str  # "taper" or "parallel"
    diameter: float  # of a taper pin: of its small end [mm]
    lengths: tuple[float, ...]  # that are made [mm]
    taper_ratio: float | None  # 50 for 1:50 on diameter; None for a parallel pin
    source: Source


def pin(kind: str, diameter: float) -> Pin:
    """A taper pin or a parallel pin.

    Parameters
    ----------
    kind : str
        "taper" (ISO 2339, 1:50) or "parallel" (ISO 8734, hardened, m6)
    diameter : float
        Diameter, of a taper pin at its small end [mm]

    Returns
    -------
    Pin
        Diameter and the lengths it is made in [mm]

    Raises
    ------
    Refusal
        If there is no such pin; the nearest diameters are named.

    Examples
    --------
    >>> pin("taper", 3.0).lengths[:4]
    (12.0, 14.0, 16.0, 18.0)

    References
    ----------
    .. [1] ISO 2339:1986, ISO 8734:1997 (from memory).
    """
    if kind not in _STANDARD:
        raise Refusal(
            f'There is no "{kind}" pin here; there are taper and parallel ones.', nearest(kind, _STANDARD)
        )
    table = read_table(_TABLE)
    rows = {float(row["diameter"]): row for row in table.figures[kind]}
    if diameter not in rows:
        close = sorted(rows, key=lambda one: abs(one - diameter))[:2]
        raise Refusal(
            f"There is no {kind} pin of {diameter:g} mm in {_STANDARD[kind]} "
            f"({min(rows):g} to {max(rows):g} mm).",
            f"The nearest are {close[0]:g} and {close[1]:g} mm.",
        )
    row = rows[diameter]
    return Pin(
        standard=_STANDARD[kind],
        kind=kind,
        diameter=diameter,
        lengths=tuple(
            float(one) for one in table.figures["lengths"] if row["shortest"] <= one <= row["longest"]
        ),
        taper_ratio=float(table.figures["taper_ratio"]) if kind == "taper" else None,
        source=table.source,
    )


def pin_diameters(kind: str) -> tuple[float, ...]:
    """Diameters in which pins are made.

    Parameters
    ----------
    kind : str
        "taper" or "parallel"

    Returns
    -------
    tuple of float
        Diameters, smallest first [mm]

    Raises
    ------
    Refusal
        If there is no such kind.

    Examples
    --------
    >>> pin_diameters("parallel")[:3]
    (1.0, 1.5, 2.0)

    References
    ----------
    .. [1] ISO 2339:1986, ISO 8734:1997 (from memory).
    """
    if kind not in _STANDARD:
        raise Refusal(
            f'There is no "{kind}" pin here; there are taper and parallel ones.', nearest(kind, _STANDARD)
        )
    return tuple(float(row["diameter"]) for row in read_table(_TABLE).figures[kind])
