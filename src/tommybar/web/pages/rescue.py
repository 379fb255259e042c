"""Rescue: what went wrong is told, the ways out come back planned and priced, one of them is taken."""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import partial
from typing import TYPE_CHECKING

from starlette.responses import Response

from tommybar.bench.builds import load_build
from tommybar.bench.folder import Folder
from tommybar.bench.inputs import inputs_of
from tommybar.bench.journal import receive
from tommybar.bench.rescue import (
    REALITIES,
    Mishap,
    Offer,
    Reality,
    offers,
    reality,
    situation,
    taking,
    warnings,
)
from tommybar.design.figures import figure
from tommybar.made.dims import dims_of
from tommybar.making.lengths import spoken
from tommybar.refusals import Complaint, Refusal
from tommybar.web.ask import Ask, answer, go_to
from tommybar.web.pages.opened import Told, told
from tommybar.web.work import StillAtWorkError, Tell, Work

if TYPE_CHECKING:
    from tommybar.bench.stored import Build

PC = "the PC"  # the device under which the page itself writes
MOST_KEPT = 40


@dataclass(frozen=True)
class Trouble:
    """One kind of trouble that can be told."""

    number: int
    title: str
    asks: str  # in one sentence, where it is not asked field by field
    fields: tuple[tuple[str, str], ...]  # of the form, and what each asks
    more: str = ""  # name of a further figure that it asks


@dataclass(frozen=True)
class Way:
    """One way out, planned."""

    index: int
    words: str
    price: str
    lost: tuple[str, ...]
    stops: tuple[str, ...]
    limits: tuple[str, ...]
    cards: tuple[str, ...]


@dataclass(frozen=True)
class RescuePage:
    """What may go wrong, what did, and the ways out."""

    id: str
    title: str
    warnings: tuple[Told, ...]
    troubles: tuple[Trouble, ...]
    chosen: Trouble | None
    names: tuple[str, ...]  # what it may be about, to choose from
    about: str
    value: str
    said: str
    more: str
    complaints: tuple[Complaint, ...]
    work: str  # name of the work whose offers are shown
    ways: tuple[Way, ...]
    unit: str


def _build(ask: Ask) -> Build:
    return load_build(Folder(ask.desk.files.path), str(ask.path["build"]))


def rescue(ask: Ask) -> Response:
    """The page: choose what went wrong, then tell its figures."""
    return _shown(ask, _build(ask))


def _chosen(ask: Ask) -> Trouble | None:
    number = ask.typed("number") or ask.query.get("number", "")
    found = next((one for one in REALITIES if str(one.number) == number), None)
    return _trouble(found) if found else None


def _trouble(one: Reality) -> Trouble:
    more = re.search(r"more: (\w+)", one.asks)
    pieces = [re.fullmatch(r"(about|value|said|more): (.*)", piece) for piece in one.asks.split("; ")]
    fields = tuple((each[1], each[2]) for each in pieces if each)
    is_plain = len(fields) == len(pieces) == len(dict(fields))
    return Trouble(
        one.number,
        one.title,
        "" if is_plain else one.asks,
        fields if is_plain else (("about", "about"), ("value", "value [mm]")),
        more[1] if more else "",
    )


def _shown(
    ask: Ask,
    build: Build,
    wrong: Refusal | None = None,
    work: Work | None = None,
    told_of: Mishap | None = None,
) -> Response:
    chosen = _chosen(ask)
    if told_of is not None:
        chosen = _trouble(reality(told_of.number))
    ways = tuple(_way(n, one, ask) for n, one in enumerate(work.result)) if work and work.result else ()
    page = RescuePage(
        build.id,
        build.title,
        () if chosen else told(spoken(each, ask.reader.unit) for each in warnings(situation(build))),
        tuple(_trouble(one) for one in REALITIES),
        chosen,
        _names(build, chosen),
        told_of.about if told_of else ask.typed("about"),
        (f"{told_of.value:g}" if told_of.value else "") if told_of else ask.typed("value"),
        told_of.said if told_of else ask.typed("said"),
        next((f"{each:g}" for each in told_of.more.values()), "") if told_of else ask.typed("more"),
        wrong.complaints if wrong else (),
        work.name if work else "",
        ways,
        ask.unit,
    )
    return answer(ask, "rescue.html", page, "builds", 400 if wrong else 200)


