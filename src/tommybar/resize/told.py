"""What a resize tells: one finding for each thing that cannot be satisfied, and for each that just passes."""

from __future__ import annotations

from collections.abc import Sequence

from tommybar.findings import Finding
from tommybar.resize.asked import Asked
from tommybar.resize.choice import PINNED, words
from tommybar.resize.search import Tried
from tommybar.resize.table import Bind

NUMBERS = {
    "limit": 101,
    "must": 102,
    "between": 103,
    "wall": 104,
    "relation": 105,
    "drawable": 106,
    "tool": 107,
}
LITTLE = 0.03  # departure up to which another tool at full size is only a note
JUST = 0.02  # a wall with no more to spare than this is told [mm]


def broken_finding(one: Asked, binds: Sequence[Bind] = ()) -> Finding:
    """A stop for something that does not hold at the scale that was asked for."""
    bind = next((bind for bind in binds if (bind.what, bind.part) == (one.what, one.part)), None)
    remedy = one.remedy
    if bind is not None:
        way = "from scale {} up" if bind.least else "up to scale {}"
        remedy = f"It holds {way.format(words(bind.scale))}. {remedy}".strip()
    return Finding(
        NUMBERS[one.kind],
        "stop",
        _sentence(one),
        part=one.part if one.kind != "tool" else "",
        feature=one.part if one.kind == "tool" else "",
        figure=_figure(one),
        bound=_bound(one),
        remedy=remedy or "Pin another size, or take another scale.",
    )


def _sentence(one: Asked) -> str:
    of = f" of {one.part}" if one.part else ""
    if one.kind == "must":
        return f"{one.what} is broken by {words(-one.slack)} mm."
    if one.kind == "drawable":
        return f"It cannot be drawn ({one.what}): {one.who}"
    if one.kind == "tool":
        return f"{one.part}: {one.what}."
    if one.kind == "between":
        return f"The size {one.what.split(' ')[0]} leaves the bounds that the design sets it."
    apart = "too small" if one.least else "too large"
    return f"{one.what[:1].upper()}{one.what[1:]}{of}: {words(one.figure)} mm is {apart}."


def _figure(one: Asked) -> str:
    if one.kind in ("drawable", "tool"):
        return ""
    if one.kind == "must":
        return f"{words(-one.slack)} mm short"
    return f"{words(one.figure)} mm"


def _bound(one: Asked) -> str:
    if one.kind in ("drawable", "tool"):
        return one.what
    if one.kind == "must":
        return f"{one.what}: {one.who}"
    side = "at least" if one.least else "at most"
    return f"{side} {words(one.bound)} mm" + (f", {one.who}" if one.who else "")


def held_finding(tried: Tried, binds: Sequence[Bind], wanted: float) -> Finding | None:
    """A note that the scale is smaller than wanted, and what holds it."""
    binding = [one for one in binds if one.binds]
    if not binding or tried.scale >= wanted - 1e-9:
        return None
    first = binding[0]
    lengths = [one for one in binding if one.bound != one.scale]
    listed = " and ".join(f"{one.what} of {one.part}" if one.part else one.what for one in lengths)
    tools = dict.fromkeys(f"for {one.part}, {one.what}" for one in binding if one.bound == one.scale)
    above = "; ".join(tools)  # many scales may have met the same limit
    told = [f"{listed} allows no more"] if listed else []
    return Finding(
        116,
        "note",
        f"It is made at scale {tried.scale:.2f}: {', and '.join([*told, above] if above else told)}.",
        part=first.part,
        figure=f"{words(first.figure)} mm" if lengths else f"{first.figure:g}",
        bound=f"{'at least' if first.least else 'at most'} {words(first.bound)} mm"
        if lengths
        else f"{first.bound:g}",
        remedy="A larger scale needs another machine, other stock, or that limit met in another way.",
    )


def changed_at_full_size(tried: Tried) -> list[Finding]:
    """One finding for every size that changed although the scale is 1: the shop lacks what it was drawn for."""
    if abs(tried.scale - 1) > 1e-9:
        return []
    found = []
    for name, choice in tried.picks.items():
        drawn = tried.domains[name].exact
        if choice.value == drawn or choice.why == PINNED:
            continue
        far = (
            isinstance(choice.value, str) or isinstance(drawn, str) or abs(choice.value / drawn - 1) > LITTLE
        )
        found.append(
            Finding(
                115,
                "caution" if far else "note",
                f"{name} is {_value(choice.value)} where {_value(drawn)} is drawn: {choice.why}.",
                feature=name,
                figure=_value(choice.value),
                bound=_value(drawn),
                remedy="Get or borrow the tool or stock for the drawn size, or let it be so.",
            )
        )
    return found


def conflict_finding(conflict: Sequence[Asked], wanted: float, smallest: float) -> Finding:
    """A stop when nothing fits at any scale: the fewest things that cannot all hold."""
    listed = "; ".join(_sentence(one).rstrip(".") for one in conflict)
    parts = [one.part for one in conflict if one.part and one.kind != "tool"]
    return Finding(
        100,
        "stop",
        f"No scale from {words(wanted)} down to {words(smallest)} fits this shop. "
        f"These cannot all hold: {listed}.",
        part=parts[0] if parts else "",
        figure=_figure(conflict[0]) if conflict else "",
        bound="; ".join(
            _bound(one) if one.kind == "must" else f"{one.what}: {_bound(one)}" for one in conflict
        ),
        remedy="Give way on one of them, redraw there, or add to the shop.",
    )


def notes(
    tried: Tried, asked: Sequence[Asked], not_met_as_drawn: Sequence[Asked], sure: bool
) -> list[Finding]:
    """What passes at the limit, what the builder must see to, and what the drawing itself does not keep."""
    found = [
        Finding(
            110,
            "note",
            f"{one.what[:1].upper()}{one.what[1:]} of {one.part} passes at the limit.",
            part=one.part,
            figure=f"{words(one.figure)} mm",
            bound=_bound(one),
            remedy="Do not let it become less: measure before the hole is made.",
        )
        for one in asked
        if one.kind == "wall" and one.holds and one.slack <= JUST and abs(tried.scale - 1) > 1e-9
    ]
    found += [
        Finding(
            111,
            "caution",
            f"{name}: {choice.caution}.",
            feature=name,
            figure=_value(choice.value),
            bound="what the drawer holds",
            remedy="Pin another size of it, or see to the tool before the part is begun.",
        )
        for name, choice in tried.picks.items()
        if choice.caution
    ]
    found += [
        Finding(
            112,
            "note",
            f"{one.what[:1].upper()}{one.what[1:]} of {one.part} is under the usual rule as drawn; "
            "the designer's figure is taken as meant.",
            part=one.part,
            figure=f"{words(one.figure)} mm",
            bound=_bound(one),
            remedy="Look at it again if the size is changed by hand.",
        )
        for one in not_met_as_drawn
    ]
    if not (sure and tried.exhausted):
        found.append(
            Finding(
                113,
                "caution",
                "The search for sizes was broken off before every choice was looked at.",
                remedy="Pin a size or two; a better choice may exist.",
            )
        )
    return found


def _value(value: float | str) -> str:
    return value if isinstance(value, str) else f"{words(value)} mm"
