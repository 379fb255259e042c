"""Turning a round part at the mill by an angle: with a dividing device, or by a pin through a hole."""

from __future__ import annotations

import math

from tommybar.making.lengths import Mm
from tommybar.making.mill_steps import MillBench
from tommybar.making.milling.rules import mill_rule
from tommybar.shapes.features import CircleHoles, CrossHole
from tommybar.shop.model import Shop


def divides(shop: Shop) -> bool:
    """Whether the shop turns work by angles: a dividing device or a rotary table."""
    return "dividing" in shop.can or (shop.mill is not None and shop.mill.rotary_table > 0)


def sideways(dia: float, degrees: float) -> float:
    """How far a hole lands beside its place on a round for an error of the angle [mm]."""
    return dia / 2 * math.radians(degrees)


def turned_to(bench: MillBench, first: CrossHole, angle: float, dia: float, feature: str) -> tuple[str, ...]:
    """Sentences for turning from the first hole's angle to another [deg], seen from face A."""
    turn = (angle - first.angle) % 360.0
    error = mill_rule("dividing_error")
    off = f"{error:g} deg puts it {Mm(sideways(dia, error)):.2f} beside its place on the round"
    if (
        first.thread == ""
        and first.walls == 2
        and first.dia.value >= mill_rule("pin_least")
        and turn % 90 == 0
    ):
        lies = (
            "level with the table, both ends at one height"
            if turn % 180
            else "upright, by a square on the table"
        )
        return (
            f"Turned {turn:g} deg from {first.name}, clockwise as seen from face A: a pin {Mm(first.dia.value):tool} through it "
            f"stands {lies}; {off}.",
        )
    bench.caution(
        437,
        f"{feature} stands {turn:g} deg from {first.name}, and "
        + (
            "the dividing device finds no land or bore to hold the part by."
            if divides(bench.shop)
            else "the shop file has no dividing device."
        ),
        feature,
        "Scribe the angle in the lathe, or set a protractor on a pin or rod in the first hole; or add dividing.",
        f"{turn:g} deg",
        f"{'no hold in the dividing device' if divides(bench.shop) else 'no dividing device'}, no through hole for a pin at a "
        "right angle",
    )
    return (
        f"Turned {turn:g} deg from {first.name}, clockwise as seen from face A, by a protractor on a rod in it; {off}.",
    )


def from_circle(circles: tuple[CircleHoles, ...], hole: CrossHole) -> tuple[str, ...]:
    """Where hole 1 of a circle stands when a cross hole's place is on top: the clocking between the two."""
    one = next((c for c in circles if c.circle > 0), None)
    if one is None:
        return ()
    apart = math.radians(one.start_angle - hole.angle)
    up, front = one.circle / 2 * math.cos(apart), one.circle / 2 * math.sin(apart)
    side = "in front of" if front < 0 else "behind"
    beside = "in its upright plane" if abs(front) < 0.0005 else f"{Mm(abs(front)):.2f} {side} it"
    return (
        f"Clocked from {one.name} 1: with a pin in it, its middle stands {Mm(abs(up)):.2f} "
        f"{'above' if up >= 0 else 'below'} the part's axis, {beside}.",
    )