def _names(build: Build, chosen: Trouble | None) -> tuple[str, ...]:
    """The parts or the sizes that a trouble may be about, as the cards name them."""
    about = dict(chosen.fields).get("about", "") if chosen else ""
    sized = inputs_of(build).design.sized()
    if about == "the part":
        return tuple(one.name for one in sized.parts if one.shape is not None)
    if not about.startswith(("the size", "the bore", "the length")):
        return ()
    dims = dims_of(sized)
    bores = tuple(name for name, one in dims.items() if one.zone.startswith("H"))
    return bores if "bore" in about and bores else tuple(dims)


def _way(index: int, one: Offer, ask: Ask) -> Way:
    in_unit = partial(spoken, unit=ask.reader.unit)
    price = f"{one.minutes:+.0f} min" + (f", {one.metal:.0f} g of new metal" if one.metal else "")
    return Way(
        index,
        in_unit(one.words),
        price,
        tuple(in_unit(each) for each in one.lost),
        tuple(in_unit(each) for each in one.stops),
        tuple(
            in_unit(f"{each.size}: {each.before} becomes {each.after}") for each in one.changes.limits[:12]
        ),
        tuple(f"{each.part}, card {each.number}" for each in one.changes.cards[:12]),
    )


def tell(ask: Ask) -> Response:
    """Plan the ways out of what is told."""
    build, chosen = _build(ask), _chosen(ask)
    try:
        if chosen is None:
            raise Refusal("Nothing is chosen that went wrong.", "Choose one of the list.")
        typed = ask.typed("value").strip()
        is_length = any(name == "value" and "[mm]" in words for name, words in chosen.fields)
        value = figure(typed, "in" if ask.unit == "in" and is_length else "mm") if typed else 0.0
        further = ask.typed("more").strip()
        more = {chosen.more: figure(further, "mm", "number")} if chosen.more and further else {}
        mishap = Mishap(chosen.number, ask.typed("about").strip(), value, ask.typed("said").strip(), more)
    except Refusal as refusal:
        return _shown(ask, build, refusal)

    def deed(tell: Tell) -> tuple[Offer, ...]:
        tell("the ways out")
        return offers(situation(build, tell), mishap)

    work = ask.desk.works.begin("The ways out", "", deed)
    work.back = f"/builds/{build.id}/rescue/{work.name}"
    kept: dict[str, tuple[Work, Mishap]] = ask.desk.extra.setdefault("rescues", {})
    kept[work.name] = work, mishap
    for old in list(kept)[:-MOST_KEPT]:
        kept.pop(old, None)
    return go_to(work.back)


def _told(ask: Ask) -> tuple[Work, Mishap]:
    kept: dict[str, tuple[Work, Mishap]] = ask.desk.extra.setdefault("rescues", {})
    found = kept.get(str(ask.path["work"]))
    if found is None:
        raise Refusal("What was told is not known here any more.", "Tell it again.")
    return found


def ways_out(ask: Ask) -> Response:
    """The offers, or how far their planning is."""
    work, mishap = _told(ask)
    if not work.done.wait(ask.desk.settings.plan_patience):
        raise StillAtWorkError(work)
    try:
        work.outcome()
    except Refusal as refusal:
        return _shown(ask, _build(ask), refusal, None, mishap)
    return _shown(ask, _build(ask), None, work, mishap)


def take(ask: Ask) -> Response:
    """Take one of the offers: it is written into the journal as a change."""
    work, _ = _told(ask)
    build, ways = _build(ask), work.outcome() if work.done.is_set() else ()
    typed = ask.typed("way")
    if not typed.isdigit() or int(typed) >= len(ways):
        raise Refusal("That way is not among those offered.", "Tell again what went wrong.")
    entries = taking(ways[int(typed)], device=PC, number=len(build.entries), by=ask.typed("by").strip()[:80])
    receipt = receive(Folder(ask.desk.files.path), build.id, entries)
    if receipt.refused:
        raise Refusal(Complaint(words, place=name) for name, words in receipt.refused)
    return go_to(f"/builds/{build.id}", "taken")
