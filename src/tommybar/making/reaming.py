"""Which drills go before a reamer or a bore, from the shop's own drawer."""

from __future__ import annotations

from dataclasses import dataclass

from tommybar.facts.drawing.general_tolerances import general_tolerance
from tommybar.facts.fits.iso286 import limits_of_size
from tommybar.facts.threads import thread
from tommybar.making.practice import rule
from tommybar.shop.model import Reamer, Shop

TAP_UNDER, TAP_OVER = 0.03, 0.15  # how far a tapping drill may be off; common practice, no source [mm]


@dataclass(frozen=True)
class HolePlan:
    """Tools for one bore, in order: drills [mm], then how it is finished."""

    drills: tuple[float, ...]
    finish: str  # "ream", "bore", "bore and ream", "drill"
    reamer: Reamer | None = None
    bore_to: float = 0.0  # diameter to bore to, before the reamer or as the last size [mm]


def allowance(size: float) -> tuple[float, float]:
    """Least and most to leave for a reamer of that size, on diameter [mm]."""
    small = "small" if size <= rule("reaming", "small_upto") else "large"
    return rule("reaming", f"{small}_least"), rule("reaming", f"{small}_most")


def reaming_drill_owned(size: float, shop: Shop) -> float | None:
    """The largest owned drill that leaves the reamer its allowance, or None [mm]."""
    least, most = allowance(size)
    fitting = [drill for drill in shop.drills if size - most - 1e-9 <= drill <= size - least + 1e-9]
    return max(fitting) if fitting else None


def tapping_drill_owned(designation: str, shop: Shop) -> float | None:
    """The owned drill for a tap: the standard one, or the nearest up to TAP_OVER above it, or None [mm]."""
    wanted = thread(designation).tapping_drill
    near = [d for d in shop.drills if wanted - TAP_UNDER <= d <= wanted + TAP_OVER]
    return min(near, key=lambda d: abs(d - wanted)) if near else None


def predrill_for(size: float, shop: Shop) -> float:
    """The diameter at which a bore waits for its reamer [mm]."""
    drill = reaming_drill_owned(size, shop)
    if drill is not None:
        return drill
    return size - sum(allowance(size)) / 2


def standing_out(dia: float) -> float:
    """How far a drill or reamer stands out of the drill chuck [mm]. Common practice, no source."""
    return rule("reaming", "stands_out") + rule("reaming", "stands_out_per_dia") * dia


def drilled_size(size: float, shop: Shop) -> float | None:
    """The owned drill for a hole without limits: the nearest within ISO 2768-1 class m, the larger of two alike [mm]."""
    band = general_tolerance(size, "m") if size >= 0.5 else 0.03
    near = [d for d in shop.drills if abs(d - size) <= band + 1e-9 and d <= shop.lathe.drill_chuck + 1e-6]
    return min(near, key=lambda d: (round(abs(d - size), 4), -d)) if near else None


def openings(last: float, shop: Shop, depth: float) -> tuple[float, ...]:
    """Drills up to ``last``: a pilot and steps, the smallest number that opens gently and reaches the depth."""
    reaching = [d for d in shop.drills if standing_out(d) >= depth + 0.3 * d + 1.0]
    chosen = [last]
    while chosen[0] > 6.0:
        most = rule("reaming", "opening_step")
        below = [d for d in reaching if chosen[0] - most <= d <= chosen[0] - 1.0]
        if below:
            chosen.insert(0, min(below, key=lambda d: (round(d % 0.5, 3) != 0.0, d)))
            continue
        larger_step = [d for d in reaching if d < chosen[0] - 0.5]
        if not larger_step:
            break
        chosen.insert(0, max(larger_step))
    return tuple(chosen)


def _suits(reamer: Reamer, size: float, within: tuple[float, float] | None) -> bool:
    """Whether the reamer is made for these limits, or really cuts inside them.

    One made for the very zone is taken even if it is known to cut over: the
    reading is expected, and the mate is made to suit.
    """
    if within is None:
        return abs(reamer.size - size) < 0.003
    made_for = limits_of_size(reamer.size, reamer.zone)
    if abs(made_for.smallest - within[0]) < 0.001 and abs(made_for.largest - within[1]) < 0.001:
        return True
    cuts = reamer.size + reamer.cuts_over
    return within[0] - 1e-6 <= cuts <= within[1] + 1e-6


def hole_plan(
    size: float,
    shop: Shop,
    *,
    limits: bool,
    finish_later: bool = False,
    depth: float = 0.0,
    within: tuple[float, float] | None = None,
) -> HolePlan | None:
    """Drills and finish for an axial bore of that size; None when the drawer has nothing.

    A bore with limits is reamed when the reamer is owned and a drill leaves it
    its allowance, else bored. A bore without limits is drilled when the drill
    is owned, else bored. ``within`` are the limits that the reamer's cut must keep [mm].
    """
    reamer = next((one for one in shop.reamers if _suits(one, size, within)), None)
    if finish_later:
        drill = reaming_drill_owned(size, shop)
        if drill is not None:
            return HolePlan(openings(drill, shop, depth), "drill")
        limits = True
    if limits and reamer is not None:
        drill = reaming_drill_owned(size, shop)
        if drill is not None:
            return HolePlan(openings(drill, shop, depth), "ream", reamer)
    else_ream = reamer if limits else None
    owned = [d for d in shop.drills if d <= size + 1e-6 and d <= shop.lathe.drill_chuck + 1e-6]
    plain = None if limits else drilled_size(size, shop)
    if plain is not None:
        return HolePlan(openings(plain, shop, depth), "drill")
    bars = [t for t in shop.tools if t.kind == "boring"]
    if bars and owned:
        least_bar = min(t.smallest_bore or t.shank for t in bars)
        start = [d for d in owned if least_bar <= d <= size - 0.5]
        if start:
            if else_ream is not None:
                return HolePlan(
                    openings(max(start), shop, depth), "bore and ream", else_ream, predrill_for(size, shop)
                )
            return HolePlan(openings(max(start), shop, depth), "bore", None, size)
    return None
