"""Run-out to be expected between features made in different grips.

The axis of each card hangs by an eccentricity on the axis of the card in which
the gripped surface was made: a tree. What is made in one grip runs true to the
spindle's own error.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

# Run-out of a bench lathe's spindle between cuts of one grip, TIR [mm]; 1 to 3 um
# eccentricity is common practice, no source.
SPINDLE = 0.004
UNTIED = 9.99  # a surface whose axis is not known: the raw blank


@dataclass(frozen=True)
class Axis:
    """Axis of a card: hung on card ``parent`` (0: the bar's own surface, -1: raw blank) by a TIR [mm]."""

    parent: int
    runout: float


def _chain(axes: tuple[Axis, ...], card: int) -> list[int]:
    path = [card]
    while path[-1] > 0:
        path.append(axes[path[-1] - 1].parent)
    return path


def _links(axes: tuple[Axis, ...], one: int, other: int) -> list[float] | None:
    """TIR of each link between two cards, or None when nothing ties them."""
    up, down = _chain(axes, one), _chain(axes, other)
    shared = next((card for card in up if card in down), None)
    if shared is None or shared == -1:
        return None
    links = [axes[card - 1].runout for card in up[: up.index(shared)]]
    return links + [axes[card - 1].runout for card in down[: down.index(shared)]]


def expected_runout(axes: tuple[Axis, ...], one: int, other: int) -> float:
    """Run-out that 95 of 100 builds stay under, between features of two cards [mm TIR].

    One link: its own TIR. Several: eccentricities of fixed size in random
    directions, Rayleigh quantile capped by the worst case (mechanics D3).
    """
    if one == other:
        return SPINDLE
    links = _links(axes, one, other)
    if links is None:
        return UNTIED
    if len(links) == 1:
        return links[0]
    rms = math.sqrt(sum((tir / 2) ** 2 for tir in links))
    return min(2 * rms * math.sqrt(-math.log(0.05)), sum(links))


def worst_runout(axes: tuple[Axis, ...], one: int, other: int) -> float:
    """The sum of all links: no build is worse [mm TIR]."""
    if one == other:
        return SPINDLE
    links = _links(axes, one, other)
    return UNTIED if links is None else sum(links)
