"""Room that hexagon keys, spanners, sockets and screwdrivers take."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from tommybar.facts.fasteners.size_row import row_of_size
from tommybar.facts.table import Source, read_table
from tommybar.refusals import Refusal

_TABLE = Path(__file__).parent / "drivers.toml"


@dataclass(frozen=True)
class HexagonKey:
    """A bent key for a hexagon socket."""

    across: float  # flats [mm]
    corners: float  # at most [mm]
    long: float  # arm, over the other [mm]
    short: float  # arm, over the other [mm]
    source: Source


@dataclass(frozen=True)
class OpenSpanner:
    """The end of an open spanner with its handle."""

    across: float  # flats that it takes [mm]
    width: float  # over its jaws [mm]
    thick: float  # head and handle [mm]
    length: float  # from the screw's middle to the handle's end [mm]
    handle: float  # its width [mm]
    mouth: float  # how far the jaws reach beyond the hexagon's middle [mm]
    source: Source


@dataclass(frozen=True)
class SocketSpanner:
    """A socket with its drive bar and handle."""

    across: float  # flats that it takes [mm]
    outside: float  # diameter [mm]
    length: float  # [mm]
    bar: float  # diameter of the drive bar [mm]
    extension: float  # length of one [mm]
    handle: float  # length of the handle that swings [mm]
    source: Source


@dataclass(frozen=True)
class Screwdriver:
    """A screwdriver: its tip or hexagon, blade and handle."""

    tip: float  # width [mm]
    blade: float  # length outside the handle [mm]
    handle: float  # diameter [mm]
    grip: float  # length of the handle [mm]
    source: Source


def hexagon_key(across: float) -> HexagonKey:
    """The bent key of a hexagon socket.

    Parameters
    ----------
    across : float
        Size across flats, one of 0.7 to 17 [mm]

    Returns
    -------
    HexagonKey
        Across corners and both arms [mm]

    Raises
    ------
    Refusal
        If there is no key of that size in the table.

    Examples
    --------
    >>> one = hexagon_key(4.0)
    >>> one.corners, one.long, one.short
    (4.53, 74.0, 29.0)

    References
    ----------
    .. [1] ISO 2936:2014 (seen as JIS B 4648:2008 prints it).
    """
    table = read_table(_TABLE)
    row = row_of_size(table.figures["hexagon_key"], f"{across:g}", "hexagon key")
    across, corners, long, short = (float(row[name]) for name in ("across", "corners", "long", "short"))
    return HexagonKey(across, corners, long, short, table.source)


def open_spanner(across: float) -> OpenSpanner:
    """An open spanner for a hexagon.

    Parameters
    ----------
    across : float
        Size across flats, 3 to 32 [mm]

    Returns
    -------
    OpenSpanner
        Width over the jaws, thickness and length [mm]

    Raises
    ------
    Refusal
        If the size is outside that range.

    Examples
    --------
    >>> one = open_spanner(10.0)
    >>> one.width, round(one.thick, 2), one.length
    (22.0, 5.1, 145.0)

    References
    ----------
    source: common practice, no source; ISO 3318 lets the jaws be wider.
    """
    table = read_table(_TABLE)
    rule = _ranged(table.figures["spanner"], across, "open spanners")
    names = ("width", "thick", "length", "handle", "mouth")
    width, thick, length, handle, mouth = (_line(rule[name], across) for name in names)
    return OpenSpanner(across, width, thick, length, handle, mouth, table.source)


def socket_spanner(across: float) -> SocketSpanner:
    """A socket for a hexagon, with its handle.

    Parameters
    ----------
    across : float
        Size across flats, 3 to 32 [mm]

    Returns
    -------
    SocketSpanner
        Outside diameter, lengths and handle [mm]

    Raises
    ------
    Refusal
        If the size is outside that range.

    Examples
    --------
    >>> socket_spanner(10.0).outside
    14.5

    References
    ----------
    .. [1] ISO 2725-1 (from memory).
    """
    table = read_table(_TABLE)
    rule = _ranged(table.figures["socket"], across, "sockets")
    drive = next(row for row in table.figures["drive"] if across <= row["up_to"])
    length, bar, extension, handle = (float(drive[name]) for name in ("length", "bar", "extension", "handle"))
    return SocketSpanner(across, _line(rule["outside"], across), length, bar, extension, handle, table.source)


def screwdriver(size: str) -> Screwdriver:
    """The screwdriver of a slotted screw.

    Parameters
    ----------
    size : str
        Of the screw, "M1.6" to "M10"

    Returns
    -------
    Screwdriver
        Width of the tip, blade and handle [mm]

    Raises
    ------
    Refusal
        If the size is not in the table.

    Examples
    --------
    >>> one = screwdriver("M4")
    >>> one.tip, one.blade
    (5.5, 125.0)

    References
    ----------
    .. [1] ISO 2380-1 and -2 (from memory); handles: common practice, no source.
    """
    table = read_table(_TABLE)
    row = row_of_size(table.figures["screwdriver"], size, "screwdriver")
    return _driver(float(row["tip"]), row, table.source)


def stub_screwdriver(size: str) -> Screwdriver:
    """A short screwdriver for a slotted screw.

    Parameters
    ----------
    size : str
        Of the screw, "M1.6" to "M10"

    Returns
    -------
    Screwdriver
        Width of the tip, blade and handle [mm]

    Raises
    ------
    Refusal
        If the size is not in the table.

    Examples
    --------
    >>> stub_screwdriver("M4").blade
    25.0

    References
    ----------
    source: tip as for ``screwdriver``; the rest common practice, no source.
    """
    table = read_table(_TABLE)
    return _driver(screwdriver(size).tip, table.figures["stub"], table.source)


def hexagon_driver(across: float) -> Screwdriver:
    """A straight driver for a hexagon socket.

    Parameters
    ----------
    across : float
        Size across flats, one of 0.7 to 17 [mm]

    Returns
    -------
    Screwdriver
        Width over the corners, blade and handle [mm]

    Raises
    ------
    Refusal
        If there is no key of that size in the table.

    Examples
    --------
    >>> hexagon_driver(4.0).tip
    4.53

    References
    ----------
    source: corners as for ``hexagon_key``; the rest common practice, no source.
    """
    table = read_table(_TABLE)
    return _driver(hexagon_key(across).corners, table.figures["hexagon_driver"], table.source)


def _driver(tip: float, row: Mapping[str, Any], source: Source) -> Screwdriver:
    return Screwdriver(tip, float(row["blade"]), float(row["handle"]), float(row["grip"]), source)


def _ranged(rule: Mapping[str, Any], across: float, what: str) -> Mapping[str, Any]:
    if not rule["least"] <= across <= rule["most"]:
        raise Refusal(
            f"The hexagon is {across:g} mm across flats; the table of {what} goes from {rule['least']:g} to "
            f"{rule['most']:g} mm.",
            "Look on the tool itself whether there is room for it.",
        )
    return rule


def _line(rule: list[float], across: float) -> float:
    """A figure that grows with the size across flats: so much per millimetre, and so much more."""
    return round(rule[0] * across + rule[1], 6)
