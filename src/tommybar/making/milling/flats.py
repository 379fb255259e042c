"""A flat on a round: touched off on its top, cut down by the dial, measured across to the other side."""

from __future__ import annotations

import math

from tommybar.making.cards import Step
from tommybar.making.lengths import Mm
from tommybar.making.mill_steps import MillBench, Plunge
from tommybar.making.milling.cutters import (
    cuts_words,
    depth_passes,
    end_mill_feed,
    mill_dial,
    no_cutter,
    reaches,
)
from tommybar.making.milling.rules import mill_rule
from tommybar.shapes.features import Dim


def depth_of_flat(dia: float, level: float) -> float:
    """How deep a flat lies below the top of a round, ``level`` from its axis [mm].

    Examples
    --------
    >>> depth_of_flat(10.0, 4.0)
    1.0
    """
    return dia / 2 - level


def width_of_flat(dia: float, level: float) -> float:
    """How wide a flat comes out [mm]: the chord of the round.

    2 sqrt(r^2 - level^2)

    Examples
    --------
    >>> width_of_flat(10.0, 4.0)
    6.0
    """
    return 2 * math.sqrt(max((dia / 2) ** 2 - level**2, 0.0))


def lanes(width: float, cutter: float) -> tuple[float, ...]:
    """Where the cutter's axis runs beside the middle to clean a width, edges and all [mm].

    Lanes lie at most so far apart as the rule allows, the outermost ones carry
    the cutter over the edges.
    """
    over = width + 1.0
    if cutter >= over:
        return (0.0,)
    reach = (over - cutter) / 2
    number = math.ceil(2 * reach / (mill_rule("overlap") * cutter)) + 1
    return tuple(round(-reach + 2 * reach * n / (number - 1), 3) for n in range(number))


def flat(
    bench: MillBench,
    feature: str,
    dia: float,
    level: float,
    start: float,
    end: float,
    *,
    closed: tuple[bool, bool],
    measure: Dim | None = None,
    words: str = "",
) -> None:
    """Mill one flat ``level`` from the axis, along X from ``start`` to ``end`` (from face A) [mm].

    ``closed``: whether metal stands at each end, so that the cutter's side
    stops there. ``measure`` is the size across that can be measured once it is cut.
    """
    depth = depth_of_flat(dia, level)
    if not 0 < depth < dia / 2 + 1e-9:
        bench.stop(
            440,
            f"{feature}: a flat {level:g} mm from the axis of a round of {dia:g} mm is {depth:.2f} mm deep.",
            feature,
            "Draw it between the axis and the outside.",
            figure=f"{level:g} mm from the axis",
            bound=f"0 to {dia / 2:g} mm",
        )
        return
    wide = width_of_flat(dia, level)
    long = end - start
    most = long if all(closed) else 1e9
    cutters = [c for c in bench.shop.cutters if reaches(c, depth) and c <= most + 1e-9]
    if not cutters:
        no_cutter(bench, feature, "a flat", min(most, max(bench.shop.cutters, default=0.0)), depth)
        return
    over = [c for c in cutters if c >= wide + 1.0]
    cutter = min(over) if over else max(cutters)
    rows = lanes(wide, cutter)
    speed = bench.speed("milling", cutter, feature)
    passes = depth_passes(bench, depth, cutter)
    run_out = cutter / 2 + mill_rule("clear_off")
    from_x = start + cutter / 2 if closed[0] else start - run_out
    to_x = end - cutter / 2 if closed[1] else end + run_out
    stop_at = f"The cutter's axis runs from X {Mm(from_x):.2f} to X {Mm(to_x):.2f}" + (
        f", half the cutter ({Mm(cutter / 2):g}) short of the standing end{'s' if all(closed) else ''}"
        if any(closed)
        else ""
    )
    bench.plunges.append(Plunge("end mill", cutter, depth, feature))
    across = dia / 2 + level
    bench.add(
        Step(
            0,
            words or f"Mill the flat {Mm(depth):.2f} deep",
            feature,
            f"end mill {Mm(cutter):tool}",
            "end mill",
            speed.rpm,
            speed.reached,
            end_mill_feed(bench, "milling", "roughing"),
            f"{depth:.2f}",
            "deep mm",
            (
                f"Touch the top of the round {Mm(dia):.2f} with the turning cutter, set the dial 0; down {Mm(depth):.2f} = "
                f"{mill_dial(bench.mill, depth)}, {cuts_words(passes)}.",
                f"The flat comes out {Mm(wide):.2f} wide"
                + (
                    f"; the cutter covers it at Y 0. {stop_at}."
                    if len(rows) == 1
                    else f"; lanes at Y {', '.join(f'{Mm(r):+.2f}' for r in rows)}. {stop_at}."
                ),
                f"Before the last cut measure from the flat to the far side of the round: {Mm(across):.3f} when it is done.",
            ),
            passes,
            minutes=3.0 + len(passes) * len(rows) * 0.6,
            cautions=("Cut against the feed; the round is held against turning and against lifting.",),
            measure=bench.measured(measure, feature, "outside") if measure is not None else (),
            why="The depth counts from the top of the round, so the true diameter goes in first.",
            tool_size=cutter,
        )
    )
