"""Tapped holes on the axis: the tapping drill, and the tap by hand."""

from __future__ import annotations

from tommybar.facts.threads import thread
from tommybar.making.axial_drills import drill_through_sizes
from tommybar.making.bench import Bench
from tommybar.making.blind_bores import tapped_depth
from tommybar.making.cards import Step
from tommybar.making.inside_tools import groove_depths
from tommybar.making.lengths import Mm
from tommybar.making.practice import rule
from tommybar.shapes.features import Bore

STUB_TAP = 4.0  # threads drilled below the part when its stub closes the hole; lead and chips


def tapping_hole(bench: Bench, bore: Bore, depth: float) -> None:
    """Drill for a tapped bore, in two steps over 6 mm; ``depth`` is that of a through bore [mm]."""
    drill = bench.tapping_drill(bore.thread, bore.name)
    if drill is None:
        return
    if bore.through and bench.option.ending:
        depth += STUB_TAP * thread(bore.thread).pitch  # the tap's lead runs into the stub
    full = depth if bore.through else tapped_depth(bore)
    pilots = [d for d in bench.shop.drills if d < drill - 1.0]  # one just below it would only be dragged in
    pilot = min(pilots, key=lambda d: abs(d - drill / 2), default=drill)
    drills = (drill,) if drill <= 6 or pilot == drill else (pilot, drill)
    drill_through_sizes(bench, bore.name, drills, full, blind_flat=False)


def tap(bench: Bench, bore: Bore) -> None:
    """Tap a bore by hand; without its tap in the drawer a stop says so."""
    screw = thread(bore.thread)
    if bore.thread not in bench.shop.taps:
        bench.find(
            414,
            "stop",
            f"No {bore.thread} tap in the drawer for {bore.name}.",
            feature=bore.name,
            bound="taps owned: " + (", ".join(bench.shop.taps) or "none"),
            remedy="Buy or borrow the tap, or let the size follow a thread that is owned.",
        )
        return
    bench.add(
        Step(
            0,
            f"Tap {bore.thread} by hand, spindle stopped",
            bore.name,
            f"tap {bore.thread}",
            "tap",
            0.0,
            0.0,
            screw.pitch,
            bore.thread,
            _tap_words(bench, bore),
            (
                "Tap held in the tailstock chuck to start it square, turned by hand.",
                "Back half a turn every half turn; oil"
                + (", bottoming tap last." if not bore.through else "."),
            ),
            minutes=4.0,
            why=f"Tapped in the grip that drilled it, so that the thread stands square to face {bench.option.free}.",
            cautions=("Spindle stopped, out of gear.",),
            tool_size=screw.major,
        )
    )


def _tap_words(bench: Bench, bore: Bore) -> str:
    relief = [
        groove_depths(g, bench.length, bench.option.free)[0]
        for g in bench.drawn.bore_grooves
        if g.on == bore.name
    ]
    if relief and not bore.full:
        return f"{Mm(min(relief)):.1f} of full thread, its lead out into the groove"
    if not bore.through:
        return f"{Mm(bore.full or bore.depth):.1f} deep of full thread"
    if bench.option.ending:  # the hole ends in the stub: say where to stop
        return f"{Mm(bench.length + rule('blank', 'saw_rest')):.1f} of full thread"
    return "through"
