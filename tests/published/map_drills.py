"""From the words of a row of drills.csv to a call of public functions."""

from __future__ import annotations

import re
from itertools import pairwise

from tommybar.facts.drills import centre_drill, drill_size, drills_of_series, reamer_limits
from tommybar.facts.fits.iso286 import limits_of_size
from tommybar.facts.stock import bars_sold, bright_bar_zones

from .frame import Band, Computed, Row, Unmapped, figure_of

LEFT_OUT: dict[str, str] = {}

INCH = 25.4


def expected_call(row: Row) -> Computed:
    """What the program computes for this row."""
    group, item = row.group, row.item
    if group in ("number drills", "letter drills", "fractional drills"):
        return drill_size(item).diameter / (INCH if row.unit == "in" else 1.0)
    if group == "metric series":
        return _metric_series(item)
    if group.startswith(("centre drills", "combined drills")):
        return _centre_drill(row)
    if group.startswith("reamers"):
        return _reamer(item)
    if group.startswith("round bar"):
        return _bar(row)
    raise Unmapped(group)


def band(row: Row) -> Band | None:
    """A source that contradicts itself is met to within its own contradiction.

    The article on the metric series gives four rules and a count; the rules
    generate 227 sizes, the count says 230, and the row's note says so. The
    rules are kept, and the count is taken to within that difference.
    """
    if row.item.startswith("number of sizes") and row.follows == "no":
        return Band(absolute=abs(figure_of(row.value)[0] - figure_of(row.computed)[0]))
    return None


def _metric_series(item: str) -> Computed:
    drills = [drill.diameter for drill in drills_of_series("metric")]
    if found := re.match(r"([\d.]+) to ([\d.]+) mm step", item):
        inside = [one for one in drills if float(found[1]) <= one <= float(found[2])]
        steps = {round(b - a, 6) for a, b in pairwise(inside)}
        return steps.pop() if len(steps) == 1 else f"steps {sorted(steps)}"
    if item.startswith("number of sizes"):
        return float(len(drills))
    if found := re.match(r"([\d.]+) mm membership", item):
        return "in the list" if float(found[1]) in drills else "not in the list"
    raise Unmapped(item)


def _centre_drill(row: Row) -> Computed:
    found = re.match(r"(?:([ABR]) )?(\S+) (shank|cone mouth diameter|pilot|drill|body)", row.item)
    if not found:
        raise Unmapped(row.item)
    one = centre_drill(f"{found[1]} {found[2]}" if found[1] else found[2])
    if found[3] in ("pilot", "drill"):
        return one.pilot_name if "/" in row.value else one.pilot / (INCH if row.unit == "in" else 1.0)
    if found[3] in ("shank", "body"):
        return one.shank_name if "/" in row.value else one.shank / (INCH if row.unit == "in" else 1.0)
    if one.mouth is None:
        raise Unmapped(row.item)
    return one.mouth


def _reamer(item: str) -> Computed:
    found = re.match(r"([\d.]+) ([A-Z]+\d+) reamer", item)
    if not found:
        raise Unmapped(item)
    hole = limits_of_size(float(found[1]), found[2])
    return reamer_limits(float(found[1]), hole.lower_um, hole.upper_um)


def _bar(row: Row) -> Computed:
    if "tolerance" in row.item:
        return " to ".join(bright_bar_zones())
    found = re.match(r"(metric|inch) (.+)", row.item)
    if not found:
        raise Unmapped(row.item)
    for bar in bars_sold(found[1]):
        if bar.name == found[2]:
            return bar.name if "/" in row.value else bar.diameter / (INCH if row.unit == "in" else 1.0)
    return f"no {row.item} bar is sold"
