"""From the words of a row of iso286.csv to a call of public functions."""

from __future__ import annotations

import re

from tommybar.facts.fits.iso286 import fundamental_deviation, limits_of_size, tolerance_grade
from tommybar.sizes.fits import fit_of

from .frame import Computed, Row, Unmapped

LEFT_OUT: dict[str, str] = {}

_STEP = re.compile(r"([\d.]+)\s*-\s*([\d.]+)\s*mm")
_EDGE = re.compile(r"(es|ei|ES|EI)\s+([A-Za-z]+)(?:\s+at\s+IT(\d+))?")
_NAMED = re.compile(r"([\d.]+)\s*([A-Za-z]+\d+)")
_FIT = re.compile(r"([\d.]+)\s*([A-Za-z]+\d+/[A-Za-z]+\d+)")


def expected_call(row: Row) -> Computed:
    """What the program computes for this row."""
    if grade := re.fullmatch(r"IT\s*(\d+)", row.item):
        values = {tolerance_grade(size, int(grade[1])) for size in _sizes(row.condition)}
        return _the_same(values)
    if edge := _EDGE.fullmatch(row.item):
        zone = f"{edge[2]}{edge[3] or 6}"
        return _the_same({fundamental_deviation(size, zone) for size in _sizes(row.condition)})
    if fit := _FIT.fullmatch(row.item):
        found = fit_of(float(fit[1]), fit[2])
        if row.condition in ("clearance", "interference", "transition") and found.kind != row.condition:
            return found.kind
        return (found.min_clearance_um, found.max_clearance_um)
    if named := _NAMED.fullmatch(row.item):
        limits = limits_of_size(float(named[1]), named[2])
        return (limits.lower_um, limits.upper_um)
    raise Unmapped(row.item)


def _sizes(condition: str) -> tuple[float, ...]:
    """Sizes just inside both ends of a step, so that its bounds are tried too."""
    if condition == "all steps":
        return (1.0, 3.0, 10.0, 18.0, 30.0, 50.0, 80.0, 120.0)
    step = _STEP.fullmatch(condition)
    if not step:
        raise Unmapped(condition)
    return (float(step[1]) + 0.001, float(step[2]))


def _the_same(values: set[float] | set[int]) -> Computed:
    if len(values) != 1:
        return ";".join(str(value) for value in sorted(values))
    return float(values.pop())
