"""Round bar that is commonly sold."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from pathlib import Path

from tommybar.facts.table import read_table
from tommybar.refusals import Refusal

INCH = 25.4  # [mm]
_TABLE = Path(__file__).parent / "bars.toml"


@dataclass(frozen=True)
class Bar:
    """One diameter of round bar on sale."""

    name: str  # "12" or "1 1/4"
    system: str  # "metric" or "inch"
    diameter: float  # [mm]


def bars_sold(system: str = "metric") -> tuple[Bar, ...]:
    """Diameters of round bar that dealers keep.

    Parameters
    ----------
    system : str, optional
        "metric" or "inch"

    Returns
    -------
    tuple of Bar
        The bars, thinnest first, diameters in [mm]

    Raises
    ------
    Refusal
        If the system has another name.

    Examples
    --------
    >>> [bar.name for bar in bars_sold("inch")][-1]
    '3'

    References
    ----------
    .. [1] Dealers' ranges; common practice, no source.
    """
    figures = read_table(_TABLE).figures
    if system == "metric":
        return tuple(Bar(f"{size:g}", system, float(size)) for size in figures["metric"])
    if system == "inch":
        return tuple(
            Bar(size, system, INCH * float(sum(Fraction(part) for part in size.split())))
            for size in figures["inch"]
        )
    raise Refusal(f'There is no "{system}" bar.', 'Say "metric" or "inch".')


def bright_bar_zones() -> tuple[str, str]:
    """Tolerance zones within which bright drawn steel bar is sold.

    Parameters
    ----------
    None

    Returns
    -------
    tuple of str
        Finest and coarsest zone of ISO 286, to be taken at the bar's diameter
        [zone]

    Examples
    --------
    >>> bright_bar_zones()
    ('h9', 'h11')

    References
    ----------
    .. [1] EN 10278 (from memory).
    """
    finest, coarsest = read_table(_TABLE).figures["bright_drawn"]
    return str(finest), str(coarsest)


def ground_bar_zone() -> str:
    """Tolerance zone within which centreless ground silver steel is sold.

    Parameters
    ----------
    None

    Returns
    -------
    str
        Zone of ISO 286, to be taken at the bar's diameter [zone]

    Examples
    --------
    >>> ground_bar_zone()
    'h8'

    References
    ----------
    .. [1] DIN 175, ground tool steel in bars (from memory).
    """
    return str(read_table(_TABLE).figures["ground_tool_steel"])
