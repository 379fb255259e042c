"""Reality 1: a bore comes out over its size."""

from __future__ import annotations

from collections.abc import Iterator

from tommybar.bench.rescue.bushing import bushed
from tommybar.bench.rescue.situation import Mishap, Reality, Situation, Try, beware
from tommybar.bench.rescue.sizes import fits_of, mates_of, named_size
from tommybar.findings import Finding
from tommybar.refusals import Refusal
from tommybar.shop.questions import reamer_for

TO_SUIT = 0.2  # up to so much over, the mate can be made to suit [mm]; common practice, no source
STOCK_LEFT = 0.1  # the next reamer needs at least so much metal to cut [mm]; common practice, no source
REAMING = 8.0  # a bore opened and reamed again, with its measuring [min]; common practice, no source


def warn(situation: Situation) -> Iterator[Finding]:
    """What the shop's reamers are known to cut, against the limits of the bores they are planned for."""
    for part in situation.plan.parts:
        for card in part.cards:
            for step in card.steps:
                reamer = (
                    reamer_for(situation.plan.shop, step.tool_size) if step.tool_kind == "reamer" else None
                )
                if reamer is None or reamer.cuts_over <= 0:
                    continue
                for one in step.measure:
                    expected = reamer.size + reamer.cuts_over
                    over = one.dim.largest is not None and expected > one.dim.largest + 1e-9
                    mates = " and ".join(mates_of(situation, one.size))
                    yield beware(
                        1,
                        f"This reamer cuts {reamer.cuts_over:.3f} mm over: expect {one.size} at {expected:.3f} mm"
                        + (", over its limit." if over else "."),
                        about=one.size,
                        figure=f"{expected:.3f} mm",
                        bound=f"{one.dim.largest:.3f} mm" if one.dim.largest is not None else "",
                        remedy=f"Ream and measure before {mates} is made."
                        if mates
                        else "Measure a test hole first.",
                        severity="caution" if over else "note",
                        source="the shop file: what a test hole came out at",
                    )


def tries(situation: Situation, mishap: Mishap) -> Iterator[Try]:
    """The mate to suit; the next reamer; a bush."""
    size, value, dim = mishap.about, mishap.value, situation.dim(mishap.about)
    limit = dim.value if dim.largest is None else dim.largest
    fits = [one for one in fits_of(situation, size) if one.hole == size]
    if not fits:
        raise Refusal(f"{size} is the hole of no fit.", "Name a bore that a shaft runs in.")
    if value <= limit:
        raise Refusal(
            f"{size} is {value:.3f} mm; its limit is {limit:.3f} mm.",
            "It is not oversize: record it and go on.",
        )
    mates, part = mates_of(situation, size), size.split(".")[0]
    made = tuple(one for one in mates if situation.inputs.made.size(one) is not None)
    frozen = ((size, value),)
    if value - dim.value <= TO_SUIT + 1e-9:
        gone = tuple(sorted({one.split(".")[0] for one in made}))
        again = f", which has to be made again ({' and '.join(gone)})" if gone else ""
        yield Try(
            f"Make {' and '.join(mates)} to suit the bore of {value:.3f} mm{again}.",
            readings=frozen,
            forget=gone,
        )
    named = named_size(situation, size)
    larger = [one.size for one in situation.plan.shop.reamers if one.size >= value + STOCK_LEFT]
    if named is not None and larger:
        following = min(larger)
        yield Try(
            f"Open {size} to {following:g} mm with the next reamer; everything that goes with {named.name} follows.",
            pins={named.name: following},
            forget=(size,),
            keep=(part,),
            by_hand=REAMING,
        )
    bush = bushed(situation, size, value)
    if bush is not None:
        yield bush


REALITY = Reality(
    1,
    "Bore reamed oversize",
    "about: the size of the bore; value: what it measures [mm]",
    warn,
    tries,
)
