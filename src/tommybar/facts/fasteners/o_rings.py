"""O-rings and the grooves they lie in."""

from __future__ import annotations

import re
from dataclasses import dataclass
from math import isfinite
from pathlib import Path

from tommybar.facts.table import Source, read_table
from tommybar.refusals import Refusal

_TABLE = Path(__file__).parent / "o_rings.toml"
USES = ("static", "moving")


@dataclass(frozen=True)
class ORing:
    """An O-ring, free."""

    name: str
    inside: float  # [mm]
    section: float  # [mm]
    source: Source


@dataclass(frozen=True)
class ORingGroove:
    """The groove of an O-ring, for a radial seal."""

    depth: tuple[float, float]  # shallowest, deepest: groove bottom to the other part [mm]
    width: float  # [mm]


def o_ring(designation: str) -> ORing:
    """An O-ring by its size code or by its dimensions.

    Parameters
    ----------
    designation : str
        A code of ISO 3601-1 such as "012" or "110", or inside diameter and
        section such as "10x2"

    Returns
    -------
    ORing
        Inside diameter and section [mm]

    Raises
    ------
    Refusal
        If it is not in the table; the nearest rings are named.

    Examples
    --------
    >>> one = o_ring("012")
    >>> one.inside, one.section
    (9.25, 1.78)
    >>> o_ring("10x2").name
    '10x2'

    References
    ----------
    .. [1] ISO 3601-1:2012 (from memory); metric rings are common practice, no
       source.
    """
    table = read_table(_TABLE)
    rings = {
        row["size"]: ORing(row["size"], float(row["inside"]), float(row["section"]), table.source)
        for row in table.figures["sizes"]
    }
    for row in table.figures["metric"]:
        for inside in row["inside"]:
            name = f"{inside:g}x{row['section']:g}"
            rings[name] = ORing(name, float(inside), float(row["section"]), table.source)
    plain = re.sub(r"\s*[x×]\s*", "x", designation.strip().lower()).lstrip("-")
    if plain.isdigit():
        plain = plain.zfill(3)
    if plain in rings:
        return rings[plain]
    found = re.fullmatch(r"(\d+(?:\.\d+)?)x(\d+(?:\.\d+)?)", plain)
    if found is None:
        raise Refusal(
            f'There is no O-ring "{designation}"; the codes run from 006 to 022 and 106 to 120.',
            'Give a code, or inside diameter and section like "10x2".',
        )
    inside, section = float(found[1]), float(found[2])
    order = sorted(rings.values(), key=lambda one: abs(one.inside - inside) + 3 * abs(one.section - section))
    if abs(order[0].inside - inside) < 1e-9 and abs(order[0].section - section) < 1e-9:
        return order[0]
    near = ", ".join(f"{one.inside:g} x {one.section:g}" for one in order[:3])
    raise Refusal(f"No O-ring of {inside:g} x {section:g} mm is in the table.", f"The nearest are {near}.")


def o_ring_groove(section: float, use: str = "static") -> ORingGroove:
    """Groove for a radial O-ring seal.

    Parameters
    ----------
    section : float
        Section of the ring, 1 to 3.53 [mm]
    use : str, optional
        "static", or "moving" for a piston or rod

    Returns
    -------
    ORingGroove
        Depth from the groove's bottom to the other part, and width [mm]

    Raises
    ------
    Refusal
        If the section is outside the range or the use has another name.

    Examples
    --------
    >>> groove = o_ring_groove(1.78, "moving")
    >>> [round(depth, 2) for depth in groove.depth], round(groove.width, 2)
    ([1.42, 1.6], 2.4)

    References
    ----------
    .. [1] Common practice, no source: squeeze of 15 to 30 % static, 10 to
       20 % moving; width 1.35 sections.
    """
    if not (isfinite(section) and 1.0 <= section <= 3.53):
        raise Refusal(
            f"The section is {section} mm; the rule here runs from 1 to 3.53 mm.", "See the maker's table."
        )
    if use not in USES:
        raise Refusal(f'"{use}" is no use of an O-ring.', 'Say "static" or "moving".')
    rule = read_table(_TABLE).figures["groove"][use]
    return ORingGroove(
        depth=(section * (1 - rule["squeeze_most"]), section * (1 - rule["squeeze_least"])),
        width=section * rule["width"],
    )
