"""The route of a turned part cut on its half-section before any metal is."""

from __future__ import annotations

from tommybar.design.model import Part
from tommybar.dryrun.runs import CardRun, PartRun, Ring, StepRun
from tommybar.making.cards import Blank, Card
from tommybar.shop.model import Shop

__all__ = ["CardRun", "PartRun", "Ring", "StepRun", "run_part"]


def run_part(
    part: Part,
    blank: Blank,
    cards: tuple[Card, ...],
    shop: Shop,
    not_made: frozenset[str] = frozenset(),
) -> PartRun:
    """Cut all lathe cards of a turned part one after another on its half-section.

    The section geometry is loaded only when this is called; see
    :mod:`tommybar.dryrun.run`.
    """
    from tommybar.dryrun import run

    return run.run_part(part, blank, cards, shop, not_made)
