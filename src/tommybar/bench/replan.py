"""The plan of a build, and what each entry changes in it."""

from __future__ import annotations

import difflib
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from typing import Any, Literal

from tommybar.bench.begun import keep_begun
from tommybar.bench.builds import load_build
from tommybar.bench.card_text import card_key, card_lines, card_mark, card_marks
from tommybar.bench.entries import Entry, new_entry
from tommybar.bench.folder import Folder
from tommybar.bench.inputs import Tell, inputs_of, plan_with, silent
from tommybar.bench.journal import Receipt, receive
from tommybar.bench.standing import Standing, standing
from tommybar.bench.stored import Build
from tommybar.made.dims import dims_of, lengths_of
from tommybar.made.words import limits_words, size_words
from tommybar.making.begun import KEPT, begun_cards
from tommybar.planning import Plan
from tommybar.refusals import Refusal
from tommybar.sizes.loop import Link, last_made_limits

MOST_LINES = 12  # of a changed card that are told


@dataclass(frozen=True)
class ChangedCard:
    """A card that no longer says what it said. ``lines``: "- before" and "+ after"."""

    key: str
    part: str
    number: int
    begun: bool
    lines: tuple[str, ...]


@dataclass(frozen=True)
class NewLimits:
    """A size that has other limits than before, in words, and why."""

    size: str
    before: str
    after: str
    why: str
    low: float | None
    high: float | None


@dataclass(frozen=True)
class StaleCard:
    """A card that was printed and says something else now."""

    key: str
    printed_on: str
    plan_id: str


@dataclass(frozen=True)
class Changes:
    """What came of entries: the plan as it is now, and what is different in it."""

    plan: Plan
    cards: tuple[ChangedCard, ...]
    limits: tuple[NewLimits, ...]
    stale: tuple[StaleCard, ...]
    kept: tuple[str, ...]  # routes that were kept because they are begun, in words


@dataclass(frozen=True)
class Recorded:
    """Entries recorded: what became of them, the build now, and what they changed."""

    receipt: Receipt
    build: Build
    changes: Changes


def plan_of(build: Build, tell: Tell = silent, words_in: Literal["mm", "in"] = "mm") -> Plan:
    """The plan of a build as it stands; cards that are begun keep their order. Sentences are in ``words_in``.

    Cards are compared with printed ones in mm, whatever is read in.
    """
    stand = standing(build.entries)
    inputs = inputs_of(build, stand)
    new = plan_with(inputs, tell, words_in)
    begun_with = {
        part: new
        if moment == len(stand.ordered)
        else plan_with(_inputs_at(build, stand, moment), words_in=words_in)
        for part, moment in _begun_at(stand, begun_cards(inputs.made)).items()
    }
    return keep_begun(new, begun_with, inputs.made)


def _begun_at(stand: Standing, begun: Iterable[str]) -> dict[str, int]:
    """For each begun part, how many entries stood before its first tick."""
    parts = {card.split("/")[0] for card in begun}
    found: dict[str, int] = {}
    for index, one in enumerate(stand.ordered):
        if one.kind == "change":
            for gone in one.said.get("forget", ()):
                found.pop(gone, None)
        part = one.key.split("/")[0]
        if one.kind == "tick" and part in parts:
            found.setdefault(part, index)
    return found


def _inputs_at(build: Build, stand: Standing, moment: int) -> Any:
    """The inputs as they were after the first entries that stand."""
    then = replace(
        stand,
        ordered=stand.ordered[:moment],
        changes=tuple(one for one in stand.ordered[:moment] if one.kind == "change"),
    )
    inputs = inputs_of(build, then)
    # ticks and places do not shape a route; without them equal moments are one plan
    return replace(inputs, made=replace(inputs.made, ticks=(), whereabouts=()))


def replanned(before: Build, after: Build, tell: Tell = silent) -> Changes:
    """The plan after further entries, compared with the plan before them."""
    return changes_between(plan_of(before, tell), plan_of(after, tell), standing(after.entries))


def changes_between(old: Plan, new: Plan, stand: Standing) -> Changes:
    """What is different between two plans, and which printed cards are stale by it."""
    return Changes(
        new,
        changed_cards(old, new),
        new_limits(old, new),
        stale_cards(new, stand),
        tuple(one.words for one in new.findings if one.number == KEPT),
    )


