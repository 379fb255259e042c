"""Which materials may run on each other without picking up."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from tommybar.facts.materials.catalogue import material
from tommybar.facts.table import read_table

_FILE = Path(__file__).parent / "pairs.toml"


@dataclass(frozen=True)
class Pairing:
    """A verdict on two materials that rub: "good", "with care" or "no", and why."""

    verdict: str
    reason: str
    source: str

    def __bool__(self) -> bool:
        return self.verdict != "no"


def may_run_together(first: str, second: str) -> Pairing:
    """Whether two materials may slide or turn on each other.

    Parameters
    ----------
    first, second : str
        Names or designations, in any order [-]

    Returns
    -------
    Pairing
        Its verdict and reason [-]; it counts as false when the verdict is "no".

    Raises
    ------
    Refusal
        If one of the names is not known.

    Notes
    -----
    Practice for slow, lightly loaded, oiled mechanisms. A pair that the table
    does not hold is "with care".

    Examples
    --------
    >>> may_run_together("6082", "6061").verdict
    'no'
    >>> may_run_together("silver steel", "SAE 660").verdict
    'good'

    References
    ----------
    source: common practice (hard on soft, unlike on unlike).
    """
    table = read_table(_FILE)
    groups = sorted(_group(material(name).name) for name in (first, second))
    for one, other, verdict, reason in table.figures["pairs"]["rows"]:
        if groups in ([one, other], [other, one]):
            return Pairing(verdict, reason, str(table.source))
    reason = f"no rule for {groups[0]} on {groups[1]}: oil it, keep it slow, look at it after an hour"
    return Pairing("with care", reason, str(table.source))


def _group(name: str) -> str:
    groups: Mapping[str, list[str]] = read_table(_FILE).figures["groups"]
    return next(group for group, members in groups.items() if name in members)
