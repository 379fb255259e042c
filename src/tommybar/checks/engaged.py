"""Every thread that holds something: how much of it is engaged, wanted and there, as figures to be drawn."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from tommybar.checks.checked import PRACTICE
from tommybar.checks.engagement import (
    bought_for,
    engagement_wanted,
    metal_behind,
    once_each,
    plate_hole,
    tapped_in,
    usable_thread,
)
from tommybar.checks.turning import outside_threads
from tommybar.design.model import SizedDesign
from tommybar.facts.threads import thread
from tommybar.shapes.features import TurnedShape


@dataclass(frozen=True)
class Engaged:
    """One screwed joint [mm]."""

    screw: str  # what is screwed: a bought screw or a part
    into: str  # part.feature
    engaged: float
    wanted: float
    there: float  # length of thread in the part
    how: str
    source: str = PRACTICE


def engaged_threads(design: SizedDesign) -> tuple[Engaged, ...]:
    """Bought screws between plates, and turned parts screwed into one another."""
    return tuple(dict.fromkeys([*_bought(design), *_turned(design)]))


def _bought(design: SizedDesign) -> Iterator[Engaged]:
    for relation in once_each(design):
        into = plate_hole(design, relation.into)
        through = [plate_hole(design, name) for name in relation.through]
        screw = bought_for(design, relation)
        if into is None or screw is None or any(one is None for one in through):
            continue
        part, tapped = into
        gripped = sum(metal_behind(*one) - one[1].sink_depth for one in through if one is not None)
        yield Engaged(
            f"{screw.size} x {screw.length:g}",
            relation.into,
            screw.length - gripped,
            engagement_wanted(part.material, thread(relation.screw).major),
            tapped.depth if tapped.depth is not None else metal_behind(part, tapped),
            f"{screw.length:g} mm of screw less {gripped:g} mm gripped",
        )


def _turned(design: SizedDesign) -> Iterator[Engaged]:
    turned = [part for part in design.parts if isinstance(part.shape, TurnedShape)]
    for part in turned:
        assert isinstance(part.shape, TurnedShape)
        for screw in outside_threads(part.shape):
            usable = usable_thread(part.shape, screw)
            for mate, feature, deep in tapped_in(turned, screw.thread, part):
                yield Engaged(
                    f"{part.name} {screw.thread}",
                    f"{mate.name}.{feature}",
                    min(usable, deep),
                    engagement_wanted(mate.material, thread(screw.thread).major),
                    deep,
                    f"the shorter of {usable:.3g} mm of screw without its grooves and {deep:.3g} mm tapped",
                )
