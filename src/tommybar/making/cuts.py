"""Spindle speed, feed and passes from material, tool and machine."""

from __future__ import annotations

import math
from dataclasses import dataclass

from tommybar.facts.cutting import cutting_speed, drilling_feed, feed_range
from tommybar.facts.materials import material
from tommybar.making.cards import Pass
from tommybar.making.dials import travel_words
from tommybar.making.practice import rule
from tommybar.mechanics.cutting import cutting_force
from tommybar.refusals import Refusal
from tommybar.shop.model import Dial, Lathe


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


def feed_for(name: str, tool_material: str, operation: str, stage: str, dia: float = 0.0) -> float:
    """A feed for a small machine: the lower third of the range [mm/rev]."""
    if operation in ("drilling", "reaming"):
        table = drilling_feed(name, min(max(dia, 1.0), 25.0))
        return table.low if operation == "drilling" else 2 * table.low
    try:
        span = feed_range(operation, tool_material, stage)
    except Refusal:
        return 0.0
    return span.low + (span.high - span.low) / 3


def deepest_cut(lathe: Lathe, name: str, speed: Speed, feed: float) -> float:
    """Deepest radial cut that power and the bench's rule of thumb allow [mm]."""
    kind = material(name)
    soft = kind.family in ("brass", "aluminium", "plastic", "bronze", "copper")
    thumb = rule("cut", "rough_soft" if soft else "rough_steel")
    force_per_mm = cutting_force(kind.kc11, kind.mc, feed, 1.0, 75.0)
    power_per_mm = force_per_mm * max(speed.reached, 0.1) / 60.0
    by_power = lathe.power * lathe.efficiency / power_per_mm
    return max(0.1, min(thumb, by_power))


def roughing_passes(
    start: float, end: float, deepest: float, dial: Dial, sign: float = -1.0
) -> tuple[Pass, ...]:
    """Equal roughing cuts from one diameter to another [mm]; ``sign`` +1 for a bore."""
    depth = abs(start - end) / 2
    number = max(1, math.ceil(depth / deepest - 1e-6))
    each = depth / number
    return tuple(
        Pass(
            to=round(start + sign * 2 * each * n, 3),
            infeed=round(each, 3),
            dial=travel_words(dial, each * n),
        )
        for n in range(1, number + 1)
    )


def finishing_passes(
    start: float, end: float, dial: Dial, sign: float = -1.0, *, two: bool = True
) -> tuple[Pass, ...]:
    """Two equal last cuts (or one, where no limits are given) [mm]."""
    number = 2 if two else 1
    each = abs(start - end) / 2 / number
    return tuple(
        Pass(
            to=round(start + sign * 2 * each * n, 4),
            infeed=round(each, 4),
            dial=travel_words(dial, each * n),
            last=True,
        )
        for n in range(1, number + 1)
    )
