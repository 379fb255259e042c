"""From the words of a row of ansi_b4_1.csv to a call of public functions."""

from __future__ import annotations

import re

from tommybar.facts.fits.ansi_b4_1 import InchFit, inch_fit

from .frame import Computed, Row, Unmapped

LEFT_OUT: dict[str, str] = {}

_ITEM = re.compile(r"((?:RC|LC|LT|LN|FN)\s?\d+)\s+(hole|shaft|clearance|interference|fit)")
_STEP = re.compile(r"over\s+([\d.]+)\s+to\s+([\d.]+)\s+in")


def expected_call(row: Row) -> Computed:
    """What the program computes for this row, at both ends of its step."""
    item = _ITEM.fullmatch(row.item)
    step = _STEP.fullmatch(row.condition)
    if not item or not step:
        raise Unmapped(row.words)
    ends = {_pair(inch_fit(size, item[1]), item[2]) for size in (float(step[1]) + 0.0001, float(step[2]))}
    return ends.pop() if len(ends) == 1 else str(sorted(ends))


def _pair(fit: InchFit, member: str) -> tuple[float, float]:
    if member == "hole":
        return (0.0, fit.hole_upper_thou)
    if member == "shaft":
        return (fit.shaft_lower_thou, fit.shaft_upper_thou)
    if member == "interference":
        return (-fit.max_clearance_thou, -fit.min_clearance_thou)
    return (fit.min_clearance_thou, fit.max_clearance_thou)
