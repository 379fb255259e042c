"""Stock: which bar of the rack every blank comes from, where to saw, and what to ask for."""

from __future__ import annotations

from dataclasses import dataclass

from starlette.responses import Response

from tommybar.making.cards import Blank
from tommybar.making.lengths import spoken
from tommybar.nest.cutlist import BuyLine, Cut, SawnBar
from tommybar.pack.units import Reader
from tommybar.web.ask import Ask, answer
from tommybar.web.pages.opened import Head, Told, head_of, plan_of, told
from tommybar.web.pictures import bar_picture

STOCK = range(200, 300)  # numbers of findings about stock


@dataclass(frozen=True)
class SawMark:
    """One cut of a bar, figures from the marked end."""

    number: int
    part: str
    start: str
    end: str
    across: str  # on a plate: from and to the marked edge


@dataclass(frozen=True)
class BarShown:
    """A bar with its picture and its saw marks."""

    name: str
    about: str
    picture: str
    marks: tuple[SawMark, ...]
    left: str
    bought: bool


@dataclass(frozen=True)
class Asked:
    """A line of the request slip."""

    words: str
    mass: str
    parts: str
    accept: tuple[str, ...]


@dataclass(frozen=True)
class BlankShown:
    """A blank and how its length comes about."""

    part: str
    section: str
    length: str
    count: int
    allowances: tuple[str, ...]
    why: str


@dataclass(frozen=True)
class StockPage:
    """Bars, blanks and the slip."""

    head: Head
    bars: tuple[BarShown, ...]
    slip: tuple[Asked, ...]
    blanks: tuple[BlankShown, ...]
    bound: str
    findings: tuple[Told, ...]
    unit: str
    kerf: str


def stock(ask: Ask) -> Response:
    """The page."""
    plan, reader = plan_of(ask), ask.reader
    page = StockPage(
        head_of(ask, "stock", plan),
        tuple(_bar(one, reader) for one in plan.stock.bars),
        tuple(_asked(one) for one in plan.stock.buy),
        tuple(_blank(one.blank, reader) for one in plan.parts if one.blank is not None),
        spoken(plan.stock.bound_words, reader.unit),
        told(one for one in plan.findings if one.number in STOCK),
        reader.unit,
        reader.length(plan.shop.saw_kerf),
    )
    return answer(ask, "stock.html", page, "designs")


def _bar(one: SawnBar, reader: Reader) -> BarShown:
    about = f"{one.material}, {_section(one.section, one.size, one.width, reader)}, {reader.length(one.length, 1)} long"
    ordered = sorted(one.cuts, key=lambda cut: (cut.start, cut.edge))
    return BarShown(
        one.bar,
        about,
        bar_picture(one, reader),
        tuple(_mark(number, cut, reader) for number, cut in enumerate(ordered, 1)),
        reader.length(one.left, 1),
        one.bought,
    )


def _mark(number: int, cut: Cut, reader: Reader) -> SawMark:
    across = f"{reader.length(cut.edge, 1)} to {reader.length(cut.far_edge, 1)}" if cut.far_edge else ""
    part = f"{cut.part} {cut.copy}" if cut.copy > 1 else cut.part
    return SawMark(number, part, reader.length(cut.start, 1), reader.length(cut.end, 1), across)


def _section(section: str, size: float, width: float, reader: Reader) -> str:
    if width:
        return f"{section} {reader.length(max(size, width), 2)} x {reader.length(min(size, width), 2)}"
    return f"{section} {reader.length(size, 2)}"


def _asked(one: BuyLine) -> Asked:
    return Asked(one.words, f"{one.mass:.0f} g" if one.mass else "", ", ".join(one.for_parts), one.accept)


def _blank(one: Blank, reader: Reader) -> BlankShown:
    finished = f"finished length {reader.length(one.finished_length)}"
    return BlankShown(
        one.part,
        f"{one.material}, {_section(one.section, one.size, one.width, reader)}",
        reader.length(one.length, 1),
        one.count,
        (finished, *(f"{words} {reader.length(mm)}" for words, mm in one.allowances)),
        one.why,
    )
