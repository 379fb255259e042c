"""Realities 24 and 44: a speed that the machine lacks, a cutter that is not its size."""

from __future__ import annotations

from collections.abc import Iterator

from tommybar.bench.rescue.shop_edits import with_cutter, without_speed
from tommybar.bench.rescue.situation import Mishap, Reality, Situation, Try, beware, foreseen
from tommybar.findings import Finding
from tommybar.refusals import Refusal

TOO_FAST = (401,)  # finding of the route: the slowest speed is over what the stuff takes
NEAR = 1.0  # a cutter farther from its size than this is another cutter [mm]


def warn_of_speeds(situation: Situation) -> list[Finding]:
    """What the plan says of a slowest speed that is still too fast."""
    return foreseen(24, situation.plan, TOO_FAST)


def tries_without_speed(situation: Situation, mishap: Mishap) -> Iterator[Try]:
    """The same work at the speeds that are left; or a size at which they do."""
    if mishap.about not in ("lathe", "mill"):
        raise Refusal(f'"{mishap.about}" is no machine with speeds.', "Say lathe or mill.")
    shop = without_speed(situation.inputs.shop_text, mishap.about, mishap.value)
    yield Try(f"Do without {mishap.value:g} rev/min on the {mishap.about}.", shop=shop)


def warn_of_cutters(situation: Situation) -> Iterator[Finding]:
    """Cutters that bring something to size: what they really cut is worth a slot in scrap."""
    brings: dict[str, list[str]] = {}
    for card in (card for part in situation.plan.parts for card in part.cards):
        for step in card.steps:
            if step.tool_kind == "end mill":
                brings.setdefault(step.tool, []).extend(one.size for one in step.measure)
    for tool, sizes in brings.items():
        if sizes:
            yield beware(
                44,
                f"The {tool} brings {', '.join(sizes)} to size; sharpened or out of true it cuts another width.",
                figure=tool,
                bound="its marked size",
                remedy="Cut a slot in scrap and measure that.",
                severity="note",
            )


def tries_with_cutter(situation: Situation, mishap: Mishap) -> Iterator[Try]:
    """The cutter as it measures goes into the shop file; what it cuts to size is planned with that."""
    try:
        size = float(mishap.about.removeprefix("end mill").removeprefix("cutter").strip())
    except ValueError:
        raise Refusal(f'"{mishap.about}" is no cutter.', "Write end mill 16.") from None
    if not 0 < abs(mishap.value - size) <= NEAR:
        raise Refusal(
            f"The cutter of {size:g} mm measures {mishap.value:g} mm; it may be off by up to {NEAR:g} mm.",
            "Cut a slot and measure that.",
        )
    yield Try(
        f"Plan with the cutter of {size:g} mm as the {mishap.value:g} mm that it cuts.",
        shop=with_cutter(situation.inputs.shop_text, size, mishap.value),
    )


SPEED = Reality(
    24,
    "Speed that the machine lacks",
    "about: lathe or mill; value: the speed that cannot be had [rev/min]",
    warn_of_speeds,
    tries_without_speed,
)
CUTTER = Reality(
    44,
    "Cutter not its size",
    "about: the cutter, end mill 16; value: what a slot of it measures [mm]",
    warn_of_cutters,
    tries_with_cutter,
)
