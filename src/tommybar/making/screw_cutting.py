"""Outside threads cut with a single point and the lead screw, where no die is owned or the hand is left."""

from __future__ import annotations

import math

from tommybar.facts.gears import Train, gear_trains
from tommybar.facts.threads import thread
from tommybar.making.bench import Bench, cutting_minutes, named
from tommybar.making.cards import Move, Pass, Step
from tommybar.making.cuts import roughing_passes
from tommybar.making.jobs import span_in_card
from tommybar.making.lengths import Mm
from tommybar.shapes.features import Cylinder

FIRST_CUT = 0.15  # of a single point, radial; common practice, no source [mm]
LEAD_ERROR = (
    500.0  # parts in a million that a train may be off over a nut's length; common practice, no source
)


def train_of(bench: Bench, pitch: float) -> Train | None:
    """The owned change gears that come nearest to a pitch, or None where the lathe cuts no screws [mm]."""
    lathe = bench.shop.lathe
    if "screw cutting" not in bench.shop.can or lathe.leadscrew_pitch <= 0 or len(lathe.change_gears) < 2:
        return None
    found = gear_trains(pitch, lathe.leadscrew_pitch, lathe.change_gears, most=1, within_ppm=LEAD_ERROR)
    return found[0] if found else None


def cut_screw(bench: Bench, land: Cylinder) -> bool:
    """Cut a thread with the single point; False, and nothing said, where shop or thread do not allow it."""
    screw = thread(land.thread)
    train = train_of(bench, screw.pitch)
    tools = [t for t in bench.shop.tools if t.kind == "threading"]
    if train is None or not tools:
        return False
    tool = min(tools, key=lambda t: t.letter)
    near, far = span_in_card(land.start, land.end, bench.length, bench.option.free)
    inner = land.end if bench.option.free == "A" else land.start
    undercut = any(g.start - 1e-6 <= inner <= g.end + 1e-6 for g in bench.drawn.grooves)
    blank = next(f.start_dia for f in bench.shape.outside if f.name == land.name)
    speed = bench.speed(tool, "screwcutting", blank, land.name)
    passes: tuple[Pass, ...] = roughing_passes(blank, screw.core, FIRST_CUT, bench.cross)
    path = [Move(near, 0.0), Move(far, 0.0)] * len(passes)
    hand = "left-hand " if land.left else ""
    error = (
        f", {abs(train.error_ppm):.0f} ppm {'long' if train.error_ppm > 0 else 'short'}"
        if abs(train.error_ppm) > 0.5
        else ", exactly"
    )
    way = (
        f"Left hand: lead screw turned the other way, each cut from the {'undercut' if undercut else 'shoulder'} outwards."
        if land.left
        else (
            "Each cut ends in the undercut."
            if undercut
            else "Each cut is drawn out at the same mark of the carriage; the last turn is not full."
        )
    )
    bench.add(
        Step(
            0,
            f"Cut the {hand}thread {land.thread} with a single point, {len(passes)} cuts",
            land.name,
            named(tool),
            "threading",
            speed.rpm,
            speed.reached,
            screw.pitch,
            f"{screw.core:.2f}",
            "DIA mm at the root",
            (
                f"Change gears {train.words} on a lead screw of {Mm(bench.shop.lathe.leadscrew_pitch):g}{error}.",
                f"{Mm(near - far):g} long, point of {screw.flank_angle:g} deg set square by a gauge. "
                f"{Mm((blank - screw.core) / 2):.3f} deep in all, last cut {passes[-1].dial} ({bench.cross_words}).",
                way,
                "Nut never opened, or the chasing dial at the same mark; lighter cuts towards the end. Try the nut or the mate "
                "before it leaves the chuck.",
            ),
            passes,
            cutting_minutes(path, max(speed.rpm, 1.0), screw.pitch, len(passes))
            + 3.0 * math.log2(len(passes) + 1),
            why="No die owned cuts it." if not land.left else "A die cuts right-hand threads only.",
            cautions=(
                "Slowest speeds: the half nut or the tool must be out before the shoulder; try it once with the tool drawn off.",
            ),
            tool_letter=tool.letter,
        )
    )
    return True
