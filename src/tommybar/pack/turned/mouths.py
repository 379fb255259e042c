"""Where a cross hole comes out of a round surface: the edge that is seen behind the section, as a curve."""

from __future__ import annotations

import math

from tommybar.facts.threads import thread
from tommybar.pack.profile import metal_at, nominal
from tommybar.pack.sheet import Line, Mark
from tommybar.pack.turned.metal import chords, radius_of
from tommybar.pack.turned.planes import sides
from tommybar.shapes.features import TurnedShape
from tommybar.shapes.profile import profile

STEPS = 16  # chords of a curve
LEVEL = 1e-3  # a surface whose radius changes by more along the hole is no cylinder there [mm]


def mouth_marks(
    shape: TurnedShape, scale: float, side: int, only: frozenset[str] | None = None
) -> list[Mark]:
    """Curves of the cross holes that are cut in one half, or of ``only`` some: at the outside, and in the bore.

    A hole of radius a across a cylinder of radius R meets it, at t along the
    axis from its middle, at the height sqrt(R^2 - (a^2 - t^2)).
    """
    marks: list[Mark] = []
    plain = nominal(shape)
    rings = chords((profile(plain),))
    for hole in plain.cross_holes:
        if sides(shape).get(hole.name, "off") not in ("both", "above" if side > 0 else "below"):
            continue
        if only is not None and hole.name not in only:
            continue
        drilled = (thread(hole.thread).tapping_drill if hole.thread else hole.dia.value) / 2
        middle = metal_at(rings, hole.z)
        for n, wide in ((-1, max(drilled, hole.sink_dia / 2)), (-2, drilled)):
            radius = middle[n] if len(middle) > 1 else 0.0
            if n == -2 and hole.depth is not None and hole.depth <= middle[-1] - radius:
                continue
            ends = [metal_at(rings, hole.z + way * wide * 0.999) for way in (-1, 1)]
            level = all(len(one) == len(middle) and abs(one[n] - radius) < LEVEL for one in ends)
            if not level or radius <= wide or radius > radius_of(shape) + LEVEL:
                continue
            at = [-wide + 2 * wide * k / STEPS for k in range(STEPS + 1)]
            high = [math.sqrt(radius**2 - max(wide**2 - t**2, 0.0)) for t in at]
            points = [((hole.z + t) * scale, -side * y * scale) for t, y in zip(at, high, strict=True)]
            marks.append(Line(tuple(points), "thick"))
    return marks
