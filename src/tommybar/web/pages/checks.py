"""Checks: plots and figures with formula and source, fits, and what was found."""

from __future__ import annotations

from dataclasses import dataclass

from starlette.responses import Response

from tommybar.checks.curves import speed_curves
from tommybar.checks.engaged import engaged_threads
from tommybar.checks.figures import Figure
from tommybar.checks.zones import fit_zones, float_stacks
from tommybar.pack.units import Reader
from tommybar.planning import Plan
from tommybar.web.ask import Ask, answer
from tommybar.web.pages.opened import Head, Told, head_of, plan_with_assembly, told
from tommybar.web.plots import Drawn, curve_plot, engaged_plot, fit_plot, float_plot


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
    plots: tuple[tuple[str, tuple[Drawn, ...]], ...]  # under their headings


def checks(ask: Ask) -> Response:
    """The page."""
    plan, reader = plan_with_assembly(ask), ask.reader
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
        _plots(plan, reader),
    )
    return answer(ask, "checks.html", page, "designs")


def _shown(one: Figure) -> Shown:
    return Shown(one.what, one.part, f"{one.value:.{one.decimals}f}", one.unit, one.how, one.source)


def _plots(plan: Plan, reader: Reader) -> tuple[tuple[str, tuple[Drawn, ...]], ...]:
    """Plots of what this design has; a heading without a plot is left out."""
    joints = engaged_threads(plan.design)
    found = (
        ("Against the speed", tuple(curve_plot(one, reader) for one in speed_curves(plan.design))),
        ("Fits", tuple(fit_plot(one, reader) for one in fit_zones(plan.design, plan.made))),
        ("Floats", tuple(float_plot(one, reader) for one in float_stacks(plan.design, plan.made))),
        ("Threads", (engaged_plot(joints, reader),) if joints else ()),
    )
    return tuple(one for one in found if one[1])
