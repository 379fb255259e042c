"""Pockets: the cutter's radius is no larger than the corner's, walls by coordinates."""

from __future__ import annotations

import math

from tommybar.facts.drills import point_length
from tommybar.making.cards import Step
from tommybar.making.lengths import Mm
from tommybar.making.mill_steps import MillBench, Plunge
from tommybar.making.milling.cutters import (
    cuts_words,
    depth_passes,
    end_mill_feed,
    largest_cutter,
    no_cutter,
)
from tommybar.making.milling.rules import mill_rule
from tommybar.making.visiting import Spot
from tommybar.shapes.features import Dim


def wall_path(length: float, width: float, cutter: float) -> tuple[float, float]:
    """How far from the pocket's middle the cutter's axis runs along its walls [mm].

    Examples
    --------
    >>> wall_path(40.0, 24.0, 8.0)
    (16.0, 8.0)
    """
    return (length - cutter) / 2, (width - cutter) / 2


def pocket(
    bench: MillBench,
    feature: str,
    x: float,
    y: float,
    length: Dim,
    width: Dim,
    corner: float,
    depth: float,
    *,
    through: bool = False,
) -> None:
    """Clear a rectangular pocket about ``x``, ``y`` of the card's zero [mm]."""
    narrow = min(length.target, width.target)
    cutter = largest_cutter(bench, min(2 * corner, narrow), depth)
    if cutter is None:
        no_cutter(bench, feature, f"corners of {corner:g} mm", 2 * corner, depth)
        return
    if cutter < 2 * corner - 0.02:
        bench.note(
            442,
            f"{feature}: corners of {corner:g} mm are drawn, the cutter of {cutter:g} mm leaves {cutter / 2:g} mm.",
            feature,
            f"Follow the arc by hand on a rotary table, or take a cutter of {2 * corner:g} mm.",
            f"{cutter / 2:g} mm",
        )
    _start(bench, feature, cutter, depth, through)
    far_x, far_y = wall_path(length.target, width.target, cutter)
    for across, up in ((-1, -1), (1, -1), (1, 1), (-1, 1)):
        corner_at = f"{feature}: {'right' if across > 0 else 'left'} {'back' if up > 0 else 'front'} corner, last round"
        bench.spots.append(Spot(x + across * far_x, y + up * far_y, corner_at))
    left = mill_rule("side_finish")
    lane = mill_rule("overlap") * cutter
    rows = max(1, math.ceil(2 * far_y / lane) + 1) if far_y > 1e-6 else 1
    goes = depth + (0.5 if through else 0.0)
    passes = depth_passes(bench, goes, cutter)
    speed = bench.speed("slotting", cutter, feature)
    bench.plunges.append(Plunge("end mill", cutter, goes, feature))
    measure = (
        *(bench.measured(length, feature, "inside") if length.toleranced else ()),
        *(bench.measured(width, feature, "inside") if width.toleranced else ()),
    )
    bench.add(
        Step(
            0,
            f"Clear the pocket {Mm(length.value):g} x {Mm(width.value):g}"
            f"{', through' if through else f', {Mm(depth):.2f} deep'}",
            feature,
            f"slot drill {Mm(cutter):tool}",
            "end mill",
            speed.rpm,
            speed.reached,
            end_mill_feed(bench, "slotting", "roughing"),
            f"{depth:.2f}",
            "deep mm",
            (
                f"Middle at X {Mm(x):.2f} Y {Mm(y):.2f}. Rough {Mm(left):.2f} inside the walls, "
                f"{rows} lane{'s' if rows != 1 else ''}, down {Mm(goes):.2f} in {cuts_words(passes)}.",
                f"Walls: the cutter's axis at X {Mm(x - far_x):.3f} and {Mm(x + far_x):.3f}, Y {Mm(y - far_y):.3f} and "
                f"{Mm(y + far_y):.3f} (half the cutter, {Mm(cutter / 2):g}, inside them); "
                f"round once, the cutter against the feed.",
                "Measure before the last round: the cutter may cut a little more than itself.",
            ),
            passes,
            minutes=4.0 + len(passes) * rows * 0.8,
            cautions=("Chips jam in a pocket: brush them out with the spindle stopped.",),
            measure=measure,
            tool_size=cutter,
        )
    )


def _start(bench: MillBench, feature: str, cutter: float, depth: float, through: bool) -> None:
    fits = [d for d in bench.shop.drills if d <= cutter - 0.2 and d <= bench.shop.lathe.drill_chuck + 1e-6]
    deep = depth if through else depth - point_length(max(fits)) if fits else 0.0
    if fits and deep > 0.3:
        bench.drill(max(fits), deep, f"start hole in the middle of {feature}", 1, feature, through=through)
