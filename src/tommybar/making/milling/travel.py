"""Whether the table travels as far as a card's places and cuts lie apart."""

from __future__ import annotations

from tommybar.making.mill_steps import MillBench
from tommybar.making.milling.rules import mill_rule
from tommybar.making.visiting import Spot


def within_travel(bench: MillBench, spots: list[Spot]) -> None:
    """A stop when the places of one setting lie further apart than a slide travels; an unknown travel (0) is not judged."""
    for way, travel, figures in (
        ("along", bench.mill.travel_x, [s.x for s in spots]),
        ("across", bench.mill.travel_y, [s.y for s in spots]),
    ):
        span = max(figures, default=0.0) - min(figures, default=0.0)
        if travel > 0 and span > travel + 1e-6:
            bench.stop(
                451,
                f"{bench.part.name}: the places on {bench.face} lie {span:.1f} mm apart {way}; the table travels {travel:g} mm.",
                "",
                "Turn the part by 90 deg where the other slide travels further, or do it in two settings from a common edge.",
                figure=f"{span:.1f} mm",
                bound=f"{travel:g} mm of travel {way}",
            )


def cut_travel(bench: MillBench, long: float, cutter: float, feature: str) -> None:
    """A caution when one cut along an edge, cutter in and out, is longer than the table travels."""
    needed = long + cutter + 2 * mill_rule("clear_off")
    if bench.mill.travel_x > 0 and needed > bench.mill.travel_x + 1e-6:
        bench.caution(
            451,
            f"A cut along {bench.part.name} takes {needed:.1f} mm of travel; the table has {bench.mill.travel_x:g} mm.",
            feature,
            "Mill it in two lengths, moved along in the vice against the fixed jaw; meet in the middle by the dial.",
            f"{needed:.1f} mm",
            f"{bench.mill.travel_x:g} mm of travel along",
        )
