"""A vee groove: the work lies at 45 degrees and an end mill's corner cuts both flanks."""

from __future__ import annotations

import math

from tommybar.making.cards import Step
from tommybar.making.lengths import Mm
from tommybar.making.mill_steps import MillBench
from tommybar.making.milling.cutters import (
    cuts_words,
    depth_passes,
    end_mill_feed,
    largest_cutter,
    mill_dial,
    no_cutter,
)


def vee_depth(width: float, included: float = 90.0) -> float:
    """Depth of a vee from its width at the face [mm, deg].

    Examples
    --------
    >>> round(vee_depth(10.0), 6)
    5.0
    >>> round(vee_depth(10.0, 60.0), 4)
    8.6603
    """
    return width / 2 / math.tan(math.radians(included) / 2)


def flank(width: float, included: float = 90.0) -> float:
    """Length of one flank [mm].

    Examples
    --------
    >>> round(flank(10.0), 4)
    7.0711
    """
    return width / 2 / math.sin(math.radians(included) / 2)


def over_round(dia: float, depth: float, included: float = 90.0) -> float:
    """How far the top of a round laid in a vee stands above the face [mm, deg].

    r / sin(a/2) + r - depth

    Examples
    --------
    >>> round(over_round(10.0, 5.0), 3)
    7.071
    """
    return dia / 2 / math.sin(math.radians(included) / 2) + dia / 2 - depth


def vee(bench: MillBench, feature: str, width: float, included: float, at: float) -> None:
    """Cut a 90-degree vee ``at`` from the edge of its face with the work tilted; other angles are told."""
    deep = vee_depth(width, included)
    if abs(included - 90.0) > 0.01:
        bench.stop(
            444,
            f"{feature} is a vee of {included:g} deg, {deep:.2f} mm deep; an end mill's corner makes 90 deg in one setting.",
            feature,
            "Draw it 90 deg, cut it with an angle cutter of that angle, or mill each flank in its own setting.",
            figure=f"{included:g} deg",
            bound="90 deg",
        )
        return
    side = flank(width)
    cutter = largest_cutter(bench, 1e9, side)
    if cutter is None:
        no_cutter(bench, feature, "a vee's flank", max(bench.shop.cutters, default=0.0), side)
        return
    passes = depth_passes(bench, deep, cutter)
    speed = bench.speed("milling", cutter, feature)
    bench.add(
        Step(
            0,
            f"Cut the vee {Mm(width):g} wide, {Mm(deep):.2f} deep at its root",
            feature,
            f"end mill {Mm(cutter):tool}, sharp corner",
            "end mill",
            speed.rpm,
            speed.reached,
            end_mill_feed(bench, "milling", "roughing"),
            f"{deep:.2f}",
            "deep mm",
            (
                f"The work lies at 45 deg in the vice, set by a square's 45 deg or a protractor; "
                f"the groove runs along the table. Scribe its middle line {Mm(at):.2f} from the edge first.",
                f"Bring the cutter's corner onto the line, touch, set both dials 0; then move down and across alike: "
                f"{Mm(side):.2f} each = {mill_dial(bench.mill, side)}, in {cuts_words(passes)}.",
                _check(bench, width, deep),
            ),
            passes,
            minutes=8.0 + len(passes),
            why="Tilted 45 deg, side and end of an end mill make a right angle; the root keeps the cutter's corner.",
            tool_size=cutter,
        )
    )


def _check(bench: MillBench, width: float, deep: float) -> str:
    """A round that is owned, laid in the vee: what the micrometer or height gauge then reads."""
    rounds = [d for d in bench.shop.drills if width / 2 <= d <= width]
    if not rounds:
        return f"Check: the groove is {Mm(width):.2f} wide at the face, halved by the line."
    dia = max(rounds)
    return (
        f"Check: the shank of a drill {Mm(dia):tool} laid in it stands {Mm(over_round(dia, deep)):.2f} above the face "
        "(measure the shank first)."
    )
