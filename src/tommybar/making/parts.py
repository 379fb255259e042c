"""One door for every kind of part: its blank, its cards, its findings."""

from __future__ import annotations

from dataclasses import replace

from tommybar.design.model import Part, SizedDesign
from tommybar.making.handwork.bench_work import bench_card
from tommybar.making.handwork.lines_card import lines_card
from tommybar.making.handwork.rings import ring_part
from tommybar.making.handwork.springs import spring_part
from tommybar.making.handwork.strips import sheet_part
from tommybar.making.handwork.wires import wire_part
from tommybar.making.instruments import too_coarse
from tommybar.making.joints import Joint
from tommybar.making.loop_lengths import LoopLength, with_measures
from tommybar.making.plates import plate_part
from tommybar.making.step_keys import keyed
from tommybar.making.turned import Making, turned_part
from tommybar.shapes.features import PlateShape, RolledRing, SheetShape, SpringShape, TurnedShape, WireShape
from tommybar.shop.model import Shop


def gives_to(design: SizedDesign) -> dict[str, tuple[str, ...]]:
    """Which sizes are read by which mates: measured size -> mates made to suit it."""
    found: dict[str, list[str]] = {}
    for fit in design.fits:
        found.setdefault(fit.hole, []).append(fit.shaft)
    for loop in design.loops:
        for term in loop.terms:
            name = term.name.removesuffix(".long")
            part = name.split(".")[0]
            if loop.made_last and part != loop.made_last.split(".")[0]:
                found.setdefault(term.name, []).append(loop.made_last)
    return {size: tuple(dict.fromkeys(mates)) for size, mates in found.items()}


def route_part(
    part: Part,
    mates: dict[str, tuple[str, ...]],
    shop: Shop,
    *,
    stock: str = "ask",
    excluded: frozenset[str] = frozenset(),
    forbidden: frozenset[tuple[int, str]] = frozenset(),
    joints: tuple[Joint, ...] = (),
    lengths: tuple[LoopLength, ...] = (),
) -> Making:
    """Blank, cards and findings of a part; bought parts have none.

    ``mates`` says which sizes are read by which mates (see :func:`gives_to`);
    ``excluded`` names holdings that must not be used ("device on surface"),
    ``forbidden`` those that must not be used as the set-up of that number;
    ``joints`` are the press joints after which something is finished,
    ``lengths`` the members of float loops that are measured on this part.
    """
    if part.kind == "bought" or part.shape is None:
        return Making(None, (), ())
    if isinstance(part.shape, TurnedShape):
        making = turned_part(
            part, shop, mates, stock=stock, excluded=excluded, forbidden=forbidden, joints=joints
        )
    elif isinstance(part.shape, PlateShape):
        making = plate_part(part, shop, mates, stock=stock)
    elif isinstance(part.shape, SheetShape):
        making = sheet_part(part, shop, mates)
    elif isinstance(part.shape, RolledRing):
        making = ring_part(part, shop, mates)
    elif isinstance(part.shape, SpringShape):
        making = spring_part(part, shop, mates)
    elif isinstance(part.shape, WireShape):
        making = wire_part(part, shop, mates)
    else:
        making = Making(None, (), ())
    making = _with_hand_work(making, part, shop, mates)
    cards = keyed(with_measures(making.cards, part, lengths, shop))
    return replace(making, cards=cards, findings=(*making.findings, *too_coarse(part.name, cards, shop)))


def _with_hand_work(making: Making, part: Part, shop: Shop, mates: dict[str, tuple[str, ...]]) -> Making:
    """The making with what is cut by hand, then the work that the design writes, as its last cards."""
    for write in (lines_card, bench_card):
        card, found = write(part, shop, mates, len(making.cards))
        if card is None:
            continue
        of = card.number
        before = [
            replace(one, of=of, after=f"to card {of}" if one.number == of - 1 else one.after)
            for one in making.cards
        ]
        last = replace(card, of=of, after="deburr, measure, bag and label it")
        making = replace(making, cards=(*before, last), findings=(*making.findings, *found))
    return making


def making_order(design: SizedDesign) -> tuple[str, ...]:
    """Names of the parts in the order of making: holes before shafts, the loop's last member last.

    What a tool fixes (a reamed bore) comes first, what a dial fixes follows.
    """
    after: dict[str, set[str]] = {part.name: set() for part in design.parts}
    for fit in design.fits:
        hole, shaft = fit.hole.split(".")[0], fit.shaft.split(".")[0]
        if hole != shaft:
            after[shaft].add(hole)
    for loop in design.loops:
        last = loop.made_last.split(".")[0]
        if last in after:
            after[last] |= {term.name.split(".")[0] for term in loop.terms} - {last}
    order: list[str] = []
    waiting = [part.name for part in design.parts]
    while waiting:
        ready = next((name for name in waiting if not (after[name] & set(waiting) - {name})), waiting[0])
        order.append(ready)
        waiting.remove(ready)
    return tuple(order)
