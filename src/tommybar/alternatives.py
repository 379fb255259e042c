"""What another way of holding would cost: each grip of a turned part forbidden in turn, and the search asked again.

The route that a plan shows weighs least. Here its holdings are taken away
card by card: either the best route without one is found, and its price is
told, or there is none, and the figures that stand against it are.
"""

from __future__ import annotations

from collections.abc import Callable, Collection
from dataclasses import dataclass, replace
from typing import Any, Literal

from tommybar.design.model import Part
from tommybar.dryrun.runs import PartRun
from tommybar.findings import Finding, in_order
from tommybar.made import as_measured
from tommybar.making.cards import Card
from tommybar.making.joints import Joint, joints_of
from tommybar.making.lengths import Mm, spoken
from tommybar.making.loop_lengths import LoopLength, loop_lengths
from tommybar.making.parts import gives_to
from tommybar.making.route import holding_name
from tommybar.making.turned import Making
from tommybar.planning import Plan, Stock, made_part, routed
from tommybar.shop.model import Shop

WAYS = 2  # other ways that are looked for, for each card
AT_THE_MILL = (  # what a holding there needs, by its words, and the figure of the shop file that says it is owned
    ("vee block", "vee_to"),
    ("vice", "vice_opening"),
    ("rotary table", "rotary_table"),
    ("sine", "sine_bar"),
)
MADE_FIRST = ("sleeve", "arbor", "stub")  # devices that are turned before they can hold


@dataclass(frozen=True)
class Alternative:
    """A route that does without a holding, and its price against the chosen route."""

    holding: str  # how the card of that number is held instead; empty when the route has no such card
    cards: tuple[Card, ...]
    run: PartRun | None
    weight: float  # more in the search's own measure; not below 0, since the chosen route weighs least
    minutes: float  # more; below 0 when it is quicker [min]
    set_ups: int  # more grips, all machines
    changes: tuple[str, ...]  # what is different, in words


@dataclass(frozen=True)
class OtherWays:
    """One card of the chosen route: what there is instead of its holding."""

    card: int
    holding: str
    ways: tuple[Alternative, ...]  # the lightest first
    against: tuple[Finding, ...]  # what stands against any further way; empty when enough were found
    proven: bool  # whether the searches ended within their budget: nothing was overlooked


def alternatives(
    plan: Plan,
    name: str,
    cards: Collection[int] = (),
    *,
    words_in: Literal["mm", "in"] = "mm",
    tell: Callable[[str], None] = lambda words: None,
) -> tuple[OtherWays, ...]:
    """For each card of a part of a plan (or for ``cards``), the best routes without its holding, or why there is none.

    On the lathe the search is asked again. At the mill, where a rule chooses,
    what holds is taken out of the shop and the part is routed again. Cards of
    the bench have none, nor have bought parts. ``tell`` hears one line per search.
    """
    found = other_ways(
        plan.part(name).part,
        plan.shop,
        mates=tuple(sorted(gives_to(plan.design).items())),
        joints=joints_of(as_measured(plan.design, plan.made), name),
        lengths=loop_lengths(plan.design, name),
        stock=plan.stock_from,
        cards=cards,
        tell=tell,
    )
    return spoken(found, words_in)


def other_ways(
    part: Part,
    shop: Shop,
    *,
    mates: tuple[tuple[str, tuple[str, ...]], ...] = (),
    joints: tuple[Joint, ...] = (),
    lengths: tuple[LoopLength, ...] = (),
    stock: Stock = "ask",
    cards: Collection[int] = (),
    tell: Callable[[str], None] = lambda words: None,
) -> tuple[OtherWays, ...]:
    """The same for a part by itself, its lengths still marked in the words."""
    asked = (part, mates, joints, lengths, shop, stock)
    chosen, run, _ = made_part(*asked)
    found = []
    for card in chosen.cards:
        if cards and card.number not in cards:
            continue
        if card.machine == "mill":
            tell(f"card {card.number} of {part.name} without its holding")
            found += _at_the_mill(card, asked, chosen, run)
        if card.machine != "lathe":
            continue
        forbidden = frozenset({(_set_up(card, chosen.cards), _name(card))})
        ways: list[Alternative] = []
        against: tuple[Finding, ...] = ()
        proven = chosen.exhausted
        while len(ways) < WAYS and not against:
            tell(f"card {card.number} of {part.name}, way {len(ways) + 2}")
            making, other_run = routed(*asked, chosen.excluded, forbidden)
            proven = proven and making.exhausted
            against = _against(making, other_run, chosen, run)
            if not against:
                ways.append(_alternative(card.number, making, other_run, chosen, run))
                forbidden |= _also(card.number, making)
        found.append(OtherWays(card.number, _name(card), tuple(ways), against, proven))
    return tuple(found)


Asked = tuple[
    Part, tuple[tuple[str, tuple[str, ...]], ...], tuple[Joint, ...], tuple[LoopLength, ...], Shop, Stock
]