def changed_cards(old: Plan, new: Plan) -> tuple[ChangedCard, ...]:
    """The cards that say something else, are new, or are no longer wanted."""
    before = {card_key(card): card for part in old.parts for card in part.cards}
    after = {card_key(card): card for part in new.parts for card in part.cards}
    begun = begun_cards(new.made)
    found = []
    for key in [*after, *(one for one in before if one not in after)]:
        had, has = before.get(key), after.get(key)
        if had and has and card_mark(had) == card_mark(has):
            continue
        lines = _difference(card_lines(had)[1:] if had else (), card_lines(has)[1:] if has else ())
        part, _, number = key.partition("/")
        found.append(ChangedCard(key, part, int(number), key in begun, lines))
    return tuple(found)


def _difference(before: Iterable[str], after: Iterable[str]) -> tuple[str, ...]:
    marked = difflib.ndiff(list(before), list(after))
    return tuple(line for line in marked if line[:2] in ("- ", "+ "))[:MOST_LINES]


def new_limits(old: Plan, new: Plan) -> tuple[NewLimits, ...]:
    """Sizes whose limits or figure differ, with the reason that the plan gives."""
    unit = new.design.units
    was, now = dims_of(old.design), dims_of(new.design)
    found = []
    for name, dim in now.items():
        had = was.get(name)
        if had is None or (had.value, had.smallest, had.largest) == (dim.value, dim.smallest, dim.largest):
            continue
        words = [
            limits_words(one.smallest, one.largest, unit)
            if one.smallest is not None and one.largest is not None
            else size_words(one.value, unit)
            for one in (had, dim)
        ]
        found.append(NewLimits(name, words[0], words[1], dim.because, dim.smallest, dim.largest))
    before, told = lengths_of(old.design), {one.size for one in found}
    for name, length in lengths_of(new.design).items():
        if name in before and abs(before[name] - length) > 1e-6 and name not in told:
            low, high = _solved(new, name)
            now_words = size_words(length, unit)
            if low is not None and high is not None:
                now_words = limits_words(low, high, unit)
            found.append(
                NewLimits(name, size_words(before[name], unit), now_words, _why_of(new, name), low, high)
            )
    return tuple(found)


def _solved(plan: Plan, name: str) -> tuple[float | None, float | None]:
    """The limits of a length that its loop was solved for [mm]; none for one that only moved along."""
    loop = next(
        (one for one in plan.design.loops if any(term.name == name for term in one.terms)),
        None,
    )
    if loop is None or loop.made_last not in (name, name.split(".")[0]) or plan.made.size(name):
        return None, None
    own = next(term for term in loop.terms if term.name == name)
    others = []
    for term in loop.terms:
        measured = plan.made.size(term.name)
        if term is not own:
            figure = measured.value if measured else term.value
            others.append(Link(term.name, term.factor, figure, figure))
    try:
        low, high = last_made_limits(others, own.factor, (loop.least, loop.most))
    except Refusal:
        return None, None  # it cannot be closed, which a finding of the plan tells
    return round(low, 4), round(high, 4)


def _why_of(plan: Plan, size: str) -> str:
    part = size.split(".")[0]
    return next((one.changed for one in plan.parts if one.part.name == part), "")


def stale_cards(plan: Plan, stand: Standing) -> tuple[StaleCard, ...]:
    """Printed cards that say something else now, or are no longer in the plan."""
    marks = card_marks(plan)
    return tuple(
        StaleCard(key, entry.at, entry.said["plan_id"])
        for key, entry in stand.printed.items()
        if marks.get(key) != entry.said["cards"][key]
    )


def printed_entry(plan: Plan, *, device: str, number: int, by: str = "", parts: Iterable[str] = ()) -> Entry:
    """The entry to record when cards are printed: all of them, or those of some parts."""
    wanted = set(parts)
    cards = {key: mark for key, mark in card_marks(plan).items() if not wanted or key.split("/")[0] in wanted}
    return new_entry("printed", device=device, number=number, by=by, plan_id=plan.plan_id, cards=cards)


def record(
    folder: Folder, build_id: str, entries: Iterable[Entry | Mapping[str, Any]], tell: Tell = silent
) -> Recorded:
    """Store entries and say what they change. The entries are safe before the planning begins."""
    before = load_build(folder, build_id)
    receipt = receive(folder, before.id, entries)
    after = load_build(folder, before.id)
    return Recorded(receipt, after, replanned(before, after, tell))
