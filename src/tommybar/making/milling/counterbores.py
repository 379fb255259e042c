"""Seats for screw heads: a counterbore with its pilot, an end mill, or the boring head."""

from __future__ import annotations

from tommybar.facts.drawing.general_tolerances import general_tolerance
from tommybar.making.cards import Step
from tommybar.making.cuts import feed_for
from tommybar.making.lengths import Mm
from tommybar.making.mill_steps import MillBench, Plunge
from tommybar.making.milling import boring_head
from tommybar.making.milling.sized_holes import end_mill_of, plunge_end_mill
from tommybar.shapes.features import Dim
from tommybar.shop.model import Counterbore, Shop

PILOT_SLACK = 0.3  # a pilot may be so much smaller than its hole; common practice, no source [mm]


def counterbore_for(shop: Shop, seat: float, hole: float) -> Counterbore | None:
    """The owned counterbore of that seat whose pilot runs in the hole, or None [mm]."""
    band = general_tolerance(seat, "m")
    fits = [
        c
        for c in shop.counterbores
        if abs(c.dia - seat) <= band + 1e-9 and hole - PILOT_SLACK - 1e-9 <= c.pilot <= hole - 0.01
    ]
    return min(fits, key=lambda c: (abs(c.dia - seat), hole - c.pilot, c.dia), default=None)


def counterbore(
    bench: MillBench, seat: float, depth: float, hole: float, holes: str, count: int, feature: str
) -> None:
    """A flat seat of ``seat`` diameter, ``depth`` deep, round a hole that is drilled [mm]."""
    tool = counterbore_for(bench.shop, seat, hole)
    dim = Dim(seat, f"{bench.part.name}.{feature}")
    words = f"{holes}, counterbore"
    if tool is not None:
        _with_pilot(bench, tool, depth, words, count, feature)
        return
    cutter = end_mill_of(seat, bench.shop, None)
    if cutter is not None:
        plunge_end_mill(bench, cutter, depth, dim, words, count, feature)
        return
    least, most = bench.mill.boring_head
    if boring_head.owned(bench.shop) and hole >= least - 1e-9 and (most <= 0 or seat <= most + 1e-9):
        boring_head.bore(bench, seat, dim, depth, feature, last=True, blind=True, count=count)
        return
    cutters = ", ".join(f"{c:g}" for c in bench.shop.cutters) or "none"
    pilots = ", ".join(f"{c.dia:g} on {c.pilot:g}" for c in bench.shop.counterbores) or "none"
    head = f"{least:g} to {most:g} mm" if most > 0 else "none"
    bench.stop(
        905,
        f"{feature} of {bench.part.name}: nothing in the drawer cuts a flat seat of {seat:g} mm round a hole of {hole:g} mm;"
        " a drill leaves a cone under the head.",
        feature,
        f"Buy a counterbore {seat:g} mm with a pilot for {hole:g} mm, or an end mill of {seat:g} mm; "
        "or draw the seat for a cutter that is owned.",
        figure=f"{seat:g} mm",
        bound=f"counterbores: {pilots}; end mills: {cutters} mm; boring head: {head}",
    )


def _with_pilot(
    bench: MillBench, tool: Counterbore, depth: float, holes: str, count: int, feature: str
) -> None:
    speed = bench.speed("counterboring", tool.dia, feature)
    bench.plunges.append(Plunge("counterbore", tool.dia, depth + bench.sunk, feature))
    bench.add(
        Step(
            0,
            f"Counterbore {Mm(tool.dia):tool} with pilot {Mm(tool.pilot):tool}, {holes}",
            feature,
            f"counterbore {Mm(tool.dia):tool}, pilot {Mm(tool.pilot):tool}",
            "counterbore",
            speed.rpm,
            speed.reached,
            feed_for(bench.part.material, "HSS", "drilling", "roughing", tool.dia) / 2,
            f"{depth:.2f}",
            "deep mm",
            (
                f"Pilot in the hole, oil on it; to {Mm(depth):.2f} below {bench.face} by the quill's stop, "
                "counted from where the edges first touch all round.",
            ),
            minutes=count * 2.0,
            tool_size=tool.dia,
        )
    )
