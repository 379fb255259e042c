"""Whether tools find room at the mill: between work and spindle nose, in the quill's travel, along the drill."""

from __future__ import annotations

from tommybar.facts.drills import drill_length
from tommybar.making.lengths import Mm
from tommybar.making.mill_steps import MillBench, Plunge
from tommybar.making.milling.rules import mill_rule
from tommybar.refusals import Refusal


def stands_out(size: float, *, long: bool = False, stub: bool = False) -> float:
    """How far a drill stands out of the chuck [mm]: its overall length less what the chuck holds."""
    overall = drill_length(size, "long" if long else "jobber").overall
    return overall * (mill_rule("stub_share") if stub else 1.0) - mill_rule("chuck_grip")


def known(size: float, *, long: bool = False) -> bool:
    """Whether the tables know how long such a drill is."""
    try:
        drill_length(size, "long" if long else "jobber")
    except Refusal:
        return False
    return True


def _tool_needs(plunge: Plunge) -> tuple[float, float, str]:
    """Nose to tool end as it is usually held, and the shortest way of holding it [mm], in words."""
    if plunge.kind in ("drill", "reamer"):
        usual = mill_rule("chuck") + stands_out(plunge.size, long=plunge.long)
        if plunge.kind == "reamer" or plunge.long:
            return usual, mill_rule("collet") + stands_out(plunge.size, long=plunge.long), "in a collet"
        shortest = mill_rule("collet") + stands_out(plunge.size, stub=True)
        return usual, max(shortest, mill_rule("collet") + plunge.deep), "a stub drill in a collet"
    usual = mill_rule("collet") + max(mill_rule("end_mill_reach") * plunge.size, plunge.deep)
    return usual, usual, "in a collet"


def room_lines(bench: MillBench, base: float, tall: float) -> tuple[str, ...]:
    """Sentences with the height budget; findings where a tool does not go in or the quill is too short.

    ``base``: from the table to the foot of the work, ``tall``: from there to its top [mm].
    """
    mill = bench.mill
    room = mill.nose_to_table - base - tall
    lines = [
        f"Table to work's foot {Mm(base):.0f}, work {Mm(tall):.1f} high: {Mm(room):.0f} from its top to the spindle nose"
        f" at most ({Mm(mill.nose_to_table):.0f} nose to table)."
    ]
    if not bench.plunges:
        return tuple(lines)
    unknown = [p for p in bench.plunges if p.kind in ("drill", "reamer") and not known(p.size, long=p.long)]
    for one in unknown:
        bench.caution(
            432,
            f"How long a {one.kind} of {one.size:g} mm is stands in no table here.",
            one.feature,
            f"Measure it with its holder: {room:.0f} mm is what there is from the work to the spindle nose.",
            f"{one.size:g} mm",
            f"{room:.0f} mm from work to nose",
        )
    reckoned = [p for p in bench.plunges if p not in unknown]
    if not reckoned:
        return tuple(lines)
    longest = max(reckoned, key=lambda p: (_tool_needs(p)[0], p.size))
    usual, shortest, how = _tool_needs(longest)
    usual, shortest = usual + mill_rule("above_work"), shortest + mill_rule("above_work")
    lines.append(f"The {longest.kind} {Mm(longest.size):tool} in its chuck wants {Mm(usual):.0f} of that.")
    if usual > room + 1e-6:
        figure = f"{usual:.0f} mm for chuck and {longest.kind} {longest.size:g} mm"
        bound = f"{room:.0f} mm from work to nose"
        if shortest <= room + 1e-6:
            bench.caution(
                432,
                f"The {longest.kind} {longest.size:g} mm in a drill chuck does not go in over {bench.part.name}; {how} does.",
                longest.feature,
                f"Take {how} ({shortest:.0f} mm), and change tools without moving the table.",
                figure,
                bound,
            )
        else:
            bench.stop(
                432,
                f"{bench.part.name} so held leaves {room:.0f} mm under the spindle; even {how} wants {shortest:.0f} mm.",
                longest.feature,
                "Hold it lower (clamp it to the table), drill it in the lathe, or use a larger machine.",
                figure,
                bound,
            )
    _stroke(bench)
    return tuple(lines)


def _stroke(bench: MillBench) -> None:
    """The quill's travel against the deepest plunge."""
    deepest = max(bench.plunges, key=lambda p: (p.deep, p.size))
    stroke = deepest.deep + mill_rule("above_work")
    if bench.mill.quill <= 0 or stroke <= bench.mill.quill + 1e-6:
        return
    round_column = bench.mill.column == "round"
    remedy = (
        "On a round column the head must not be moved between spotting and the last tool: raise the work, drill from both "
        "sides, or finish deeper than the quill with the head moved only after the size is made."
        if round_column
        else "Start with the quill up, lower the head on its slide half way and go on: the dovetail keeps the place."
    )
    figure, bound = f"{stroke:.1f} mm", f"{bench.mill.quill:g} mm of quill"
    words = f"{deepest.feature} goes {deepest.deep:.1f} mm down; the quill travels {bench.mill.quill:g} mm."
    if round_column:
        bench.stop(435, words, deepest.feature, remedy, figure, bound)
    else:
        bench.caution(435, words, deepest.feature, remedy, figure, bound)


def both_sides(dia: float, distance: float, *, long: bool = False) -> float:
    """By how much a drill is too short to cross a distance with its point [mm]; 0 when it reaches."""
    from_chuck = stands_out(dia, long=long)
    return max(0.0, distance - from_chuck)