def _at_the_mill(card: Card, asked: Asked, chosen: Making, run: PartRun | None) -> list[OtherWays]:
    """The part made in the same shop without what holds it on this card; nothing for what needs nothing owned."""
    part, mates, joints, lengths, shop, stock = asked
    device = card.hold.device
    field = next((field for words, field in AT_THE_MILL if words in device), "")
    if shop.mill is None or not field:
        return []
    lacking: dict[str, Any] = {field: 0.0}
    without = replace(shop, mill=replace(shop.mill, **lacking))
    making, other_run, _ = made_part(part, mates, joints, lengths, without, stock)
    same = (
        one
        for one in making.cards
        if (one.machine, one.title, one.free_end) == ("mill", card.title, card.free_end)
    )
    held = next(same, None)
    new = _against(making, other_run, chosen, run)
    # a stop that no card has to itself may be of this one
    mine = [one for one in new if held is None or one.card in (0, held.number)]
    if mine:
        against = tuple(replace(one, words=f"Without it: {one.words}") for one in mine)
        return [OtherWays(card.number, _name(card), (), against, True)]
    if held is None or held.hold.device == device:
        return []  # a rule holds it so for another reason than that it is owned
    held = replace(held, number=card.number, of=card.of)
    words = f"card {card.number}: {held.hold.device} instead of {device}"
    more = round(held.minutes - card.minutes, 1)
    cards = tuple(held if one.number == card.number else one for one in chosen.cards)
    way = Alternative(_name(held), cards, run, 0.0, more, 0, (words, *_differing(card, held)))
    return [OtherWays(card.number, _name(card), (way,), (), True)]


def _differing(card: Card, held: Card) -> list[str]:
    """What is to be minded there that is not on the chosen card."""
    return [line for line in held.before_starting if line not in card.before_starting]


def _name(card: Card) -> str:
    return holding_name(card.hold.device, card.hold.surface)


def _set_up(card: Card, cards: tuple[Card, ...]) -> int:
    """Which grip of the lathe a card is: holes across may be drilled on a card between two of them."""
    return sum(1 for one in cards if one.machine == "lathe" and one.number <= card.number)


def _held(number: int, cards: tuple[Card, ...]) -> Card | None:
    return next((card for card in cards if card.number == number and card.machine == "lathe"), None)


def _also(number: int, making: Making) -> frozenset[tuple[int, str]]:
    """What is forbidden besides, so that the next search finds a third way."""
    card = _held(number, making.cards) or [one for one in making.cards if one.machine == "lathe"][-1]
    return frozenset({(_set_up(card, making.cards), _name(card))})


def _stops(making: Making, run: PartRun | None) -> list[Finding]:
    return [one for one in (*making.findings, *(run.findings if run else ())) if one.severity == "stop"]


def _against(
    making: Making, run: PartRun | None, chosen: Making, chosen_run: PartRun | None
) -> tuple[Finding, ...]:
    """Stops that the chosen route does not have."""
    had = {(one.number, one.feature) for one in _stops(chosen, chosen_run)}
    new = [one for one in _stops(making, run) if (one.number, one.feature) not in had]
    if not new and not making.cards:
        new = _stops(making, run)
    return in_order(new)


def _alternative(
    number: int, making: Making, run: PartRun | None, chosen: Making, chosen_run: PartRun | None
) -> Alternative:
    card = _held(number, making.cards)
    return Alternative(
        _name(card) if card else "",
        making.cards,
        run,
        round(making.weight - chosen.weight, 4),
        round(sum(one.minutes for one in making.cards) - sum(one.minutes for one in chosen.cards), 1),
        len(making.cards) - len(chosen.cards),
        tuple(_changes(making, run, chosen, chosen_run)),
    )


def _changes(making: Making, run: PartRun | None, chosen: Making, chosen_run: PartRun | None) -> list[str]:
    """What is different, card by card, and in what it leads to."""
    words = []
    for number in range(1, max(len(chosen.cards), len(making.cards)) + 1):
        old, new = _held(number, chosen.cards), _held(number, making.cards)
        if new is not None and (old is None or _name(old) != _name(new)):
            first = any(one in new.hold.device for one in MADE_FIRST)
            line = f"card {number}: {_name(new)}" + (", which has to be made first," if first else "")
            words.append(line + (f" instead of {_name(old)}" if old else ", a grip more"))
        elif new is not None and old is not None and old.free_end != new.free_end:
            words.append(f"card {number}: face {new.free_end} is free instead of {old.free_end}")
        elif new is None and old is not None:
            words.append(f"card {number}: no longer needed on the lathe")
    was = {step.feature: card.number for card in reversed(chosen.cards) for step in card.steps}
    now = {step.feature: card.number for card in reversed(making.cards) for step in card.steps}
    moved: dict[tuple[int, int], list[str]] = {}
    for feature, number in now.items():
        if feature in was and was[feature] != number:
            moved.setdefault((was[feature], number), []).append(feature.replace("_", " "))
    words += [
        f"{', '.join(features)} cut on card {here} instead of {there}"
        for (there, here), features in sorted(moved.items())
    ]
    said = {(one.of, one.to): one for card in chosen.cards for one in card.runout}
    for one in (one for card in making.cards for one in card.runout):
        before = said.get((one.of, one.to))
        if before is None or abs(before.expected - one.expected) > 5e-4:
            instead = f" instead of {Mm(before.expected):.3f mm}" if before else ", where one grip cut both"
            words.append(
                f"{one.of} runs {Mm(one.expected):.3f mm} out of true to {one.to}{instead},"
                f" {Mm(one.within):.3f mm most} allowed"
            )
    if making.blank and chosen.blank and abs(making.blank.length - chosen.blank.length) > 0.05:
        words.append(
            f"blank {Mm(making.blank.length):.1f mm} long instead of {Mm(chosen.blank.length):.1f mm}"
        )
    gap, gap_before = _clearance(run), _clearance(chosen_run)
    if gap is not None and gap_before is not None and abs(gap - gap_before) > 0.05:
        words.append(f"smallest clearance {Mm(gap):.1f mm} instead of {Mm(gap_before):.1f mm}")
    return words


def _clearance(run: PartRun | None) -> float | None:
    gaps = [one.smallest_gap for one in run.cards if one.smallest_gap >= 0] if run else []
    return min(gaps, default=None)
