"""Reality 28: a bore closes when its part is pressed in."""

from __future__ import annotations

from collections.abc import Iterator

from tommybar.bench.rescue.situation import Mishap, Reality, Situation, Try, foreseen
from tommybar.bench.rescue.sizes import mates_of
from tommybar.bench.splice import with_key
from tommybar.design.yaml_file import yaml_from_text
from tommybar.findings import Finding
from tommybar.refusals import Refusal

LAPPING = 20.0  # a bore lapped or reamed in place by hand [min]; common practice, no source
CLOSES = (648,)  # finding of the check of press fits: the bore below closes


def warn(situation: Situation) -> list[Finding]:
    """Bores that are finished before the press, by how much they will close."""
    return foreseen(28, situation.plan, CLOSES)


def tries(situation: Situation, mishap: Mishap) -> Iterator[Try]:
    """The shaft to suit; the bore finished in place."""
    size, dim = mishap.about, situation.dim(mishap.about)
    smallest = dim.value if dim.smallest is None else dim.smallest
    if not 0 < mishap.value < smallest:
        raise Refusal(
            f"{size} is {mishap.value:g} mm; it has not closed below {smallest:g} mm.", "Record it and go on."
        )
    mates = mates_of(situation, size)
    gone = tuple(sorted({one.split(".")[0] for one in mates if situation.inputs.made.size(one)}))
    if mates:
        yield Try(
            f"Make {' and '.join(mates)} to suit the bore of {mishap.value:.3f} mm.",
            readings=((size, mishap.value),),
            forget=gone,
        )
    part, _, feature = size.partition(".")
    text = situation.inputs.design_text
    bores = yaml_from_text(text).data["parts"][part].get("turned", {}).get("bores", [])
    for index, one in enumerate(bores):
        if one["name"] == feature:
            yield Try(
                f"Ream or lap {size} to its limits where it is pressed in.",
                design=with_key(text, ("parts", part, "turned", "bores", index), "after", "press"),
                forget=(size,),
                keep=(part,),
                by_hand=LAPPING,
            )


REALITY = Reality(
    28,
    "Bore closes after pressing",
    "about: the bore; value: what it measures when pressed in [mm]",
    warn,
    tries,
)
