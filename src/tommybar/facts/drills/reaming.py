"""Which drill goes before a reamer, and how large the reamer itself may be."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from math import ceil
from pathlib import Path

from tommybar.facts.table import read_table
from tommybar.refusals import Refusal

_TABLE = Path(__file__).parent / "reaming.toml"


@dataclass(frozen=True)
class ReamingAllowance:
    """What a drill should leave for the reamer, on the diameter."""

    least: float  # [mm]
    most: float  # [mm]
    drill_oversize: float  # how much larger than itself the drill is taken to cut [mm]


@dataclass(frozen=True)
class ReamingDrill:
    """The drill chosen to go before a reamer."""

    drill: float  # [mm]
    allowance: float  # what is left on the diameter after the drill's oversize [mm]
    asked: ReamingAllowance


def reaming_allowance(reamer: float, *, by_hand: bool = False, light_metal: bool = False) -> ReamingAllowance:
    """Metal that a drill should leave for a reamer, on the diameter.

    Parameters
    ----------
    reamer : float
        Diameter of the reamer, above 0 and up to 100 [mm]
    by_hand : bool, optional
        A hand reamer takes about half
    light_metal : bool, optional
        Half as much again is left in aluminium and its like

    Returns
    -------
    ReamingAllowance
        Least and most allowance and the drill's oversize [mm]

    Raises
    ------
    Refusal
        If the reamer is outside the table.

    Examples
    --------
    >>> reaming_allowance(8.0)
    ReamingAllowance(least=0.2, most=0.3, drill_oversize=0.05)

    References
    ----------
    .. [1] Trade-training table, under sizes of reaming (seen); half of it by
       hand is common practice, no source.
    """
    figures = read_table(_TABLE).figures
    for row in figures["allowances"]:
        if 0 < reamer <= row["up_to"]:
            factor = (figures["hand_factor"] if by_hand else 1.0) * (
                figures["light_metal_factor"] if light_metal else 1.0
            )
            return ReamingAllowance(
                least=round(row["least"] * factor, 4),
                most=round(row["most"] * factor, 4),
                drill_oversize=figures["drill_oversize"],
            )
    raise Refusal(
        f"The reamer is {reamer} mm; the table of reaming allowances runs above 0 and up to "
        f"{figures['allowances'][-1]['up_to']:g} mm.",
        "Bore the hole to size.",
    )


def reaming_drill(
    reamer: float,
    drills_owned: Iterable[float],
    *,
    least: float | None = None,
    most: float | None = None,
    by_hand: bool = False,
    light_metal: bool = False,
) -> ReamingDrill:
    """The largest drill of a drawer that leaves a reamer enough to cut.

        least <= D - (d + oversize) <= most

    Parameters
    ----------
    reamer : float
        Diameter D of the reamer, above 0 and up to 100 [mm]
    drills_owned : iterable of float
        Diameters of the drills in the drawer [mm]
    least, most : float, optional
        Allowance on the diameter, if it is not to be the table's [mm]
    by_hand, light_metal : bool, optional
        As for ``reaming_allowance``

    Returns
    -------
    ReamingDrill
        The drill, what it leaves, and the allowance asked for [mm]

    Raises
    ------
    Refusal
        If no drill of the drawer leaves an allowance within the bounds; the
        nearest below and above are named with what they leave.

    Examples
    --------
    >>> drawer = [5.0, 5.1, 5.2, 5.5, 5.6, 5.7, 5.75, 5.8, 5.9, 6.0]
    >>> chosen = reaming_drill(6.0, drawer, least=0.1, most=0.3)
    >>> chosen.drill, round(chosen.allowance, 3)
    (5.8, 0.15)

    References
    ----------
    .. [1] Trade-training table, under sizes of reaming (seen). No standard.
    """
    table = reaming_allowance(reamer, by_hand=by_hand, light_metal=light_metal)
    asked = ReamingAllowance(
        least=table.least if least is None else least,
        most=table.most if most is None else most,
        drill_oversize=table.drill_oversize,
    )
    left = {drill: reamer - drill - asked.drill_oversize for drill in drills_owned}
    slack = 1e-9
    inside = [d for d, rest in left.items() if asked.least - slack <= rest <= asked.most + slack]
    if inside:
        best = max(inside)
        return ReamingDrill(best, left[best], asked)
    below = max((d for d, rest in left.items() if rest > asked.most), default=None)
    above = min((d for d, rest in left.items() if rest < asked.least), default=None)
    near = [f"{d:g} mm leaves {left[d]:.2f}" for d in (below, above) if d is not None]
    raise Refusal(
        f"No drill of the drawer leaves the {reamer:g} mm reamer {asked.least:g} to {asked.most:g} mm on the "
        f"diameter (a drill is taken to cut {asked.drill_oversize:g} over)"
        + (f"; {', '.join(near)}." if near else "; the drawer is empty."),
        f"Get a drill of {reamer - asked.drill_oversize - asked.most:.2f} to "
        f"{reamer - asked.drill_oversize - asked.least:.2f} mm, or bore before reaming.",
    )


def reamer_limits(diameter: float, hole_lower: float, hole_upper: float) -> tuple[float, float]:
    """Limits of a reamer that is to make holes inside given limits.

    The reamer's upper limit stays 15 % of the hole's tolerance below the
    hole's upper limit; its own tolerance is 35 % of the hole's. Both amounts
    are rounded up to a whole um.

    Parameters
    ----------
    diameter : float
        Nominal diameter [mm]
    hole_lower, hole_upper : float
        Deviations of the hole, such as 0 and +15 for 8 H7 [um]

    Returns
    -------
    tuple of float
        Smallest and largest diameter of the reamer [mm]

    Raises
    ------
    Refusal
        If the hole's upper deviation is not above its lower one.

    Examples
    --------
    >>> reamer_limits(8.0, 0, 15)
    (8.006, 8.012)

    References
    ----------
    .. [1] DIN 1420:1982 / ISO 522, rule for the reamer's tolerance (from memory).
    """
    tolerance = hole_upper - hole_lower
    if not tolerance > 0:
        raise Refusal(
            f"The hole's deviations are {hole_lower:g} and {hole_upper:g} um; "
            "the upper must be above the lower.",
            "Give them as lower, upper.",
        )
    upper = hole_upper - ceil(round(0.15 * tolerance, 6))
    lower = upper - ceil(round(0.35 * tolerance, 6))
    return round(diameter + lower / 1000, 4), round(diameter + upper / 1000, 4)
