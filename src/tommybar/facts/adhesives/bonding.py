"""Adhesives by class."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from tommybar.facts.table import read_table
from tommybar.refusals import Refusal, nearest

_FILE = Path(__file__).parent / "bonding.toml"
Range = tuple[float, float]


@dataclass(frozen=True)
class Adhesive:
    """One class of adhesive; every range is low, high, and (0, 0) where nothing is stated."""

    name: str
    other_names: tuple[str, ...]
    gap: Range  # usual room for the film [mm]
    largest: Range  # gap beyond which it no longer holds [mm]
    shear: Range  # full strength on clean metal [MPa]
    service: Range  # lowest and highest service temperature [C]
    special_limit: float  # highest of special grades [C]
    glass: Range  # glass transition [C]
    release: Range  # heat at which the joint lets go [C]
    fixture: Range  # until it can be handled, on steel at 22 C [s]
    cure: Range  # until full strength [h]
    roughness: Range  # of the faces [um Ra]
    solvent: str
    cautions: tuple[str, ...]
    source: str
    tested_on: tuple[tuple[str, float, float], ...] = ()  # stuff, low and high shear strength [MPa]

    def shear_on(self, stuff: str) -> Range:
        """Shear strength on one stuff [MPa]; that of clean metal where it is not stated apart."""
        for name, low, high in self.tested_on:
            if name == stuff:
                return low, high
        return self.shear


def adhesive(name: str) -> Adhesive:
    """Figures of a class of adhesive.

    Parameters
    ----------
    name : str
        Class or one of its other names, e.g. "cyanoacrylate", "threadlocker" [-]

    Returns
    -------
    Adhesive
        Gaps [mm], shear strength [MPa], temperatures [C], times [s] and [h]

    Raises
    ------
    Refusal
        If there is no such class; the nearest name is offered.

    Notes
    -----
    A class, not a bottle: the label of the bottle goes before these ranges.
    Take the low end for anything that may hurt somebody.

    Examples
    --------
    >>> adhesive("superglue").release
    (150.0, 200.0)

    References
    ----------
    source: facts/adhesives/bonding.toml (data sheets of each class, common
    practice; a primer on anaerobic adhesives seen).
    """
    table = read_table(_FILE)
    plain = " ".join(name.casefold().split())
    for key, figures in table.figures.items():
        names = (key, *figures["other_names"])
        if plain in (one.casefold() for one in names):
            ranges = {
                word: (float(figures[word][0]), float(figures[word][1]))
                for word in (
                    "gap",
                    "largest",
                    "shear",
                    "service",
                    "glass",
                    "release",
                    "fixture",
                    "cure",
                    "roughness",
                )
            }
            return Adhesive(
                name=key,
                other_names=tuple(figures["other_names"]),
                special_limit=float(figures["special_limit"]),
                solvent=figures["solvent"],
                cautions=tuple(figures["cautions"]),
                source=str(table.source),
                tested_on=tuple(
                    (stuff, float(low), float(high)) for stuff, (low, high) in figures.get("on", {}).items()
                ),
                **ranges,
            )
    known = [one for key, figures in table.figures.items() for one in (key, *figures["other_names"])]
    raise Refusal(
        f'The adhesive is "{name}"; the table has {", ".join(table.figures)}.', nearest(name, known)
    )


def adhesive_names(gap: float = 0.0) -> tuple[str, ...]:
    """Classes of adhesive that fill a gap.

    Parameters
    ----------
    gap : float
        Room between the parts, 0 for all classes [mm]

    Returns
    -------
    tuple[str, ...]
        Names of the classes whose largest gap is not passed [-]

    Examples
    --------
    >>> adhesive_names(0.8)
    ('epoxy',)

    References
    ----------
    source: facts/adhesives/bonding.toml.
    """
    return tuple(name for name in read_table(_FILE).figures if gap <= adhesive(name).largest[0])
