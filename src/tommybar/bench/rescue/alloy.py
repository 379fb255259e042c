"""Reality 40: a part is made of another alloy than was drawn."""

from __future__ import annotations

from collections.abc import Iterator

from tommybar.bench.rescue.situation import Mishap, Reality, Situation, Try, beware
from tommybar.bench.splice import with_value
from tommybar.facts.materials import Material, material
from tommybar.findings import Finding
from tommybar.refusals import Refusal, nearest

MUCH = 0.20  # a figure that changes by more than this share is told; jobs of the workshop, no source


def warn(situation: Situation) -> Iterator[Finding]:
    """Pieces on the rack whose alloy is a guess."""
    guesses = {bar.name for bar in situation.plan.shop.rack if not bar.certain}
    for one in situation.plan.stock.bars:
        if one.bar in guesses:
            for name in dict.fromkeys(cut.part for cut in one.cuts):
                yield beware(
                    40,
                    f"{one.bar} for {name} is thought to be {one.material}; nobody knows.",
                    about=name,
                    figure=one.material,
                    bound="known alloy",
                    remedy="Weigh and measure it, try a magnet and a test cut before it is gripped.",
                    source="the rack of the shop file",
                )


def tries(situation: Situation, mishap: Mishap) -> Iterator[Try]:
    """Everything worked out again with the real alloy; or the one that was drawn, from a new blank."""
    known = {part.name: part for part in situation.plan.design.parts if part.material}
    if mishap.about not in known:
        raise Refusal(
            f'No part "{mishap.about}" is made here.', nearest(mishap.about, known) or "Name a part."
        )
    drawn, real = material(known[mishap.about].material), material(mishap.said)
    place = ("parts", mishap.about, "material")
    yield Try(
        f"Make {mishap.about} of {real.name} in place of {drawn.name}{_told(drawn, real)}.",
        design=with_value(situation.inputs.design_text, place, mishap.said),
        keep=(mishap.about,),
    )
    yield Try(f"Get {drawn.name} for {mishap.about} after all.", forget=(mishap.about,))


def _told(drawn: Material, real: Material) -> str:
    lines = []
    for word, before, after in (
        ("density", drawn.density, real.density),
        ("strength", drawn.yield_strength, real.yield_strength),
        ("expansion", drawn.expansion, real.expansion),
    ):
        if before > 0 and after > 0 and abs(after / before - 1) > MUCH:
            lines.append(f"{word} {100 * (after / before - 1):+.0f} %")
    return f" ({', '.join(lines)})" if lines else ""


REALITY = Reality(40, "Substitute alloy", "about: the part; said: the alloy it is really of", warn, tries)
