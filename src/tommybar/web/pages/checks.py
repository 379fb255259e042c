"""Checks: figures with formula and source, fits, and what was found."""

from __future__ import annotations

from dataclasses import dataclass

from starlette.responses import Response

from tommybar.checks.figures import Figure
from tommybar.web.ask import Ask, answer
from tommybar.web.pages.opened import Head, Told, head_of, plan_of, told


@dataclass(frozen=True)
class Shown:
    """One figure."""

    what: str
    part: str
    value: str
    unit: str
    how: str
    source: str


@dataclass(frozen=True)
class ChecksPage:
    """Figures by part, run-out forecasts, findings."""

    head: Head
    figures: tuple[Shown, ...]
    forecasts: tuple[tuple[str, ...], ...]
    findings: tuple[Told, ...]
    unit: str


def checks(ask: Ask) -> Response:
    """The page."""
    plan, reader = plan_of(ask), ask.reader
    forecasts = tuple(
        (
            f"{part.part.name}: {one.of} to {one.to}".replace("_", " "),
            reader.length(one.expected, 3),
            reader.length(one.worst, 3),
            reader.length(one.within, 3),
            one.how,
        )
        for part in plan.parts
        for card in part.cards
        for one in card.runout
    )
    page = ChecksPage(
        head_of(ask, "checks", plan),
        tuple(_shown(one) for one in plan.figures),
        forecasts,
        told(plan.findings),
        reader.unit,
    )
    return answer(ask, "checks.html", page, "designs")


def _shown(one: Figure) -> Shown:
    return Shown(one.what, one.part, f"{one.value:.{one.decimals}f}", one.unit, one.how, one.source)
