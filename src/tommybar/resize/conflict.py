"""When nothing fits: the fewest askings that cannot all hold, in words that a person can act on."""

from __future__ import annotations

from tommybar.resize.asked import Asked, Key
from tommybar.resize.scales import Heeded, Scales


def smallest_conflict(scales: Scales, wanted: float) -> tuple[Asked, ...]:
    """A set of askings that no scale and no choice meets, from which none can be spared.

    Scale by scale: where the set so far does not yet forbid a scale, what
    forbids that scale is added, trimmed to what is needed there. At the end
    every member that can be spared is taken out again. What cannot be drawn
    always counts, and is named where nothing else forbids a scale.
    """
    words: dict[Key, Asked] = {}
    core: frozenset[Key] = frozenset()
    grid = tuple(scales.grid(wanted))
    for scale in grid:
        if scales.at(scale, Heeded(only=core)).good:
            here = _seen_at(scales, scale)
            words = {**here, **words}
            core |= _needed_at(scales, scale, frozenset(here), core)
    for key in sorted(core, reverse=True):
        if not any(scales.at(scale, Heeded(only=core - {key})).good for scale in grid):
            core -= {key}
    named = [one for key, one in words.items() if key in core]
    undrawn: dict[Key, Asked] = {}
    for scale in grid:
        broken = scales.at(scale, Heeded(only=core)).broken
        if broken and all(one.kind == "drawable" for one in broken):
            undrawn = {**{one.key: one for one in broken}, **undrawn}
    return (*named, *undrawn.values())


def _seen_at(scales: Scales, scale: float) -> dict[Key, Asked]:
    """Everything that is broken at a scale, also what only shows when the first things are given up."""
    return {key: one for key, one in scales.best_at(scale).ever_broken.items() if key[0] != "drawable"}


def _needed_at(scales: Scales, scale: float, broken: frozenset[Key], core: frozenset[Key]) -> frozenset[Key]:
    """The part of what was broken at one scale that, with the core, is enough to forbid it."""
    needed = broken
    for key in sorted(broken):
        if not scales.at(scale, Heeded(only=core | (needed - {key}))).good:
            needed -= {key}
    return needed - core
