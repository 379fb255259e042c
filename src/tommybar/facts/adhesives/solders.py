"""Solders and brazing alloys."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from tommybar.facts.table import read_table
from tommybar.refusals import Refusal, nearest

_FILE = Path(__file__).parent / "solders.toml"


@dataclass(frozen=True)
class Solder:
    """One solder or brazing alloy."""

    name: str
    other_names: tuple[str, ...]
    melting: tuple[float, float]  # solidus, liquidus [C]
    gap: tuple[float, float]  # between the parts [mm]
    shear: tuple[float, float]  # of a good joint [MPa]
    service: float  # highest lasting temperature [C]
    flux: str
    cautions: tuple[str, ...]
    source: str


def solder(name: str) -> Solder:
    """Figures of a solder or brazing alloy.

    Parameters
    ----------
    name : str
        Name or one of its other names, e.g. "soft solder", "silver solder" [-]

    Returns
    -------
    Solder
        Melting range [C], gap [mm], shear strength [MPa]

    Raises
    ------
    Refusal
        If the table has no such solder; the nearest name is offered.

    Notes
    -----
    Two joints on one part: the second solder's liquidus must lie below the
    first one's solidus.

    Examples
    --------
    >>> solder("soft solder").melting
    (183.0, 190.0)

    References
    ----------
    source: facts/adhesives/solders.toml (ISO 9453 and ISO 17672, from memory).
    """
    table = read_table(_FILE)
    plain = " ".join(name.casefold().split())
    for key, figures in table.figures.items():
        if plain in (one.casefold() for one in (key, *figures["other_names"])):
            return Solder(
                name=key,
                other_names=tuple(figures["other_names"]),
                melting=(float(figures["melting"][0]), float(figures["melting"][1])),
                gap=(float(figures["gap"][0]), float(figures["gap"][1])),
                shear=(float(figures["shear"][0]), float(figures["shear"][1])),
                service=float(figures["service"]),
                flux=figures["flux"],
                cautions=tuple(figures["cautions"]),
                source=str(table.source),
            )
    known = [one for key, figures in table.figures.items() for one in (key, *figures["other_names"])]
    raise Refusal(f'The solder is "{name}"; the table has {", ".join(table.figures)}.', nearest(name, known))


def solder_names(below: float = 2000.0) -> tuple[str, ...]:
    """Solders that are fully molten below a temperature.

    Parameters
    ----------
    below : float
        Highest liquidus; to solder a second joint give the first one's solidus [C]

    Returns
    -------
    tuple[str, ...]
        Names, in the order of the table [-]

    Examples
    --------
    >>> solder_names(below=225.0)
    ('tin-lead 60/40', 'tin-lead 50/50', 'tin-silver')

    References
    ----------
    source: facts/adhesives/solders.toml.
    """
    return tuple(name for name in read_table(_FILE).figures if solder(name).melting[1] < below)
