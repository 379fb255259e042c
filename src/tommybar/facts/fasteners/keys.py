"""Keys and their seats."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from tommybar.facts.fasteners.size_row import range_row
from tommybar.facts.table import Source, read_table
from tommybar.refusals import Refusal, nearest

_TABLE = Path(__file__).parent / "keys.toml"
_STANDARD = {"parallel": "ISO 773", "woodruff": "ISO 3912"}


@dataclass(frozen=True)
class Key:
    """A key and its seats for one range of shafts."""

    standard: str
    kind: str  # "parallel" or "woodruff"
    width: float  # [mm]
    height: float  # [mm]
    disc: float | None  # diameter of a Woodruff key's disc, and of its cutter [mm]
    shaft_depth: float  # [mm]
    hub_depth: float  # [mm]
    source: Source


def key_for_shaft(diameter: float, kind: str = "parallel") -> Key:
    """The key that belongs to a shaft.

    Parameters
    ----------
    diameter : float
        Shaft diameter: over 6 and up to 44 for parallel, over 3 and up to 28
        for Woodruff keys [mm]
    kind : str, optional
        "parallel" or "woodruff"

    Returns
    -------
    Key
        Width, height and depths of the seats [mm]

    Raises
    ------
    Refusal
        If the shaft is outside the table or the kind has another name.

    Examples
    --------
    >>> one = key_for_shaft(12.0)
    >>> one.width, one.height, one.shaft_depth, one.hub_depth
    (4.0, 4.0, 2.5, 1.8)

    References
    ----------
    .. [1] ISO 773:1969 (seen in public tables), ISO 3912:1977 (from memory).
    """
    if kind not in _STANDARD:
        raise Refusal(
            f'There is no "{kind}" key here; there are parallel and woodruff.', nearest(kind, _STANDARD)
        )
    table = read_table(_TABLE)
    row = range_row(table.figures[kind], diameter, "The shaft", f"{_STANDARD[kind]} here")
    return Key(
        standard=_STANDARD[kind],
        kind=kind,
        width=float(row["width"]),
        height=float(row["height"]),
        disc=float(row["disc"]) if "disc" in row else None,
        shaft_depth=float(row["shaft_depth"]),
        hub_depth=float(row["hub_depth"]),
        source=table.source,
    )
