"""End mills: which one, how deep at a time, how fast, and what the mill's dial then reads."""

from __future__ import annotations

import math

from tommybar.facts.materials import material
from tommybar.making.cards import Pass
from tommybar.making.cuts import feed_for
from tommybar.making.dials import travel_words
from tommybar.making.lengths import Mm
from tommybar.making.mill_steps import MillBench
from tommybar.making.milling.rules import mill_rule
from tommybar.shop.model import Mill

SOFT = ("brass", "aluminium", "plastic", "copper")


def mill_dial(mill: Mill, travel: float) -> str:
    """A travel as the mill shows it: on its read-out, or in turns and divisions of its own dial."""
    if mill.readout > 0:
        return f"{Mm(travel):.2f} on the read-out"
    return travel_words(mill.dial, travel)


def end_mill_feed(bench: MillBench, operation: str, stage: str) -> float:
    """Feed of an end mill with as many teeth as the rule reckons with [mm/rev]."""
    return feed_for(bench.part.material, "HSS", operation, stage) * mill_rule("flutes")


def is_soft(name: str) -> bool:
    """Whether a material stands the deeper cuts."""
    return material(name).family in SOFT


def deepest(bench: MillBench, cutter: float) -> float:
    """Deepest single cut of an end mill [mm]."""
    share = mill_rule("depth_soft" if is_soft(bench.part.material) else "depth_hard")
    return min(share * cutter, mill_rule("depth_most"))


def depth_passes(bench: MillBench, depth: float, cutter: float, most: float = 0.0) -> tuple[Pass, ...]:
    """Equal cuts down to a depth, each with the reading of the mill's dial from the touch [mm]."""
    single = min(deepest(bench, cutter), most) if most > 0 else deepest(bench, cutter)
    number = max(1, math.ceil(depth / single - 1e-6))
    each = depth / number
    return tuple(
        Pass(round(each * n, 3), round(each, 3), mill_dial(bench.mill, each * n), last=n == number)
        for n in range(1, number + 1)
    )


def cuts_words(passes: tuple[Pass, ...]) -> str:
    """How many cuts: "1 cut", "4 cuts"."""
    return f"{len(passes)} cut{'s' if len(passes) != 1 else ''}"


def reaches(cutter: float, depth: float) -> bool:
    """Whether an end mill's teeth are long enough for a depth [mm]."""
    return depth <= mill_rule("end_mill_reach") * cutter + 1e-9


def largest_cutter(bench: MillBench, most: float, depth: float, *, least: float = 0.0) -> float | None:
    """The largest end mill owned up to a size that reaches a depth [mm]."""
    fits = [c for c in bench.shop.cutters if least - 1e-9 <= c <= most + 1e-9 and reaches(c, depth)]
    return max(fits) if fits else None


def no_cutter(bench: MillBench, feature: str, what: str, most: float, depth: float) -> None:
    """The stop when no end mill suits: what was wanted, and what the drawer has."""
    owned = ", ".join(f"{c:g}" for c in bench.shop.cutters) or "none"
    share = mill_rule("end_mill_reach")
    bench.stop(
        418,
        f"{feature}: no end mill in the drawer cuts {what} {depth:.2f} mm deep.",
        feature,
        "Buy or borrow the end mill, draw it wider or shallower, or file it to a line.",
        figure=f"end mill up to {most:g} mm, teeth {depth:.2f} mm long",
        bound=f"end mills: {owned} mm, cutting {share:g} diameters deep",
    )
