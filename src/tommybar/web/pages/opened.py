"""A design that is open: its head on every page of it, its findings, its figures as words."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from tommybar.findings import SEVERITIES, Finding
from tommybar.pack.units import Reader
from tommybar.planning import Plan
from tommybar.web.ask import Ask
from tommybar.web.pages.designs import title_of

TABS = (
    ("", "Overview"),
    ("sizes", "Sizes"),
    ("parts", "Parts"),
    ("stock", "Stock"),
    ("route", "Route"),
    ("checks", "Checks"),
    ("sheets", "Sheets"),
)
WORDS = {"stop": "Stop", "caution": "Caution", "note": "Note"}
SHAPES = {"stop": "■", "caution": "▲", "note": "●"}


@dataclass(frozen=True)
class Head:
    """What stands above every page of a design."""

    name: str
    title: str
    tab: str
    tabs: tuple[tuple[str, str], ...]
    shop: str
    shops: tuple[str, ...]
    undoable: int  # earlier texts of the design's file
    redoable: int  # texts that undo took away
    line: str  # plan, scale, what stands against starting


@dataclass(frozen=True)
class Told:
    """A finding as it is shown."""

    shape: str
    severity: str
    word: str
    number: int
    words: str
    where: str
    figure: str
    bound: str
    remedy: str
    source: str


def name_of(ask: Ask) -> str:
    """The design that the address names."""
    return str(ask.path["name"])


def head_of(ask: Ask, tab: str, plan: Plan | None = None) -> Head:
    """The head of a page of a design."""
    name = name_of(ask)
    files = ask.desk.files
    return Head(
        name,
        title_of(files.text("designs", name), name),
        tab,
        TABS,
        files.choices(name).shop,
        tuple(ask.desk.plans.shop_names()),
        files.undoable("designs", name),
        files.redoable("designs", name),
        _line(plan) if plan else "",
    )


def _line(plan: Plan) -> str:
    stops = len(plan.stops)
    stand = (
        f"{stops} {'stop stands' if stops == 1 else 'stops stand'}"
        if stops
        else "nothing stands against starting"
    )
    scale = "as drawn" if abs(plan.scale - 1) < 5e-5 else f"{plan.scale:g} of the drawing"
    return f"plan {plan.plan_id} · {scale} · {stand}"


def plan_of(ask: Ask) -> Plan:
    """The plan of the design that the address names."""
    return ask.desk.plans.of(name_of(ask), ask.here, ask.reader.unit)


def plan_with_assembly(ask: Ask) -> Plan:
    """The same plan with what its pieces show when they are put together."""
    return ask.desk.plans.with_assembly(name_of(ask), ask.here, ask.reader.unit)


def told(findings: Iterable[Finding]) -> tuple[Told, ...]:
    """Findings as they are shown, the gravest first."""
    ordered = sorted(findings, key=lambda one: SEVERITIES.index(one.severity))
    return tuple(
        Told(
            SHAPES[one.severity],
            one.severity,
            WORDS[one.severity],
            one.number,
            one.words,
            _where(one),
            one.figure,
            one.bound,
            one.remedy,
            one.source,
        )
        for one in ordered
    )


def _where(one: Finding) -> str:
    pieces = [
        one.part,
        one.feature,
        f"card {one.card}" if one.card else "",
        f"step {one.step}" if one.step else "",
    ]
    return ", ".join(piece.replace("_", " ") for piece in pieces if piece)


def figure_words(value: float | str, unit: str, reader: Reader, decimals: int = 3) -> str:
    """A named size in the reader's unit: length, angle, number, or the designation of a thread."""
    if isinstance(value, str):
        return value
    if unit == "mm":
        return reader.length(value, decimals)
    words = f"{value:.6g}"
    return f"{words}°" if unit == "deg" else words
