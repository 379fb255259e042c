"""Questions about the drawers: speeds, tools, reamers, drills, instruments, bars."""

from __future__ import annotations

from collections.abc import Sequence

from tommybar.refusals import Refusal
from tommybar.shop.model import Bar, Instrument, Reamer, Shop, Tool


def speed_at_or_below(speeds: Sequence[float], wanted: float) -> float:
    """The machine's own speed next at or below the wanted one [rev/min].

    When even the slowest is faster than wanted, the slowest is the answer: it
    is what the machine can do, and whoever asks compares it with the wish.
    """
    if not speeds:
        raise Refusal("The machine has no speeds; it must have at least one.", "Write its speed list.")
    return max((speed for speed in speeds if speed <= wanted + 1e-9), default=min(speeds))


def tool_letters(shop: Shop) -> tuple[str, ...]:
    """The letters of the tool drawer, as the shop file lists them."""
    return tuple(tool.letter for tool in shop.tools)


def lathe_tool(
    shop: Shop,
    kind: str,
    *,
    hand: str = "",
    reach: float = 0.0,
    smallest_bore: float = 0.0,
    width: float = 0.0,
    pitch: float = 0.0,
    pattern: str = "",
    angle: float = 0.0,
) -> Tool | None:
    """The first fitting tool of a kind, or None.

    ``reach``: at least so deep [mm]. ``smallest_bore``: the bore there is for
    it to enter; the stoutest bar that enters is taken [mm]. ``width``: the
    width of the groove it must fit into; the widest that fits [mm]. ``hand``:
    "right" or "left"; a tool for both will do. ``pitch``, ``pattern`` and
    ``angle``: exactly these, where given [mm, -, deg].
    """
    fits = [
        tool
        for tool in shop.tools
        if tool.kind == kind
        and (not hand or tool.hand in (hand, "both"))
        and tool.reach >= reach - 1e-9
        and (not smallest_bore or tool.smallest_bore <= smallest_bore + 1e-9)
        and (not width or tool.width <= width + 1e-9)
        and (not pitch or abs(tool.pitch - pitch) < 1e-6)
        and (not pattern or tool.pattern == pattern)
        and (not angle or abs(tool.angle - angle) < 1e-6)
    ]
    if smallest_bore:
        return max(fits, key=lambda tool: tool.smallest_bore, default=None)
    if width:
        return max(fits, key=lambda tool: tool.width, default=None)
    return fits[0] if fits else None


def reamer_for(shop: Shop, dia: float) -> Reamer | None:
    """The reamer of that nominal size [mm], or None."""
    return next((reamer for reamer in shop.reamers if abs(reamer.size - dia) < 1e-6), None)


def drill_at_or_below(shop: Shop, dia: float) -> float | None:
    """The largest drill owned that is not above a diameter [mm], or None."""
    return max((drill for drill in shop.drills if drill <= dia + 1e-9), default=None)


def instrument_for(shop: Shop, measures: str, size: float, tolerance: float) -> Instrument | None:
    """The coarsest instrument that can judge a tolerance at a size; else the finest there is [mm].

    It can judge when twice its standard uncertainty is within a fifth of the
    width of the tolerance (common practice, no source: "one in ten" either
    way). With ``tolerance`` 0 any that reads the size will do. None when
    nothing in the shop reads it at all.
    """
    reads = [
        one for one in shop.instruments if measures in one.measures and one.smallest <= size <= one.largest
    ]
    able = [one for one in reads if 2 * one.uncertainty <= tolerance / 5 + 1e-12] if tolerance else reads
    if able:
        return max(able, key=lambda one: one.uncertainty)
    return min(reads, key=lambda one: one.uncertainty, default=None)


def bars_of(shop: Shop, material: str, section: str = "") -> tuple[Bar, ...]:
    """Pieces on the rack of a material, and of a section when one is named; smallest first.

    A tube is never among them unless it is asked for.
    """
    return tuple(sorted_bars(shop.rack, material, section))


def obtainable_of(shop: Shop, material: str, section: str = "") -> tuple[Bar, ...]:
    """What can be bought of a material, and of a section when one is named; smallest first."""
    return tuple(sorted_bars(shop.obtainable, material, section))


def sorted_bars(bars: Sequence[Bar], material: str, section: str) -> list[Bar]:
    """Those of a material and section, by size, width and length."""
    return sorted(
        (
            bar
            for bar in bars
            if bar.material == material and (bar.section == section if section else bar.section != "tube")
        ),
        key=lambda bar: (bar.size, bar.width, bar.length),
    )
