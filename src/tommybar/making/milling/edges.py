"""Milling a face, an edge or an end to a size, in the mill's own passes and dial."""

from __future__ import annotations

from tommybar.making.cards import Step
from tommybar.making.lengths import Mm
from tommybar.making.mill_steps import MillBench
from tommybar.making.milling.cutters import cuts_words, depth_passes, end_mill_feed
from tommybar.making.milling.travel import cut_travel
from tommybar.shapes.features import Dim


def mill_to(
    bench: MillBench,
    what: str,
    size: float,
    dim: Dim,
    feature: str,
    take_off: float,
    *,
    measured: bool,
    along: float = 0.0,
) -> None:
    """Mill an end, edge or face to a size with the largest end mill; ``measured`` when it is then the drawn size.

    ``along`` is how long the cut is, where it may be longer than the table travels [mm].
    """
    cutters = [c for c in bench.shop.cutters if c >= 6.0] or list(bench.shop.cutters)
    if not cutters:
        bench.stop(
            418, "No end mill in the drawer.", feature, "Buy or borrow an end mill, or file to a line."
        )
        return
    cutter = max(cutters)
    speed = bench.speed("milling", cutter, feature)
    passes = depth_passes(bench, take_off, cutter, most=0.5)
    if along > 0:
        cut_travel(bench, along, cutter, feature)
    bench.add(
        Step(
            0,
            what,
            feature,
            f"end mill {Mm(cutter):tool}",
            "end mill",
            speed.rpm,
            speed.reached,
            end_mill_feed(bench, "milling", "roughing"),
            f"{size:.2f}",
            "mm long" if feature == "length" else "mm",
            (f"{cuts_words(passes)}, cutter against the feed (up-cut), slides not used locked.",),
            passes,
            minutes=4.0,
            measure=bench.measured(dim, feature, "length") if measured else (),
            tool_size=cutter,
        )
    )
