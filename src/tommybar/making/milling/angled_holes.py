"""A hole at a slant in a block: the stack under the sine bar, the flat at the entry, and whether it stays inside."""

from __future__ import annotations

import math
from dataclasses import dataclass

from tommybar.facts.tapers import sine_bar_stack
from tommybar.making.cards import Step
from tommybar.making.lengths import Mm
from tommybar.making.mill_steps import MillBench, Plunge
from tommybar.making.milling.cutters import end_mill_feed
from tommybar.making.milling.rules import mill_rule
from tommybar.making.milling.sized_holes import through_hole
from tommybar.shapes.features import Dim

BAR = 100.0  # sine bar reckoned with when none is owned [mm]


@dataclass(frozen=True)
class AngledHole:
    """The geometry of a through hole at an angle to the base [mm]."""

    angle: float  # of the axis to the base [deg]
    length: float  # along the axis, from face to face
    drift: float  # how far the exit lies beside the entry
    ellipse: float  # long axis of the mouth
    needed: float  # along the tilt, with room at both ends


def angled_hole(high: float, dia: float, angle: float) -> AngledHole:
    """Length, drift and mouth of a hole through a block, its axis at ``angle`` to the base [mm, deg].

    length = h / sin, drift = h / tan, mouth = d / sin; along the tilt it takes
    the drift, the mouth, and room for metal beside it at both ends.

    Examples
    --------
    >>> hole = angled_hole(20.0, 5.0, 52.0)
    >>> round(hole.length, 2), round(hole.drift, 2), round(hole.ellipse, 3), round(hole.needed, 2)
    (25.38, 15.63, 6.345, 27.97)
    """
    sine, tangent = math.sin(math.radians(angle)), math.tan(math.radians(angle))
    drift, ellipse = high / tangent, dia / sine
    return AngledHole(angle, high / sine, drift, ellipse, drift + ellipse + 2 * mill_rule("edge_room"))


def lowest_angle(high: float, dia: float, along: float) -> float:
    """The lowest angle to the base at which the hole stays inside a block so long along the tilt [deg].

    It solves h / tan + d / sin + room = L: with u = L - room, u sin - h cos = d.

    Examples
    --------
    >>> round(lowest_angle(20.0, 5.0, 60.0), 1)
    25.3
    >>> round(lowest_angle(20.0, 5.0, 20.0), 1)
    66.8
    """
    room = along - 2 * mill_rule("edge_room")
    whole = math.hypot(room, high)
    if dia >= whole or room <= 0:
        return 90.0
    return math.degrees(math.asin(dia / whole) + math.atan2(high, room))


def per_tenth(bar: float, angle: float) -> float:
    """How much the stack changes for a tenth of a degree [mm].

    Examples
    --------
    >>> round(per_tenth(100.0, 52.0), 3)
    0.107
    """
    return bar * math.cos(math.radians(angle)) * math.radians(0.1)


def stays_inside(
    bench: MillBench, feature: str, high: float, dia: float, angle: float, along: float, across: float
) -> bool:
    """Whether the hole stays in the block along the tilt; else a stop that names the other side or the lowest angle."""
    hole = angled_hole(high, dia, angle)
    if hole.needed <= along + 1e-6:
        return True
    other = hole.needed <= across + 1e-6
    bench.stop(
        445,
        f"{feature} at {angle:g} deg takes {hole.needed:.2f} mm along the tilt (drift {hole.drift:.2f}, mouth "
        f"{hole.ellipse:.2f}, {mill_rule('edge_room'):g} mm of metal at both ends); the block is {along:g} mm that way.",
        feature,
        f"Tilt it along the {across:g} mm side."
        if other
        else f"No less than {lowest_angle(high, dia, max(along, across)):.1f} deg goes into this block; make it longer or lower.",
        figure=f"{hole.needed:.2f} mm",
        bound=f"{along:g} mm",
    )
    return False


