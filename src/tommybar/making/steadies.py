"""Steady rests: fixed to the bed behind an end that is faced, or travelling beside the tool on slender work."""

from __future__ import annotations

from typing import Literal

from tommybar.making.bench import Bench
from tommybar.making.cards import Step
from tommybar.making.lengths import Mm
from tommybar.shop.centre_equipment import Steady
from tommybar.shop.model import Shop

TRACK = 15.0  # turned at the tail for the fingers to begin on; common practice, no source [mm]
WIDE = 16.0  # of a fixed steady along the axis; common practice, no source [mm]
RINGED = ", fixed steady"  # said of a grip whose free end runs in one
# What is done at an end that runs in a fixed steady: everything in its face, and its edges.
AT_THE_END = frozenset(
    {
        "face",
        "centre",
        "bore",
        "bore edge",
        "bore groove",
        "recess",
        "face groove",
        "bore taper",
        "cup",
        "edge",
        "round",
    }
)
BEHIND = 10.0  # a fixed steady stands this far behind the face that is cut; common practice, no source [mm]


def steady_for(shop: Shop, kind: Literal["fixed", "travelling"], dia: float) -> Steady | None:
    """A steady of that kind that closes on that diameter, where the shop works with one."""
    if f"{kind} steady" not in shop.can:
        return None
    return next(
        (
            one
            for one in shop.steadies
            if one.kind == kind and one.smallest - 1e-6 <= dia <= one.largest + 1e-6
        ),
        None,
    )


def set_fixed(bench: Bench) -> None:
    """Bring the fixed steady to the bar before its end is faced."""
    option = bench.option
    track = bench.work.largest(-BEHIND, -BEHIND - WIDE)
    bench.add(
        Step(
            0,
            f"Set the fixed steady {Mm(BEHIND):.0f} behind the face",
            option.surface,
            "fixed steady",
            "hand",
            0.0,
            0.0,
            0.0,
            f"{track:.2f}",
            "DIA mm",
            (
                f"Bar true at the jaws; fingers brought to {Mm(track):.2f} by hand, spindle turned by hand.",
                "They want a round, smooth track: on black or bent bar turn one first, or wrap a trued ring round it.",
                "Oil on the fingers, slow; the bar must not creep out of the jaws.",
            ),
            minutes=6.0,
            why="It does not go back into the spindle, and is too slender for work in its face without a steady.",
            cautions=(
                "Fingers that are set off the axis make the bar wave and work itself out of the jaws.",
            ),
        )
    )


def set_travelling(bench: Bench) -> None:
    """A track at the tail, and the travelling steady on it."""
    option = bench.option
    bench.add(
        Step(
            0,
            f"Set the travelling steady at the tail, on {Mm(TRACK):.0f} of the first cut",
            option.surface,
            "travelling steady",
            "hand",
            0.0,
            0.0,
            0.0,
            f"{TRACK:.0f}",
            "mm long",
            (
                f"Take the first cut of the next step {Mm(TRACK):.0f} long and stop; both fingers to it, just behind the tool.",
                "Set them again to the new diameter after every cut, spindle stopped, oil on them.",
                "They run on what the tool has just turned, so they stop where the next shoulder begins.",
            ),
            minutes=8.0,
            why="So slender, the work would climb over the tool; beside the tool the fingers take its push.",
            cautions=(
                "Too tight they burnish and heat the work, too loose they do nothing: a film of oil between.",
            ),
        )
    )
