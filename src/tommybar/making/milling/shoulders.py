"""A step along one side: the cutter's side makes the wall, its end the floor."""

from __future__ import annotations

import math

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
from tommybar.making.visiting import ACROSS, ALONG, dialled
from tommybar.shapes.features import Dim


def axis_from_side(wide: float, cutter: float) -> float:
    """Where the cutter's axis runs for a step so wide: half the cutter outside the wall, from the side [mm].

    Below 0 it runs outside the work.

    Examples
    --------
    >>> axis_from_side(6.0, 10.0)
    1.0
    """
    return wide - cutter / 2


def shoulder(
    bench: MillBench, feature: str, side: str, wide: Dim, depth: Dim, *, axis: str = "Y", extent: float = 0.0
) -> None:
    """Mill a step; ``extent`` is the face's size along ``axis`` when the side is the far one [mm]."""
    cutter = largest_cutter(bench, 1e9, depth.value)
    if cutter is None:
        no_cutter(bench, feature, "a step", max(bench.shop.cutters, default=0.0), depth.value)
        return
    far = side in ("back", "right")
    lane = mill_rule("overlap") * cutter
    rows = max(1, math.ceil(wide.target / lane))
    place = axis_from_side(wide.target, cutter)
    at = extent - place if far else place
    rough = at + mill_rule("side_finish") * (1 if far else -1)
    dial = dialled(bench.mill, at, ACROSS if axis == "Y" else ALONG)
    passes = depth_passes(bench, depth.target, cutter)
    speed = bench.speed("milling", cutter, feature)
    bench.plunges.append(Plunge("end mill", cutter, depth.target, feature))
    bench.add(
        Step(
            0,
            f"Mill the step {Mm(wide.value):g} wide, {Mm(depth.value):.2f} deep along the {side}",
            feature,
            f"end mill {Mm(cutter):tool}",
            "end mill",
            speed.rpm,
            speed.reached,
            end_mill_feed(bench, "milling", "roughing"),
            f"{depth.target:.2f}",
            "deep mm",
            (
                f"Touch the face, set the dial 0. Rough with the cutter's axis at {axis} {Mm(rough):.2f}, {rows} lane"
                f"{'s' if rows != 1 else ''} outwards, down {Mm(depth.target):.2f} in {cuts_words(passes)}.",
                f"Last: axis at {axis} {Mm(at):.3f} ({dial}), half the cutter ({Mm(cutter / 2):g}) off the wall, full depth; "
                "then measure wall and floor.",
            ),
            passes,
            minutes=3.0 + len(passes) * rows * 0.8,
            measure=(
                *bench.measured(wide, feature, "depth"),
                *bench.measured(depth, f"{feature}.depth", "depth"),
            ),
            tool_size=cutter,
        )
    )
