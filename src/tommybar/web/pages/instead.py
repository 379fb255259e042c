"""Instead: other ways of holding than the one that a card takes, and their price; a fold-out of the route."""

from __future__ import annotations

from collections import OrderedDict
from dataclasses import dataclass
from typing import TYPE_CHECKING

from starlette.responses import Response

from tommybar.planning import Plan
from tommybar.refusals import Refusal
from tommybar.web.ask import Ask, answer
from tommybar.web.pages.opened import Head, Told, head_of, name_of, plan_of, told
from tommybar.web.work import StillAtWorkError, Work

if TYPE_CHECKING:
    from tommybar.alternatives import Alternative, OtherWays

PATIENCE = 0.5  # a fold-out waits so long before it shows progress [s]
KEPT = 40  # answers kept in memory


@dataclass(frozen=True)
class WayShown:
    """One other way."""

    holding: str
    price: str
    weight: str
    changes: tuple[str, ...]


@dataclass(frozen=True)
class InsteadPage:
    """What there is instead of one card's holding."""

    head: Head
    part: str
    card: int
    held: str
    ways: tuple[WayShown, ...]
    against: tuple[Told, ...]
    proven: bool
    words: str  # what the search is at; empty when it is done
    here: str


def instead(ask: Ask) -> Response:
    """A piece of the route's page, or a page of its own where no script runs."""
    plan = plan_of(ask)
    part, card = str(ask.path["part"]), int(ask.path["card"])
    known = next((one for one in plan.parts if one.part.name == part), None)
    if known is None or not any(one.number == card and one.machine != "bench" for one in known.cards):
        raise Refusal(f"{part[:60]} has no card {card} on a machine.", "Open the route's page again.")
    piece = ask.request.headers.get("hx-request") == "true"
    work = _work(ask, plan, part, card)
    done = work.done.wait(PATIENCE if piece else ask.desk.settings.plan_patience)
    if not done and not piece:
        raise StillAtWorkError(work)
    found: tuple[OtherWays, ...] = work.outcome() if done else ()
    page = InsteadPage(
        head_of(ask, "route", plan),
        part,
        card,
        found[0].holding.replace("_", " ") if found else "",
        tuple(_way(one) for one in found[0].ways) if found else (),
        told(found[0].against) if found else (),
        not found or found[0].proven,
        "" if done else work.words,
        ask.request.url.path,
    )
    return answer(ask, "instead_ways.html" if piece else "instead.html", page, "designs")


def _work(ask: Ask, plan: Plan, part: str, card: int) -> Work:
    """The search, begun when it is first asked for."""
    from tommybar.alternatives import alternatives

    kept: OrderedDict[tuple[str, ...], Work] = ask.desk.extra.setdefault("instead", OrderedDict())
    key = (name_of(ask), plan.plan_id, part, str(card), ask.unit)
    work = kept.get(key)
    if work is None or (work.done.is_set() and work.error is not None):
        unit = ask.reader.unit
        work = ask.desk.works.begin(
            "Other ways of holding",
            ask.request.url.path,
            lambda tell: alternatives(plan, part, (card,), words_in=unit, tell=tell),
        )
        kept[key] = work
        while len(kept) > KEPT:
            kept.popitem(last=False)
    return work


def _way(one: Alternative) -> WayShown:
    return WayShown(
        (one.holding or "not on that machine at all").replace("_", " "),
        f"{_minutes(one.minutes)}, {_grips(one.set_ups)}",
        f"{one.weight:.1f}" if one.weight else "",
        tuple(words.replace("_", " ") for words in one.changes),
    )


def _minutes(more: float) -> str:
    if abs(more) < 0.05:
        return "the same time"
    return f"{abs(more):.1f} min {'more' if more > 0 else 'less'}"


def _grips(more: int) -> str:
    if not more:
        return "as many grips"
    return f"{abs(more)} {'grip' if abs(more) == 1 else 'grips'} {'more' if more > 0 else 'fewer'}"
