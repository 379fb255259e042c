"""Named tapers and usual angles."""

from __future__ import annotations

import re
from pathlib import Path

from tommybar.facts.lines import read_lines
from tommybar.facts.table import read_table
from tommybar.facts.tapers.cone import MM_PER_INCH, Taper, cone
from tommybar.refusals import Refusal, nearest

_HERE = Path(__file__).parent
_SHORT = (
    (re.compile(r"^(?:mt|morse taper|morse no|morse)\s*\.?\s*(\d)$"), r"morse \1"),
    (re.compile(r"^(?:jt|jacobs taper|jacobs)\s*(\d+)( short)?$"), r"jacobs \1\2"),
    (re.compile(r"^(?:b\s*&\s*s|bs taper|brown and sharpe|brown & sharpe)\s*(\d+)$"), r"brown & sharpe \1"),
    (re.compile(r"^(?:iso|int|nt|nmtb|sk|7/24)\s*(?:no\s*)?(30|40|45|50)$"), r"7/24 no \1"),
)


def taper(name: str) -> Taper:
    """A named machine taper, or a cone from its steepness in words.

    Parameters
    ----------
    name : str
        "Morse 2", "MT2", "Jacobs 33", "R8", "7/24 No 30", "lathe centre" ..., or what
        :func:`tommybar.facts.tapers.cone` reads: "1:20", "0.6 in/ft" [-]

    Returns
    -------
    Taper
        Taper on diameter [mm/mm], ends and length [mm]

    Raises
    ------
    Refusal
        If it is neither; the nearest name is offered.

    Notes
    -----
    The large end is the diameter at the gauge line, the mouth of the socket.

    Examples
    --------
    >>> two = taper("Morse 2")
    >>> round(two.large_end, 3), round(two.half_angle, 4)
    (17.78, 1.4307)

    References
    ----------
    .. [1] ANSI/ASME B5.10-1994 and ISO 296:1991 (Morse, seen in reprints); the
       other systems from memory: see facts/tapers/machine_tapers.toml.
    """
    plain = " ".join(name.casefold().replace("#", "").split())
    for pattern, name_here in _SHORT:
        plain = pattern.sub(name_here, plain)
    source, lines = read_lines(_HERE / "machine_tapers.toml")
    for line in lines:
        if line["name"].casefold() == plain:
            steepness = line["per_foot"] / 12
            large = line["large_in"] * MM_PER_INCH
            length = line["depth_in"] * MM_PER_INCH
            return Taper(
                name=line["name"],
                taper_on_diameter=steepness,
                large_end=large,
                small_end=large - steepness * length,
                length=length,
                source=str(source),
                note=line["note"],
            )
    angles = read_table(_HERE / "angles.toml")
    if plain in angles.figures:
        found = cone(f"{angles.figures[plain]:g} deg")
        return Taper(plain, found.taper_on_diameter, 0.0, 0.0, 0.0, str(angles.source))
    try:
        return cone(name)
    except Refusal:
        names = taper_names()
        near = nearest(plain, [one.casefold() for one in names])
        raise Refusal(
            f'The taper is "{name}"; the table knows {", ".join(names)} and any cone.',
            near or 'Ask for example for "Morse 2", 1:20, "0.6 in/ft" or "60 deg".',
        ) from None


def taper_names(system: str = "") -> tuple[str, ...]:
    """Names of the machine tapers in the table.

    Parameters
    ----------
    system : str
        Only names that begin so, e.g. "Morse"; all when empty [-]

    Returns
    -------
    tuple[str, ...]
        Names in the order of the table [-]

    Examples
    --------
    >>> taper_names("R")
    ('R8',)

    References
    ----------
    source: facts/tapers/machine_tapers.toml.
    """
    _, lines = read_lines(_HERE / "machine_tapers.toml")
    return tuple(line["name"] for line in lines if line["name"].startswith(system))


def included_angle(what: str) -> float:
    """Usual included angle of a centre, a drill point or a countersink.

    Parameters
    ----------
    what : str
        "lathe centre", "drill point", "spotting drill" ... [-]

    Returns
    -------
    float
        Included angle [deg]

    Raises
    ------
    Refusal
        If the table does not hold it.

    Examples
    --------
    >>> included_angle("lathe centre")
    60.0

    References
    ----------
    source: ISO 298, ISO 6411 and ISO 5419, from memory; common practice.
    """
    angles = read_table(_HERE / "angles.toml").figures
    if what not in angles:
        raise Refusal(
            f'The angle asked for is of a "{what}"; the table has {", ".join(angles)}.', nearest(what, angles)
        )
    return float(angles[what])