def drill_angled(
    bench: MillBench,
    feature: str,
    dim: Dim,
    high: float,
    angle: float,
    along: float,
    across: float,
    *,
    flat_drawn: bool = True,
) -> tuple[str, ...]:
    """Entry flat, spot, drill, with the block tilted until the hole stands upright; the lines for the set-up [mm, deg]."""
    if not stays_inside(bench, feature, high, dim.value, angle, along, across):
        return ()
    hole = angled_hole(high, dim.value, angle)
    tilt = 90.0 - angle
    bar = bench.mill.sine_bar or BAR
    lines = _tilted(bench, feature, tilt, angle, bar, along, hole.length)
    _entry_flat(bench, feature, dim.value, angle, flat_drawn)
    bench.spot(1, feature)
    through_hole(
        bench,
        dim,
        hole.length,
        feature,
        1,
        feature,
        also=(
            f"Along the hole {Mm(hole.length):.1f}; it comes out {Mm(hole.drift):.2f} beside its entry, so it is aimed to "
            f"leave {Mm(mill_rule('edge_room')):g} of metal at both ends; the mouth is {Mm(hole.ellipse):.2f} long.",
            "Feed gently at the exit: the point breaks out on one side first.",
        ),
    )
    return lines


def _tilted(
    bench: MillBench, feature: str, tilt: float, angle: float, bar: float, along: float, long: float
) -> tuple[str, ...]:
    """The block stands so that the hole is upright: base tilted by 90 - angle, checked from the other side."""
    stacks = []
    if angle <= 60.0:
        stacks.append(
            f"the block's end, square to its base, on the sine bar at {angle:g} deg: stack {Mm(sine_bar_stack(angle, bar)):.2f}"
        )
    if tilt <= 60.0:
        stacks.append(f"its base on the bar at {tilt:g} deg: stack {Mm(sine_bar_stack(tilt, bar)):.2f}")
    if bench.mill.sine_bar <= 0:
        bench.caution(
            446,
            f"{feature} stands at {angle:g} deg to the base, and the shop file has no sine bar.",
            feature,
            f"Set it by a protractor, or borrow a sine bar of {bar:g} mm and write sine_bar under mill.",
            f"{angle:g} deg",
            "sine bar: none",
        )
    return (
        f"The hole stands upright when the base leans {tilt:g} deg from the table ({angle:g} deg to the spindle), along the "
        f"block's {Mm(along):g} side. On a sine bar of {Mm(bar):g}: {', or '.join(stacks)}.",
        f"0.1 deg is {Mm(per_tenth(bar, angle if angle <= 60.0 else tilt)):.3f} of stack and moves the exit "
        f"{Mm(long * math.radians(0.1)):.3f}. Check with an indicator along the sloping face, or a protractor.",
    )


def _entry_flat(bench: MillBench, feature: str, dia: float, angle: float, drawn: bool) -> None:
    """A small level place for the drill to start on: an end mill plunged on the slope."""
    cutters = [c for c in bench.shop.cutters if c >= dia - 1e-9]
    slope_drop = dia / 2 * math.tan(math.radians(90.0 - angle))
    if not cutters:
        bench.stop(
            418,
            f"{feature}: no end mill of {dia:g} mm or more for the flat at the entry; a drill slides down a slope of "
            f"{90 - angle:g} deg.",
            feature,
            f"Buy or borrow an end mill of at least {dia:g} mm.",
            figure=f"{dia:g} mm",
            bound="end mills: " + (", ".join(f"{c:g}" for c in bench.shop.cutters) or "none"),
        )
        return
    cutter = min(cutters)
    deep = cutter * math.tan(math.radians(90.0 - angle))
    speed = bench.speed("milling", cutter, feature)
    bench.plunges.append(Plunge("end mill", cutter, deep, feature))
    bench.add(
        Step(
            0,
            f"Cut the entry flat with an end mill {Mm(cutter):tool}",
            feature,
            f"end mill {Mm(cutter):tool}",
            "end mill",
            speed.rpm,
            speed.reached,
            end_mill_feed(bench, "milling", "finishing"),
            f"{deep:.2f}",
            "deep mm",
            (
                f"Over the place of the hole, straight down from the first touch until the flat is as wide as the drill "
                f"{Mm(dia):tool}: a whole flat of {Mm(cutter):g} is {Mm(deep):.2f} deep at its high side"
                + ("." if drawn else f"; {Mm(slope_drop):.2f} at the middle of the hole will do."),
            ),
            minutes=4.0,
            cautions=("Feed slowly: the cutter bites on one side only.",),
            why="Flat first: a drill slides off a slope.",
            tool_size=cutter,
        )
    )
