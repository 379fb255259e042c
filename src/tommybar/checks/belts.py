"""Belts: length, ratio, and how much of the smaller pulley the belt takes hold of."""

from __future__ import annotations

import math

from tommybar.checks.checked import PRACTICE, Checked, at_least
from tommybar.checks.figures import Figure
from tommybar.design.joints import BeltRelation
from tommybar.design.model import SizedDesign
from tommybar.findings import Finding
from tommybar.shop.model import Shop

LEAST_WRAP = 120.0  # of belt round the smaller pulley [deg]
SOURCE = "geometry of the belt"


def look(design: SizedDesign, shop: Shop) -> Checked:
    """Every belt of the design."""
    found: list[Finding | None] = []
    figures: list[Figure] = []
    for belt in design.belts:
        part = belt.driver.split(".")[0]
        large, small = sorted((belt.driver_dia, belt.driven_dia), reverse=True)
        least = (large + small) / 2
        if belt.centres <= least:
            found.append(_touch(belt, least))
            continue
        how = f"2 C + pi (D {'+'} d) / 2 + (D {'+' if belt.crossed else '-'} d)^2 / (4 C)"
        figures.append(Figure("length of the belt", part, belt.length, "mm", 1, how, SOURCE))
        figures.append(Figure("ratio of the belt", part, belt.ratio, "", 2, "D / d on which it runs", SOURCE))
        wrap = contact(belt)
        figures.append(
            Figure(
                "belt round the smaller pulley",
                part,
                wrap,
                "deg",
                0,
                "180 -/+ 2 asin((D -/+ d) / 2C)",
                SOURCE,
            )
        )
        words = f"The belt from {belt.driver} to {belt.driven} takes little hold of the smaller pulley"
        remedy = "Set the shafts further apart, cross the belt, or lead it over a jockey."
        found.append(at_least(674, words, wrap, LEAST_WRAP, "deg", part=part, remedy=remedy, source=PRACTICE))
    return Checked(tuple(one for one in found if one is not None), tuple(figures))


def contact(belt: BeltRelation) -> float:
    """Angle of belt round the smaller pulley [deg]."""
    large, small = sorted((belt.driver_dia, belt.driven_dia), reverse=True)
    if belt.crossed:
        return 180 + 2 * math.degrees(math.asin(min(1.0, (large + small) / (2 * belt.centres))))
    return 180 - 2 * math.degrees(math.asin(min(1.0, (large - small) / (2 * belt.centres))))


def _touch(belt: BeltRelation, least: float) -> Finding:
    return Finding(
        675,
        "stop",
        f"The pulleys of {belt.driver} and {belt.driven} stand in each other at {belt.centres:g} mm.",
        belt.driver.split(".")[0],
        figure=f"{belt.centres:g} mm",
        bound=f"{least:g} mm",
        remedy="Set the shafts further apart.",
        source=SOURCE,
    )
