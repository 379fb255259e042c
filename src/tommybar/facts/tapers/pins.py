"""Taper pins, metric and inch."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from tommybar.facts.table import read_table
from tommybar.facts.tapers.cone import MM_PER_INCH
from tommybar.refusals import Refusal, nearest

_FILE = Path(__file__).parent / "pins.toml"
METRIC_TAPER = 1 / 50
INCH_TAPER = 1 / 48  # a quarter inch a foot


@dataclass(frozen=True)
class TaperPin:
    """One taper pin of a wanted length."""

    name: str
    taper_on_diameter: float  # [mm/mm]
    small_end: float  # [mm]
    large_end: float  # [mm]
    length: float  # [mm]
    end: float  # radius or chamfer a of the ends [mm]; 0: not stated
    lengths: tuple[float, float]  # shortest and longest made [mm]; (0, 0): not stated
    nominal_at: str  # the end that bears the nominal diameter
    source: str


def metric_taper_pin(diameter: float, length: float) -> TaperPin:
    """A taper pin of ISO 2339, 1:50.

    Parameters
    ----------
    diameter : float
        Nominal diameter, that of the small end, 0.6 to 12 [mm]
    length : float
        Length, within what the standard makes of that diameter [mm]

    Returns
    -------
    TaperPin
        Its diameters and length [mm]

    Raises
    ------
    Refusal
        If the standard has no such diameter or length.

    Examples
    --------
    >>> metric_taper_pin(3.0, 30.0).large_end
    3.6

    References
    ----------
    .. [1] ISO 2339:1986 (end radius and lengths seen in a reprint, in part).
    """
    table = read_table(_FILE)
    rows = {float(row[0]): row for row in table.figures["metric"]}
    if diameter not in rows:
        raise Refusal(
            f"The taper pin is {diameter:g} mm; ISO 2339 has {', '.join(f'{one:g}' for one in rows)}.",
            "Take the nearest and ream to suit.",
        )
    _, end, shortest, longest = rows[diameter]
    if not shortest <= length <= longest:
        raise Refusal(
            f"The length is {length:g} mm; ISO 2339 has {shortest} to {longest} mm at {diameter:g} mm.",
            "Take another diameter, or cut a longer pin.",
        )
    return TaperPin(
        name=f"ISO 2339 {diameter:g} x {length:g}",
        taper_on_diameter=METRIC_TAPER,
        small_end=diameter,
        large_end=round(diameter + length * METRIC_TAPER, 9),
        length=length,
        end=float(end),
        lengths=(float(shortest), float(longest)),
        nominal_at=str(table.figures["nominal_at"]),
        source=str(table.source),
    )


def inch_taper_pin(number: str, length: float) -> TaperPin:
    """An inch taper pin, a quarter inch a foot (1:48).

    Parameters
    ----------
    number : str
        Number of the pin, "7/0" to "10" [-]
    length : float
        Length, above 0 [mm]

    Returns
    -------
    TaperPin
        Its diameters and length [mm]

    Raises
    ------
    Refusal
        If there is no such number, or the length leaves no small end.

    Examples
    --------
    >>> round(inch_taper_pin("4", 25.4).large_end, 3)
    6.35

    References
    ----------
    .. [1] ANSI/ASME B18.8.2-1995 (from memory).
    """
    table = read_table(_FILE)
    sizes: dict[str, float] = table.figures["inch"]
    if number not in sizes:
        raise Refusal(
            f'The taper pin is number "{number}"; the inch table has {", ".join(sizes)}.',
            nearest(number, sizes),
        )
    large = sizes[number] * MM_PER_INCH
    if not 0 < length < large / INCH_TAPER:
        raise Refusal(
            f"The length is {length:g} mm; pin {number} has over 0 and under {large / INCH_TAPER:.0f} mm.",
            "Give the length in mm.",
        )
    return TaperPin(
        name=f"inch taper pin No {number}",
        taper_on_diameter=INCH_TAPER,
        small_end=large - length * INCH_TAPER,
        large_end=large,
        length=length,
        end=0.0,
        lengths=(0.0, 0.0),
        nominal_at="large end",
        source=str(table.source),
    )
