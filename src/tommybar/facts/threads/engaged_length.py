"""How much thread must be engaged, by the metal that is tapped."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from tommybar.facts.materials import material
from tommybar.facts.table import Source, read_table
from tommybar.refusals import Refusal

_TABLE = Path(__file__).parent / "engagement.toml"


@dataclass(frozen=True)
class EngagedLength:
    """Length of thread that is wanted in a metal."""

    least: float  # holds what a hand tightens [mm]
    full: float  # wanted where the screw is to carry all that it can [mm]
    source: Source


def engaged_length(material_name: str, major: float) -> EngagedLength:
    """Length of thread that is wanted in a tapped metal.

    Parameters
    ----------
    material_name : str
        The metal that is tapped, as in the table of materials
    major : float
        Nominal diameter of the thread, above 0 [mm]

    Returns
    -------
    EngagedLength
        Least and full length [mm]

    Raises
    ------
    Refusal
        If the material is not in the tables, or its family has no row.

    Notes
    -----
    For screws of property class 8.8 and coarse thread; a fine thread and a
    load that comes and goes want about a quarter more.

    Examples
    --------
    >>> one = engaged_length("aluminium 6082", 5.0)
    >>> one.least, one.full
    (6.5, 10.0)

    References
    ----------
    .. [1] The data file engagement.toml says which figures were seen.
    """
    family = material(material_name).family
    table = read_table(_TABLE)
    for row in table.figures["families"]:
        if row["family"] == family:
            least, full = (round(row[name] * major, 6) for name in ("least", "full"))
            return EngagedLength(least, full, table.source)
    raise Refusal(
        f"{material_name} is {family}; the table of engaged threads has no row for it.",
        "Add the row, with its source, to facts/threads/engagement.toml.",
    )
