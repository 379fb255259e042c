"""Heads, keys and stocked lengths of screws."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from tommybar.facts.fasteners.size_row import row_of_size
from tommybar.facts.table import Source, read_table
from tommybar.refusals import Refusal, nearest

_TABLE = Path(__file__).parent / "screws.toml"
SCREWS = ("ISO 4762", "ISO 7380", "ISO 10642", "ISO 2009", "ISO 1207", "ISO 4017", "ISO 4026")


@dataclass(frozen=True)
class ScrewHead:
    """The head of a screw, at its largest."""

    standard: str
    size: str
    diameter: float  # of a countersunk head: to the sharp edge; of a hexagon: across corners [mm]
    height: float  # 0 for a grub screw [mm]
    key: float | None  # hexagon socket, or across flats of a hexagon head; None for a slot [mm]
    source: Source
    socket: float = 0.0  # least depth of the hexagon socket; 0 without one [mm]


def _row(standard: str, size: str) -> Mapping[str, Any]:
    if standard not in SCREWS:
        raise Refusal(
            f'There are no screws "{standard}"; the tables hold {", ".join(SCREWS)}.',
            nearest(standard, SCREWS),
        )
    return row_of_size(read_table(_TABLE).figures[standard], size, f"{standard} screw")


def screw_head(standard: str, size: str) -> ScrewHead:
    """The head of a screw.

    Parameters
    ----------
    standard : str
        "ISO 4762" cap, "ISO 7380" button, "ISO 10642" and "ISO 2009"
        countersunk, "ISO 1207" cheese, "ISO 4017" hexagon, "ISO 4026" grub
    size : str
        "M1.6" to "M20"

    Returns
    -------
    ScrewHead
        Diameter, height and key [mm]

    Raises
    ------
    Refusal
        If the standard or the size is not in the tables.

    Examples
    --------
    >>> head = screw_head("ISO 4762", "M5")
    >>> head.diameter, head.height, head.key
    (8.5, 5.0, 4.0)

    References
    ----------
    .. [1] ISO 4762, ISO 7380-1, ISO 10642, ISO 2009, ISO 1207, ISO 4017,
       ISO 4026 (which of them were seen stands in the data file).
    """
    row = _row(standard, size)
    key = row.get("key")
    return ScrewHead(
        standard=standard,
        size=row["size"],
        diameter=float(row["diameter"]),
        height=float(row["height"]),
        key=None if key is None else float(key),
        source=read_table(_TABLE).source,
        socket=float(row.get("socket", 0.0)),
    )


def standard_screw_lengths(standard: str, size: str) -> tuple[float, ...]:
    """Lengths in which a screw is stocked.

    Parameters
    ----------
    standard, size : str
        As for ``screw_head``

    Returns
    -------
    tuple of float
        Lengths, shortest first: under the head, but whole for countersunk and
        grub screws [mm]

    Raises
    ------
    Refusal
        If the standard or the size is not in the tables.

    Examples
    --------
    >>> standard_screw_lengths("ISO 4762", "M3")
    (5.0, 6.0, 8.0, 10.0, 12.0, 16.0, 20.0, 25.0, 30.0)

    References
    ----------
    .. [1] ISO 4762 and its fellows, usual commercial lengths (from memory).
    """
    row = _row(standard, size)
    lengths = read_table(_TABLE).figures["lengths"]
    return tuple(float(one) for one in lengths if row["shortest"] <= one <= row["longest"])


def screw_length_at_least(standard: str, size: str, needed: float) -> float:
    """The shortest stocked screw that is long enough.

    Parameters
    ----------
    standard, size : str
        As for ``screw_head``
    needed : float
        Length that is needed [mm]

    Returns
    -------
    float
        Stocked length, not below the needed one [mm]

    Raises
    ------
    Refusal
        If every stocked length is too short.

    Examples
    --------
    >>> screw_length_at_least("ISO 4762", "M3", 13.2)
    16.0

    References
    ----------
    .. [1] As for ``standard_screw_lengths``.
    """
    lengths = standard_screw_lengths(standard, size)
    for one in lengths:
        if one >= needed - 1e-9:
            return one
    raise Refusal(
        f"A {standard} {size} screw must be {needed:g} mm long; the longest stocked is {lengths[-1]:g} mm.",
        "Use a stud, or counterbore deeper.",
    )
