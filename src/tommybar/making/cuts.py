"""Spindle speed, feed and passes from material, tool and machine."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

from tommybar.facts.cutting import FeedRange, cutting_speed, drilling_feed, feed_range
from tommybar.making.cards import Pass
from tommybar.making.dials import landing, travel_words
from tommybar.making.practice import rule
from tommybar.shop.model import Dial


@dataclass(frozen=True)
class Speed:
    """A speed that the machine has, with what it gives at the rim of the cut."""

    rpm: float
    reached: float  # [m/min]
    wanted: tuple[float, float]  # range for this material and tool [m/min]
    too_fast: bool  # the slowest speed is more than the allowed excess too fast


def spindle(speeds: tuple[float, ...], name: str, tool_material: str, operation: str, dia: float) -> Speed:
    """The next lower speed that the machine has, for the middle of the range at that diameter [mm]."""
    wanted = cutting_speed(name, tool_material, operation)
    ideal = 1000 * (wanted.low + wanted.high) / 2 / (math.pi * max(dia, 0.5))
    below = [n for n in speeds if n <= ideal + 1e-9]
    rpm = max(below) if below else min(speeds)
    reached = math.pi * dia * rpm / 1000
    too_fast = not below and reached > rule("cut", "speed_excess") * wanted.high
    return Speed(rpm, reached, (wanted.low, wanted.high), too_fast)


def feed_span(operation: str, tool_material: str, stage: str) -> FeedRange:
    """The fine and the coarse feed of an operation on a small machine [mm/rev]."""
    return feed_range(operation, tool_material, stage)


def feed_for(name: str, tool_material: str, operation: str, stage: str, dia: float = 0.0) -> float:
    """A feed for a small machine: the lower third of the range [mm/rev].

    Drills under 1 mm are off the table: they are fed by hand, and the feed is 0.
    A feed that no table has is a Refusal.
    """
    if operation in ("drilling", "reaming"):
        if dia < 1.0:
            return 0.0
        table = drilling_feed(name, dia)
        return table.low if operation == "drilling" else 2 * table.low
    span = feed_span(operation, tool_material, stage)
    return span.low + (span.high - span.low) / 3


def roughing_passes(
    start: float, end: float, deepest: float, dial: Dial, sign: float = -1.0
) -> tuple[Pass, ...]:
    """Equal roughing cuts from one diameter to another [mm]; ``sign`` +1 for a bore.

    Each cut is put on a mark of the dial, so ``to`` is what the marks give.
    """
    return _on_marks(start, end, max(1, math.ceil(abs(start - end) / 2 / deepest - 1e-6)), dial, sign)


def finishing_passes(
    start: float, end: float, dial: Dial, sign: float = -1.0, *, two: bool = True
) -> tuple[Pass, ...]:
    """Two equal last cuts (or one, where no limits are given), as near as the marks of the dial come [mm]."""
    cuts = _on_marks(start, end, 2 if two else 1, dial, sign)
    return tuple(replace(cut, last=True) for cut in cuts)


def _on_marks(start: float, end: float, number: int, dial: Dial, sign: float) -> tuple[Pass, ...]:
    each = abs(start - end) / 2 / number
    found, before = [], 0.0
    for n in range(1, number + 1):
        here = landing(dial, each * n)
        found.append(
            Pass(
                to=round(start + sign * 2 * here, 4),
                infeed=round(here - before, 4),
                dial=travel_words(dial, each * n),
            )
        )
        before = here
    return tuple(found)


def step_on_diameter(dial: Dial) -> float:
    """The least change of a diameter that half a division of the dial gives [mm]."""
    return dial.per_division
