"""Squares, hexagons and sizes across flats on a round: equal flats, turned on by a dividing device."""

from __future__ import annotations

import math

from tommybar.making.lengths import Mm
from tommybar.making.mill_steps import MillBench
from tommybar.making.milling.clocking import divides, sideways
from tommybar.making.milling.flats import depth_of_flat, flat
from tommybar.making.milling.rules import mill_rule
from tommybar.shapes.features import Dim


def across_corners(across: float, count: int) -> float:
    """Over the corners of a prism with an even number of flats [mm].

    AF / cos(180 / n)

    Examples
    --------
    >>> round(across_corners(10.0, 6), 3)
    11.547
    >>> round(across_corners(10.0, 4), 3)
    14.142
    """
    return across / math.cos(math.pi / count)


def prism_lines(bench: MillBench, feature: str, count: int, dia: float) -> tuple[str, ...] | None:
    """How the flats are divided; None and a stop when the shop has no way to."""
    turn = 360.0 / count
    error = mill_rule("dividing_error")
    off = f"{error:g} deg moves the edge of a flat {Mm(sideways(dia, error)):.2f}"
    if divides(bench.shop):
        places = ", ".join(f"{turn * n:g}" for n in range(count))
        return (f"Dividing device at {places} deg, always from the same side, locked before the cut; {off}.",)
    if count in (2, 4):
        how = (
            "the finished flat lies down on a parallel"
            if count == 2
            else "the finished flat stands by a square"
        )
        return (f"No dividing device: after each flat turn the part until {how}; {off}.",)
    bench.stop(
        437,
        f"{feature}: {count} flats want turning by {turn:g} deg, and the shop file has no dividing device.",
        feature,
        "Add dividing or a rotary table, hold it in a hexagon block, or start from hexagon bar.",
        figure=f"{turn:g} deg",
        bound="no dividing, no rotary table",
    )
    return None


def prism(
    bench: MillBench,
    feature: str,
    count: int,
    across: Dim,
    dia: float,
    start: float,
    end: float,
    *,
    closed: tuple[bool, bool],
) -> tuple[str, ...]:
    """Mill ``count`` equal flats, each AF/2 from the axis; the lines for dividing come back [mm]."""
    lines = prism_lines(bench, feature, count, dia)
    if lines is None:
        return ()
    level = across.target / 2
    depth = depth_of_flat(dia, level)
    for n in range(1, count + 1):
        pair = count % 2 == 0 and n > count // 2
        flat(
            bench,
            feature,
            dia,
            level,
            start,
            end,
            closed=closed,
            measure=across if pair else None,
            words=f"Flat {n} of {count}, at {360.0 / count * (n - 1):g} deg: {Mm(depth):.2f} deep",
        )
    corners = across_corners(across.target, count)
    if count > 2 and corners > dia + 1e-9:
        bench.note(
            441,
            f"{feature}: over its corners it would be {corners:.2f} mm; the round is {dia:g} mm, so the corners stay round.",
            feature,
            "Turn it larger first when sharp corners are wanted.",
            f"{corners:.2f} mm",
        )
    return (*lines, f"Across flats {Mm(across.target):.2f}: each flat {Mm(level):.2f} from the axis.")
